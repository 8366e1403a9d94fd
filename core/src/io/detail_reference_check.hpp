// SPDX-License-Identifier: MIT
// The '&' of XML: five named characters and numbered ones; anything else is a mistake.
#pragma once

#include <cstddef>
#include <string_view>

#include "detail_report.hpp"
#include "detail_source.hpp"

namespace seamturn::io::detail {

/// Reports every reference of a value (at a byte offset) that means nothing. False: one of them
/// numbers a character that text must not hold, so the file must not be read on.
[[nodiscard]] bool check_references(const Source& source,
                                    std::size_t offset,
                                    std::string_view value,
                                    Report& report);

}  // namespace seamturn::io::detail
