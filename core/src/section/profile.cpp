// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "detail_check.hpp"
#include "detail_profile.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::section::detail {

namespace {

std::vector<double> bends_mm(const Wall& left, const Wall& right) {
  std::vector<double> heights;
  heights.reserve(left.size() + right.size());
  for (const Wall* wall : {&left, &right}) {
    for (const WallPoint& point : *wall) heights.push_back(point.y_mm);
  }
  std::sort(heights.begin(), heights.end());
  heights.erase(std::unique(heights.begin(), heights.end()), heights.end());
  return heights;
}

/// Where the gap's edges lie across: a groove with one square edge counts from that edge.
GapEdges gap_edges(const joint::Groove& groove) {
  const bool from_square_edge = joint::is_one_edge_cut(groove);
  const double left_mm = from_square_edge ? 0.0 : -0.5 * groove.gap_mm;
  return {left_mm, left_mm + groove.gap_mm};
}

/// A plate's surface beside a wall, as high as that.
Wall plate_wall(const Wall& beside) {
  return {{beside.front().y_mm, 0.0}, {beside.back().y_mm, 0.0}};
}

/// The second side after gouging: what is cut open, from the middle of the gap.
std::vector<Slice> gouged_profile(const joint::Groove& groove, const SectionParams& params) {
  const GapEdges edges = gap_edges(groove);
  const double middle_mm = 0.5 * (edges.left_mm + edges.right_mm);
  const GapEdges middle{middle_mm, middle_mm};
  const Wall gouged = gouge_wall(params.gouge);
  const bool along_plate = params.along_plate && joint::is_one_edge_cut(groove);
  if (!groove.is_double) {
    return along_plate ? groove_profile(plate_wall(gouged), gouged, {edges.left_mm, middle_mm})
                       : groove_profile(gouged, gouged, middle);
  }
  const auto [first, second] = faces_of(groove.form, groove.side_2);
  const SideHeights heights{0.0, cut_depths(groove, params.thickness_mm).side_2_mm};
  const double half_gap_mm = 0.5 * groove.gap_mm;
  const Wall right = outer_of(moved_out(make_wall(heights, second), half_gap_mm), gouged);
  if (along_plate) return groove_profile(plate_wall(right), right, {edges.left_mm, middle_mm});
  return groove_profile(
      outer_of(moved_out(make_wall(heights, first), half_gap_mm), gouged), right, middle);
}

}  // namespace

std::vector<Slice> groove_profile(const Wall& left, const Wall& right, const GapEdges& gap) {
  SEAMTURN_REQUIRE(left.size() >= 2 && right.size() >= 2, left.size(), right.size());
  SEAMTURN_REQUIRE(left.back().y_mm == right.back().y_mm, left.back().y_mm, right.back().y_mm);
  SEAMTURN_REQUIRE(gap.left_mm <= gap.right_mm, gap.left_mm, gap.right_mm);
  std::vector<Slice> profile;
  const std::vector<double> heights = bends_mm(left, right);
  profile.reserve(heights.size());
  for (const double y_mm : heights) {
    profile.push_back(
        Slice{y_mm, gap.left_mm - out_at_mm(left, y_mm), gap.right_mm + out_at_mm(right, y_mm)});
  }
  return profile;
}

std::vector<Slice> side_profile(const joint::Groove& groove, const SectionParams& params) {
  if (params.side == 2 && params.gouge.depth_mm > 0.0) return gouged_profile(groove, params);
  const CutDepths cuts = cut_depths(groove, params.thickness_mm);
  const bool first_side = params.side == 1;
  const SideHeights heights{groove.is_double || groove.form != joint::GrooveForm::square
                                ? groove.root_face_mm
                                : params.thickness_mm,
                            first_side ? cuts.side_1_mm : cuts.side_2_mm};
  const auto [first, second] = faces_of(groove.form, first_side ? groove.side_1 : groove.side_2);
  const double depth_mm = welded_depth_mm(groove, params);
  return groove_profile(upper_part(make_wall(heights, first), depth_mm),
                        upper_part(make_wall(heights, second), depth_mm),
                        gap_edges(groove));
}

std::vector<Slice> fillet_profile(const Legs& legs, Angle between_plates) {
  const double across = std::sin(0.5 * between_plates.rad());
  const double up = std::cos(0.5 * between_plates.rad());
  const double shorter_mm = std::min(legs.leg_1_mm, legs.leg_2_mm);
  const double longer_mm = std::max(legs.leg_1_mm, legs.leg_2_mm);
  std::vector<Slice> profile{
      Slice{0.0, 0.0, 0.0},
      Slice{up * shorter_mm, -across * shorter_mm, across * shorter_mm},
  };
  if (longer_mm > shorter_mm) {
    // Above the shorter leg's toe one wall is the longer leg, the other the face; they meet at the
    // longer leg's toe.
    const double toe_mm = (legs.leg_1_mm > legs.leg_2_mm ? across : -across) * longer_mm;
    profile.push_back(Slice{up * longer_mm, toe_mm, toe_mm});
  }
  return profile;
}

double circle_segment_mm2(double chord_mm, double rise_mm) {
  SEAMTURN_REQUIRE(rise_mm >= 0.0 && rise_mm <= 0.5 * chord_mm, rise_mm, chord_mm);
  if (rise_mm <= 0.0) return 0.0;
  const double radius_mm = (0.25 * chord_mm * chord_mm + rise_mm * rise_mm) / (2.0 * rise_mm);
  const double sweep = 2.0 * std::asin(std::min(1.0, chord_mm / (2.0 * radius_mm)));
  return 0.5 * radius_mm * radius_mm * (sweep - std::sin(sweep));
}

}  // namespace seamturn::section::detail
