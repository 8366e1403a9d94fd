// SPDX-License-Identifier: MIT
// The loaded positioner in motion: what turns, how fast it may, and whether it may at all.
#pragma once

#include <vector>

#include "detail_stages.hpp"
#include "seamturn/plan/plan.hpp"
#include "seamturn/turn/clear_way.hpp"
#include "seamturn/turn/turn_load.hpp"

namespace seamturn::planner::detail {

/// Axes at rest: at zero, or as near to it as their limits let them.
[[nodiscard]] std::vector<Angle> rest_axes(const cell::Positioner& positioner);

/// What a stage has on the faceplate: members, fixture, risers. Pre: its set-up is set.
[[nodiscard]] joint::Body turning_body(const StageWork& stage);  ///< frame D
[[nodiscard]] turn::SwingBody swing_body(const StageWork& stage);

/// The ways a stage's load may be turned. Pre: the set-up is set; positioner as `slowed`.
[[nodiscard]] turn::ClearWays clear_ways(const cell::Positioner& positioner,
                                         const StageWork& stage);

/// The positioner no faster than its rim speed lets it be with the load of a stage.
[[nodiscard]] cell::Positioner slowed(const cell::Positioner& positioner, const StageWork& stage);

/// Every turn of every stage once, the rolled ones too, and the loaded exchange of a station
/// changer: into plan.turns, with the findings turn.load.turn and turn.swing.floor (errors),
/// turn.load.speeding_up, turn.load.stop and turn.swing.rim_speed (warnings), each once a stage,
/// and turn.load.stop_not_judged (a note). Needs assemble_order.
void check_turns(const Inputs& inputs, const std::vector<StageWork>& stages, plan::Plan& plan);

/// Warns (cell.robot.behind) where a table leans the part with its back to the robot's home: by 30
/// deg and more, more than 120 deg off the way there (common practice). Needs the stances and a
/// cell. Tests: planner/facing - closed-form.
void check_facing(const Inputs& inputs, plan::Plan& plan);

/// Time a station changer takes to bring the other side in, settling counted; 0 for others.
[[nodiscard]] double exchange_s(const cell::Cell& cell);

}  // namespace seamturn::planner::detail
