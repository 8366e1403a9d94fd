// SPDX-License-Identifier: MIT
// What exactly meets its limit is within it, whatever the rounding of the numbers on the way.
#pragma once

namespace seamturn::base {

inline constexpr double rounding_ratio = 1e-9;  ///< of a value, or of a count that should be whole
inline constexpr double rounding_mm = 1e-9;

}  // namespace seamturn::base
