// SPDX-License-Identifier: MIT
#include "seamturn/joint/bounds.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace seamturn::joint {

namespace {

using geom::Vec3;

/// A circle about the z axis; with radius 0 about another centre: a corner.
struct Rim {
  Vec3 centre;
  double radius_mm = 0.0;
};
/// Rims whose hull is the hull of the shape, in its own frame M.
using Rims = std::vector<Rim>;

Rims round(double diameter_mm, double height_mm) {
  return {{Vec3::Zero(), diameter_mm / 2.0}, {Vec3(0.0, 0.0, height_mm), diameter_mm / 2.0}};
}

Rims corners(const Vec3& low, const Vec3& high) {
  Rims all;
  for (const double x : {low.x(), high.x()}) {
    for (const double y : {low.y(), high.y()}) {
      for (const double z : {low.z(), high.z()}) all.push_back({Vec3(x, y, z)});
    }
  }
  return all;
}

Rims hexagon(double across_flats_mm, double height_mm) {
  const double corner_mm = across_flats_mm / std::numbers::sqrt3;  // from the axis
  Rims all;
  for (int i = 0; i < 6; ++i) {
    const double turn_rad = (i + 0.5) * std::numbers::pi / 3.0;  // the first flat looks along x
    const Vec3 corner(corner_mm * std::cos(turn_rad), corner_mm * std::sin(turn_rad), 0.0);
    all.push_back({corner});
    all.push_back({corner + Vec3(0.0, 0.0, height_mm)});
  }
  return all;
}

// One function a solid.

Rims rims_of(const Plate& plate) {
  return corners(Vec3::Zero(), Vec3(plate.length_mm, plate.width_mm, plate.thickness_mm));
}
Rims rims_of(const Tube& tube) {
  return round(tube.outer_diameter_mm, tube.length_mm);
}
Rims rims_of(const Ring& ring) {
  return round(ring.outer_diameter_mm, ring.thickness_mm);
}
Rims rims_of(const Bar& bar) {
  if (bar.shape == BarShape::round) return round(bar.width_mm, bar.length_mm);
  if (bar.shape == BarShape::hexagon) return hexagon(bar.width_mm, bar.length_mm);
  const Vec3 half(bar.width_mm / 2.0, bar.height_mm / 2.0, 0.0);
  return corners(-half, half + Vec3(0.0, 0.0, bar.length_mm));
}
Rims rims_of(const Forging& forging) {
  Rims all;
  double at_mm = 0.0;
  for (const ForgingStep& step : forging.steps) {
    all.push_back({Vec3(0.0, 0.0, at_mm), step.start_diameter_mm / 2.0});
    at_mm += step.length_mm;
    all.push_back({Vec3(0.0, 0.0, at_mm), step.end_diameter_mm / 2.0});
  }
  return all;
}

Rims rims_of(const Shape& shape) {
  return std::visit([](const auto& solid) { return rims_of(solid); }, shape);
}

}  // namespace

Box box_of(const Shape& shape) {
  constexpr double far = std::numeric_limits<double>::infinity();
  Box box{Vec3::Constant(far), Vec3::Constant(-far)};
  for (const Rim& rim : rims_of(shape)) {
    const Vec3 half(rim.radius_mm, rim.radius_mm, 0.0);
    box.low = box.low.cwiseMin(rim.centre - half);
    box.high = box.high.cwiseMax(rim.centre + half);
  }
  return box;
}

double lowest_mm(const Member& member, const Vec3& up_J) {
  const Vec3 up = member.X_JM.rotation.transpose() * up_J;
  const double aslant = std::hypot(up.x(), up.y());
  double lowest_mm = std::numeric_limits<double>::infinity();
  for (const Rim& rim : rims_of(member.shape)) {
    lowest_mm = std::min(lowest_mm, rim.centre.dot(up) - rim.radius_mm * aslant);
  }
  return member.X_JM.translation.dot(up_J) + lowest_mm;
}

Ball ball_round(const Member& member) {
  const Box box = box_of(member.shape);
  const Vec3 centre = (box.low + box.high) / 2.0;
  double radius_mm = 0.0;
  for (const Rim& rim : rims_of(member.shape)) {
    const Vec3 off = rim.centre - centre;
    const double aside_mm = std::hypot(off.x(), off.y()) + rim.radius_mm;
    radius_mm = std::max(radius_mm, std::hypot(aside_mm, off.z()));
  }
  return {member.X_JM.point(centre), radius_mm};
}

}  // namespace seamturn::joint
