// SPDX-License-Identifier: MIT
// The bytes before any markup: is this UTF-8 text with nothing in it that text should not hold?
#pragma once

#include <cstdint>

#include "detail_report.hpp"
#include "detail_source.hpp"

namespace seamturn::io::detail {

enum class Encoding { sound, control_characters, unreadable };

/// Reports an empty file, UTF-16 or -32, the first byte that is no UTF-8, every control character.
[[nodiscard]] Encoding check_encoding(const Source& source, Report& report);

/// Controls beyond tab and line ends: some terminals obey them, no weldment needs them.
[[nodiscard]] bool is_control(std::uint32_t code);

}  // namespace seamturn::io::detail
