// SPDX-License-Identifier: MIT
#include <string>
#include <string_view>

#include "detail_encoding_check.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

using std::string_view_literals::operator""sv;

std::string hex(std::uint32_t value, std::size_t digits) {
  constexpr std::string_view symbols = "0123456789ABCDEF";
  std::string text(digits, '0');
  for (std::size_t i = digits; i > 0 && value > 0; --i, value >>= 4U) {
    text[i - 1] = symbols[value & 0xFU];
  }
  return text;
}

bool is_wide_encoding(std::string_view bytes) {
  for (const std::string_view mark :
       {"\xFF\xFE"sv, "\xFE\xFF"sv, "\0\0\xFE\xFF"sv, "<\0"sv, "\0<"sv}) {
    if (bytes.starts_with(mark)) return true;
  }
  return false;
}

/// Blanks, line ends and the visible characters of ASCII: nearly all of what we read. As a signed
/// byte, what is not ASCII is negative.
constexpr bool is_plain(signed char c) {
  return (c >= ' ' && c != 0x7F) || c == '\t' || c == '\n' || c == '\r';
}

/// How many bytes at the start are plain, in whole blocks. No branch inside a block, so that the
/// compiler may look at many bytes at once.
std::size_t plain_at_start(std::string_view bytes) {
  constexpr std::size_t block_size = 64;
  std::size_t at = 0;
  while (bytes.size() - at >= block_size) {
    unsigned char others = 0;
    for (std::size_t i = 0; i < block_size; ++i) {
      others = static_cast<unsigned char>(others | (is_plain(bytes[at + i]) ? 0U : 1U));
    }
    if (others > 0) break;
    at += block_size;
  }
  return at;
}

}  // namespace

bool is_control(std::uint32_t code) {
  const bool higher = code >= 0x7FU && code <= 0x9FU && code != 0x85U;
  return higher || !is_xml_character(code);
}

Encoding check_encoding(const Source& source, Report& report) {
  std::string_view bytes = source.bytes();
  if (is_wide_encoding(bytes)) {
    report.error(Spot{&source, 0},
                 "read.encoding.not_utf8",
                 "the file is written in UTF-16 or UTF-32; expected UTF-8; save it as UTF-8");
    return Encoding::unreadable;
  }
  if (bytes.starts_with(byte_order_mark)) bytes.remove_prefix(byte_order_mark.size());
  if (bytes.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    report.error(Spot{&source, 0},
                 "read.file.empty",
                 "the file holds nothing; expected an XML document with a root element");
    return Encoding::unreadable;
  }
  Encoding found = Encoding::sound;
  std::size_t at = source.bytes().size() - bytes.size();
  while (true) {
    const std::size_t plain = plain_at_start(bytes);
    bytes.remove_prefix(plain);
    at += plain;
    if (bytes.empty()) return found;
    const Character character = character_at_start(bytes);
    if (character.length == 0) {
      const auto byte = static_cast<unsigned char>(bytes.front());
      report.error(Spot{&source, at},
                   "read.encoding.not_utf8",
                   "byte " + hex(byte, 2) +
                       " (hexadecimal) is no UTF-8 here; expected UTF-8 text; save the file as "
                       "UTF-8, or check that it is XML at all");
      return Encoding::unreadable;
    }
    if (is_control(character.code)) {
      report.error(Spot{&source, at},
                   "read.xml.control_character",
                   "control character U+" + hex(character.code, 4) +
                       " found; expected text; delete it (a hidden character, often pasted in)");
      found = Encoding::control_characters;
    }
    bytes.remove_prefix(character.length);
    at += character.length;
  }
}

}  // namespace seamturn::io::detail
