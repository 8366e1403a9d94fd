// SPDX-License-Identifier: MIT
// First stage: section, heat limits and pass stacks of every joint.
#pragma once

#include <optional>
#include <vector>

#include "detail_work.hpp"
#include "seamturn/base/finding.hpp"

namespace seamturn::planner::detail {

/// Works out every joint; what cannot be is a finding and the joint is left out.
[[nodiscard]] std::vector<JointWork> work_joints(const Inputs& inputs,
                                                 std::vector<base::Finding>& findings);

/// Preheat, interpass maximum and carbon equivalents of a joint whose stacks are laid.
[[nodiscard]] std::optional<procedure::HeatLimits> heat_limits(
    const Inputs& inputs, const JointWork& work, std::vector<base::Finding>& findings);

}  // namespace seamturn::planner::detail
