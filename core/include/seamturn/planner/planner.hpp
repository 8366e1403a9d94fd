// SPDX-License-Identifier: MIT
// The chain of stages from a weldment to a finished plan.
#pragma once

#include <functional>
#include <optional>
#include <string_view>

#include "seamturn/plan/plan.hpp"
#include "seamturn/planner/earlier_order.hpp"
#include "seamturn/planner/inputs.hpp"

namespace seamturn::planner {

struct PlanParams {
  /// Of the whole build; stages share it by their size.
  order::SearchParams search = order::search_params(order::Effort::normal);
  /// With which the search begins: the plan is then no worse than it, by seconds and what turns and
  /// entries are worth together, as far as its blocks are still those of the weldment. A note
  /// plan.start.used or a warning plan.start.unused tells what became of it.
  std::optional<EarlierOrder> start;
  std::function<void(std::string_view stage)> progress;  ///< may be empty
};

/// Plans a weldment.
/// Pre: inputs came from a reader that reported no errors. What may be changed in them since:
///   docs/cpp.md. A name of nothing, or a cell without a set-up, is a ContractViolation.
/// Outside: throws base::InputError with every finding when any is an error; warnings stay in the
///   plan. Same inputs, same plan.
/// Source: each stage's own. Tests: planner/planner - laws over every file of joints/.
[[nodiscard]] plan::Plan make_plan(const Inputs& inputs, const PlanParams& params = {});

}  // namespace seamturn::planner
