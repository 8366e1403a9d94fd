// SPDX-License-Identifier: MIT
// A fillet carried round the edge of its member: where the torch goes at both ends.
#pragma once

#include "seamturn/joint/joint.hpp"

namespace seamturn::joint {

/// The seam with its end returns as legs of its path: round the second member's edge, in the first
/// member's surface. Its stations then count from the end of the first return; nothing is asked for
/// at its ends any more. A segment has a return where it ends as the course drawn does. Seams
/// without returns, without a place, on arcs and closed ones come back
/// as they are (an arc's returns are metal and time, not points).
/// Units: mm, frame J.
/// Pre: a line's or polyline's wall_2 does not lie along wall_1.
/// Source: none - geometry; that the edge is square to the seam is taken for granted.
/// Tests: joint/end_returns - closed-form.
[[nodiscard]] Seam with_end_returns(const Seam& seam);

}  // namespace seamturn::joint
