// SPDX-License-Identifier: MIT
#include "seamturn/turn/swing.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "detail_angles.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/turn/stance.hpp"
#include "seamturn/turn/way.hpp"

namespace seamturn::turn {

namespace {

using geom::Vec3;

/// Lowest of a box along the axes of D, up given in D.
double lowest_of_box_mm(const joint::SetupSolid& solid, const Vec3& up_D) {
  return solid.centre.dot(up_D) - 0.5 * solid.size_mm->dot(up_D.cwiseAbs());
}

/// How far anything reaches in a direction of D, from the origin of D.
double farthest_mm(const SwingBody& body, const Vec3& towards_D) {
  double farthest = -std::numeric_limits<double>::infinity();
  const Vec3 back_J = -(body.X_DJ.rotation.transpose() * towards_D);
  for (const joint::Member* member : body.members) {
    farthest = std::max(farthest,
                        body.X_DJ.translation.dot(towards_D) - joint::lowest_mm(*member, back_J));
  }
  for (const joint::SetupSolid& solid : body.solids) {
    if (solid.size_mm) farthest = std::max(farthest, -lowest_of_box_mm(solid, -towards_D));
  }
  return farthest;
}

/// Greatest distance from a line: looked at from all round, and what lies between two looks added.
double rim_about_mm(const cell::AxisLine& line, const geom::Pose& X_WD, const SwingBody& body) {
  constexpr int looks = 360;
  const Vec3 side = geom::any_normal_to(line.along);
  double rim_mm = 0.0;
  for (int k = 0; k < looks; ++k) {
    const Vec3 towards_W = geom::rotation_about(line.along, Angle::deg(360.0 / looks * k)) * side;
    const Vec3 towards_D = X_WD.rotation.transpose() * towards_W;
    const double from_line_mm = (X_WD.translation - line.at).dot(towards_W);
    rim_mm = std::max(rim_mm, from_line_mm + farthest_mm(body, towards_D));
  }
  return rim_mm / std::cos(Angle::deg(180.0 / looks).rad());
}

/// Greatest distance from a point, by a ball round each thing.
double reach_from_mm(const Vec3& point_W, const geom::Pose& X_WD, const SwingBody& body) {
  double reach_mm = 0.0;
  const auto offer = [&](const Vec3& centre_D, double radius_mm) {
    reach_mm = std::max(reach_mm, (X_WD.point(centre_D) - point_W).norm() + radius_mm);
  };
  for (const joint::Member* member : body.members) {
    const joint::Ball ball = joint::ball_round(*member);
    offer(body.X_DJ.point(ball.centre), ball.radius_mm);
  }
  for (const joint::SetupSolid& solid : body.solids) {
    if (solid.size_mm) offer(solid.centre, 0.5 * solid.size_mm->norm());
  }
  return reach_mm;
}

bool is_high_enough(const cell::Positioner& positioner, const Lowest& lowest) {
  constexpr double rounding_mm = 1e-6;
  return lowest.height_mm >= positioner.floor_clearance_mm.value_or(0.0) - rounding_mm;
}

base::Finding too_low(const cell::Positioner& positioner,
                      const Lowest& lowest,
                      const std::string& name,
                      const std::string& where,
                      const std::string& act) {
  base::Finding finding;
  finding.code = "turn.swing.floor";
  finding.text =
      name + ": " + lowest.of +
      (lowest.height_mm < 0.0
           ? " would strike the floor, " + base::fixed_text(-lowest.height_mm, 0) + " mm below it"
           : " comes within " + base::fixed_text(lowest.height_mm, 0) + " mm of the floor") +
      where + "; " + base::fixed_text(positioner.floor_clearance_mm.value_or(0.0), 0) +
      " mm must stay free: " + act + "; sit the part nearer the axis or raise the positioner";
  return finding;
}

}  // namespace

bool is_empty(const SwingBody& body) {
  return body.members.empty() &&
         std::none_of(body.solids.begin(), body.solids.end(), [](const joint::SetupSolid& solid) {
           return solid.size_mm.has_value();
         });
}

Lowest lowest_at(const cell::Positioner& positioner,
                 const SwingBody& body,
                 const std::vector<Angle>& axes) {
  SEAMTURN_REQUIRE(!is_empty(body));
  const geom::Pose X_WD = pose_WD(positioner, axes);
  const geom::Pose X_WJ = X_WD * body.X_DJ;
  Lowest lowest;
  lowest.height_mm = std::numeric_limits<double>::infinity();
  const auto offer = [&](double height_mm, const std::string& name) {
    if (height_mm >= lowest.height_mm) return;
    lowest.height_mm = height_mm;
    lowest.of = name;
  };
  for (const joint::Member* member : body.members) {
    const Vec3 up_J = X_WJ.rotation.transpose() * Vec3::UnitZ();
    offer(X_WJ.translation.z() + joint::lowest_mm(*member, up_J), member->id);
  }
  for (const joint::SetupSolid& solid : body.solids) {
    if (!solid.size_mm) continue;
    const Vec3 up_D = X_WD.rotation.transpose() * Vec3::UnitZ();
    offer(X_WD.translation.z() + lowest_of_box_mm(solid, up_D), solid.kind);
  }
  return lowest;
}

Lowest lowest_on_way(const cell::Positioner& positioner,
                     const SwingBody& body,
                     const std::vector<Angle>& from,
                     const std::vector<Angle>& to) {
  const Way way(positioner, from, to);
  const detail::Minimum least = detail::least_of(
      [&](double ratio) { return lowest_at(positioner, body, way.at(ratio)).height_mm; },
      0.0,
      1.0,
      way.steps(detail::look_step),
      1e-6);
  Lowest lowest = lowest_at(positioner, body, way.at(least.at));
  lowest.at_ratio = least.at;
  return lowest;
}

double never_below_mm(const cell::Positioner& positioner, const SwingBody& body) {
  SEAMTURN_REQUIRE(!is_empty(body));
  std::size_t i = positioner.axes.size() - 1;
  cell::AxisLine line = cell::axis_line(positioner, i);
  double reach_mm = reach_from_mm(line.at, cell::faceplate_at_zero(positioner), body);
  for (; i > 0; --i) {
    const cell::AxisLine before = cell::axis_line(positioner, i - 1);
    reach_mm += (line.at - before.at).norm();
    line = before;
  }
  return line.at.z() - reach_mm;
}

double cylinder_depth_mm(double overhang_mm, double height_mm, double radius_mm, Angle tilt) {
  SEAMTURN_REQUIRE(
      height_mm > 0.0 && radius_mm > 0.0 && tilt.rad() >= 0.0 && tilt.deg() <= 180.0 + 1e-9,
      tilt.deg());
  const double aside_mm = radius_mm * std::sin(tilt.rad());
  if (tilt.deg() <= 90.0) return aside_mm - overhang_mm * std::cos(tilt.rad());
  return (overhang_mm + height_mm) * std::abs(std::cos(tilt.rad())) + aside_mm;
}

WorstDepth worst_cylinder_depth(double overhang_mm, double height_mm, double radius_mm) {
  SEAMTURN_REQUIRE(overhang_mm + height_mm > 0.0 && radius_mm > 0.0, overhang_mm, height_mm);
  return {std::hypot(overhang_mm + height_mm, radius_mm),
          Angle::deg(90.0) + Angle::rad(std::atan2(overhang_mm + height_mm, radius_mm))};
}

std::vector<double> rim_radii_mm(const cell::Positioner& positioner, const SwingBody& body) {
  SEAMTURN_REQUIRE(!is_empty(body));
  const std::size_t count = positioner.axes.size();
  const cell::AxisLine last = cell::axis_line(positioner, count - 1);
  std::vector<double> radii(count, 0.0);
  radii.back() = rim_about_mm(last, cell::faceplate_at_zero(positioner), body);
  // What the later axes turn keeps its distance from a point on the first of them.
  double reach_mm = reach_from_mm(last.at, cell::faceplate_at_zero(positioner), body);
  for (std::size_t i = count - 1; i-- > 0;) {
    const cell::AxisLine line = cell::axis_line(positioner, i);
    const Vec3 next = cell::axis_line(positioner, i + 1).at;
    radii[i] = line.along.cross(next - line.at).norm() + reach_mm;
    reach_mm += (next - line.at).norm();
  }
  return radii;
}

cell::Positioner held_to_rim_speed(cell::Positioner positioner,
                                   const std::vector<double>& radii_mm) {
  SEAMTURN_REQUIRE(radii_mm.size() == positioner.axes.size(), radii_mm.size());
  if (!positioner.rim_speed_max_mm_s) return positioner;
  for (std::size_t i = 0; i < radii_mm.size(); ++i) {
    if (radii_mm[i] <= 0.0) continue;
    double& speed_rad_s = positioner.axes[i].speed_rad_s;
    speed_rad_s = std::min(speed_rad_s, *positioner.rim_speed_max_mm_s / radii_mm[i]);
  }
  return positioner;
}

std::vector<base::Finding> check_swing(const cell::Positioner& positioner,
                                       const Lowest& lowest,
                                       const std::string& turn_name) {
  if (is_high_enough(positioner, lowest)) return {};
  return {too_low(positioner,
                  lowest,
                  turn_name,
                  " at " + base::fixed_text(100.0 * lowest.at_ratio, 0) + " % of the way",
                  "do not turn it so")};
}

std::vector<base::Finding> check_standing(const cell::Positioner& positioner,
                                          const Lowest& lowest,
                                          const std::string& stance_name) {
  if (is_high_enough(positioner, lowest)) return {};
  return {too_low(positioner, lowest, stance_name, "", "do not hold it so")};
}

}  // namespace seamturn::turn
