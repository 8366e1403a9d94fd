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

std::string Table::text() const {
  std::vector<std::size_t> widths;
  for (const Column& column : columns_) {
    widths.push_back(std::max(shown_width(column.head), shown_width(column.unit)));
  }
  for (const auto& row : rows_) {
    for (std::size_t i = 0; i < row.size(); ++i) {
      widths[i] = std::max(widths[i], shown_width(row[i]));
    }
  }
  const auto line_of = [&](const auto& cell) {
    std::string line;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      line += std::string(i == 0 ? 0 : gap_, ' ') + padded(cell(i), widths[i], columns_[i].align);
    }
    trim_end(line);
    return line + '\n';
  };
  std::string out = line_of([&](std::size_t i) { return columns_[i].head; });
  const bool has_units = std::any_of(
      columns_.begin(), columns_.end(), [](const Column& c) { return !c.unit.empty(); });
  if (has_units) out += line_of([&](std::size_t i) { return columns_[i].unit; });
  const auto rule = [&](std::size_t i) { return std::string(widths[i], '-'); };
  out += line_of(rule);
  for (const auto& row : rows_) {
    out += row.empty() ? line_of(rule) : line_of([&](std::size_t i) { return row[i]; });
  }
  return out;
}

}  // namespace seamturn::cli
