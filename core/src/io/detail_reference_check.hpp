// SPDX-License-Identifier: MIT
// The '&' of XML: five named characters and numbered ones; anything else is a mistake.
#pragma once

#include <cstddef>
#include <string>
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

/// A value as XML 1.0 section 3.3.3 has it read: a tab or a line end is a blank, a reference the
/// character it means. One that means nothing stays as written.
[[nodiscard]] std::string value_read(std::string_view written);

}  // namespace seamturn::io::detail
