// SPDX-License-Identifier: MIT
// How far a part goes on from a point: the way heat can take from a weld.
#pragma once

#include "seamturn/joint/member.hpp"

namespace seamturn::joint {

/// Direction across a seam along a part's wall: from the weld line into the part, or out of it. The
/// other way is its opposite. In a plate or ring it lies in the plane, in a tube in the wall.
/// Frame J, unit length. Pre: the tangent is a unit vector, not across the wall.
/// Outside: zero where the seam runs across the wall. Tests: joint/extent - closed-form.
[[nodiscard]] geom::Vec3 across_wall(const Member& member,
                                     const geom::Vec3& p_J,
                                     const geom::Vec3& tangent_J);

/// Length of metal from a point, brought into the part if it lies a gap away, in a direction along
/// the wall: straight to the edge of a plate or ring (or its hole), to the end of a tube, bar or
/// forging. Round the wall of those: half the way round.
/// Units: mm. Frame J. Pre: the direction is a unit vector. Tests: joint/extent - closed-form.
[[nodiscard]] double extent_mm(const Member& member,
                               const geom::Vec3& p_J,
                               const geom::Vec3& direction_J);

}  // namespace seamturn::joint
