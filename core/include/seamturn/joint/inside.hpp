// SPDX-License-Identifier: MIT
// Does a point lie in the steel of a member?
#pragma once

#include "seamturn/joint/member.hpp"

namespace seamturn::joint {

/// Whether a point lies in the member's solid, or no farther than `grown_mm` from its surface: the
/// solid enlarged by so much on every face, into bores too, its outer edges rounded by as much.
/// A point on a face is inside (to 1e-9 mm). A bore no wider than twice the growth closes.
/// Units: mm; frame J. Pre: finite; grown >= 0; the shape is as its struct says.
/// Outside: n/a. Source: none - geometry.
/// Accuracy: rounding. Tests: joint/inside - closed-form, cross, law.
[[nodiscard]] bool is_inside(const Member& member, const geom::Vec3& p_J, double grown_mm = 0.0);

}  // namespace seamturn::joint
