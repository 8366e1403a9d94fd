// SPDX-License-Identifier: MIT
#include "stance_drawing/view.hpp"

#include <algorithm>
#include <cmath>

namespace seamturn::stance_drawing {

View view_from(const Vec3& towards_viewer, const Vec3& away) {
  const Vec3 towards = towards_viewer.normalized();
  const bool is_plan = std::abs(towards.z()) > 1.0 - 1e-9;
  const Vec3 upright = is_plan ? away : Vec3::UnitZ();
  const Vec3 up = (upright - upright.dot(towards) * towards).normalized();
  return {up.cross(towards), up, towards};
}

Sight::Sight(const std::vector<Solid>& solids, const View& view, double every_mm)
    : view_(view), every_mm_(every_mm) {
  for (const Solid& solid : solids) {
    const Line corners = corners_of_box(solid);
    svg::Box bounds{view.at(corners.front()), view.at(corners.front())};
    double nearest = view.towards_viewer.dot(corners.front());
    for (const Vec3& corner : corners) {
      bounds.include(view.at(corner));
      nearest = std::max(nearest, view.towards_viewer.dot(corner));
    }
    hiders_.push_back({Screen(solid, view.towards_viewer), bounds, nearest});
  }
}

bool Sight::sees(const Vec3& p_W) const {
  const svg::Point at = view_.at(p_W);
  const double depth = view_.towards_viewer.dot(p_W);
  return std::none_of(hiders_.begin(), hiders_.end(), [&](const Hider& hider) {
    return depth < hider.nearest && at.x > hider.bounds.low.x && at.x < hider.bounds.high.x &&
           at.y > hider.bounds.low.y && at.y < hider.bounds.high.y && hider.screen.hides(p_W);
  });
}

Vec3 Sight::border(Vec3 from, Vec3 to) const {
  constexpr int halvings = 8;
  const bool at_start = sees(from);
  for (int i = 0; i < halvings; ++i) {
    const Vec3 middle = 0.5 * (from + to);
    (sees(middle) == at_start ? from : to) = middle;
  }
  return 0.5 * (from + to);
}

std::vector<Piece> Sight::pieces(const Edge& edge) const {
  const Line& line = edge.line;
  std::vector<Piece> found;
  if (line.size() < 2) return found;
  found.push_back({{line.front()}, sees(line.front())});
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Vec3 leg = line[i + 1] - line[i];
    const int every = std::max(1, static_cast<int>(std::ceil(leg.norm() / every_mm_)));
    const int looks = edge.is_curve ? 1 : every;
    Vec3 before = line[i];
    for (int look = 1; look <= looks; ++look) {
      const Vec3 here = line[i] + (static_cast<double>(look) / looks) * leg;
      if (sees(here) != found.back().is_seen) {
        const Vec3 turn = border(before, here);
        found.back().line.push_back(turn);
        found.push_back({{turn}, !found.back().is_seen});
      }
      before = here;
    }
    found.back().line.push_back(line[i + 1]);
  }
  return found;
}

}  // namespace seamturn::stance_drawing
