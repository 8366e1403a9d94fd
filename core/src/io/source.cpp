// SPDX-License-Identifier: MIT
#include <algorithm>

#include "detail_source.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

constexpr std::size_t widest_excerpt = 160;  // characters
constexpr std::size_t kept_before = 80;      // of them, left of the column when a line is cut

bool starts_character(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
}

/// Byte offset `count` characters left or right of an offset, kept inside [low, high].
std::size_t stepped_left(std::string_view bytes,
                         std::size_t at,
                         std::size_t count,
                         std::size_t low) {
  while (count > 0 && at > low) {
    --at;
    if (starts_character(bytes[at])) --count;
  }
  return at;
}

std::size_t stepped_right(std::string_view bytes,
                          std::size_t at,
                          std::size_t count,
                          std::size_t high) {
  while (count > 0 && at < high) {
    ++at;
    if (at >= high || starts_character(bytes[at])) --count;
  }
  return at;
}

}  // namespace

Excerpt excerpt_at(const Source& source, std::size_t offset) {
  const std::string_view bytes = source.bytes();
  const base::LineExtent line = source.line(offset);
  const std::size_t at = std::min(offset, line.end);
  const std::size_t first = stepped_right(bytes, line.begin, widest_excerpt, line.end) == line.end
                                ? line.begin
                                : stepped_left(bytes, at, kept_before, line.begin);
  const std::size_t last = stepped_right(bytes, first, widest_excerpt, line.end);

  Excerpt excerpt;
  std::string_view shown = bytes.substr(first, last - first);
  if (first > line.begin) {
    // Three dots stand for three characters, so columns stay true.
    excerpt.text = "...";
    shown.remove_prefix(stepped_right(shown, 0, 3, shown.size()));
  }
  excerpt.text += printable(shown);
  if (last < line.end) excerpt.text += "...";
  excerpt.first_column = source.place(first).column;
  return excerpt;
}

}  // namespace seamturn::io::detail
