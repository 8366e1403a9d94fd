// SPDX-License-Identifier: MIT
#include "seamturn/plan/lie.hpp"

#include <variant>

#include "seamturn/base/error.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::plan {

double start_station_mm(const joint::Seam& seam, const PlannedPass& pass) {
  SEAMTURN_REQUIRE(seam.path.has_value(), seam.id);
  if (!geom::is_closed(*seam.path)) return pass.reversed ? geom::path_length_mm(*seam.path) : 0.0;
  const auto* circle = std::get_if<geom::CirclePath>(&*seam.path);
  if (circle == nullptr || pass.points.empty()) return 0.0;
  const geom::Vec3 out = pass.points.front().point - circle->centre;
  const geom::Vec3 across = out - out.dot(circle->axis) * circle->axis;
  const double station_mm =
      geom::signed_angle(circle->axis, circle->start, across).rad() * circle->radius_mm;
  return station_mm < 0.0 ? station_mm + geom::path_length_mm(*seam.path) : station_mm;
}

geom::Mat3 rotation_WJ(const Plan& plan, const PlannedPass& pass) {
  const auto index = static_cast<std::size_t>(pass.stance);
  SEAMTURN_REQUIRE(pass.stance >= 0 && index < plan.stances.size() && plan.cell, pass.stance);
  const PlannedStance& stance = plan.stances[index];
  std::vector<base::Angle> axes = stance.stance.axes;
  if (pass.roll_from) axes.back() = *pass.roll_from;
  return turn::rotation_WD(plan.cell->positioner, axes) * setup_of(plan, stance).X_DJ.rotation;
}

std::optional<position::Attitude> lie_at_start(const Plan& plan,
                                               const joint::Joint& joint,
                                               const joint::Seam& seam,
                                               const PlannedPass& pass) {
  if (pass.stance < 0 || !seam.path || !plan.cell) return std::nullopt;
  const geom::Mat3 R_WJ = rotation_WJ(plan, pass);
  const joint::SectionFrame frame = joint::section_frame(joint, seam, start_station_mm(seam, pass));
  const geom::Vec3 travel_W = (pass.reversed ? -1.0 : 1.0) * (R_WJ * frame.tangent);
  const auto lies = position::attitude(travel_W, R_WJ * frame.face, geom::Vec3::UnitZ());
  if (!lies) return std::nullopt;
  return *lies;
}

}  // namespace seamturn::plan
