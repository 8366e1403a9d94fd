// SPDX-License-Identifier: MIT
// How edges are cut. A wall is one edge seen by the weld: how far it stands off at every height.
#pragma once

#include <utility>
#include <vector>

#include "seamturn/section/weld_section.hpp"

namespace seamturn::section::detail {

/// A point of one wall: how far it stands off the gap's edge at a height. Straight in between.
struct WallPoint {
  double y_mm = 0.0;
  double out_mm = 0.0;
};
using Wall = std::vector<WallPoint>;  ///< rising y, at least two points

/// One face of a cut, from the root face upwards.
struct FaceCut {
  Angle lean;                   ///< off the plate's edge; 0: square
  double radius_mm = 0.0;       ///< round bottom, tangent to the root and to the leaning part
  double lower_depth_mm = 0.0;  ///< part next to the root that leans by ...
  Angle lower_lean;             ///< ... this
};
/// First and second member's face of one side of a groove.
[[nodiscard]] std::pair<FaceCut, FaceCut> faces_of(joint::GrooveForm form,
                                                   const joint::GrooveSide& side);

/// Heights of one side of a groove.
struct SideHeights {
  double land_mm = 0.0;  ///< square part under the cut that belongs to this side
  double cut_mm = 0.0;   ///< 0: square edge
};

/// An edge as cut: square over its land, then the face.
/// Pre: land >= 0, cut >= 0, one of them above; a round bottom fits into the cut.
[[nodiscard]] Wall make_wall(const SideHeights& heights, const FaceCut& face);
/// Half of a gouged cavity, from the middle plane. A shallow gouge is a segment of its circle.
[[nodiscard]] Wall gouge_wall(const joint::Gouge& gouge);
/// Height of a round bottom: R (1 - sin lean).
[[nodiscard]] double round_height_mm(double radius_mm, Angle lean);

/// What a weld of some depth sees of an edge: the part below it cut off, heights counted anew.
/// Pre: 0 < depth <= the wall's height.
[[nodiscard]] Wall upper_part(const Wall& wall, double depth_mm);
/// The wall moved off by a distance.
[[nodiscard]] Wall moved_out(Wall wall, double by_mm);
/// The outer of two walls that end at one surface; where only the higher one stands, that one.
/// Pre: the tops are the surface; at the shorter one's foot the higher is not inside of it.
[[nodiscard]] Wall outer_of(const Wall& a, const Wall& b);

[[nodiscard]] double out_at_mm(const Wall& wall, double y_mm);

}  // namespace seamturn::section::detail
