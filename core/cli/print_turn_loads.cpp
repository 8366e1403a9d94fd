// SPDX-License-Identifier: MIT
// What the axes hold on the worst of their turns, and how near the floor the load comes.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "print.hpp"
#include "seamturn/base/number_text.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

using base::fixed_text;
using plan::PlannedTurn;

/// The turn on which an axis is asked for most by one of the columns; null: by none.
const PlannedTurn* worst(const plan::Plan& plan,
                         std::vector<double> PlannedTurn::*column,
                         std::size_t axis) {
  const PlannedTurn* most = nullptr;
  for (const PlannedTurn& turn : plan.turns) {
    const std::vector<double>& values = turn.*column;
    if (axis >= values.size()) continue;
    if (most == nullptr || std::abs(values[axis]) > std::abs((most->*column)[axis])) most = &turn;
  }
  return most;
}

std::string name_of(const std::string& stance) {
  return stance.empty() ? "rest" : stance;
}

std::string way_of(const PlannedTurn& turn) {
  if (turn.from == turn.to) return turn.from.empty() ? "exchange" : "rolling in " + turn.from;
  return name_of(turn.from) + " to " + name_of(turn.to);
}

std::string most_text(const plan::Plan& plan,
                      std::vector<double> PlannedTurn::*column,
                      std::size_t axis,
                      const UnitsShown& units) {
  const PlannedTurn* turn = worst(plan, column, axis);
  return turn == nullptr ? "" : units.torque(std::abs((turn->*column)[axis]));
}

std::string margin_text(const plan::Plan& plan, const UnitsShown& units) {
  const auto& margin = plan.cell->positioner.margin;
  if (!margin) return "the load as calculated, without a margin";
  return "with " + fixed_text(100.0 * margin->mass_ratio, 1) + " % of mass and " +
         units.length(margin->centre_mm) + " " + units.length_unit() +
         " of its centre on the safe side";
}

/// "tilt 45.0, rotate 180.0".
std::string setting_text(const plan::Plan& plan, const std::vector<base::Angle>& setting) {
  std::string text;
  for (std::size_t i = 0; i < setting.size(); ++i) {
    text += (i == 0 ? "" : ", ") + plan.cell->positioner.axes[i].name + " " +
            fixed_text(setting[i].deg(), 1);
  }
  return text;
}

/// Turns that are not straight, each with the settings it goes by.
std::string ways_round_text(const plan::Plan& plan) {
  std::string lines;
  for (const PlannedTurn& turn : plan.turns) {
    if (turn.halts.empty()) continue;
    std::string by;
    for (const auto& halt : turn.halts) by += (by.empty() ? "" : "; ") + setting_text(plan, halt);
    lines += wrapped("  " + way_of(turn) + ": by " + by, line_width, 4) + "\n";
  }
  if (lines.empty()) return "";
  return wrapped(
             "Not straight, as the load would strike the floor or ask too much of an axis; axes "
             "in deg:",
             line_width,
             0) +
         "\n" + lines + "\n";
}

}  // namespace

std::string turn_loads_text(const plan::Plan& plan, const UnitsShown& units) {
  if (plan.turns.empty()) return "";
  const std::string unit(units.torque_unit());
  Table table({{"axis", "", Align::left},
               {"plate", unit},
               {"on the way", unit},
               {"speeding up", unit},
               {"emergency stop", unit},
               {"worst turn", "", Align::left}});
  const auto& axes = plan.cell->positioner.axes;
  for (std::size_t i = 0; i < axes.size(); ++i) {
    const PlannedTurn* still = worst(plan, &PlannedTurn::torque_nm, i);
    table.add_row({axes[i].name,
                   units.torque(axes[i].torque_max_nm),
                   most_text(plan, &PlannedTurn::torque_nm, i, units),
                   most_text(plan, &PlannedTurn::moving_nm, i, units),
                   most_text(plan, &PlannedTurn::stop_nm, i, units),
                   still == nullptr ? "" : way_of(*still)});
  }
  const auto lowest = std::min_element(
      plan.turns.begin(), plan.turns.end(), [](const PlannedTurn& a, const PlannedTurn& b) {
        return a.lowest_mm < b.lowest_mm;
      });
  return "Turns, the most an axis holds (" + margin_text(plan, units) + ")\n" + table.text() +
         "Lowest: " + lowest->lowest_of + ", " + units.length(lowest->lowest_mm) + " " +
         units.length_unit() + " above the floor, " + way_of(*lowest) + ".\n\n" +
         ways_round_text(plan);
}

}  // namespace seamturn::cli
