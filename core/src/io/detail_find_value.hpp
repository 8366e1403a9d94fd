// SPDX-License-Identifier: MIT
// Where an attribute stands in a start tag, sought in the text itself when somebody asks.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace seamturn::io::detail {

/// Byte offset of the value of an attribute, the first of that name; none when absent.
/// Pre: the text passed the markup check; `element` is the offset of the element's name.
[[nodiscard]] std::optional<std::size_t> find_value(std::string_view text,
                                                    std::size_t element,
                                                    std::string_view attribute);

}  // namespace seamturn::io::detail
