// SPDX-License-Identifier: MIT
// Plane geometry of the drawings. All in mm in the section frame of plan.xml.
#pragma once

#include "svg/plane.hpp"

namespace seamturn::pass_drawing {

inline constexpr double degrees_per_radian = 57.29577951308232;

using svg::Box;
using svg::box_of;
using svg::Point;
using svg::Polygon;

/// Above 0 when anticlockwise.
[[nodiscard]] double signed_area(const Polygon& polygon);
/// Of the area; the mean of the corners when there is no area.
[[nodiscard]] Point centroid(const Polygon& polygon);
[[nodiscard]] bool contains(const Polygon& polygon, Point point);

/// The part of a polygon inside a box.
[[nodiscard]] Polygon cut_to(const Box& box, Polygon polygon);

/// Least and greatest x of a polygon at a height; false where it has no metal.
[[nodiscard]] bool walls_at(const Polygon& polygon, double y, double& left, double& right);
/// The highest y of a polygon above an x.
[[nodiscard]] double top_at(const Polygon& polygon, double x);
/// How far a ray from the origin runs until it last leaves a polygon, in units of `towards`.
[[nodiscard]] double reach_of_ray(const Polygon& polygon, Point towards);

/// Where a rising function reaches a value, between two ends.
template <typename Rising>
[[nodiscard]] double solve_rising(double low, double high, double wanted, Rising rising) {
  for (int i = 0; i < 50; ++i) {
    const double middle = 0.5 * (low + high);
    (rising(middle) < wanted ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace seamturn::pass_drawing
