// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <numbers>

#include "detail_walls.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::section::detail {

namespace {

constexpr Angle quarter = Angle::rad(std::numbers::pi / 2.0);
// Chords of a round bottom: the largest distance between arc and chords is 0.2 % of the radius.
constexpr int round_chords = 12;

double piece_mm2(const WallPoint& low, const WallPoint& high) {
  return 0.5 * (low.out_mm + high.out_mm) * (high.y_mm - low.y_mm);
}

/// A round bottom from its lowest point over `sweep`, as chords. The inner points are set off by
/// one small distance, so that the chords hold the arc's area and meet its ends.
Wall round_bottom(double radius_mm, Angle sweep) {
  Wall wall;
  for (int i = 0; i <= round_chords; ++i) {
    const double at = sweep.rad() * i / round_chords;
    wall.push_back({radius_mm * (1.0 - std::cos(at)), radius_mm * std::sin(at)});
  }
  const double all = sweep.rad();
  double missing_mm2 = 0.5 * radius_mm * radius_mm * (all - std::sin(all) * std::cos(all));
  double heights_mm = 0.0;
  for (int i = 1; i <= round_chords; ++i) missing_mm2 -= piece_mm2(wall[i - 1], wall[i]);
  for (int i = 1; i < round_chords; ++i) {
    heights_mm += 0.5 * (wall[i + 1].y_mm - wall[i - 1].y_mm);
  }
  for (int i = 1; i < round_chords; ++i) wall[i].out_mm += missing_mm2 / heights_mm;
  return wall;
}

void append_raised(Wall& wall, const Wall& upper, double by_mm) {
  for (const WallPoint& point : upper) {
    if (!wall.empty() && wall.back().y_mm >= point.y_mm + by_mm) continue;  // the joint's own point
    wall.push_back({point.y_mm + by_mm, point.out_mm});
  }
}

/// The face alone, heights from the bottom of the cut.
Wall face_wall(double cut_mm, const FaceCut& face) {
  Wall wall{{0.0, 0.0}};
  if (face.radius_mm > 0.0) wall = round_bottom(face.radius_mm, quarter - face.lean);
  if (face.lower_depth_mm > 0.0) {
    wall.push_back({face.lower_depth_mm, face.lower_depth_mm * std::tan(face.lower_lean.rad())});
  }
  const WallPoint foot = wall.back();
  if (cut_mm > foot.y_mm) {
    wall.push_back({cut_mm, foot.out_mm + (cut_mm - foot.y_mm) * std::tan(face.lean.rad())});
  }
  return wall;
}

/// Crossing of two walls inside a piece on which both are straight; nothing when they do not cross.
void add_crossing(Wall& outer, const Wall& a, const Wall& b, double low_mm, double high_mm) {
  const double at_low = out_at_mm(a, low_mm) - out_at_mm(b, low_mm);
  const double at_high = out_at_mm(a, high_mm) - out_at_mm(b, high_mm);
  if (at_low * at_high >= 0.0) return;
  const double y_mm = low_mm + (high_mm - low_mm) * at_low / (at_low - at_high);
  if (y_mm > low_mm && y_mm < high_mm) outer.push_back({y_mm, out_at_mm(a, y_mm)});
}

}  // namespace

std::pair<FaceCut, FaceCut> faces_of(joint::GrooveForm form, const joint::GrooveSide& side) {
  FaceCut first;
  FaceCut second;
  second.lean = side.angle;
  second.radius_mm = side.radius_mm;
  switch (form) {
    case joint::GrooveForm::square:
      return {};
    case joint::GrooveForm::bevel:
    case joint::GrooveForm::j:
      return {first, second};
    case joint::GrooveForm::u:
      return {second, second};
    case joint::GrooveForm::v:
      first.lean = side.first_face.value_or(side.angle / 2.0);
      second.lean = side.angle - first.lean;
      return {first, second};
    case joint::GrooveForm::compound_v:
      first.lean = side.angle / 2.0;
      first.lower_depth_mm = side.lower_depth_mm;
      first.lower_lean = side.lower_angle / 2.0;
      return {first, first};
  }
  return {};
}

double round_height_mm(double radius_mm, Angle lean) {
  return radius_mm * (1.0 - std::sin(lean.rad()));
}

Wall make_wall(const SideHeights& heights, const FaceCut& face) {
  SEAMTURN_REQUIRE(
      heights.land_mm >= 0.0 && heights.cut_mm >= 0.0 && heights.land_mm + heights.cut_mm > 0.0,
      heights.land_mm,
      heights.cut_mm);
  Wall wall;
  if (heights.land_mm > 0.0) wall = {{0.0, 0.0}, {heights.land_mm, 0.0}};
  if (heights.cut_mm > 0.0) append_raised(wall, face_wall(heights.cut_mm, face), heights.land_mm);
  return wall;
}

Wall gouge_wall(const joint::Gouge& gouge) {
  const double round_mm = round_height_mm(gouge.radius_mm, gouge.flank);
  if (gouge.depth_mm >= round_mm) {
    return face_wall(gouge.depth_mm, FaceCut{gouge.flank, gouge.radius_mm, 0.0, Angle()});
  }
  Wall wall =
      round_bottom(gouge.radius_mm, Angle::rad(std::acos(1.0 - gouge.depth_mm / gouge.radius_mm)));
  wall.back().y_mm = gouge.depth_mm;
  return wall;
}

double out_at_mm(const Wall& wall, double y_mm) {
  for (std::size_t i = 1; i < wall.size(); ++i) {
    const WallPoint& low = wall[i - 1];
    const WallPoint& high = wall[i];
    if (y_mm > high.y_mm) continue;
    const double share = (y_mm - low.y_mm) / (high.y_mm - low.y_mm);
    return low.out_mm + share * (high.out_mm - low.out_mm);
  }
  return wall.back().out_mm;
}

Wall upper_part(const Wall& wall, double depth_mm) {
  const double all_mm = wall.back().y_mm;
  const double from_mm = all_mm - depth_mm;
  const double rounding_mm = 1e-9 * all_mm;
  SEAMTURN_REQUIRE(depth_mm > 0.0 && from_mm >= -rounding_mm, depth_mm, all_mm);
  if (from_mm <= rounding_mm) {
    Wall whole = wall;
    whole.back().y_mm = depth_mm;
    return whole;
  }
  Wall upper{WallPoint{0.0, out_at_mm(wall, from_mm)}};
  for (const WallPoint& point : wall) {
    if (point.y_mm > from_mm) upper.push_back(WallPoint{point.y_mm - from_mm, point.out_mm});
  }
  upper.back().y_mm = depth_mm;
  return upper;
}

Wall moved_out(Wall wall, double by_mm) {
  for (WallPoint& point : wall) point.out_mm += by_mm;
  return wall;
}

Wall outer_of(const Wall& a, const Wall& b) {
  const bool a_is_higher = a.back().y_mm >= b.back().y_mm;
  const Wall& higher = a_is_higher ? a : b;
  Wall shorter = a_is_higher ? b : a;
  const double foot_mm = higher.back().y_mm - shorter.back().y_mm;
  for (WallPoint& point : shorter) point.y_mm += foot_mm;
  shorter.back().y_mm = higher.back().y_mm;

  std::vector<double> heights;
  for (const Wall* wall : {&higher, static_cast<const Wall*>(&shorter)}) {
    for (const WallPoint& point : *wall) heights.push_back(point.y_mm);
  }
  std::sort(heights.begin(), heights.end());
  heights.erase(std::unique(heights.begin(), heights.end()), heights.end());

  Wall outer;
  for (std::size_t i = 0; i < heights.size(); ++i) {
    const double y_mm = heights[i];
    if (i > 0 && heights[i - 1] >= foot_mm) {
      add_crossing(outer, higher, shorter, heights[i - 1], y_mm);
    }
    const double out_mm = out_at_mm(higher, y_mm);
    outer.push_back({y_mm, y_mm < foot_mm ? out_mm : std::max(out_mm, out_at_mm(shorter, y_mm))});
  }
  return outer;
}

}  // namespace seamturn::section::detail
