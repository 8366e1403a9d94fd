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

[[nodiscard]] std::span<const Slice> open_slices(std::span<const Slice> slices) {
  SEAMTURN_REQUIRE(slices.size() >= 2, slices.size());
  while (slices.size() > 2 && width_of(slices[0]) <= 0.0 && width_of(slices[1]) <= 0.0) {
    slices = slices.subspan(1);
  }
  return slices;
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
    : slices_(open_slices(section.profile)), cap_(cap_size(section)) {
  pieces_.reserve(slices_.size());
  double below_mm2 = 0.0;
  for (std::size_t i = 0; i < slices_.size(); ++i) {
    const Slice& low = slices_[i];
    Piece piece{low.y_mm, width_of(low), 0.0, below_mm2};
    if (i + 1 < slices_.size()) {
      const Slice& high = slices_[i + 1];
      const double rise_mm = high.y_mm - low.y_mm;
      piece.growth = rise_mm > 0.0 ? (width_of(high) - width_of(low)) / rise_mm : 0.0;
      below_mm2 += 0.5 * (width_of(low) + width_of(high)) * rise_mm;
    }
    pieces_.push_back(piece);
  }
}

// Profiles have few slices: no bisection.
std::size_t Profile::piece_at(double y_mm) const {
  std::size_t i = 0;
  while (i + 2 < pieces_.size() && pieces_[i + 1].y_mm < y_mm) {
    ++i;
  }
  return i;
}

Slice Profile::walls_at(double y_mm) const {
  const std::size_t i = piece_at(y_mm);
  return between(slices_[i], slices_[i + 1], std::clamp(y_mm, bottom_mm(), top_mm()));
}

Profile::Level Profile::level_at(double y_mm) const {
  if (y_mm >= top_mm()) {
    return {pieces_.back().width_mm, pieces_.back().below_mm2};
  }
  const Piece& piece = pieces_[piece_at(y_mm)];
  const double rise_mm = std::max(0.0, y_mm - piece.y_mm);
  const double width_mm = piece.width_mm + piece.growth * rise_mm;
  return {width_mm, piece.below_mm2 + 0.5 * (piece.width_mm + width_mm) * rise_mm};
}

double Profile::top_of_area_mm(double area_mm2) const {
  if (area_mm2 >= this->area_mm2()) {
    return top_mm();
  }
  if (area_mm2 <= 0.0) {
    return bottom_mm();
  }
  std::size_t i = 0;
  while (pieces_[i + 1].below_mm2 < area_mm2) {
    ++i;
  }
  const Piece& piece = pieces_[i];
  const double rest_mm2 = area_mm2 - piece.below_mm2;
  const double square_mm2 = piece.width_mm * piece.width_mm + 2.0 * piece.growth * rest_mm2;
  // This form of the quadratic's root has no cancellation where walls are nearly parallel.
  const double rise_mm = 2.0 * rest_mm2 / (piece.width_mm + std::sqrt(std::max(0.0, square_mm2)));
  return std::min(piece.y_mm + rise_mm, pieces_[i + 1].y_mm);
}

double Profile::wider_above_mm(double width_mm) const {
  if (pieces_.back().width_mm <= width_mm) {
    return top_mm();
  }
  std::size_t i = pieces_.size() - 1;
  while (i > 0 && pieces_[i - 1].width_mm > width_mm) {
    --i;
  }
  if (i == 0) {
    return bottom_mm();
  }
  // The piece below i widens through the width.
  const Piece& piece = pieces_[i - 1];
  return piece.growth > 0.0 ? piece.y_mm + (width_mm - piece.width_mm) / piece.growth
                            : pieces_[i].y_mm;
}

Strip Profile::strip(double low_mm, double high_mm) const {
  SEAMTURN_REQUIRE(low_mm <= high_mm, low_mm, high_mm);
  Strip strip;
  strip.y_low_mm = low_mm;
  strip.y_high_mm = high_mm;
  for (std::size_t i = piece_at(low_mm); i + 1 < slices_.size(); ++i) {
    const Slice& a = slices_[i];
    const Slice& b = slices_[i + 1];
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
