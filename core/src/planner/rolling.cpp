// SPDX-License-Identifier: MIT
// How far and which way the positioner turns under a ring.
#include "detail_stances.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::planner::detail {

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

base::Angle rolled_turn(const Inputs& inputs, const joint::Seam& seam) {
  const Angle turn = rolled_angle(seam);
  SEAMTURN_REQUIRE(inputs.cell.has_value(), seam.id);
  const geom::Vec3 axis_J = std::get<geom::CirclePath>(*seam.path).axis;
  const geom::Vec3 axis_D = inputs.weldment.setup.X_DJ.direction(axis_J);
  return rolling_sense(inputs.cell->positioner, axis_D) * turn;
}

}  // namespace seamturn::planner::detail
