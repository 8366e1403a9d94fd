// SPDX-License-Identifier: MIT
// The chain of stages from a weldment to a finished plan.
#pragma once

#include <functional>
#include <string_view>

#include "seamturn/plan/plan.hpp"
#include "seamturn/planner/inputs.hpp"

namespace seamturn::planner {

struct PlanParams {
  /// Of the whole build; stages share it by their size.
  order::SearchParams search = order::search_params(order::Effort::normal);
  std::function<void(std::string_view stage)> progress;  ///< may be empty
};

/// Plans a weldment.
/// Pre: inputs came from a reader that reported no errors.
/// Outside: throws base::InputError with every finding when any is an error; warnings stay in the
///   plan. Same inputs, same plan.
/// Source: each stage's own. Tests: planner/planner - laws over every file of joints/.
[[nodiscard]] plan::Plan make_plan(const Inputs& inputs, const PlanParams& params = {});

}  // namespace seamturn::planner
