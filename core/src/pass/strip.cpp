// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "pass/detail_strip.hpp"

namespace seamturn::pass {
namespace {

using section::Point;
using section::Slice;

[[nodiscard]] Slice between(const Slice& a, const Slice& b, double y_mm) {
  const double rise_mm = b.y_mm - a.y_mm;
  const double share = rise_mm > 0.0 ? (y_mm - a.y_mm) / rise_mm : 1.0;
  return {y_mm,
          a.left_mm + share * (b.left_mm - a.left_mm),
          a.right_mm + share * (b.right_mm - a.right_mm)};
}

void add_piece(Strip& strip, const Slice& low, const Slice& high) {
  const Slice mid = between(low, high, 0.5 * (low.y_mm + high.y_mm));
  const double sixth_mm = (high.y_mm - low.y_mm) / 6.0;
  const Slice* nodes[] = {&low, &mid, &high};
  const double weights[] = {sixth_mm, 4.0 * sixth_mm, sixth_mm};
  for (int i = 0; i < 3; ++i) {
    const double width_mm = nodes[i]->right_mm - nodes[i]->left_mm;
    strip.area_mm2 += weights[i] * width_mm;
    strip.moment_y_mm3 += weights[i] * nodes[i]->y_mm * width_mm;
    strip.moment_left_mm3 += weights[i] * nodes[i]->left_mm * width_mm;
    strip.moment_width_mm3 += weights[i] * width_mm * width_mm;
  }
}

// The cap is a parabola over its width: height 4 h s (1-s). These are its integrals from 0 to s.
[[nodiscard]] double cap_share(double s) {
  return s * s * (3.0 - 2.0 * s);
}
[[nodiscard]] double cap_share_moment(double s) {
  return s * s * s * (2.0 - 1.5 * s);
}
[[nodiscard]] double cap_square(double s) {
  return 8.0 * s * s * s * (1.0 / 3.0 - 0.5 * s + 0.2 * s * s);
}

}  // namespace

Slice walls_at(const section::WeldSection& section, double y_mm) {
  const auto& profile = section.profile;
  SEAMTURN_REQUIRE(profile.size() >= 2, profile.size());
  std::size_t i = 1;
  while (i + 1 < profile.size() && profile[i].y_mm < y_mm) {
    ++i;
  }
  return between(
      profile[i - 1], profile[i], std::clamp(y_mm, profile.front().y_mm, profile.back().y_mm));
}

Strip strip_between(const section::WeldSection& section, double low_mm, double high_mm) {
  SEAMTURN_REQUIRE(low_mm <= high_mm, low_mm, high_mm);
  Strip strip;
  strip.y_low_mm = low_mm;
  strip.y_high_mm = high_mm;
  for (std::size_t i = 1; i < section.profile.size(); ++i) {
    const Slice& a = section.profile[i - 1];
    const Slice& b = section.profile[i];
    const double from_mm = std::max(a.y_mm, low_mm);
    const double to_mm = std::min(b.y_mm, high_mm);
    if (from_mm < to_mm) {
      add_piece(strip, between(a, b, from_mm), between(a, b, to_mm));
    }
  }
  return strip;
}

LayerShape layer_shape(const section::WeldSection& section,
                       double low_mm,
                       double high_mm,
                       bool with_cap) {
  LayerShape shape;
  shape.strip = strip_between(section, low_mm, high_mm);
  if (with_cap && section.cap_area_mm2 > 0.0) {
    const Slice& face = section.profile.back();
    shape.cap_area_mm2 = section.cap_area_mm2;
    shape.cap_height_mm = section.cap_height_mm;
    shape.cap_width_mm = section.cap_width_mm;
    shape.cap_left_mm = 0.5 * (face.left_mm + face.right_mm - section.cap_width_mm);
  }
  return shape;
}

double width_share(const LayerShape& shape, double area_share) {
  if (shape.cap_area_mm2 <= 0.0 || area_share <= 0.0 || area_share >= 1.0) {
    return std::clamp(area_share, 0.0, 1.0);
  }
  const double wanted_mm2 = area_share * (shape.strip.area_mm2 + shape.cap_area_mm2);
  double low = 0.0;
  double high = 1.0;
  // Halving 60 times ends below the spacing of doubles near 1.
  for (int i = 0; i < 60; ++i) {
    const double mid = 0.5 * (low + high);
    const double area_mm2 = mid * shape.strip.area_mm2 + cap_share(mid) * shape.cap_area_mm2;
    (area_mm2 < wanted_mm2 ? low : high) = mid;
  }
  return 0.5 * (low + high);
}

Point piece_centre(const LayerShape& shape, double from, double to) {
  const Strip& strip = shape.strip;
  const double share = to - from;
  double area_mm2 = share * strip.area_mm2;
  double about_y_mm3 =
      share * strip.moment_left_mm3 + 0.5 * (to * to - from * from) * strip.moment_width_mm3;
  double about_x_mm3 = share * strip.moment_y_mm3;
  if (shape.cap_area_mm2 > 0.0) {
    const double cap_mm2 = (cap_share(to) - cap_share(from)) * shape.cap_area_mm2;
    const double reach_mm3 =
        (cap_share_moment(to) - cap_share_moment(from)) * shape.cap_area_mm2 * shape.cap_width_mm;
    const double lift_mm3 = (cap_square(to) - cap_square(from)) * shape.cap_height_mm *
                            shape.cap_height_mm * shape.cap_width_mm;
    area_mm2 += cap_mm2;
    about_y_mm3 += cap_mm2 * shape.cap_left_mm + reach_mm3;
    about_x_mm3 += cap_mm2 * strip.y_high_mm + lift_mm3;
  }
  return {about_y_mm3 / area_mm2, about_x_mm3 / area_mm2};
}

}  // namespace seamturn::pass
