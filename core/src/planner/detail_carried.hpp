// SPDX-License-Identifier: MIT
// Whether the tacks of each member fitted carry it through the turns. Private to the room.
#pragma once

#include <optional>
#include <vector>

#include "detail_stages.hpp"
#include "seamturn/plan/plan.hpp"

namespace seamturn::planner::detail {

/// The tacks of a seam as drawn. The plan has none where they were refused.
struct LaidTacks {
  const JointWork* joint = nullptr;
  tack::TackSeam seam;
  tack::TackPlan plan;
};

/// Members on their tacks in every stage, those welded together before it as one; needs the order
/// and the hooks. Warns plan.tacks.carry; notes plan.tacks.not_asked.
void assemble_carried(const Inputs& inputs,
                      const std::vector<StageWork>& stages,
                      const std::vector<LaidTacks>& laid,
                      plan::Plan& plan);

}  // namespace seamturn::planner::detail
