// SPDX-License-Identifier: MIT
#include "seamturn/process/heating.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"

namespace seamturn::process {

double heating_time_s(const Heating& heating, double heat_j, double soak_s) {
  SEAMTURN_REQUIRE(std::isfinite(heating.power_w) && heating.power_w > 0.0, heating.power_w);
  SEAMTURN_REQUIRE(std::isfinite(heating.useful_ratio) && heating.useful_ratio > 0.0,
                   heating.useful_ratio);
  SEAMTURN_REQUIRE(std::isfinite(heating.entry_s) && heating.entry_s >= 0.0, heating.entry_s);
  SEAMTURN_REQUIRE(std::isfinite(heat_j) && heat_j >= 0.0, heat_j);
  SEAMTURN_REQUIRE(std::isfinite(soak_s) && soak_s >= 0.0, soak_s);
  return heating.entry_s + heat_j / (heating.power_w * heating.useful_ratio) + soak_s;
}

}  // namespace seamturn::process
