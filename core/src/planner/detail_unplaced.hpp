// SPDX-License-Identifier: MIT
// What is said of a seam that no stance holds.
#pragma once

#include <string>
#include <vector>

#include "detail_work.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/cell/cell.hpp"

namespace seamturn::planner::detail {

/// What rolling a ring takes of the last axis and what that has: "; rolled, it takes ...".
/// Pre: the seam is a ring of one stretch.
[[nodiscard]] std::string rolling_text(const cell::Positioner& positioner, const SeamWork& ring);

/// The first finding of each code, told how many more there are: more would hide what they say.
[[nodiscard]] std::vector<base::Finding> one_of_a_kind(std::vector<base::Finding> findings);

}  // namespace seamturn::planner::detail
