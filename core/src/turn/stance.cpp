// SPDX-License-Identifier: MIT
#include "seamturn/turn/stance.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "detail_angles.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/turn/two_axes.hpp"

namespace seamturn::turn {

namespace {

using cell::PositionerKind;
using detail::tidy_angle;
using geom::Mat3;
using geom::Vec3;

/// Table: u = (-sin a cos b, sin a sin b, cos a), which two settings answer.
std::vector<StanceAnswer> table_answers(const Vec3& u) {
  const double level = std::hypot(u.x(), u.y());
  if (level < detail::no_direction) {
    const Angle tilt = u.z() > 0.0 ? Angle() : Angle::deg(180.0);
    return {StanceAnswer{{tilt, Angle()}, true, Angle(), false}};
  }
  const Angle tilt = tidy_angle(level, u.z());
  return {StanceAnswer{{tilt, tidy_angle(u.y(), -u.x())}, false, Angle(), false},
          StanceAnswer{{-tilt, tidy_angle(-u.y(), u.x())}, false, Angle(), false}};
}

/// As the table's formula has them: tilt about +Y, rotate about +Z, D as W.
bool is_plain_table(const cell::Positioner& positioner) {
  return positioner.kind == PositionerKind::tilt_rotate && !positioner.axes[0].line &&
         !positioner.axes[1].line;
}

/// Values with the exchange, where there is one, at zero.
std::vector<Angle> with_exchange(std::size_t held, std::vector<Angle> moving) {
  moving.insert(moving.begin(), held, Angle());
  return moving;
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

geom::Mat3 rotation_WD(const cell::Positioner& positioner, const std::vector<Angle>& axes) {
  const std::size_t count = positioner.axes.size();
  SEAMTURN_REQUIRE(axes.size() == count && count > 0, axes.size(), count);
  Mat3 rotation = geom::rotation_about(cell::axis_line(positioner, 0).along, axes[0]);
  for (std::size_t i = 1; i < count; ++i) {
    rotation = rotation * geom::rotation_about(cell::axis_line(positioner, i).along, axes[i]);
  }
  return rotation * cell::faceplate_at_zero(positioner).rotation;
}

geom::Pose pose_WD(const cell::Positioner& positioner, const std::vector<Angle>& axes) {
  const geom::Pose zero = cell::faceplate_at_zero(positioner);
  Vec3 centre = zero.translation;
  for (std::size_t i = positioner.axes.size(); i-- > 0;) {
    const cell::AxisLine line = cell::axis_line(positioner, i);
    centre = line.at + geom::rotation_about(line.along, axes.at(i)) * (centre - line.at);
  }
  return {rotation_WD(positioner, axes), centre};
}

std::vector<cell::AxisLine> axis_lines_W(const cell::Positioner& positioner,
                                         const std::vector<Angle>& axes) {
  SEAMTURN_REQUIRE(axes.size() == positioner.axes.size(), axes.size(), positioner.axes.size());
  std::vector<cell::AxisLine> lines;
  geom::Pose carried;  // by the axes before
  for (std::size_t i = 0; i < axes.size(); ++i) {
    const cell::AxisLine line = cell::axis_line(positioner, i);
    lines.push_back({carried.direction(line.along), carried.point(line.at)});
    const Mat3 turn = geom::rotation_about(line.along, axes[i]);
    carried = carried * geom::Pose{turn, line.at - turn * line.at};
  }
  return lines;
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

std::vector<StanceAnswer> stances_for_sky(const cell::Positioner& positioner,
                                          const geom::Vec3& u_D) {
  const Vec3 u = geom::unit(u_D);
  const std::size_t count = positioner.axes.size();
  const std::size_t held = count > 0 && cell::is_exchange(positioner, 0) ? 1 : 0;
  SEAMTURN_REQUIRE(count == held + 1 || count == held + 2, count, held);
  if (count == 2 && is_plain_table(positioner)) return table_answers(u);
  const Vec3 u_W = cell::faceplate_at_zero(positioner).rotation * u;
  if (count == held + 1) {
    const OneTurn one = one_turn_to_sky(cell::axis_line(positioner, held).along, u_W);
    return {StanceAnswer{with_exchange(held, {one.turn}), one.free, one.residual, false}};
  }
  std::vector<StanceAnswer> answers;
  for (const TwoTurns& two : two_turns_to_sky(cell::axis_line(positioner, held).along,
                                              cell::axis_line(positioner, held + 1).along,
                                              u_W)) {
    answers.push_back({with_exchange(held, {two.first, two.second}),
                       two.second_free,
                       two.residual,
                       two.first_free});
  }
  return answers;
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
      const bool first = i + 1 == last;
      const bool free = (answer.rotate_free && i == last) || (answer.first_free && first);
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
      inside.push_back(
          StanceAnswer{std::move(axes), answer.rotate_free, answer.residual, answer.first_free});
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
