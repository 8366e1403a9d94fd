// SPDX-License-Identifier: MIT
#include <algorithm>

#include "print.hpp"
#include "seamturn/base/number_text.hpp"
#include "sources_shown.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

std::string shown(const figures::FigureValue& value) {
  if (const auto* word = std::get_if<std::string>(&value.value)) return *word;
  const std::string number = base::digits_text(std::get<double>(value.value));
  return value.unit.empty() ? number : number + " " + value.unit;
}

std::string table_text(const figures::FigureTable& listed) {
  std::vector<Table::Column> columns;
  for (const figures::FigureColumn& column : listed.columns) {
    columns.push_back({column.head, column.unit, Align::right});
  }
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const bool words =
        !listed.rows.empty() && std::holds_alternative<std::string>(listed.rows[0][i]);
    if (words) columns[i].align = Align::left;
  }
  Table table(columns);
  for (const auto& row : listed.rows) {
    std::vector<std::string> cells;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const auto* word = std::get_if<std::string>(&row[i]);
      cells.push_back(word != nullptr
                          ? *word
                          : base::fixed_text(std::get<double>(row[i]), listed.columns[i].decimals));
    }
    table.add_row(std::move(cells));
  }
  return table.text();
}

}  // namespace

std::string figure_text(const figures::FigureResult& result, const base::FigureCard& card) {
  const std::string before = result.in_words.empty() ? " = " : ": " + result.in_words + " ";
  std::string out = result.name + before + shown(result.principal) + "\n";
  std::size_t width = 0;
  for (const auto& [name, value] : result.values) width = std::max(width, name.size());
  for (const auto& [name, value] : result.values) {
    const std::string head = "  " + name + std::string(width - name.size(), ' ') + "  ";
    out += headed(head, shown(value), line_width) + "\n";
  }
  if (result.table) out += "\n" + table_text(*result.table) + "\n";
  out += wrapped("formula: " + std::string(card.formula), line_width, 9) + "\n";
  out += wrapped("source: " + source_text(card) + " (" + status_text(card) + ")", line_width, 8) +
         "\n";
  out += wrapped("valid: " + std::string(card.range), line_width, 7) + "\n";
  return out;
}

std::string card_text(const base::FigureCard& card) {
  std::string out = std::string(card.name) + ": " + std::string(card.meaning) + "\n\n";
  for (const base::FigureKey& key : card.keys) {
    const std::string name = "  " + std::string(key.name) + "=";
    const std::string head = name + std::string(name.size() < 17 ? 17 - name.size() : 1, ' ');
    const std::string units = key.is_text ? "" : " [" + base::unit_symbols(key.dimension) + "]";
    out += headed(head,
                  (key.required ? "" : "optional; ") + std::string(key.meaning) +
                      (key.range.empty() ? "" : ": " + std::string(key.range)) + units,
                  line_width) +
           "\n";
  }
  out += "\n";
  if (!card.unit.empty()) out += "value in " + std::string(card.unit) + "\n";
  out += wrapped("formula: " + std::string(card.formula), line_width, 9) + "\n";
  out += wrapped("source: " + source_text(card) + " (" + status_text(card) + ")", line_width, 8) +
         "\n";
  return out + wrapped("valid: " + std::string(card.range), line_width, 7) + "\n";
}

std::string cards_text() {
  Table table({{"figure", "", Align::left}, {"meaning", "", Align::left}});
  for (const base::FigureCard* card : figures::all_cards()) {
    table.add_row({std::string(card->name), std::string(card->meaning)});
  }
  return table.text() + "\nseamturn figure NAME prints keys, units, range and source.\n";
}

std::string plugins_text(const std::vector<plugin_host::Verdict>& verdicts) {
  if (verdicts.empty()) return "No plugin files found in the folders searched.\n";
  std::string out;
  for (const plugin_host::Verdict& verdict : verdicts) {
    if (verdict.loaded) {
      out += "loaded   " + verdict.id + " " + verdict.version + ": " + verdict.title +
             "\n         " + verdict.file.string() + "\n";
    } else {
      out += "skipped  " + verdict.file.string() + "\n         " + verdict.reason + "\n";
    }
  }
  return out;
}

}  // namespace seamturn::cli
