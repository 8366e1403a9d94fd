// SPDX-License-Identifier: MIT
#include "pass_drawing/labels.hpp"

#include <algorithm>

namespace seamturn::pass_drawing {

bool Labels::is_free(const Box& box, const Polygon& region) const {
  if (!panel_.holds(box)) return false;
  for (const Box& other : taken_) {
    if (box.overlaps(other)) return false;
  }
  const auto touches = [&](const Polygon& shape) {
    return std::any_of(shape.begin(), shape.end(), [&](Point corner) {
      return box.holds({corner, corner});
    });
  };
  if (std::any_of(shapes_.begin(), shapes_.end(), touches)) return false;
  for (int i = 0; i <= 8; ++i) {
    for (int j = 0; j <= 4; ++j) {
      const Point inside = box.low + Point{0.125 * i * box.width(), 0.25 * j * box.height()};
      if (!contains(region, inside)) return false;
      for (const Polygon& shape : shapes_) {
        if (contains(shape, inside)) return false;
      }
    }
  }
  return true;
}

std::optional<Box> Labels::write(pugi::xml_node parent,
                                 const std::string& words,
                                 double letter_size,
                                 const Polygon& region,
                                 Point wanted) {
  constexpr double step = 3.0;
  constexpr double pad = 2.0;
  const double wide = svg::text_width(words, letter_size) + 2.0 * pad;
  const double high = letter_size + 2.0 * pad;
  std::optional<Box> best;
  double nearest = 0.0;
  for (double y = panel_.low.y; y + high <= panel_.high.y; y += step) {
    for (double x = panel_.low.x; x + wide <= panel_.high.x; x += step) {
      const Box box{{x, y}, {x + wide, y + high}};
      const double away = length(0.5 * (box.low + box.high) - wanted);
      if (best && away >= nearest) continue;
      if (!is_free(box, region)) continue;
      best = box;
      nearest = away;
    }
  }
  if (!best) return best;
  svg::put_box(parent, *best, {"#fff", nullptr});
  svg::put_text(
      parent, {best->low.x + pad, best->high.y - pad - 0.18 * letter_size}, words, {letter_size});
  take(*best);
  return best;
}

}  // namespace seamturn::pass_drawing
