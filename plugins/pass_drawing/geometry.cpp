// SPDX-License-Identifier: MIT
#include "pass_drawing/geometry.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace seamturn::pass_drawing {

namespace {

constexpr double none = std::numeric_limits<double>::infinity();

/// Keeps what lies on the side of a line where dot(normal, p) <= offset.
Polygon cut_by_line(const Polygon& polygon, Point normal, double offset) {
  Polygon kept;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i];
    const Point b = polygon[(i + 1) % polygon.size()];
    const double beyond_a = dot(normal, a) - offset;
    const double beyond_b = dot(normal, b) - offset;
    if (beyond_a <= 0.0) kept.push_back(a);
    if ((beyond_a < 0.0 && beyond_b > 0.0) || (beyond_a > 0.0 && beyond_b < 0.0)) {
      kept.push_back(a + (beyond_a / (beyond_a - beyond_b)) * (b - a));
    }
  }
  return kept;
}

}  // namespace

double signed_area(const Polygon& polygon) {
  double twice = 0.0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    twice += cross(polygon[i], polygon[(i + 1) % polygon.size()]);
  }
  return 0.5 * twice;
}

Point centroid(const Polygon& polygon) {
  Point moment;
  Point mean;
  double twice = 0.0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i];
    const Point b = polygon[(i + 1) % polygon.size()];
    const double piece = cross(a, b);
    twice += piece;
    moment = moment + piece * (a + b);
    mean = mean + (1.0 / static_cast<double>(polygon.size())) * a;
  }
  return std::abs(twice) > 1e-9 ? (1.0 / (3.0 * twice)) * moment : mean;
}

bool contains(const Polygon& polygon, Point point) {
  bool inside = false;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i];
    const Point b = polygon[(i + 1) % polygon.size()];
    if ((a.y > point.y) == (b.y > point.y)) continue;
    if (point.x < a.x + (point.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

Polygon cut_to(const Box& box, Polygon polygon) {
  polygon = cut_by_line(polygon, {1.0, 0.0}, box.high.x);
  polygon = cut_by_line(polygon, {-1.0, 0.0}, -box.low.x);
  polygon = cut_by_line(polygon, {0.0, 1.0}, box.high.y);
  return cut_by_line(polygon, {0.0, -1.0}, -box.low.y);
}

bool walls_at(const Polygon& polygon, double y, double& left, double& right) {
  left = none;
  right = -none;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i];
    const Point b = polygon[(i + 1) % polygon.size()];
    if (std::min(a.y, b.y) > y || std::max(a.y, b.y) < y) continue;
    const double share = a.y == b.y ? 0.0 : (y - a.y) / (b.y - a.y);
    const double x = a.x + share * (b.x - a.x);
    left = std::min(left, a.y == b.y ? std::min(a.x, b.x) : x);
    right = std::max(right, a.y == b.y ? std::max(a.x, b.x) : x);
  }
  return left <= right;
}

double top_at(const Polygon& polygon, double x) {
  double top = -none;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i];
    const Point b = polygon[(i + 1) % polygon.size()];
    if (std::min(a.x, b.x) > x || std::max(a.x, b.x) < x) continue;
    const double run = b.x - a.x;
    top = std::max(top, run == 0.0 ? std::max(a.y, b.y) : a.y + (x - a.x) / run * (b.y - a.y));
  }
  return top;
}

double reach_of_ray(const Polygon& polygon, Point towards) {
  double reach = 0.0;
  constexpr double slack = 1e-9;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i];
    const Point b = polygon[(i + 1) % polygon.size()];
    const Point edge = b - a;
    const double turned = cross(towards, edge);
    if (std::abs(turned) < 1e-12) continue;
    const double along_edge = cross(a, towards) / turned;
    if (along_edge < -slack || along_edge > 1.0 + slack) continue;
    reach = std::max(reach, cross(a, edge) / turned);
  }
  return reach;
}

}  // namespace seamturn::pass_drawing
