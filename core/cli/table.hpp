// SPDX-License-Identifier: MIT
// A table for people: columns aligned, units in the head; where a line would be too wide, the
// widest columns of words are broken over further lines.
#pragma once

#include <string>
#include <vector>

namespace seamturn::cli {

inline constexpr std::size_t line_width = 100;

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
  /// Columns `gap` spaces apart, or one where a line would be too wide; no trailing spaces; every
  /// line ends with a newline. Wider than line_width only where the columns of numbers and the
  /// heads alone are.
  [[nodiscard]] std::string text() const;

 private:
  struct Fit {
    std::vector<std::size_t> widths;
    std::size_t gap = 0;
  };
  /// Columns as wide as their cells; too much for a line: nearer together, then broken.
  [[nodiscard]] Fit fit() const;
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
