// SPDX-License-Identifier: MIT
#include "seamturn/turn/stance.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "seamturn/base/error.hpp"

namespace seamturn::turn {

namespace {

using cell::PositionerKind;
using geom::Mat3;
using geom::Vec3;

constexpr double no_direction = 1e-9;  // shorter than this, a direction in a plane is no direction

/// An angle of atan2 without the two spellings of half a turn and of zero.
Angle tidy_angle(double y, double x) {
  constexpr double same_rad = 1e-12;
  const double angle = std::atan2(y, x);
  if (angle < -std::numbers::pi + same_rad) return Angle::rad(std::numbers::pi);
  return std::abs(angle) < same_rad ? Angle() : Angle::rad(angle);
}

/// Table: u = (-sin a cos b, sin a sin b, cos a), which two settings answer.
std::vector<StanceAnswer> table_answers(const Vec3& u) {
  const double level = std::hypot(u.x(), u.y());
  if (level < no_direction) {
    const Angle tilt = u.z() > 0.0 ? Angle() : Angle::deg(180.0);
    return {StanceAnswer{{tilt, Angle()}, true, Angle()}};
  }
  const Angle tilt = tidy_angle(level, u.z());
  return {StanceAnswer{{tilt, tidy_angle(u.y(), -u.x())}, false, Angle()},
          StanceAnswer{{-tilt, tidy_angle(-u.y(), u.x())}, false, Angle()}};
}

/// Headstock: the turn brings u as near to the sky as its lean out of the turning plane allows.
std::vector<StanceAnswer> headstock_answer(const Vec3& u) {
  const double across = std::hypot(u.y(), u.z());
  const bool free = across < no_direction;
  const Angle turn = free ? Angle() : tidy_angle(u.y(), u.z());
  return {StanceAnswer{{turn}, free, Angle::rad(std::atan2(std::abs(u.x()), across))}};
}

/// Every setting of one axis that differs from `angle` by whole turns and lies inside the limits,
/// nearest to zero first.
std::vector<Angle> settings_within(const cell::Axis& axis, Angle angle, bool free) {
  if (free) return {axis.endless ? Angle() : std::clamp(Angle(), axis.min, axis.max)};
  if (axis.endless) return {angle};
  const Angle slack = Angle::deg(1e-6);
  const double turn_rad = 2.0 * std::numbers::pi;
  const double first = std::ceil((axis.min - slack - angle).rad() / turn_rad);
  const double last = std::floor((axis.max + slack - angle).rad() / turn_rad);
  std::vector<Angle> settings;
  for (double k = first; k <= last; k += 1.0) {
    settings.push_back(std::clamp(angle + Angle::rad(k * turn_rad), axis.min, axis.max));
  }
  std::stable_sort(settings.begin(), settings.end(), [](Angle a, Angle b) {
    return std::abs(a.rad()) < std::abs(b.rad());
  });
  return settings;
}

constexpr base::FigureKey stance_keys[] = {
    {"positioner",
     base::Dimension::none,
     "which axes there are",
     "tilt-rotate or headstock",
     true,
     true},
    {"axis",
     base::Dimension::none,
     "direction of travel in the faceplate's frame",
     "x,y,z, any length but zero",
     true,
     true},
    {"normal",
     base::Dimension::none,
     "normal of the weld face in the faceplate's frame",
     "x,y,z, at least 1 deg off the axis",
     true,
     true},
    {"want", base::Dimension::none, "position wanted", "PA or PB", true, true},
    {"down",
     base::Dimension::none,
     "for PB, the plate laid level: 1 the one on the side of positive bank, 2 the other",
     "1 or 2; neither: both answers",
     false,
     true},
    {"angle",
     base::Dimension::angle,
     "between the plates, on the weld's side",
     "above 0 deg, below 180 deg; 90 deg when not given",
     false}};
constexpr base::Citation stance_sources[] = {
    {"STANCE", "closed form of docs/methods/stance.md", base::Status::computed}};

}  // namespace

geom::Mat3 rotation_WD(cell::PositionerKind kind, const std::vector<Angle>& axes) {
  const bool table = kind == PositionerKind::tilt_rotate;
  SEAMTURN_REQUIRE(axes.size() == (table ? 2U : 1U), axes.size());
  if (!table) return geom::rotation_about(Vec3::UnitX(), axes[0]);
  return geom::rotation_about(Vec3::UnitY(), axes[0]) *
         geom::rotation_about(Vec3::UnitZ(), axes[1]);
}

geom::Pose pose_WD(const cell::Positioner& positioner, const std::vector<Angle>& axes) {
  const Mat3 rotation = rotation_WD(positioner.kind, axes);
  const Vec3 outward =
      positioner.kind == PositionerKind::headstock ? Vec3(Vec3::UnitX()) : Vec3(Vec3::UnitZ());
  return geom::Pose{rotation,
                    positioner.tilt_centre + rotation * (positioner.overhang_mm * outward)};
}

geom::Vec3 sky_direction(const geom::Vec3& t, const geom::Vec3& n, Angle slope, Angle bank) {
  constexpr double tolerance = 1e-6;
  SEAMTURN_REQUIRE(std::abs(t.norm() - 1.0) < tolerance && std::abs(n.norm() - 1.0) < tolerance &&
                       std::abs(t.dot(n)) < tolerance,
                   t.norm(),
                   n.norm(),
                   t.dot(n));
  const Vec3 s = n.cross(t);
  return geom::unit(std::sin(slope.rad()) * t +
                    std::cos(slope.rad()) * (std::cos(bank.rad()) * n + std::sin(bank.rad()) * s));
}

std::vector<StanceAnswer> stances_for_sky(cell::PositionerKind kind, const geom::Vec3& u_D) {
  const Vec3 u = geom::unit(u_D);
  return kind == PositionerKind::headstock ? headstock_answer(u) : table_answers(u);
}

std::vector<StanceAnswer> within_limits(const cell::Positioner& positioner,
                                        std::vector<StanceAnswer> answers) {
  std::vector<StanceAnswer> inside;
  for (const StanceAnswer& answer : answers) {
    SEAMTURN_REQUIRE(
        answer.axes.size() == positioner.axes.size(), answer.axes.size(), positioner.axes.size());
    const std::size_t last = answer.axes.size() - 1;
    std::vector<std::vector<Angle>> partial{{}};
    for (std::size_t i = 0; i <= last; ++i) {
      const bool free = answer.rotate_free && i == last;
      std::vector<std::vector<Angle>> longer;
      for (const Angle setting : settings_within(positioner.axes[i], answer.axes[i], free)) {
        for (std::vector<Angle> axes : partial) {
          axes.push_back(setting);
          longer.push_back(std::move(axes));
        }
      }
      partial = std::move(longer);
    }
    for (std::vector<Angle>& axes : partial) {
      inside.push_back(StanceAnswer{std::move(axes), answer.rotate_free, answer.residual});
    }
  }
  return inside;
}

const base::FigureCard& stance_card() {
  static const base::FigureCard card{
      "stance",
      "settings of a positioner that lay a seam as wanted",
      "u = cos(bank) normal + sin(bank) (normal x axis) must point to the sky, bank = 0 for PA, "
      "+-(90 deg - angle/2) for PB; table: tilt = +-atan2(sqrt(ux2 + uy2), uz), rotate = "
      "atan2(+-uy, -+ux); headstock: turn = atan2(uy, uz), residual = |arcsin ux|",
      "deg",
      "no axis limits; the residual is how far the wanted direction stays off the sky",
      stance_keys,
      stance_sources};
  return card;
}

}  // namespace seamturn::turn
