// SPDX-License-Identifier: MIT
#include "seamturn/process/heating.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::process {

double heating_time_s(const Heating& heating, double heat_j, double soak_s) {
  SEAMTURN_REQUIRE(base::is_positive(heating.power_w), heating.power_w);
  SEAMTURN_REQUIRE(base::is_positive(heating.useful_ratio), heating.useful_ratio);
  SEAMTURN_REQUIRE(base::is_amount(heating.entry_s), heating.entry_s);
  SEAMTURN_REQUIRE(base::is_amount(heat_j), heat_j);
  SEAMTURN_REQUIRE(base::is_amount(soak_s), soak_s);
  return heating.entry_s + heat_j / (heating.power_w * heating.useful_ratio) + soak_s;
}

}  // namespace seamturn::process
