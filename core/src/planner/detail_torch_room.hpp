// SPDX-License-Identifier: MIT
// Whether the torch, as the cell describes it, clears the part where it welds.
#pragma once

#include "detail_stages.hpp"
#include "seamturn/plan/plan.hpp"

namespace seamturn::planner::detail {

/// Looks for headings of the torch's body, pass by pass, that meet neither members of the stage nor
/// what the part hangs on: into `headings` or `torch_meets` of the passes, with the warning
/// plan.torch.no_room. Along a straight course the heading stays; along arcs it may keep to the
/// travel or to the part; of rolled rings it stays. Nothing without a described body.
/// Needs the points of the passes. Source: none - geometry; docs/methods/torch-room.md.
/// Tests: planner/torch_room - closed-form, law.
void check_torch_room(const Inputs& inputs, const std::vector<StageWork>& stages, plan::Plan& plan);

}  // namespace seamturn::planner::detail
