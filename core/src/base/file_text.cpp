// SPDX-License-Identifier: MIT
#include "seamturn/base/file_text.hpp"

#include <algorithm>
#include <string_view>

namespace seamturn::base {

namespace {

constexpr std::size_t block_size = 256;
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

bool starts_character(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
}

std::size_t count_characters(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), starts_character));
}

}  // namespace

FileText::FileText(std::string name, std::string bytes)
    : name_(std::move(name)), bytes_(std::move(bytes)) {}

const FileText::Counts& FileText::counts() const {
  std::call_once(counted_, [this] {
    counts_.line_starts.push_back(bytes_.starts_with(byte_order_mark) ? byte_order_mark.size() : 0);
    std::size_t characters = 0;
    for (std::size_t i = 0; i < bytes_.size(); ++i) {
      if (i % block_size == 0) counts_.block_characters.push_back(characters);
      if (starts_character(bytes_[i])) ++characters;
      if (bytes_[i] == '\n') counts_.line_starts.push_back(i + 1);
    }
    counts_.block_characters.push_back(characters);
  });
  return counts_;
}

std::size_t FileText::line_index(std::size_t offset) const {
  const std::vector<std::size_t>& starts = counts().line_starts;
  const auto after = std::upper_bound(starts.begin(), starts.end(), offset);
  return after == starts.begin() ? 0 : static_cast<std::size_t>(after - starts.begin()) - 1;
}

std::size_t FileText::characters_before(std::size_t offset) const {
  const std::size_t block = offset / block_size;
  const std::size_t start = block * block_size;
  return counts().block_characters[block] +
         count_characters(std::string_view(bytes_).substr(start, offset - start));
}

Place FileText::place(std::size_t offset) const {
  const std::size_t at = std::min(offset, bytes_.size());
  const std::size_t column = characters_before(at) - characters_before(line(at).begin) + 1;
  return Place{name_, static_cast<int>(line_index(at)) + 1, static_cast<int>(column)};
}

LineExtent FileText::line(std::size_t offset) const {
  const std::vector<std::size_t>& starts = counts().line_starts;
  const std::size_t at = std::min(offset, bytes_.size());
  const std::size_t index = line_index(at);
  LineExtent line;
  line.begin = std::min(starts[index], at);  // the byte order mark stands before the first line
  line.end = index + 1 < starts.size() ? starts[index + 1] - 1 : bytes_.size();
  if (line.end > line.begin && bytes_[line.end - 1] == '\r') --line.end;
  return line;
}

}  // namespace seamturn::base
