// SPDX-License-Identifier: MIT
// The chain of a number for people: what went in and from where, what came out, by which source.
#include <algorithm>

#include "print.hpp"
#include "seamturn/base/number_text.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

std::string value_text(const figures::Given& given, const UnitsShown& units) {
  if (const auto* word = std::get_if<std::string>(&given.value)) return *word;
  const double value = std::get<double>(given.value);
  if (given.unit == "mm") return units.size(value) + " " + units.length_unit();
  if (given.unit == "mm2") return units.area(value) + " " + units.area_unit();
  if (given.unit == "kg") return units.mass(value) + " " + units.mass_unit();
  if (given.unit == "degC") return units.temperature(value) + " " + units.temperature_unit();
  if (given.unit == "kJ/mm") return units.heat_input(value) + " " + units.heat_input_unit();
  const std::string number = base::digits_text(value);
  return given.unit.empty() ? number : number + " " + given.unit;
}

std::string rows_text(const std::vector<figures::Given>& rows, const UnitsShown& units) {
  std::size_t name_width = 0;
  std::size_t value_width = 0;
  for (const figures::Given& row : rows) {
    name_width = std::max(name_width, shown_width(row.name));
    if (!row.origin.empty())
      value_width = std::max(value_width, shown_width(value_text(row, units)));
  }
  std::string out;
  for (const figures::Given& row : rows) {
    const std::string value = value_text(row, units);
    std::string line =
        "  " + row.name + std::string(name_width - shown_width(row.name), ' ') + "  ";
    if (row.origin.empty()) {
      out += headed(line, value, line_width) + "\n";
      continue;
    }
    line += value + std::string(value_width - shown_width(value), ' ') + "  ";
    out += headed(line, row.origin, line_width) + "\n";
  }
  return out;
}

}  // namespace

std::string explain_text(const std::string& joint,
                         const std::vector<figures::ExplainStep>& steps,
                         const UnitsShown& units) {
  std::string out = "Joint " + joint + ", how its numbers came about\n";
  for (const figures::ExplainStep& step : steps) {
    out += "\n" + step.figure + ": " + step.subject + "\n";
    out += rows_text(step.inputs, units);
    out += headed("  = ", step.formula, line_width) + "\n";
    out += rows_text(step.results, units);
    for (const std::string& source : step.sources) {
      out += headed("  source: ", source, line_width) + "\n";
    }
    out += headed("  valid: ", step.range, line_width) + "\n";
  }
  return out;
}

}  // namespace seamturn::cli
