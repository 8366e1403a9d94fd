// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "pass/detail_profile.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::pass {
namespace {

using section::Point;
using section::Slice;

[[nodiscard]] double width_of(const Slice& slice) {
  return slice.right_mm - slice.left_mm;
}

[[nodiscard]] Slice between(const Slice& a, const Slice& b, double y_mm) {
  const double rise_mm = b.y_mm - a.y_mm;
  const double share = rise_mm > 0.0 ? (y_mm - a.y_mm) / rise_mm : 1.0;
  return {y_mm,
          a.left_mm + share * (b.left_mm - a.left_mm),
          a.right_mm + share * (b.right_mm - a.right_mm)};
}

[[nodiscard]] double piece_area_mm2(const Slice& low, const Slice& high) {
  return 0.5 * (width_of(low) + width_of(high)) * (high.y_mm - low.y_mm);
}

void add_piece(Strip& strip, const Slice& low, const Slice& high) {
  const Slice mid = between(low, high, 0.5 * (low.y_mm + high.y_mm));
  const double sixth_mm = (high.y_mm - low.y_mm) / 6.0;
  const Slice* nodes[] = {&low, &mid, &high};
  const double weights[] = {sixth_mm, 4.0 * sixth_mm, sixth_mm};
  for (int i = 0; i < 3; ++i) {
    const double width_mm = width_of(*nodes[i]);
    strip.area_mm2 += weights[i] * width_mm;
    strip.moment_y_mm3 += weights[i] * nodes[i]->y_mm * width_mm;
    strip.moment_left_mm3 += weights[i] * nodes[i]->left_mm * width_mm;
    strip.moment_width_mm3 += weights[i] * width_mm * width_mm;
  }
}

}  // namespace

Profile::Profile(const section::WeldSection& section)
    : slices_(&section.profile), cap_(cap_size(section)) {
  SEAMTURN_REQUIRE(slices_->size() >= 2, slices_->size());
  below_mm2_.reserve(slices_->size());
  below_mm2_.push_back(0.0);
  for (std::size_t i = 1; i < slices_->size(); ++i) {
    below_mm2_.push_back(below_mm2_.back() + piece_area_mm2((*slices_)[i - 1], (*slices_)[i]));
  }
}

// Index of the upper slice of the piece a height lies in. Profiles have few slices: no bisection.
std::size_t Profile::piece_at(double y_mm) const {
  std::size_t i = 1;
  while (i + 1 < slices_->size() && (*slices_)[i].y_mm < y_mm) {
    ++i;
  }
  return i;
}

Slice Profile::walls_at(double y_mm) const {
  const std::size_t i = piece_at(y_mm);
  return between((*slices_)[i - 1], (*slices_)[i], std::clamp(y_mm, bottom_mm(), top_mm()));
}

double Profile::width_at_mm(double y_mm) const {
  return width_of(walls_at(y_mm));
}

double Profile::area_below_mm2(double y_mm) const {
  if (y_mm >= top_mm()) {
    return area_mm2();
  }
  const std::size_t i = piece_at(y_mm);
  const Slice& low = (*slices_)[i - 1];
  return below_mm2_[i - 1] +
         piece_area_mm2(low, between(low, (*slices_)[i], std::max(y_mm, bottom_mm())));
}

double Profile::top_of_area_mm(double area_mm2) const {
  if (area_mm2 >= below_mm2_.back()) {
    return top_mm();
  }
  if (area_mm2 <= 0.0) {
    return bottom_mm();
  }
  std::size_t i = 1;
  while (below_mm2_[i] < area_mm2) {
    ++i;
  }
  const Slice& low = (*slices_)[i - 1];
  const Slice& high = (*slices_)[i];
  const double rest_mm2 = area_mm2 - below_mm2_[i - 1];
  const double growth = (width_of(high) - width_of(low)) / (high.y_mm - low.y_mm);
  const double square_mm2 = width_of(low) * width_of(low) + 2.0 * growth * rest_mm2;
  // This form of the quadratic's root has no cancellation where walls are nearly parallel.
  const double rise_mm = 2.0 * rest_mm2 / (width_of(low) + std::sqrt(std::max(0.0, square_mm2)));
  return std::min(low.y_mm + rise_mm, high.y_mm);
}

Strip Profile::strip(double low_mm, double high_mm) const {
  SEAMTURN_REQUIRE(low_mm <= high_mm, low_mm, high_mm);
  Strip strip;
  strip.y_low_mm = low_mm;
  strip.y_high_mm = high_mm;
  for (std::size_t i = piece_at(low_mm); i < slices_->size(); ++i) {
    const Slice& a = (*slices_)[i - 1];
    const Slice& b = (*slices_)[i];
    const double from_mm = std::max(a.y_mm, low_mm);
    const double to_mm = std::min(b.y_mm, high_mm);
    if (from_mm >= high_mm) {
      break;
    }
    if (from_mm < to_mm) {
      add_piece(strip, between(a, b, from_mm), between(a, b, to_mm));
    }
  }
  return strip;
}

LayerShape layer_shape(const Profile& profile, double low_mm, double high_mm, bool with_cap) {
  LayerShape shape;
  shape.strip = profile.strip(low_mm, high_mm);
  if (with_cap) {
    shape.cap = profile.cap();
  }
  return shape;
}

Point piece_centre(const LayerShape& shape, double from, double to) {
  const Strip& strip = shape.strip;
  const double share = to - from;
  double area_mm2 = share * strip.area_mm2;
  double about_y_mm3 =
      share * strip.moment_left_mm3 + 0.5 * (to * to - from * from) * strip.moment_width_mm3;
  double about_x_mm3 = share * strip.moment_y_mm3;
  if (shape.cap.area_mm2 > 0.0) {
    const CapPart right = cap_part(shape.cap, to);
    const CapPart left = cap_part(shape.cap, from);
    const double cap_mm2 = right.area_mm2 - left.area_mm2;
    area_mm2 += cap_mm2;
    about_y_mm3 += cap_mm2 * shape.cap.left_mm + right.moment_x_mm3 - left.moment_x_mm3;
    about_x_mm3 += cap_mm2 * strip.y_high_mm + right.moment_y_mm3 - left.moment_y_mm3;
  }
  return {about_y_mm3 / area_mm2, about_x_mm3 / area_mm2};
}

}  // namespace seamturn::pass
