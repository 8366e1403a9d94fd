// SPDX-License-Identifier: MIT
// What turns on the positioner, and how fast it may.
#include <algorithm>

#include "detail_turns.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/turn/move_time.hpp"

namespace seamturn::planner::detail {

std::vector<Angle> rest_axes(const cell::Positioner& positioner) {
  std::vector<Angle> rest;
  for (const cell::Axis& axis : positioner.axes) {
    rest.push_back(axis.endless ? Angle() : std::clamp(Angle(), axis.min, axis.max));
  }
  return rest;
}

joint::Body turning_body(const StageWork& stage) {
  SEAMTURN_REQUIRE(stage.setup != nullptr, stage.name());
  std::vector<joint::Body> bodies;
  for (const joint::Member* member : stage.present) {
    bodies.push_back(joint::moved(stage.setup->X_DJ, joint::body_of(*member)));
  }
  for (const joint::SetupSolid& solid : stage.setup->solids) {
    bodies.push_back(joint::body_of(solid));
  }
  return joint::together(bodies);
}

turn::SwingBody swing_body(const StageWork& stage) {
  SEAMTURN_REQUIRE(stage.setup != nullptr, stage.name());
  return {stage.present, stage.setup->X_DJ, stage.setup->solids};
}

turn::ClearWays clear_ways(const cell::Positioner& positioner, const StageWork& stage) {
  return turn::ClearWays(positioner, swing_body(stage), turning_body(stage));
}

cell::Positioner slowed(const cell::Positioner& positioner, const StageWork& stage) {
  if (!positioner.rim_speed_max_mm_s || stage.setup == nullptr || stage.present.empty()) {
    return positioner;
  }
  return turn::held_to_rim_speed(positioner, turn::rim_radii_mm(positioner, swing_body(stage)));
}

double exchange_s(const cell::Cell& cell) {
  const cell::Positioner& positioner = cell.positioner;
  if (positioner.axes.empty() || !cell::is_exchange(positioner, 0)) return 0.0;
  const std::vector<Angle> from = rest_axes(positioner);
  std::vector<Angle> to = from;
  to.front() = from.front() + Angle::deg(180.0);
  return turn::turn_time_s(positioner, from, to) + cell.times.settle_s;
}

}  // namespace seamturn::planner::detail
