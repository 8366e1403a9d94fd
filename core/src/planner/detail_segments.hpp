// SPDX-License-Identifier: MIT
// Which seams are welded in segments, before anything is worked out.
#pragma once

#include <vector>

#include "seamturn/base/finding.hpp"
#include "seamturn/planner/inputs.hpp"

namespace seamturn::planner::detail {

/// The inputs with stops apart (detail_starts.hpp) and with seams in segments: those the file
/// splits; rings on the member of a datum that asks for arcs; unless balance is off, by the
/// library's row lines and arcs longer than it says (not those of a ring drawn in arcs), and
/// circles as long that the positioner of their stage does not roll; and what keeps step with one
/// of these, unless the file says how many segments it has. Intermittent seams, plugs, polylines
/// (unless the file splits them) and seams without a place stay as they are. What the file does not
/// ask of a seam itself gives it no more segments than are long enough. Overlap is the seam's own,
/// else the library's. Outside: error plan.segments.short (a segment the file asks for is not twice
/// as long as stagger and overlap), warning plan.segments.corner, note plan.segments (which ones,
/// and why). Source: none - rules of this model (docs/methods/order.md). Tests: planner/segments.
[[nodiscard]] Inputs in_segments(const Inputs& inputs, std::vector<base::Finding>& findings);

}  // namespace seamturn::planner::detail
