// SPDX-License-Identifier: MIT
// Plane geometry of the drawings. All in mm in the section frame of plan.xml.
#pragma once

#include <vector>

namespace seamturn::pass_drawing {

inline constexpr double degrees_per_radian = 57.29577951308232;

struct Point {
  double x = 0.0;
  double y = 0.0;
};
using Polygon = std::vector<Point>;

[[nodiscard]] inline Point operator+(Point a, Point b) {
  return {a.x + b.x, a.y + b.y};
}
[[nodiscard]] inline Point operator-(Point a, Point b) {
  return {a.x - b.x, a.y - b.y};
}
[[nodiscard]] inline Point operator*(double s, Point a) {
  return {s * a.x, s * a.y};
}
[[nodiscard]] inline double dot(Point a, Point b) {
  return a.x * b.x + a.y * b.y;
}
[[nodiscard]] inline double cross(Point a, Point b) {
  return a.x * b.y - a.y * b.x;
}
[[nodiscard]] double length(Point a);

/// Above 0 when anticlockwise.
[[nodiscard]] double signed_area(const Polygon& polygon);
/// Of the area; the mean of the corners when there is no area.
[[nodiscard]] Point centroid(const Polygon& polygon);
[[nodiscard]] bool contains(const Polygon& polygon, Point point);

/// An upright rectangle.
struct Box {
  Point low;
  Point high;
  void include(Point point);
  [[nodiscard]] double width() const { return high.x - low.x; }
  [[nodiscard]] double height() const { return high.y - low.y; }
  [[nodiscard]] bool overlaps(const Box& other) const;
  [[nodiscard]] bool holds(const Box& other) const;
};
/// Pre: at least one point.
[[nodiscard]] Box box_of(const Polygon& polygon);
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
