// SPDX-License-Identifier: MIT
#include "seamturn/process/gouging.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::process {

double gouging_time_s(const Gouging& gouging, double length_mm) {
  SEAMTURN_REQUIRE(base::is_positive(gouging.speed_mm_s), gouging.speed_mm_s);
  SEAMTURN_REQUIRE(base::is_amount(gouging.entry_s), gouging.entry_s);
  SEAMTURN_REQUIRE(base::is_amount(length_mm), length_mm);
  return gouging.entry_s + length_mm / gouging.speed_mm_s;
}

}  // namespace seamturn::process
