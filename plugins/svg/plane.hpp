// SPDX-License-Identifier: MIT
// Points and boxes of a plane, for drawings.
#pragma once

#include <cmath>
#include <vector>

namespace seamturn::svg {

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
[[nodiscard]] inline double length(Point a) {
  return std::hypot(a.x, a.y);
}

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
}  // namespace seamturn::svg
