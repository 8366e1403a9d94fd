// SPDX-License-Identifier: MIT
#include <algorithm>

#include "detail_source.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

constexpr std::size_t block_size = 256;
constexpr std::size_t widest_excerpt = 160;  // characters
constexpr std::size_t kept_before = 80;      // of them, left of the column when a line is cut

bool starts_character(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
}

std::size_t count_characters(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), starts_character));
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

Source::Source(std::string name, std::string bytes)
    : name_(std::move(name)), bytes_(std::move(bytes)) {
  line_starts_.push_back(bytes_.starts_with(byte_order_mark) ? byte_order_mark.size() : 0);
  std::size_t characters = 0;
  for (std::size_t i = 0; i < bytes_.size(); ++i) {
    if (i % block_size == 0) block_characters_.push_back(characters);
    if (starts_character(bytes_[i])) ++characters;
    if (bytes_[i] == '\n') line_starts_.push_back(i + 1);
  }
  block_characters_.push_back(characters);
}

std::size_t Source::line_index(std::size_t offset) const {
  const auto after = std::upper_bound(line_starts_.begin(), line_starts_.end(), offset);
  return after == line_starts_.begin() ? 0
                                       : static_cast<std::size_t>(after - line_starts_.begin()) - 1;
}

std::size_t Source::characters_before(std::size_t offset) const {
  const std::size_t block = offset / block_size;
  const std::size_t start = block * block_size;
  return block_characters_[block] +
         count_characters(std::string_view(bytes_).substr(start, offset - start));
}

base::Place Source::place(std::size_t offset) const {
  const std::size_t at = std::min(offset, bytes_.size());
  if (line_starts_.empty()) return base::Place{name_, 1, 1};
  const std::size_t line = line_index(at);
  const std::size_t start = std::min(line_starts_[line], at);
  const std::size_t column = characters_before(at) - characters_before(start) + 1;
  return base::Place{name_, static_cast<int>(line) + 1, static_cast<int>(column)};
}

Excerpt Source::excerpt(std::size_t offset) const {
  if (line_starts_.empty()) return {};
  const std::string_view bytes = bytes_;
  const std::size_t at = std::min(offset, bytes.size());
  const std::size_t line = line_index(at);
  const std::size_t start = std::min(line_starts_[line], at);
  std::size_t end = line + 1 < line_starts_.size() ? line_starts_[line + 1] - 1 : bytes.size();
  if (end > start && bytes[end - 1] == '\r') --end;
  const std::size_t first = stepped_right(bytes, start, widest_excerpt, end) == end
                                ? start
                                : stepped_left(bytes, std::min(at, end), kept_before, start);
  const std::size_t last = stepped_right(bytes, first, widest_excerpt, end);

  Excerpt excerpt;
  std::string_view shown = bytes.substr(first, last - first);
  if (first > start) {
    // Three dots stand for three characters, so columns stay true.
    excerpt.text = "...";
    shown.remove_prefix(stepped_right(shown, 0, 3, shown.size()));
  }
  excerpt.text += printable(shown);
  if (last < end) excerpt.text += "...";
  excerpt.first_column = static_cast<int>(characters_before(first) - characters_before(start)) + 1;
  return excerpt;
}

}  // namespace seamturn::io::detail
