// SPDX-License-Identifier: MIT
// Widths, areas and heights of a profile: everything by trapezia between its slices.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "detail_profile.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::section {

namespace {

// A height or area handed back after arithmetic may lie a rounding beyond the end.
constexpr double rounding_share = 1e-9;

double width_mm(const Slice& slice) {
  return slice.right_mm - slice.left_mm;
}

double piece_area_mm2(const Slice& low, const Slice& high) {
  return 0.5 * (width_mm(low) + width_mm(high)) * (high.y_mm - low.y_mm);
}

Slice slice_between(const Slice& low, const Slice& high, double y_mm) {
  const double share = (y_mm - low.y_mm) / (high.y_mm - low.y_mm);
  return Slice{y_mm,
               low.left_mm + share * (high.left_mm - low.left_mm),
               low.right_mm + share * (high.right_mm - low.right_mm)};
}

/// Height above `low` at which the piece up to `high` holds an area.
double height_in_piece_mm(const Slice& low, const Slice& high, double area_mm2) {
  if (area_mm2 <= 0.0) return 0.0;
  const double growth = (width_mm(high) - width_mm(low)) / (high.y_mm - low.y_mm);
  const double root = std::max(0.0, width_mm(low) * width_mm(low) + 2.0 * growth * area_mm2);
  // This form of the quadratic's root has no cancellation where walls are nearly parallel.
  return 2.0 * area_mm2 / (width_mm(low) + std::sqrt(root));
}

double checked_height_mm(const WeldSection& section, double y_mm) {
  const double slack_mm = rounding_share * section.height_mm;
  SEAMTURN_REQUIRE(
      y_mm >= -slack_mm && y_mm <= section.height_mm + slack_mm, y_mm, section.height_mm);
  return std::clamp(y_mm, 0.0, section.height_mm);
}

}  // namespace

namespace detail {

double profile_area_mm2(const std::vector<Slice>& profile) {
  double area_mm2 = 0.0;
  for (std::size_t i = 1; i < profile.size(); ++i) {
    area_mm2 += piece_area_mm2(profile[i - 1], profile[i]);
  }
  return area_mm2;
}

}  // namespace detail

double width_at_mm(const WeldSection& section, double y_mm) {
  const double height_mm = checked_height_mm(section, y_mm);
  for (std::size_t i = 1; i < section.profile.size(); ++i) {
    if (height_mm > section.profile[i].y_mm) continue;
    return width_mm(slice_between(section.profile[i - 1], section.profile[i], height_mm));
  }
  return width_mm(section.profile.back());
}

double area_below_mm2(const WeldSection& section, double y_mm) {
  const double height_mm = checked_height_mm(section, y_mm);
  double area_mm2 = 0.0;
  for (std::size_t i = 1; i < section.profile.size(); ++i) {
    const Slice& low = section.profile[i - 1];
    const Slice& high = section.profile[i];
    if (height_mm <= high.y_mm) {
      return area_mm2 + piece_area_mm2(low, slice_between(low, high, height_mm));
    }
    area_mm2 += piece_area_mm2(low, high);
  }
  return area_mm2;
}

double height_of_area_mm(const WeldSection& section, double area_mm2) {
  const double all_mm2 = detail::profile_area_mm2(section.profile);
  SEAMTURN_REQUIRE(
      area_mm2 >= -rounding_share * all_mm2 && area_mm2 <= all_mm2 * (1.0 + rounding_share),
      area_mm2,
      all_mm2);
  double rest_mm2 = std::clamp(area_mm2, 0.0, all_mm2);
  if (rest_mm2 <= 0.0) return 0.0;
  for (std::size_t i = 1; i < section.profile.size(); ++i) {
    const Slice& low = section.profile[i - 1];
    const Slice& high = section.profile[i];
    const double piece_mm2 = piece_area_mm2(low, high);
    if (rest_mm2 <= piece_mm2) {
      return std::min(low.y_mm + height_in_piece_mm(low, high, rest_mm2), high.y_mm);
    }
    rest_mm2 -= piece_mm2;
  }
  return section.height_mm;
}

double ring_volume_mm3(double area_mm2, double centroid_radius_mm) {
  SEAMTURN_REQUIRE(base::is_amount(area_mm2), area_mm2);
  SEAMTURN_REQUIRE(base::is_amount(centroid_radius_mm), centroid_radius_mm);
  return 2.0 * std::numbers::pi * centroid_radius_mm * area_mm2;
}

}  // namespace seamturn::section
