// SPDX-License-Identifier: MIT
#include "table.hpp"

#include <algorithm>

#include "seamturn/base/error.hpp"

namespace seamturn::cli {

namespace {

std::string padded(const std::string& text, std::size_t width, Align align) {
  const std::string space(width - std::min(width, shown_width(text)), ' ');
  return align == Align::left ? text + space : space + text;
}

void trim_end(std::string& line) {
  line.erase(line.find_last_not_of(' ') + 1);
}

/// So many characters off the start of a text.
std::string take(std::string& text, std::size_t count) {
  std::size_t end = 0;
  while (end < text.size() && shown_width(text.substr(0, end + 1)) <= count) ++end;
  const std::string taken = text.substr(0, end);
  text.erase(0, end);
  return taken;
}

/// A cell's lines: broken at blanks, a word that is too long wherever it must.
std::vector<std::string> lines_of(const std::string& cell, std::size_t width) {
  if (shown_width(cell) <= width) return {cell};
  std::vector<std::string> lines;
  std::string rest = wrapped(cell, width, 0);
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    std::string line = rest.substr(0, end);
    rest.erase(0, end + 1);
    while (shown_width(line) > width) lines.push_back(take(line, width));
    lines.push_back(line);
  }
  return lines;
}

}  // namespace

std::size_t shown_width(const std::string& text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
  }));
}

std::string wrapped(const std::string& text, std::size_t width, std::size_t indent) {
  std::string out;
  std::size_t column = 0;
  std::size_t start = 0;
  while (start < text.size()) {
    std::size_t end = text.find(' ', start);
    if (end == std::string::npos) end = text.size();
    const std::string word = text.substr(start, end - start);
    if (column > 0 && column + 1 + shown_width(word) > width) {
      out += '\n' + std::string(indent, ' ');
      column = indent;
    } else if (column > 0) {
      out += ' ';
      ++column;
    }
    out += word;
    column += shown_width(word);
    start = end + 1;
  }
  std::replace(out.begin(), out.end(), unbreakable_blank, ' ');
  return out;
}

std::string headed(const std::string& head, const std::string& text, std::size_t width) {
  std::string kept = head;
  std::replace(kept.begin(), kept.end(), ' ', unbreakable_blank);
  return wrapped(kept + text, width, shown_width(head));
}

void Table::add_row(std::vector<std::string> cells) {
  SEAMTURN_REQUIRE(cells.size() == columns_.size(), cells.size(), columns_.size());
  rows_.push_back(std::move(cells));
}

void Table::add_rule() {
  rows_.emplace_back();
}

Table::Fit Table::fit() const {
  constexpr std::size_t least = 6;  // of a broken column
  std::vector<std::size_t> widths;
  std::vector<std::size_t> narrowest;
  for (const Column& column : columns_) {
    widths.push_back(std::max(shown_width(column.head), shown_width(column.unit)));
    narrowest.push_back(std::max(least, widths.back()));
  }
  for (const auto& row : rows_) {
    for (std::size_t i = 0; i < row.size(); ++i) {
      widths[i] = std::max(widths[i], shown_width(row[i]));
    }
  }
  std::size_t gap = gap_;
  std::size_t line = gap * (widths.size() - 1);
  for (const std::size_t width : widths) line += width;
  for (; line > line_width && gap > 1; --gap) line -= widths.size() - 1;
  for (; line > line_width; --line) {
    std::size_t widest = widths.size();
    for (std::size_t i = 0; i < widths.size(); ++i) {
      if (columns_[i].align != Align::left || widths[i] <= narrowest[i]) continue;
      if (widest == widths.size() || widths[i] > widths[widest]) widest = i;
    }
    if (widest == widths.size()) break;
    --widths[widest];
  }
  return {widths, gap};
}

std::string Table::text() const {
  const Fit fitted = fit();
  const std::vector<std::size_t>& widths = fitted.widths;
  const auto line_of = [&](const auto& cell) {
    std::string line;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      line +=
          std::string(i == 0 ? 0 : fitted.gap, ' ') + padded(cell(i), widths[i], columns_[i].align);
    }
    trim_end(line);
    return line + '\n';
  };
  const auto lines_of_row = [&](const std::vector<std::string>& row) {
    std::vector<std::vector<std::string>> cells;
    std::size_t count = 1;
    for (std::size_t i = 0; i < row.size(); ++i) {
      cells.push_back(lines_of(row[i], widths[i]));
      count = std::max(count, cells.back().size());
    }
    std::string text;
    for (std::size_t k = 0; k < count; ++k) {
      text +=
          line_of([&](std::size_t i) { return k < cells[i].size() ? cells[i][k] : std::string(); });
    }
    return text;
  };
  std::string out = line_of([&](std::size_t i) { return columns_[i].head; });
  const bool has_units = std::any_of(
      columns_.begin(), columns_.end(), [](const Column& c) { return !c.unit.empty(); });
  if (has_units) out += line_of([&](std::size_t i) { return columns_[i].unit; });
  const auto rule = [&](std::size_t i) { return std::string(widths[i], '-'); };
  out += line_of(rule);
  for (const auto& row : rows_) out += row.empty() ? line_of(rule) : lines_of_row(row);
  return out;
}

}  // namespace seamturn::cli
