// SPDX-License-Identifier: MIT
// Words one after another, for people.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace seamturn::base {

/// "R1, R2, LO_0r"; empty without words. Source: none. Tests: base/listed - closed-form.
[[nodiscard]] std::string listed(std::span<const std::string> words,
                                 std::string_view between = ", ");

}  // namespace seamturn::base
