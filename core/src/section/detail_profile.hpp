// SPDX-License-Identifier: MIT
// How walls become a profile. Every preparation is two walls and a gap; all areas, widths and
// heights come from the one profile they make.
#pragma once

#include <vector>

#include "seamturn/section/weld_section.hpp"

namespace seamturn::section::detail {

/// A point of one wall: how far it stands off the gap's edge at a height. Straight in between, so a
/// curved wall (U, J) is a row of short pieces.
struct WallPoint {
  double y_mm = 0.0;
  double out_mm = 0.0;
};
using Wall = std::vector<WallPoint>;  ///< rising y, at least two points

/// An edge as cut: square over its whole thickness.
[[nodiscard]] Wall square_wall(double thickness_mm);
/// An edge as cut: square up to the root face, then leaning out.
/// Pre: 0 <= root face < thickness.
[[nodiscard]] Wall bevelled_wall(double thickness_mm, double root_face_mm, Angle lean);
/// What a weld of some depth sees of an edge: the part below it cut off, heights counted anew.
/// Pre: 0 < depth <= the wall's height.
[[nodiscard]] Wall upper_part(const Wall& wall, double depth_mm);

/// Both walls of a groove at every height where one of them bends.
/// Pre: walls of equal height; edges of the gap left <= right.
struct GapEdges {
  double left_mm = 0.0;
  double right_mm = 0.0;
};
[[nodiscard]] std::vector<Slice> groove_profile(const Wall& left,
                                                const Wall& right,
                                                const GapEdges& gap);
/// The triangle between two plates and a flat face; leg 1 on the side x > 0.
[[nodiscard]] std::vector<Slice> fillet_profile(const joint::Fillet& fillet, Angle between_plates);

/// Area of the whole profile: trapezia, exact for straight walls.
[[nodiscard]] double profile_area_mm2(const std::vector<Slice>& profile);

/// The outline anticlockwise from the root: up the right wall, over the cap, down the left wall.
[[nodiscard]] std::vector<Point> outline_of(const WeldSection& section);

}  // namespace seamturn::section::detail
