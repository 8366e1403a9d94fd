// SPDX-License-Identifier: MIT
#include <cmath>

#include "detail_figures.hpp"
#include "seamturn/position/classify.hpp"
#include "seamturn/turn/load.hpp"
#include "seamturn/turn/move_time.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::figures::detail {

namespace {

using base::Angle;
using base::Dimension;
using geom::Vec3;

/// The normal made square to the axis; refused within 1 degree of it.
base::Outcome<Vec3> squared_normal(const Vec3& axis, const Vec3& normal) {
  const Angle between = geom::angle_between(axis, normal);
  const Angle off_axis = std::min(between, Angle::deg(180.0) - between);
  if (off_axis < Angle::deg(1.0)) {
    return base::Refusal{"position.normal.along_axis",
                         "the normal lies within 1 degree of the axis; a weld face looks across "
                         "its axis"};
  }
  return geom::unit(normal - normal.dot(axis) * axis);
}

/// A move is along a line or about an axis: all keys must be of one kind.
struct MoveKind {
  Dimension distance, speed, acceleration, jerk;
};
constexpr MoveKind linear{
    Dimension::length, Dimension::speed, Dimension::acceleration, Dimension::jerk};
constexpr MoveKind rotary{Dimension::angle,
                          Dimension::angular_speed,
                          Dimension::angular_acceleration,
                          Dimension::angular_jerk};

double move_number(Arguments& arguments, const std::string& key, Dimension dimension) {
  const base::Outcome<double> number = base::parse_quantity(arguments.text(key), dimension);
  if (number) return number.value();
  arguments.add_bad_value("key " + key + "=: " + number.error().text, number.error().code);
  return 0.0;
}

}  // namespace

Answer position_figure(Arguments& arguments) {
  const bool fillet = arguments.choice("weld", {"groove", "fillet"}) == 1;
  const Vec3 axis = arguments.direction("axis");
  const Vec3 normal = arguments.direction("normal");
  if (!arguments.good()) return FigureResult{};
  const auto found =
      position::classify(fillet ? process::WeldFamily::fillet : process::WeldFamily::groove,
                         axis,
                         normal,
                         Vec3::UnitZ());
  if (!found) return found.error();
  const std::string iso(process::position_name(found->iso));
  return ResultMaker("position")
      .principal(iso)
      .value("iso", iso)
      .value("aws", found->aws)
      .value("slope_deg", found->attitude.slope.deg(), "deg")
      .value("bank_deg", found->attitude.bank.deg(), "deg")
      .value("margin_deg", found->margin.deg(), "deg")
      .done();
}

Answer stance_figure(Arguments& arguments) {
  const bool headstock = arguments.choice("positioner", {"tilt-rotate", "headstock"}) == 1;
  const bool pb = arguments.choice("want", {"PA", "PB"}) == 1;
  const Vec3 axis = arguments.direction("axis");
  const Vec3 raw_normal = arguments.direction("normal");
  const std::size_t down = arguments.has("down") ? arguments.choice("down", {"1", "2"}) + 1 : 0;
  const Angle between = Angle::rad(arguments.number("angle", Angle::deg(90.0).rad()));
  if (!(between > Angle() && between < Angle::deg(180.0))) {
    arguments.add_bad_value("angle= lies between 0 and 180 deg");
  }
  if (!pb && down != 0) arguments.add_usage("down= goes with want=PB");
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<Vec3> normal = squared_normal(axis, raw_normal);
  if (!normal) return normal.error();
  cell::Positioner positioner;
  positioner.kind = headstock ? cell::PositionerKind::headstock : cell::PositionerKind::tilt_rotate;
  positioner.axes.resize(headstock ? 1 : 2);
  // One plate level: the bank is what is left of a right angle beside half the corner.
  const Angle level_bank = position::pb_bank_near(Angle::deg(90.0) - between / 2.0);
  std::vector<Angle> banks;
  if (!pb) banks = {Angle()};
  if (pb && down != 2) banks.push_back(level_bank);
  if (pb && down != 1) banks.push_back(-level_bank);

  ResultMaker result("stance");
  int number = 0;
  for (const Angle bank : banks) {
    const Vec3 sky = turn::sky_direction(axis, normal.value(), Angle(), bank);
    for (const turn::StanceAnswer& answer : turn::stances_for_sky(positioner, sky)) {
      const std::string suffix = ++number == 1 ? "" : "_" + std::to_string(number);
      if (number == 1) result.principal(answer.axes.front().deg(), "deg");
      if (headstock) {
        result.value("turn_deg" + suffix, answer.axes[0].deg(), "deg");
      } else {
        result.value("tilt_deg" + suffix, answer.axes[0].deg(), "deg");
        result.value("rotate_deg" + suffix, answer.axes[1].deg(), "deg");
        if (answer.rotate_free) result.value("rotate_free" + suffix, std::string("yes"));
      }
      result.value("bank_deg" + suffix, bank.deg(), "deg");
      result.value("residual_deg" + suffix, answer.residual.deg(), "deg");
    }
  }
  return result.done();
}

Answer move_time_figure(Arguments& arguments) {
  const bool is_angle =
      base::parse_quantity(arguments.text("distance"), Dimension::angle).has_value();
  const MoveKind kind = is_angle ? rotary : linear;
  turn::MoveParams params;
  params.distance = move_number(arguments, "distance", kind.distance);
  params.speed = move_number(arguments, "speed", kind.speed);
  params.acceleration = move_number(arguments, "acceleration", kind.acceleration);
  if (arguments.has("jerk")) params.jerk = move_number(arguments, "jerk", kind.jerk);
  const bool positive = params.distance >= 0.0 && params.speed > 0.0 && params.acceleration > 0.0 &&
                        (!params.jerk || *params.jerk > 0.0);
  if (!positive && arguments.good()) {
    arguments.add_bad_value(
        "distance must not be negative; speed, acceleration and jerk must be "
        "above zero");
  }
  if (!arguments.good()) return FigureResult{};
  return ResultMaker("move-time").principal(turn::move_time_s(params), "s").done();
}

Answer torque_figure(Arguments& arguments) {
  const double mass = arguments.number("mass");
  if (mass < 0.0) arguments.add_bad_value("mass must not be negative");
  if (!arguments.good()) return FigureResult{};
  const turn::SizingTorque torque = turn::sizing_torque(mass,
                                                        arguments.number("overhang"),
                                                        arguments.number("offset"),
                                                        arguments.number("eccentricity"));
  return ResultMaker("torque")
      .principal(torque.tilt_nm, "N m")
      .value("tilt_nm", torque.tilt_nm, "N m")
      .value("rotate_nm", torque.rotate_nm, "N m")
      .done();
}

}  // namespace seamturn::figures::detail
