// SPDX-License-Identifier: MIT
// Looking at the cell from far away in one direction.
#pragma once

#include <vector>

#include "stance_drawing/solid.hpp"
#include "svg/plane.hpp"

namespace seamturn::stance_drawing {

/// Directions of unit length, at right angles, frame W. What is upright in the cell stays upright.
struct View {
  Vec3 right;
  Vec3 up;
  Vec3 towards_viewer;

  [[nodiscard]] svg::Point at(const Vec3& p_W) const { return {right.dot(p_W), up.dot(p_W)}; }
};
/// From there; straight down or up, `away` is up on the page.
[[nodiscard]] View view_from(const Vec3& towards_viewer, const Vec3& away = Vec3::UnitX());

/// A stretch of a line that is seen, or hidden, all along.
struct Piece {
  Line line;
  bool is_seen = true;
};

/// What can be seen from there of lines among solids.
/// Cost: points looked at times solids; a straight leg is looked at every `every_mm`.
class Sight {
 public:
  /// The solids must outlive it.
  Sight(const std::vector<Solid>& solids, const View& view, double every_mm);
  [[nodiscard]] bool sees(const Vec3& p_W) const;
  [[nodiscard]] std::vector<Piece> pieces(const Edge& edge) const;

 private:
  struct Hider {
    Screen screen;
    svg::Box bounds;
    double nearest;  // to the viewer, along the look
  };
  /// Where on a leg seen turns into hidden or back. Pre: its ends differ.
  [[nodiscard]] Vec3 border(Vec3 from, Vec3 to) const;

  View view_;
  double every_mm_;
  std::vector<Hider> hiders_;
};

}  // namespace seamturn::stance_drawing
