// SPDX-License-Identifier: MIT
// A table for people: columns aligned, units in the head, wide ones cut over to fit the line.
#pragma once

#include <string>
#include <vector>

namespace seamturn::cli {

enum class Align { left, right };

class Table {
 public:
  struct Column {
    std::string head;
    std::string unit;  ///< second head line; may be empty
    Align align = Align::right;
  };
  explicit Table(std::vector<Column> columns, std::size_t gap = 2)
      : columns_(std::move(columns)), gap_(gap) {}
  /// Pre: as many cells as columns.
  void add_row(std::vector<std::string> cells);
  /// A line of dashes, before totals.
  void add_rule();
  /// Columns `gap` spaces apart; no trailing spaces; every line ends with a newline.
  [[nodiscard]] std::string text() const;

 private:
  std::vector<Column> columns_;
  std::size_t gap_ = 2;
  std::vector<std::vector<std::string>> rows_;  ///< an empty row is a rule
};

/// Characters as a reader counts them (UTF-8 continuation bytes not counted).
[[nodiscard]] std::size_t shown_width(const std::string& text);

/// A blank at which wrapped() does not break a line; it prints as a blank.
inline constexpr char unbreakable_blank = '\x01';

/// A head kept as written, and after it the text, its later lines indented by the head's width.
[[nodiscard]] std::string headed(const std::string& head,
                                 const std::string& text,
                                 std::size_t width);

/// Text broken at spaces to a width, later lines indented.
[[nodiscard]] std::string wrapped(const std::string& text, std::size_t width, std::size_t indent);

}  // namespace seamturn::cli
