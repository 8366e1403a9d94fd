// SPDX-License-Identifier: MIT
// The order of a plan in the words of an order by hand, for a person to change.
#pragma once

#include <string>
#include <vector>

#include "seamturn/plan/plan.hpp"

namespace seamturn::plan {

/// One a stage that welds, as planned. By layers; a seam of which other seams come between the
/// passes of a layer, by passes; what follows one another is one entry. Put into the weldment, it
/// is an order the plan may choose (docs/methods/order.md).
/// Pre: the plan is ordered; without a cell it is empty. Tests: planner/order_to_edit - law
/// (planned again by it, every pass keeps its place).
[[nodiscard]] std::vector<joint::HandOrder> order_to_edit(const Plan& plan);

}  // namespace seamturn::plan
