// SPDX-License-Identifier: MIT
// The plates beside a weld, in the section frame. They run on beyond every picture.
#pragma once

#include "pass_drawing/subject.hpp"

namespace seamturn::pass_drawing {

enum class Part { member_1, member_2, backing };

struct Plate {
  Part part = Part::member_1;
  Polygon shape;  ///< the weld covers what was cut off for it
};
[[nodiscard]] std::vector<Plate> plates_of(const Subject& subject);

/// The cut of side 2 while side 1 is welded, in the frame of side 1; empty where the plan does not
/// tell it: not cut at all, or gouged later out of round walls.
[[nodiscard]] Polygon open_cut(const Subject& subject);

/// Walls of the root gap: x of the first and of the second member's edge. Grooves.
struct RootEdges {
  double first_mm = 0.0;
  double second_mm = 0.0;
};
[[nodiscard]] RootEdges root_edges(const Subject& subject);

}  // namespace seamturn::pass_drawing
