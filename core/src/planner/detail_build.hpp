// SPDX-License-Identifier: MIT
// The whole build on the clock, and what its stages close off.
#pragma once

#include "detail_stages.hpp"
#include "seamturn/plan/plan.hpp"
#include "seamturn/planner/planner.hpp"

namespace seamturn::planner::detail {

/// Stances, joints as placed, and the order stage by stage, with the re-hangs between them. Where a
/// seam or a stage finds no stance the findings say so and nothing is ordered.
/// Pre: a cell is named; every stage with joints has a set-up.
void order_build(const Inputs& inputs,
                 const PlanParams& params,
                 const std::vector<StageWork>& stages,
                 std::vector<JointWork>& joints,
                 plan::Plan& plan);

/// Stages and operations without a clock, where no cell is named.
void list_build(const std::vector<StageWork>& stages, plan::Plan& plan);

/// Seams no torch gets to. Error stage.seam.hidden where the file states stages and a seam is
/// welded too late; a warning where it states none. What a member closes off that is welded before
/// goes into the plan's stages.
void check_hidden(const Inputs& inputs, const std::vector<StageWork>& stages, plan::Plan& plan);

}  // namespace seamturn::planner::detail
