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

/// How far an axis goes, signed; an endless one goes the short way round.
[[nodiscard]] Angle axis_travel(const cell::Axis& axis, Angle from, Angle to);
/// Time of a turn: the slowest axis, with its jerk where the cell states one; 0 when nothing moves.
[[nodiscard]] double turn_time_s(const cell::Positioner& positioner,
                                 const std::vector<Angle>& from,
                                 const std::vector<Angle>& to);

/// An axis slowed down so that all arrive together.
struct AxisMove {
  Angle travel;  ///< signed
  double time_alone_s = 0.0;
  double slow_ratio = 1.0;  ///< lambda = time alone / time of the turn; 0: it does not move
  double speed_rad_s = 0.0;
  double acceleration_rad_s2 = 0.0;
  std::optional<double> jerk_rad_s3;
};
/// Speed, acceleration and jerk times lambda, lambda^2, lambda^3: the same move, slower. One an
/// axis. Pre: as turn_time_s. Source: docs/methods/move-time.md, computed.
/// Accuracy: exact. Tests: turn/move_time - law (each then takes the time of the slowest).
[[nodiscard]] std::vector<AxisMove> together(const cell::Positioner& positioner,
                                             const std::vector<Angle>& from,
                                             const std::vector<Angle>& to);
/// Time of an air move. Pre: distance >= 0.
[[nodiscard]] double air_time_s(const cell::Robot& robot, double distance_mm);

}  // namespace seamturn::turn
