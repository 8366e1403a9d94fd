// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "detail_profile.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::section::detail {

namespace {

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

std::vector<double> bends_mm(const Wall& left, const Wall& right) {
  std::vector<double> heights;
  for (const Wall* wall : {&left, &right}) {
    for (const WallPoint& point : *wall) heights.push_back(point.y_mm);
  }
  std::sort(heights.begin(), heights.end());
  heights.erase(std::unique(heights.begin(), heights.end()), heights.end());
  return heights;
}

}  // namespace

Wall square_wall(double thickness_mm) {
  return Wall{WallPoint{0.0, 0.0}, WallPoint{thickness_mm, 0.0}};
}

Wall bevelled_wall(double thickness_mm, double root_face_mm, Angle lean) {
  SEAMTURN_REQUIRE(root_face_mm >= 0.0 && root_face_mm < thickness_mm, root_face_mm, thickness_mm);
  Wall wall{WallPoint{0.0, 0.0}};
  if (root_face_mm > 0.0) wall.push_back(WallPoint{root_face_mm, 0.0});
  const double out_mm = (thickness_mm - root_face_mm) * std::tan(lean.rad());
  wall.push_back(WallPoint{thickness_mm, out_mm});
  return wall;
}

Wall upper_part(const Wall& wall, double depth_mm) {
  const double from_mm = wall.back().y_mm - depth_mm;
  SEAMTURN_REQUIRE(depth_mm > 0.0 && from_mm >= 0.0, depth_mm, wall.back().y_mm);
  Wall upper{WallPoint{0.0, out_at_mm(wall, from_mm)}};
  for (const WallPoint& point : wall) {
    if (point.y_mm > from_mm) upper.push_back(WallPoint{point.y_mm - from_mm, point.out_mm});
  }
  upper.back().y_mm = depth_mm;
  return upper;
}

std::vector<Slice> groove_profile(const Wall& left, const Wall& right, const GapEdges& gap) {
  SEAMTURN_REQUIRE(left.size() >= 2 && right.size() >= 2, left.size(), right.size());
  SEAMTURN_REQUIRE(left.back().y_mm == right.back().y_mm, left.back().y_mm, right.back().y_mm);
  SEAMTURN_REQUIRE(gap.left_mm <= gap.right_mm, gap.left_mm, gap.right_mm);
  std::vector<Slice> profile;
  for (const double y_mm : bends_mm(left, right)) {
    profile.push_back(
        Slice{y_mm, gap.left_mm - out_at_mm(left, y_mm), gap.right_mm + out_at_mm(right, y_mm)});
  }
  return profile;
}

std::vector<Slice> fillet_profile(const joint::Fillet& fillet, Angle between_plates) {
  const double across = std::sin(0.5 * between_plates.rad());
  const double up = std::cos(0.5 * between_plates.rad());
  const double shorter_mm = std::min(fillet.leg_1_mm, fillet.leg_2_mm);
  const double longer_mm = std::max(fillet.leg_1_mm, fillet.leg_2_mm);
  std::vector<Slice> profile{
      Slice{0.0, 0.0, 0.0},
      Slice{up * shorter_mm, -across * shorter_mm, across * shorter_mm},
  };
  if (longer_mm > shorter_mm) {
    // Above the shorter leg's toe one wall is the longer leg, the other the face; they meet at the
    // longer leg's toe.
    const double toe_mm = (fillet.leg_1_mm > fillet.leg_2_mm ? across : -across) * longer_mm;
    profile.push_back(Slice{up * longer_mm, toe_mm, toe_mm});
  }
  return profile;
}

}  // namespace seamturn::section::detail
