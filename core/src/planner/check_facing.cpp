// SPDX-License-Identifier: MIT
// Which way a tilted table turns the part: towards the robot, or its back to it.
#include <cmath>

#include "detail_turns.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::planner::detail {

namespace {

/// How far the faceplate leans with its back to the robot; 0 when it does not.
Angle leant_away(const cell::Cell& cell, const plan::PlannedStance& stance) {
  constexpr double back_cos = -0.5;  // more than 120 deg off the way to the robot
  const geom::Pose X_WD = turn::pose_WD(cell.positioner, stance.stance.axes);
  const geom::Vec3 normal = X_WD.direction(cell::faceplate_normal_D(cell.positioner.kind));
  const geom::Vec3 to_robot = cell.robot.home - X_WD.point(stance.load.centre);
  const double level = normal.head<2>().norm() * to_robot.head<2>().norm();
  if (level < 1e-9 || normal.head<2>().dot(to_robot.head<2>()) > back_cos * level) return {};
  return geom::angle_between(normal, geom::Vec3::UnitZ());
}

}  // namespace

void check_facing(const Inputs& inputs, plan::Plan& plan) {
  constexpr double much_deg = 30.0;
  const cell::Cell& cell = *inputs.cell;
  // A headstock's face never leans: its part is welded from beside it.
  if (cell::faceplate_normal_D(cell.positioner.kind) != geom::Vec3::UnitZ()) return;
  std::size_t count = 0;
  const plan::PlannedStance* worst = nullptr;
  Angle most;
  for (const plan::PlannedStance& stance : plan.stances) {
    const Angle leant = leant_away(cell, stance);
    if (leant.deg() < much_deg) continue;
    ++count;
    if (worst != nullptr && leant <= most) continue;
    worst = &stance;
    most = leant;
  }
  if (worst == nullptr) return;
  plan.findings.push_back(base::Finding{
      base::Severity::warning,
      "cell.robot.behind",
      "in " + std::to_string(count) + " of " + std::to_string(plan.stances.size()) +
          " stances the faceplate leans with its back to the robot, in " + worst->id + " by " +
          base::fixed_text(most.deg(), 0) +
          " deg: the torch would have to reach over it. Reach is not checked here; look at the "
          "pictures of the stances, set home= of the robot on the side to which the table tilts, "
          "or let it tilt the other way",
      place_of(inputs.weldment, "weldment"),
      {}});
}

}  // namespace seamturn::planner::detail
