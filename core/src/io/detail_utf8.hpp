// SPDX-License-Identifier: MIT
// UTF-8 as RFC 3629 allows it: shortest form, no surrogates, nothing above U+10FFFF.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace seamturn::io::detail {

inline constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// One character and its length in bytes; length 0: the bytes are no UTF-8.
struct Character {
  std::uint32_t code = 0;
  std::size_t length = 0;
};

/// The character at the start of a text. Pre: the text is not empty.
[[nodiscard]] Character character_at_start(std::string_view text);

/// The bytes of a character. Pre: one that UTF-8 can hold.
[[nodiscard]] std::string utf8_text(std::uint32_t code);

/// XML 1.0 (fifth edition) section 2.2: characters a document may hold.
[[nodiscard]] bool is_xml_character(std::uint32_t code);

/// The text with every byte or character that XML does not allow replaced by '?'.
[[nodiscard]] std::string printable(std::string_view text);

/// The text in double quotes, cut after 60 bytes, safe to print.
[[nodiscard]] std::string in_quotes(std::string_view text);

}  // namespace seamturn::io::detail
