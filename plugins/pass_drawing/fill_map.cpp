// SPDX-License-Identifier: MIT
#include "pass_drawing/fill_map.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace seamturn::pass_drawing {

namespace {

constexpr double near_mm = 1e-6;

void check(const Polygon& outline) {
  if (outline.size() < 3 || signed_area(outline) <= 0.0) {
    throw std::runtime_error("the outline of the weld encloses nothing: no drawing can be made");
  }
}

/// The farthest corner on a ray from the root.
Point toe_along(const Polygon& outline, Point direction) {
  double farthest = 0.0;
  for (const Point corner : outline) {
    if (std::abs(cross(direction, corner)) < near_mm) {
      farthest = std::max(farthest, dot(direction, corner));
    }
  }
  return farthest * direction;
}

}  // namespace

FillMap FillMap::groove(Polygon outline, double height_mm) {
  check(outline);
  FillMap map;
  const Box box = box_of(outline);
  map.height_mm_ = height_mm > 0.0 ? std::min(height_mm, box.high.y) : box.high.y;
  map.base_mm_ = std::min(box.low.y, map.height_mm_ - 2.0 * near_mm);
  map.full_ = box.high.y > map.height_mm_ + near_mm ? 2.0 : 1.0;
  map.cap_left_mm_ = box.high.x;
  map.cap_right_mm_ = box.low.x;
  for (const Point corner : outline) {
    if (corner.y < map.height_mm_ - near_mm) continue;
    map.cap_left_mm_ = std::min(map.cap_left_mm_, corner.x);
    map.cap_right_mm_ = std::max(map.cap_right_mm_, corner.x);
  }
  for (const Point corner : outline) {
    if (corner.y < map.height_mm_ - near_mm) {
      map.bends_.push_back((corner.y - map.base_mm_) / (map.height_mm_ - map.base_mm_));
    }
  }
  if (map.full_ > 1.0) map.bends_.push_back(1.0);
  std::sort(map.bends_.begin(), map.bends_.end());
  map.outline_ = std::move(outline);
  return map;
}

FillMap FillMap::fillet(Polygon outline) {
  check(outline);
  FillMap map;
  map.is_fillet_ = true;
  const Point first = length(outline.front()) > near_mm ? outline.front() : outline[1];
  map.half_angle_rad_ = std::atan2(first.x, first.y);
  const double sine = std::sin(map.half_angle_rad_);
  const double cosine = std::cos(map.half_angle_rad_);
  map.toe_1_ = toe_along(outline, {sine, cosine});
  map.toe_2_ = toe_along(outline, {-sine, cosine});
  if (length(map.toe_1_) < near_mm || length(map.toe_2_) < near_mm) {
    throw std::runtime_error("the outline of the fillet has no toe on one of its plates");
  }
  // Corners behind the root lie off both plates; with the root they close the patch.
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point corner = outline[i];
    const bool lifted =
        map.behind_.empty() && i > 0 && std::abs(cross({-sine, cosine}, corner)) < near_mm &&
        dot({-sine, cosine}, corner) < length(map.toe_2_) - near_mm && length(corner) > near_mm;
    const bool behind = cross({-sine, cosine}, corner) > near_mm;
    if (lifted || behind) map.behind_.push_back(corner);
  }
  if (map.behind_.size() < 2) map.behind_.clear();
  if (!map.behind_.empty()) map.behind_.push_back({0.0, 0.0});
  map.outline_ = std::move(outline);
  return map;
}

Point FillMap::at(double s, double r) const {
  if (!is_fillet_) return in_groove(s, r);
  const Point towards = (1.0 - s) * toe_2_ + s * toe_1_;
  return (r * reach_of_ray(outline_, towards)) * towards;
}

Point FillMap::in_groove(double s, double r) const {
  // A hair below the face, or the toes of the cap would count as walls.
  const double y = base_mm_ + std::clamp(r, 0.0, 1.0) * (height_mm_ - base_mm_);
  double left = 0.0;
  double right = 0.0;
  static_cast<void>(
      walls_at(outline_, std::clamp(y, base_mm_ + near_mm, height_mm_ - near_mm), left, right));
  const Point inside{left + s * (right - left), y};
  if (r <= 1.0) return inside;
  const double x = cap_left_mm_ + s * (cap_right_mm_ - cap_left_mm_);
  const Point top{x, std::max(height_mm_, top_at(outline_, x))};
  return inside + (std::min(r, 2.0) - 1.0) * (top - inside);
}

double FillMap::share_of(Point point) const {
  if (is_fillet_) {
    const double of_first = cross(toe_2_, point);
    const double of_second = cross(point, toe_1_);
    return of_first + of_second == 0.0 ? 0.5 : of_first / (of_first + of_second);
  }
  double left = 0.0;
  double right = 0.0;
  const double y = std::clamp(point.y, base_mm_ + near_mm, height_mm_ - near_mm);
  if (!walls_at(outline_, y, left, right) || right <= left) return 0.5;
  return (point.x - left) / (right - left);
}

}  // namespace seamturn::pass_drawing
