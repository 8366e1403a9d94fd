// SPDX-License-Identifier: MIT
// The text of one file, and where in it something stands.
#pragma once

#include <cstddef>
#include <mutex>
#include <string>
#include <vector>

#include "seamturn/base/finding.hpp"

namespace seamturn::base {

/// Byte offsets of a line: its first byte, and the one behind its last without the line end.
struct LineExtent {
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// Lines and columns count from 1; a column counts characters of UTF-8, a tab is one. A byte order
/// mark is no column. Lines end at LF, so CR LF is one line end. Not movable: spots point to it.
class FileText {
 public:
  FileText(std::string name, std::string bytes);
  FileText(const FileText&) = delete;
  FileText& operator=(const FileText&) = delete;
  ~FileText() = default;

  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] const std::string& bytes() const { return bytes_; }
  /// Place of a byte offset; beyond the end: the end.
  [[nodiscard]] Place place(std::size_t offset) const;
  /// The line around an offset; beyond the end: the last.
  [[nodiscard]] LineExtent line(std::size_t offset) const;

 private:
  struct Counts {
    std::vector<std::size_t> line_starts;
    std::vector<std::size_t> block_characters;  // before each block, so that long lines stay cheap
  };
  /// Counted when somebody first asks: nobody does for a sound file.
  [[nodiscard]] const Counts& counts() const;
  [[nodiscard]] std::size_t line_index(std::size_t offset) const;
  [[nodiscard]] std::size_t characters_before(std::size_t offset) const;

  std::string name_;
  std::string bytes_;
  mutable std::once_flag counted_;
  mutable Counts counts_;
};

/// A byte of a file, as long as the file's text lives.
struct Spot {
  const FileText* file = nullptr;
  std::size_t offset = 0;

  /// Pre: file is not null.
  [[nodiscard]] Place place() const { return file->place(offset); }
};

}  // namespace seamturn::base
