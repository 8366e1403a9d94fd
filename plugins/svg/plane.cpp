// SPDX-License-Identifier: MIT
#include "svg/plane.hpp"

#include <algorithm>

namespace seamturn::svg {

void Box::include(Point point) {
  low = {std::min(low.x, point.x), std::min(low.y, point.y)};
  high = {std::max(high.x, point.x), std::max(high.y, point.y)};
}

bool Box::overlaps(const Box& other) const {
  return low.x < other.high.x && other.low.x < high.x && low.y < other.high.y &&
         other.low.y < high.y;
}

bool Box::holds(const Box& other) const {
  return low.x <= other.low.x && other.high.x <= high.x && low.y <= other.low.y &&
         other.high.y <= high.y;
}

Box box_of(const Polygon& polygon) {
  Box box{polygon.front(), polygon.front()};
  for (const Point point : polygon) box.include(point);
  return box;
}

}  // namespace seamturn::svg
