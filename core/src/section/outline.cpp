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
  if (section.cap_shape == CapShape::triangle) {
    add_point(outline, Point{face.left_mm + section.cap_width_mm, face.y_mm});
    add_point(outline, Point{face.left_mm, face.y_mm + section.cap_height_mm});
    return;
  }
  const double middle_mm = 0.5 * (face.left_mm + face.right_mm);
  for (int i = 0; i <= cap_chords; ++i) {
    const double u = 1.0 - 2.0 * i / cap_chords;
    add_point(outline,
              Point{middle_mm + 0.5 * section.cap_width_mm * u,
                    face.y_mm + section.cap_height_mm * (1.0 - u * u)});
  }
}

/// Points of the face between the toes: a circle's arc that rises by the bulge half-way.
void add_bulged_face(std::vector<Point>& outline,
                     const Point& toe_1,
                     const Point& toe_2,
                     double bulge_mm) {
  const double rise_mm = std::abs(bulge_mm);
  const double half_mm = 0.5 * std::hypot(toe_2.x_mm - toe_1.x_mm, toe_2.y_mm - toe_1.y_mm);
  const double radius_mm = (half_mm * half_mm + rise_mm * rise_mm) / (2.0 * rise_mm);
  const double half_sweep = std::asin(std::min(1.0, half_mm / radius_mm));
  const Point along{0.5 * (toe_2.x_mm - toe_1.x_mm) / half_mm,
                    0.5 * (toe_2.y_mm - toe_1.y_mm) / half_mm};
  const Point out{bulge_mm > 0.0 ? along.y_mm : -along.y_mm,
                  bulge_mm > 0.0 ? -along.x_mm : along.x_mm};
  for (int i = 1; i < cap_chords; ++i) {
    const double at = half_sweep * (2.0 * i / cap_chords - 1.0);
    const double s_mm = half_mm + radius_mm * std::sin(at);
    const double rise_here_mm = radius_mm * std::cos(at) - (radius_mm - rise_mm);
    add_point(outline,
              Point{toe_1.x_mm + s_mm * along.x_mm + rise_here_mm * out.x_mm,
                    toe_1.y_mm + s_mm * along.y_mm + rise_here_mm * out.y_mm});
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

std::vector<Point> fillet_outline(const WeldSection& section,
                                  Angle between_plates,
                                  const BehindRoot& behind) {
  const double sine = std::sin(0.5 * between_plates.rad());
  const double cosine = std::cos(0.5 * between_plates.rad());
  const auto at = [&](double along_1_mm, double along_2_mm) {
    return Point{sine * (along_1_mm - along_2_mm), cosine * (along_1_mm + along_2_mm)};
  };
  const Point toe_1 = at(section.leg_1_mm, 0.0);
  const Point toe_2 = at(0.0, section.leg_2_mm);
  std::vector<Point> outline;
  if (behind.reach_mm <= 0.0) add_point(outline, at(0.0, 0.0));
  add_point(outline, toe_1);
  if (section.bulge_mm != 0.0) add_bulged_face(outline, toe_1, toe_2, section.bulge_mm);
  add_point(outline, toe_2);
  if (behind.reach_mm > 0.0) {
    const double lifted_mm = behind.gap_mm / std::sin(between_plates.rad());
    add_point(outline, at(0.0, lifted_mm));
    add_point(outline, at(-behind.reach_mm, lifted_mm));
    add_point(outline, at(-behind.reach_mm, 0.0));
  }
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
