// SPDX-License-Identifier: MIT
// Words one after another, and how many there are, for people.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace seamturn::base {

/// "R1, R2, LO_0r"; empty without words. Source: none. Tests: base/listed - closed-form.
[[nodiscard]] std::string listed(std::span<const std::string> words,
                                 std::string_view between = ", ");

/// "1 joint", "2 joints"; `many` where an s does not make it: counted(2, "pass", "passes").
/// Source: none. Tests: base/listed - closed-form.
[[nodiscard]] std::string counted(std::size_t count,
                                  std::string_view one,
                                  std::string_view many = {});

/// "1-3, 5": whole numbers in rising order, neighbours as runs; empty without numbers.
/// Source: none. Tests: base/listed - closed-form.
[[nodiscard]] std::string listed_runs(std::span<const int> numbers);

}  // namespace seamturn::base
