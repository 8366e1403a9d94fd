// SPDX-License-Identifier: MIT
// The bytes of one file, and where in it something stands.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/base/finding.hpp"

namespace seamturn::io::detail {

/// A piece of a source line for people, and the column its first character has in the line.
struct Excerpt {
  std::string text;
  int first_column = 1;
};

/// Lines and columns count from 1; a column counts characters of UTF-8, a tab is one. A byte order
/// mark is no column. Lines end at LF, so CR LF is one line end.
class Source {
 public:
  Source() = default;
  Source(std::string name, std::string bytes);
  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] const std::string& bytes() const { return bytes_; }
  /// Place of a byte offset; beyond the end: the end.
  [[nodiscard]] base::Place place(std::size_t offset) const;
  /// The line around an offset, cut to about 160 characters; what no terminal should get becomes
  /// '?'.
  [[nodiscard]] Excerpt excerpt(std::size_t offset) const;

 private:
  [[nodiscard]] std::size_t line_index(std::size_t offset) const;
  [[nodiscard]] std::size_t characters_before(std::size_t offset) const;

  std::string name_;
  std::string bytes_;
  std::vector<std::size_t> line_starts_;
  std::vector<std::size_t> block_characters_;  // before each block, so that long lines stay cheap
};

/// A place in a source that outlives the parser.
struct Spot {
  const Source* source = nullptr;
  std::size_t offset = 0;
};

}  // namespace seamturn::io::detail
