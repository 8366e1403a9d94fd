// SPDX-License-Identifier: MIT
// Rest-to-rest times of axes and of the robot's air moves.
#pragma once

#include <optional>
#include <vector>

#include "seamturn/base/angle.hpp"
#include "seamturn/base/figure_card.hpp"
#include "seamturn/cell/cell.hpp"

namespace seamturn::turn {

using base::Angle;

/// Distance, speed and acceleration in one consistent set (mm or rad).
struct MoveParams {
  double distance = 0.0;
  double speed = 0.0;
  double acceleration = 0.0;
  std::optional<double> jerk;
};
/// Trapezoid, or double-S when a jerk is given.
/// Units: consistent -> s. Pre: distance >= 0, others > 0.
/// Source: trapezoid closed form; double-S [BIAGIOTTI] 2008 ch. 3.4 from memory.
/// Accuracy: exact. Tests: turn/move_time - computed, law (integrated).
[[nodiscard]] double move_time_s(const MoveParams& params);
[[nodiscard]] const base::FigureCard& move_time_card();

/// Time of a turn: the slowest axis; 0 when nothing moves. Endless axes go the short way round.
[[nodiscard]] double turn_time_s(const cell::Positioner& positioner,
                                 const std::vector<Angle>& from,
                                 const std::vector<Angle>& to);
/// Time of an air move. Pre: distance >= 0.
[[nodiscard]] double air_time_s(const cell::Robot& robot, double distance_mm);

}  // namespace seamturn::turn
