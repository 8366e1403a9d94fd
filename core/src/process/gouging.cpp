// SPDX-License-Identifier: MIT
#include "seamturn/process/gouging.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"

namespace seamturn::process {

double gouging_time_s(const Gouging& gouging, double length_mm) {
  SEAMTURN_REQUIRE(std::isfinite(gouging.speed_mm_s) && gouging.speed_mm_s > 0.0,
                   gouging.speed_mm_s);
  SEAMTURN_REQUIRE(std::isfinite(gouging.entry_s) && gouging.entry_s >= 0.0, gouging.entry_s);
  SEAMTURN_REQUIRE(std::isfinite(length_mm) && length_mm >= 0.0, length_mm);
  return gouging.entry_s + length_mm / gouging.speed_mm_s;
}

}  // namespace seamturn::process
