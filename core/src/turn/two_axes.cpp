// SPDX-License-Identifier: MIT
#include "seamturn/turn/two_axes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <numbers>

#include "detail_angles.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::turn {

namespace {

using geom::Vec3;

constexpr double pi = std::numbers::pi;

void require_unit(const Vec3& v) {
  SEAMTURN_REQUIRE(std::abs(v.norm() - 1.0) < 1e-6, v.norm());
}

/// Spherical triangle with sides a, b and c: the angle opposite a. Where the sides close none, the
/// flat one that comes nearest.
double opposite_rad(double a, double b, double c) {
  const double s = (a + b + c) / 2.0;
  const double above = std::max(0.0, std::sin(s - b)) * std::max(0.0, std::sin(s - c));
  const double below = std::max(0.0, std::sin(s)) * std::max(0.0, std::sin(s - a));
  return 2.0 * std::atan2(std::sqrt(above), std::sqrt(below));
}

/// What the sides lack of a triangle: 0 when they close one.
double gap_rad(double a, double b, double c) {
  return std::max({0.0, a - b - c, b - c - a, c - a - b, a + b + c - 2.0 * pi});
}

/// Angle about an axis from the half plane of one direction to that of another.
double azimuth_rad(const Vec3& axis, const Vec3& from, const Vec3& to) {
  return std::atan2(axis.dot(from.cross(to)), from.dot(to) - axis.dot(from) * axis.dot(to));
}

struct Lie {
  Angle slope, bank;
};

/// Slope and bank of a seam, sky along z.
Lie lie_of(const Vec3& travel, const Vec3& face) {
  const Vec3 side = face.cross(travel);
  return {Angle::rad(std::atan2(travel.z(), std::hypot(face.z(), side.z()))),
          Angle::rad(std::atan2(side.z(), face.z()))};
}

}  // namespace

OneTurn one_turn_to_sky(const Vec3& axis, const Vec3& u) {
  require_unit(axis);
  require_unit(u);
  const Vec3 sky = Vec3::UnitZ();
  OneTurn out;
  const double u_along = u.dot(axis);
  const double u_across = u.cross(axis).norm();
  const double sky_along = axis.z();
  const double sky_across = std::hypot(axis.x(), axis.y());
  out.free = u_across < detail::no_direction || sky_across < detail::no_direction;
  if (!out.free) {
    out.turn =
        detail::tidy_angle(-u.dot(axis.cross(sky)), u.dot(sky) - u.dot(axis) * sky.dot(axis));
  }
  out.residual = Angle::rad(std::abs(std::atan2(u_across * sky_along - u_along * sky_across,
                                                u_along * sky_along + u_across * sky_across)));
  return out;
}

std::vector<TwoTurns> two_turns_to_sky(const Vec3& first, const Vec3& second, const Vec3& u) {
  require_unit(first);
  require_unit(second);
  require_unit(u);
  SEAMTURN_REQUIRE(first.cross(second).norm() > 1e-6, first.dot(second));
  const Vec3 sky = Vec3::UnitZ();
  // Sides: between the axes; first axis to sky; second axis to u.
  const double between = geom::angle_between(first, second).rad();
  const double to_sky = geom::angle_between(first, sky).rad();
  const double to_u = geom::angle_between(second, u).rad();
  TwoTurns answer;
  answer.first_free = first.cross(sky).norm() < detail::no_direction;
  answer.second_free = second.cross(u).norm() < detail::no_direction;
  answer.residual = Angle::rad(gap_rad(between, to_sky, to_u));
  const double at_first = opposite_rad(to_u, to_sky, between);
  const double at_second = opposite_rad(to_sky, to_u, between);
  const double sky_azimuth = answer.first_free ? 0.0 : azimuth_rad(first, second, sky);
  const double u_azimuth = answer.second_free ? 0.0 : azimuth_rad(second, first, u);
  std::vector<TwoTurns> answers;
  for (const double side : {1.0, -1.0}) {
    answer.first = answer.first_free ? Angle() : detail::wrapped(sky_azimuth - side * at_first);
    answer.second = answer.second_free ? Angle() : detail::wrapped(-side * at_second - u_azimuth);
    answers.push_back(answer);
    // One answer: the triangle is flat, or an axis is free and the other alone decides.
    const bool flat = std::min(at_first, pi - at_first) < detail::no_direction &&
                      std::min(at_second, pi - at_second) < detail::no_direction;
    if (flat || answer.residual.rad() > 0.0 || answer.first_free || answer.second_free) break;
  }
  return answers;
}

TolerantTurn most_tolerant_turn(const Vec3& axis,
                                const Vec3& travel,
                                const Vec3& face,
                                const LieTolerance& tolerance,
                                Angle slope_wanted,
                                Angle bank_wanted) {
  for (const Vec3& v : {axis, travel, face}) require_unit(v);
  SEAMTURN_REQUIRE(std::abs(travel.dot(face)) < 1e-6 && tolerance.slope.rad() > 0.0 &&
                       tolerance.bank.rad() > 0.0,
                   travel.dot(face));
  const auto lie_at = [&](double turn_rad) {
    const geom::Mat3 R = geom::rotation_about(axis, Angle::rad(turn_rad));
    return lie_of(R * travel, R * face);
  };
  const auto norm = [&](double turn_rad) {
    const Lie lie = lie_at(turn_rad);
    const double bank_off = std::remainder((lie.bank - bank_wanted).rad(), 2.0 * pi);
    return std::max(std::abs((lie.slope - slope_wanted).rad()) / tolerance.slope.rad(),
                    std::abs(bank_off) / tolerance.bank.rad());
  };
  const detail::Minimum best = detail::least_of(norm, -pi, pi, 360, 1e-10);
  const Lie lie = lie_at(best.at);
  return {detail::wrapped(best.at), best.value, lie.slope, lie.bank};
}

}  // namespace seamturn::turn
