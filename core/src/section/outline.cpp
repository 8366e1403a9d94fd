// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "detail_profile.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::section {

namespace {

// Chords of the cap's parabola. N chords miss 1/N2 of the cap's area (0.1 % here): a picture, not
// the area, which is closed form.
constexpr int cap_chords = 32;

/// Closed root faces hold no metal: below the first width there is nothing to draw.
std::size_t first_open_slice(const std::vector<Slice>& profile) {
  std::size_t i = 0;
  while (i + 1 < profile.size() && profile[i + 1].right_mm <= profile[i + 1].left_mm) ++i;
  return i;
}

void add_point(std::vector<Point>& outline, const Point& point) {
  const bool repeated =
      !outline.empty() && outline.back().x_mm == point.x_mm && outline.back().y_mm == point.y_mm;
  if (!repeated) outline.push_back(point);
}

void add_cap(std::vector<Point>& outline, const WeldSection& section) {
  const Slice& face = section.profile.back();
  const double middle_mm = 0.5 * (face.left_mm + face.right_mm);
  for (int i = 0; i <= cap_chords; ++i) {
    const double u = 1.0 - 2.0 * i / cap_chords;
    add_point(outline,
              Point{middle_mm + 0.5 * section.cap_width_mm * u,
                    face.y_mm + section.cap_height_mm * (1.0 - u * u)});
  }
}

}  // namespace

namespace detail {

std::vector<Point> outline_of(const WeldSection& section) {
  const std::vector<Slice>& profile = section.profile;
  std::vector<Point> outline;
  const std::size_t first = first_open_slice(profile);
  for (std::size_t i = first; i < profile.size(); ++i) {
    add_point(outline, Point{profile[i].right_mm, profile[i].y_mm});
  }
  if (section.cap_area_mm2 > 0.0) add_cap(outline, section);
  for (std::size_t i = profile.size(); i-- > first;) {
    add_point(outline, Point{profile[i].left_mm, profile[i].y_mm});
  }
  const bool closed_by_hand = outline.size() > 1 && outline.front().x_mm == outline.back().x_mm &&
                              outline.front().y_mm == outline.back().y_mm;
  if (closed_by_hand) outline.pop_back();
  return outline;
}

}  // namespace detail

Point centroid(const WeldSection& section) {
  const std::vector<Point>& outline = section.outline;
  SEAMTURN_REQUIRE(outline.size() >= 3, outline.size());
  double twice_area = 0.0;
  Point moment;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point& a = outline[i];
    const Point& b = outline[(i + 1) % outline.size()];
    const double cross = a.x_mm * b.y_mm - b.x_mm * a.y_mm;
    twice_area += cross;
    moment.x_mm += (a.x_mm + b.x_mm) * cross;
    moment.y_mm += (a.y_mm + b.y_mm) * cross;
  }
  SEAMTURN_REQUIRE(twice_area > 0.0, twice_area);
  return Point{moment.x_mm / (3.0 * twice_area), moment.y_mm / (3.0 * twice_area)};
}

}  // namespace seamturn::section
