// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <numbers>

#include "detail_shapes.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::joint::detail {

namespace {

using geom::Vec3;

/// How far a point lies beyond the outline's sides; below 0: inside.
double beyond_sides_mm(const Prism& prism, const Vec3& p) {
  double beyond_mm = -prism.sides.front().offset_mm;
  for (const Prism::Side& side : prism.sides) {
    beyond_mm = std::max(beyond_mm, side.normal.dot(p) - side.offset_mm);
  }
  return beyond_mm;
}

Vec3 along(const Prism::Side& side) {
  return Vec3::UnitZ().cross(side.normal);
}

/// Distance from the outline seen along the axis, of a point outside it.
double outline_distance_mm(const Prism& prism, const Vec3& p) {
  double nearest_mm = std::hypot(p.x(), p.y());
  for (const Prism::Side& side : prism.sides) {
    const double off_mm = side.normal.dot(p) - side.offset_mm;
    const double past_mm = std::max(0.0, std::abs(along(side).dot(p)) - side.half_mm);
    nearest_mm = std::min(nearest_mm, std::hypot(off_mm, past_mm));
  }
  return nearest_mm;
}

}  // namespace

Prism prism_of(const Bar& bar) {
  SEAMTURN_REQUIRE(bar.shape != BarShape::round, bar.width_mm);
  Prism prism;
  prism.height_mm = bar.length_mm;
  if (bar.shape == BarShape::hexagon) {
    const double offset_mm = bar.width_mm / 2.0;
    for (int i = 0; i < 6; ++i) {
      const double turn_rad = i * std::numbers::pi / 3.0;
      prism.sides.push_back({Vec3(std::cos(turn_rad), std::sin(turn_rad), 0.0),
                             offset_mm,
                             offset_mm / std::numbers::sqrt3});
    }
    prism.area_mm2 = std::numbers::sqrt3 / 2.0 * bar.width_mm * bar.width_mm;
    return prism;
  }
  const double w = bar.width_mm / 2.0;
  const double h = bar.height_mm / 2.0;
  prism.sides = {
      {Vec3::UnitX(), w, h}, {Vec3::UnitY(), h, w}, {-Vec3::UnitX(), w, h}, {-Vec3::UnitY(), h, w}};
  prism.area_mm2 = bar.width_mm * bar.height_mm;
  return prism;
}

double volume_of(const Prism& prism) {
  return prism.area_mm2 * prism.height_mm;
}

Vec3 centre_of(const Prism& prism) {
  return {0.0, 0.0, prism.height_mm / 2.0};
}

void offer_faces(FaceSearch& search, const Prism& prism, const Vec3& p, double beyond_mm) {
  const bool in_height = p.z() >= -beyond_mm && p.z() <= prism.height_mm + beyond_mm;
  for (const Prism::Side& side : prism.sides) {
    const bool inside = in_height && std::abs(along(side).dot(p)) <= side.half_mm + beyond_mm;
    search.offer(side.normal, std::abs(side.normal.dot(p) - side.offset_mm), inside);
  }
  const bool inside = beyond_sides_mm(prism, p) <= beyond_mm;
  search.offer(Vec3::UnitZ(), std::abs(p.z() - prism.height_mm), inside);
  search.offer(-Vec3::UnitZ(), std::abs(p.z()), inside);
}

double surface_distance(const Prism& prism, const Vec3& p) {
  const double beyond_ends_mm = std::max(-p.z(), p.z() - prism.height_mm);
  const double beyond_mm = beyond_sides_mm(prism, p);
  const double deepest_mm = std::max(beyond_ends_mm, beyond_mm);
  if (deepest_mm < 0.0) return -deepest_mm;
  const double aside_mm = beyond_mm > 0.0 ? outline_distance_mm(prism, p) : 0.0;
  return std::hypot(aside_mm, std::max(0.0, beyond_ends_mm));
}

}  // namespace seamturn::joint::detail
