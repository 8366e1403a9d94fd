// SPDX-License-Identifier: MIT
#include "seamturn/joint/bounds.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "detail_shapes.hpp"

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

// One function a solid.

Rims rims_of(const Plate& plate) {
  Rims all;
  for (const double x : {0.0, plate.length_mm}) {
    for (const double y : {0.0, plate.width_mm}) {
      for (const double z : {0.0, plate.thickness_mm}) all.push_back({Vec3(x, y, z)});
    }
  }
  return all;
}

Rims rims_of(const detail::HollowCylinder& body) {
  return {{Vec3::Zero(), body.outer_radius_mm},
          {Vec3(0.0, 0.0, body.height_mm), body.outer_radius_mm}};
}

Rims rims_of(const detail::Prism& prism) {
  Rims all;
  for (const detail::Prism::Side& side : prism.sides) {
    const Vec3 along = Vec3::UnitZ().cross(side.normal);
    const Vec3 corner = side.offset_mm * side.normal + side.half_mm * along;
    all.push_back({corner});
    all.push_back({corner + Vec3(0.0, 0.0, prism.height_mm)});
  }
  return all;
}

Rims rims_of(const detail::Revolved& body) {
  Rims all;
  for (const detail::Revolved::Edge& edge : body.edges) {
    all.push_back({Vec3(0.0, 0.0, edge.z0_mm), edge.r0_mm});
    all.push_back({Vec3(0.0, 0.0, edge.z1_mm), edge.r1_mm});
  }
  return all;
}

Rims rims_of(const Shape& shape) {
  return detail::with_solid(shape, [](const auto& solid) { return rims_of(solid); });
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
