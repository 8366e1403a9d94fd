// SPDX-License-Identifier: MIT
// How far and which way the positioner turns under a ring.
#include <cmath>

#include "detail_stances.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::planner::detail {

namespace {

constexpr double same_axis_rad = 2e-4;  ///< two stances closer than this (0.01 deg) are one

}  // namespace

bool same_stance(const turn::Stance& a, const turn::Stance& b) {
  if (a.rolling != b.rolling) return false;
  for (std::size_t i = 0; i < a.axes.size(); ++i) {
    const double apart_rad = (a.axes[i] - b.axes[i]).rad();
    const double off_rad = a.rolling ? apart_rad : 2.0 * std::sin(0.5 * apart_rad);
    if (std::abs(off_rad) > same_axis_rad) return false;
  }
  return true;
}

double rolling_sense(const cell::Positioner& positioner, const geom::Vec3& ring_axis_D) {
  return ring_axis_D.dot(cell::faceplate_normal_D(positioner.kind)) > 0.0 ? -1.0 : 1.0;
}

base::Angle rolled_angle(const joint::Seam& seam) {
  const auto* circle = seam.path ? std::get_if<geom::CirclePath>(&*seam.path) : nullptr;
  const std::vector<joint::Stretch> stretches = joint::stretches_of(seam);
  SEAMTURN_REQUIRE(circle != nullptr && stretches.size() == 1, seam.id);
  const double round_mm = stretches.front().to_mm - stretches.front().from_mm;
  if (round_mm == geom::path_length_mm(*seam.path)) return Angle::deg(360.0);
  return Angle::rad(round_mm / circle->radius_mm);
}

base::Angle rolled_turn(const cell::Positioner& positioner,
                        const joint::Setup& setup,
                        const joint::Seam& seam) {
  const Angle turn = rolled_angle(seam);
  const geom::Vec3 axis_J = std::get<geom::CirclePath>(*seam.path).axis;
  const geom::Vec3 axis_D = setup.X_DJ.direction(axis_J);
  return rolling_sense(positioner, axis_D) * turn;
}

}  // namespace seamturn::planner::detail
