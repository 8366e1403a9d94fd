// SPDX-License-Identifier: MIT
#include "seamturn/turn/move_time.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "seamturn/base/error.hpp"

namespace seamturn::turn {

namespace {

double trapezoid_s(double distance, double speed, double acceleration) {
  const bool reaches_speed = distance >= speed * speed / acceleration;
  return reaches_speed ? distance / speed + speed / acceleration
                       : 2.0 * std::sqrt(distance / acceleration);
}

/// Seven phases, jerk bounded: acceleration rises, holds and falls on each side of a run at speed.
double double_s_s(double distance, double speed, double acceleration, double jerk) {
  const bool holds_acceleration = speed * jerk >= acceleration * acceleration;
  const double speeding_up_s = holds_acceleration ? acceleration / jerk + speed / acceleration
                                                  : 2.0 * std::sqrt(speed / jerk);
  if (distance / speed >= speeding_up_s) return distance / speed + speeding_up_s;
  const double ramp_s = acceleration / jerk;
  if (distance >= 2.0 * acceleration * ramp_s * ramp_s) {
    return 2.0 * (ramp_s / 2.0 + std::sqrt(ramp_s * ramp_s / 4.0 + distance / acceleration));
  }
  return 4.0 * std::cbrt(distance / (2.0 * jerk));
}

MoveParams limits_of(const cell::Axis& axis, Angle travel) {
  MoveParams move;
  move.distance = std::abs(travel.rad());
  move.speed = axis.speed_rad_s;
  move.acceleration = axis.acceleration_rad_s2;
  move.jerk = axis.jerk_rad_s3;
  return move;
}

constexpr base::FigureKey move_time_keys[] = {
    {"distance",
     base::Dimension::length,
     "of the move, a length or an angle",
     "0 or more; the other keys in the same kind",
     true,
     true},
    {"speed",
     base::Dimension::speed,
     "largest, along a line or about an axis",
     "above 0",
     true,
     true},
    {"acceleration",
     base::Dimension::acceleration,
     "largest, along a line or about an axis",
     "above 0",
     true,
     true},
    {"jerk",
     base::Dimension::jerk,
     "largest, along a line or about an axis",
     "above 0; not given: the acceleration sets in at once",
     false,
     true}};
constexpr base::Citation move_time_sources[] = {
    {"BIAGIOTTI", "2008, chapter 3.4, double-S", base::Status::from_memory},
    {"KINEMATICS", "trapezoid: constant acceleration", base::Status::computed}};

}  // namespace

double move_time_s(const MoveParams& params) {
  SEAMTURN_REQUIRE(params.distance >= 0.0 && params.speed > 0.0 && params.acceleration > 0.0 &&
                       (!params.jerk || *params.jerk > 0.0),
                   params.distance,
                   params.speed,
                   params.acceleration);
  if (!params.jerk) return trapezoid_s(params.distance, params.speed, params.acceleration);
  return double_s_s(params.distance, params.speed, params.acceleration, *params.jerk);
}

const base::FigureCard& move_time_card() {
  static const base::FigureCard card{
      "move-time",
      "time of a move from rest to rest",
      "trapezoid: D/v + v/a when D >= v2/a, else 2 sqrt(D/a); with a jerk the double-S of "
      "docs/methods/move-time.md",
      "s",
      "distance 0 or more, the limits above 0; settling and the controller's delays come on top",
      move_time_keys,
      move_time_sources};
  return card;
}

Angle axis_travel(const cell::Axis& axis, Angle from, Angle to) {
  const Angle travel = to - from;
  if (!axis.endless) return travel;
  return Angle::rad(std::remainder(travel.rad(), 2.0 * std::numbers::pi));
}

double turn_time_s(const cell::Positioner& positioner,
                   const std::vector<Angle>& from,
                   const std::vector<Angle>& to) {
  const std::size_t count = positioner.axes.size();
  SEAMTURN_REQUIRE(from.size() == count && to.size() == count, from.size(), to.size(), count);
  double slowest_s = 0.0;
  for (std::size_t i = 0; i < count; ++i) {
    const cell::Axis& axis = positioner.axes[i];
    const MoveParams move = limits_of(axis, axis_travel(axis, from[i], to[i]));
    slowest_s = std::max(slowest_s, move_time_s(move));
  }
  return slowest_s;
}

std::vector<AxisMove> together(const cell::Positioner& positioner,
                               const std::vector<Angle>& from,
                               const std::vector<Angle>& to) {
  const double time_s = turn_time_s(positioner, from, to);
  std::vector<AxisMove> moves;
  for (std::size_t i = 0; i < positioner.axes.size(); ++i) {
    const cell::Axis& axis = positioner.axes[i];
    AxisMove move;
    move.travel = axis_travel(axis, from[i], to[i]);
    move.time_alone_s = move_time_s(limits_of(axis, move.travel));
    const double slow = time_s > 0.0 ? move.time_alone_s / time_s : 0.0;
    move.slow_ratio = slow;
    move.speed_rad_s = slow * axis.speed_rad_s;
    move.acceleration_rad_s2 = slow * slow * axis.acceleration_rad_s2;
    if (axis.jerk_rad_s3) move.jerk_rad_s3 = slow * slow * slow * *axis.jerk_rad_s3;
    moves.push_back(move);
  }
  return moves;
}

double air_time_s(const cell::Robot& robot, double distance_mm) {
  MoveParams move;
  move.distance = distance_mm;
  move.speed = robot.air_speed_mm_s;
  move.acceleration = robot.air_acceleration_mm_s2;
  return move_time_s(move);
}

}  // namespace seamturn::turn
