// SPDX-License-Identifier: MIT
// "Did you mean ...?": the nearest known name to one that was mistyped.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace seamturn::base {

/// Edit distance with neighbouring letters swapped counted as one step.
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b);

/// The known name nearest to `name` (ties: first in the list); nothing when more than a third of
/// its letters, at least one, would have to change.
[[nodiscard]] std::optional<std::string> find_near_name(std::string_view name,
                                                        std::span<const std::string_view> known);

}  // namespace seamturn::base
