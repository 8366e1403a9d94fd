// SPDX-License-Identifier: MIT
// The chain of a number for people: what went in and from where, what came out, by which source.
#include <algorithm>
#include <cmath>

#include "print.hpp"
#include "seamturn/base/number_text.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

std::string quantity_text(double value, const std::string& unit, const UnitsShown& units) {
  if (const auto converted = units.in_us(value, unit)) {
    return base::digits_text(converted->value) + " " + converted->unit;
  }
  if (unit == "mm") return units.size(value) + " " + units.length_unit();
  if (unit == "mm2") return units.area(value) + " " + units.area_unit();
  if (unit == "kg") return units.mass(value) + " " + units.mass_unit();
  if (unit == "degC") return units.exact_temperature(value) + " " + units.temperature_unit();
  if (unit == "kJ/mm") return units.heat_input(value) + " " + units.heat_input_unit();
  const std::string number = base::digits_text(value);
  return unit.empty() ? number : number + " " + unit;
}

std::string value_text(const figures::Given& given, const UnitsShown& units) {
  if (const auto* word = std::get_if<std::string>(&given.value)) return *word;
  return quantity_text(std::get<double>(given.value), given.unit, units);
}

/// A difference of temperatures has no zero point to shift.
std::string distance_text(double distance, const std::string& unit, const UnitsShown& units) {
  if (unit != "degC") return quantity_text(distance, unit, units);
  return units.temperature_step(distance) + " " + units.temperature_unit();
}

/// "thickness 25 mm, 15 mm above the least 10 mm, 19 % of the range to 90 mm [CET method]".
std::string close_text(const figures::HowClose& close, const UnitsShown& units) {
  const bool outside = close.distance < 0.0;
  const bool to_least = close.least && *close.least == close.nearest;
  std::string text = close.name + " " + quantity_text(close.value, close.unit, units) + ", ";
  text += distance_text(std::abs(close.distance), close.unit, units);
  text += to_least == outside ? " below the " : " above the ";
  text += to_least ? "least, " : "largest, ";
  text += quantity_text(close.nearest, close.unit, units);
  // Beyond a limit, or far from an only one, a share of it says nothing.
  if (close.share_ratio && !outside && *close.share_ratio <= 1.0) {
    text += ": " + base::fixed_text(100.0 * *close.share_ratio, 0) + " % of ";
    const bool both = close.least && close.largest;
    text += !both ? "it"
                  : "the range " + quantity_text(*close.least, close.unit, units) + " to " +
                        quantity_text(*close.largest, close.unit, units);
  }
  if (outside) text += ", OUTSIDE";
  return text + " [" + close.origin + "]";
}

std::string rows_text(const std::vector<figures::Given>& rows, const UnitsShown& units) {
  // What a value leaves for the origin beside it; a longer one is a text, its origin follows it.
  constexpr std::size_t widest_value = 60;
  std::size_t name_width = 0;
  std::size_t value_width = 0;
  for (const figures::Given& row : rows) {
    name_width = std::max(name_width, shown_width(row.name));
    const std::size_t width = row.origin.empty() ? 0 : shown_width(value_text(row, units));
    if (width <= widest_value) value_width = std::max(value_width, width);
  }
  std::string out;
  for (const figures::Given& row : rows) {
    const std::string value = value_text(row, units);
    std::string line =
        "  " + row.name + std::string(name_width - shown_width(row.name), ' ') + "  ";
    if (row.origin.empty() || shown_width(value) > widest_value) {
      const std::string origin = row.origin.empty() ? "" : " [" + row.origin + "]";
      out += headed(line, value + origin, line_width) + "\n";
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
    for (const figures::HowClose& close : step.how_close) {
      // Most numbers are far from their limits: those near are not to drown among them.
      constexpr double near_share = 0.1;
      const bool is_near =
          close.share_ratio && close.distance >= 0.0 && *close.share_ratio <= near_share;
      out +=
          headed(is_near ? "  near: " : "  limit: ", close_text(close, units), line_width) + "\n";
    }
  }
  return out;
}

}  // namespace seamturn::cli
