// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "print.hpp"
#include "seamturn/base/number_text.hpp"
#include "sources_shown.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

/// Four significant digits, as one writes a bench result.
std::string four_digits(double value) {
  const double size = std::abs(value);
  if (size > 0.0 && size < 1e-4) return base::shortest_text(value);
  const int before = size < 1.0 ? 0 : static_cast<int>(std::floor(std::log10(size)));
  return base::fixed_text(value, std::max(0, 3 - before));
}

std::string shown(const figures::FigureValue& value) {
  if (const auto* word = std::get_if<std::string>(&value.value)) return *word;
  const std::string number = four_digits(std::get<double>(value.value));
  return value.unit.empty() ? number : number + " " + value.unit;
}

}  // namespace

std::string figure_text(const figures::FigureResult& result, const base::FigureCard& card) {
  std::string out = result.name + " = " + shown(result.principal) + "\n";
  std::size_t width = 0;
  for (const auto& [name, value] : result.values) width = std::max(width, name.size());
  for (const auto& [name, value] : result.values) {
    out += "  " + name + std::string(width - name.size(), ' ') + "  " + shown(value) + "\n";
  }
  out += wrapped("formula: " + std::string(card.formula), line_width, 9) + "\n";
  out += wrapped("source: " + source_text(card) + " (" + status_text(card) + ")", line_width, 8) +
         "\n";
  out += wrapped("valid: " + std::string(card.range), line_width, 7) + "\n";
  return out;
}

std::string card_text(const base::FigureCard& card) {
  std::string out = std::string(card.name) + ": " + std::string(card.meaning) + "\n\n";
  Table keys({{"key", "", Align::left},
              {"units", "", Align::left},
              {"", "", Align::left},
              {"meaning, range", "", Align::left}});
  for (const base::FigureKey& key : card.keys) {
    keys.add_row(
        {std::string(key.name) + "=",
         key.is_text ? "text" : base::unit_symbols(key.dimension),
         key.required ? "" : "optional",
         std::string(key.meaning) + (key.range.empty() ? "" : ": " + std::string(key.range))});
  }
  out += keys.text() + "\n";
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
