// SPDX-License-Identifier: MIT
// How a pass lies as its stance holds the part.
#pragma once

#include <optional>

#include "seamturn/plan/plan.hpp"
#include "seamturn/position/classify.hpp"

namespace seamturn::plan {

/// Where along its path a pass starts: on lines at the end it is travelled from, on rings, arcs and
/// polylines where its first point stands (on the leg its travel follows). Units: mm. Pre: the seam
/// has a path. Tests: planner/lie - closed-form.
[[nodiscard]] double start_station_mm(const joint::Seam& seam, const PlannedPass& pass);

/// Rotation that takes directions of the part to the world as the pass is struck: the stance, its
/// last axis where a rolled pass begins. Pre: the pass has a stance, the plan a cell.
[[nodiscard]] geom::Mat3 rotation_WJ(const Plan& plan, const PlannedPass& pass);

/// Slope (+ uphill in travel) and bank where the pass starts; of a rolled ring that is where the
/// arc stands all the time. Nothing for passes without a stance and seams without a path.
/// Tests: planner/lie - laws over the demos (the positions planned, the travel of the points).
[[nodiscard]] std::optional<position::Attitude> lie_at_start(const Plan& plan,
                                                             const joint::Joint& joint,
                                                             const joint::Seam& seam,
                                                             const PlannedPass& pass);

}  // namespace seamturn::plan
