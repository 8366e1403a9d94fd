// SPDX-License-Identifier: MIT
// Air moves of the ordering problem: straight, from rest to rest, trapezoid of speed.
#pragma once

#include <cmath>

#include "seamturn/order/job.hpp"

namespace seamturn::order {

/// Time of an air move over a distance. It is 0 at 0, rises and is concave, therefore a detour
/// never shortens a move (used by the bounds). Units: mm -> s. Pre: distance >= 0, check_job
/// passed. Source: trapezoid closed form. Tests: order/simulate - closed-form.
[[nodiscard]] inline double air_s(const Job& job, double distance_mm) {
  const double speed = job.air_speed_mm_s;
  const double acceleration = job.air_acceleration_mm_s2;
  const double ramps_mm = speed * speed / acceleration;
  return distance_mm >= ramps_mm ? distance_mm / speed + speed / acceleration
                                 : 2.0 * std::sqrt(distance_mm / acceleration);
}

[[nodiscard]] inline double air_s(const Job& job,
                                  const geom::Vec3& from_W,
                                  const geom::Vec3& to_W) {
  return air_s(job, (to_W - from_W).norm());
}

}  // namespace seamturn::order
