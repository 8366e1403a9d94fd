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

/// As a person writes a computed value: so many significant digits, zeros at the end left out,
/// never an exponent. For messages and tables; programs get shortest_text. Pre: finite, 1 <=
/// significant <= 12. Tests: base/number_text - closed-form.
[[nodiscard]] std::string digits_text(double value, int significant = 4);

/// Two numbers of which a message says that they differ: with so many decimals, or with as many
/// more, six at most, as it takes until they do not read alike. Pre: finite, 0 <= decimals <= 6.
/// Source: none. Tests: base/number_text - closed-form.
struct TwoTexts {
  std::string first;
  std::string second;
};
[[nodiscard]] TwoTexts told_apart(double first, double second, int decimals);

}  // namespace seamturn::base
