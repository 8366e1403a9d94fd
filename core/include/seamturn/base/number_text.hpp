// SPDX-License-Identifier: MIT
// Numbers as text, independent of the locale.
#pragma once

#include <string>

namespace seamturn::base {

/// Shortest text that reads back to the same double; never an exponent between 1e-5 and 1e15.
/// Pre: finite. Source: none - std::to_chars. Tests: base/number_text - law.
[[nodiscard]] std::string shortest_text(double value);

/// With a fixed number of decimals; "-0.0" is written "0.0".
/// Pre: finite, 0 <= decimals <= 12.
[[nodiscard]] std::string fixed_text(double value, int decimals);

}  // namespace seamturn::base
