// SPDX-License-Identifier: MIT
// Helpers shared by the size rules of the joint room.
#pragma once

#include <string>
#include <vector>

#include "seamturn/joint/size_check.hpp"

namespace seamturn::joint::detail {

inline constexpr double largest_size_mm = 1000.0;  // project choice: beyond it, a slip of unit

/// A fillet counts with no more leg than its length over this.
inline constexpr double legs_in_length = 4.0;

/// Adds "leg must be above 0 mm and up to 1000 mm, found ..." when it is not.
void note_bad_size(std::vector<std::string>& wrong, const std::string& name, double value_mm);
/// One text of all of them, separated by "; ".
[[nodiscard]] std::string joined(const std::vector<std::string>& wrong);

}  // namespace seamturn::joint::detail
