// SPDX-License-Identifier: MIT
// A groove closed from both sides: one sequence of passes, with gouging between them.
#pragma once

#include <vector>

#include "detail_work.hpp"

namespace seamturn::planner::detail {

/// A pass of one side, in the order of welding.
struct SidePass {
  int side = 1;
  int pass = 0;                ///< index into the stack of its side
  bool after_gouging = false;  ///< the root is gouged out just before
};

/// Which pass follows which by pass::alternate_sides; a gouged joint is gouged before side 2. Not
/// balanced: side 2 is filled once begun.
/// Pre: joint::has_two_sides(joint), stacks with passes.
[[nodiscard]] std::vector<SidePass> weld_order(const joint::Joint& joint,
                                               const pass::PassStack& side_1,
                                               const pass::PassStack& side_2,
                                               bool is_balanced = true);

}  // namespace seamturn::planner::detail
