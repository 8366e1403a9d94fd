// SPDX-License-Identifier: MIT
// How walls become a profile. Every preparation is two walls and a gap; all areas, widths and
// heights come from the one profile they make.
#pragma once

#include <vector>

#include "detail_walls.hpp"
#include "seamturn/section/weld_section.hpp"

namespace seamturn::section::detail {

/// Both walls of a groove at every height where one of them bends.
/// Pre: walls of equal height; edges of the gap left <= right.
struct GapEdges {
  double left_mm = 0.0;
  double right_mm = 0.0;
};
[[nodiscard]] std::vector<Slice> groove_profile(const Wall& left,
                                                const Wall& right,
                                                const GapEdges& gap);

/// Profile of one side of a groove: the metal that side takes.
/// Pre: check_params found nothing.
[[nodiscard]] std::vector<Slice> side_profile(const joint::Groove& groove,
                                              const SectionParams& params);

/// The triangle between two plates and a flat face; leg 1 on the side x > 0.
struct Legs {
  double leg_1_mm = 0.0;
  double leg_2_mm = 0.0;
};
[[nodiscard]] std::vector<Slice> fillet_profile(const Legs& legs, Angle between_plates);

/// Area of the whole profile: trapezia, exact for straight walls.
[[nodiscard]] double profile_area_mm2(const std::vector<Slice>& profile);

/// Area between a chord and the circle's arc over it. Pre: 0 <= rise <= chord / 2.
[[nodiscard]] double circle_segment_mm2(double chord_mm, double rise_mm);

/// The outline anticlockwise from the root: up the right wall, over the cap, down the left wall.
[[nodiscard]] std::vector<Point> outline_of(const WeldSection& section);
/// The same of a fillet, with the face's bulge and the metal behind the root.
struct BehindRoot {
  double gap_mm = 0.0;
  double reach_mm = 0.0;
};
[[nodiscard]] std::vector<Point> fillet_outline(const WeldSection& section,
                                                Angle between_plates,
                                                const BehindRoot& behind);

}  // namespace seamturn::section::detail
