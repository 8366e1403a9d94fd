// SPDX-License-Identifier: MIT
// Temperatures at which work stops until they are measured.
#include <algorithm>
#include <cmath>
#include <sstream>

#include "print.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

/// Seams that are measured alike.
struct Gate {
  double least_c = 0.0;
  double most_c = 0.0;
  double distance_mm = 0.0;
  double wait_short_s = 0.0;
  double wait_long_s = 0.0;
  std::vector<std::string> joints;
  std::vector<std::string> seams;
};

bool is_same(const Gate& gate, const procedure::HeatLimits& heat) {
  return std::abs(gate.least_c - heat.preheat_c) < 0.5 &&
         std::abs(gate.most_c - heat.interpass_max_c) < 0.5 &&
         std::abs(gate.distance_mm - heat.measure_distance_mm) < 0.5;
}

std::vector<Gate> gates_of(const plan::Plan& plan) {
  std::vector<Gate> gates;
  for (const plan::PlannedJoint& joint : plan.joints) {
    const auto same = std::find_if(
        gates.begin(), gates.end(), [&](const Gate& gate) { return is_same(gate, joint.heat); });
    Gate& gate = same != gates.end() ? *same : gates.emplace_back();
    gate.least_c = std::max(gate.least_c, joint.heat.preheat_c);
    gate.most_c = joint.heat.interpass_max_c;
    gate.distance_mm = joint.heat.measure_distance_mm;
    gate.joints.push_back(joint.id);
    for (const plan::PlannedSeam& seam : joint.seams) {
      gate.seams.push_back(seam.id);
      for (const plan::PlannedPass& pass : seam.passes) {
        gate.wait_short_s = std::max(gate.wait_short_s, pass.gap_short_s);
        gate.wait_long_s = std::max(gate.wait_long_s, pass.gap_long_s);
      }
    }
  }
  return gates;
}

/// "A" to "Z", then "A2" and on.
std::string letter_of(std::size_t index) {
  constexpr std::size_t letters = 26;
  const std::string letter(1, static_cast<char>('A' + index % letters));
  return index < letters ? letter : letter + std::to_string(index / letters + 1);
}

std::string waits_text(const Gate& gate) {
  if (gate.wait_long_s < 0.5) return "none";
  const std::string low = base::fixed_text(gate.wait_short_s, 0);
  const std::string high = base::fixed_text(gate.wait_long_s, 0);
  return low == high ? low : low + "-" + high;
}

}  // namespace

std::map<std::string, std::string> gate_letters(const plan::Plan& plan) {
  std::map<std::string, std::string> letters;
  const std::vector<Gate> gates = gates_of(plan);
  for (std::size_t i = 0; i < gates.size(); ++i) {
    for (const std::string& seam : gates[i].seams) letters[seam] = letter_of(i);
  }
  return letters;
}

std::string gates_text(const plan::Plan& plan, const UnitsShown& units) {
  Table table({{"gate", "", Align::left},
               {"at least", units.temperature_unit()},
               {"at most", units.temperature_unit()},
               {"measured", units.length_unit()},
               {"longest wait", "s"},
               {"joints", "", Align::left}});
  const std::vector<Gate> gates = gates_of(plan);
  for (std::size_t i = 0; i < gates.size(); ++i) {
    const Gate& gate = gates[i];
    std::istringstream lines(wrapped(base::listed(gate.joints, " "), 46, 0));
    bool first = true;
    for (std::string line; std::getline(lines, line); first = false) {
      table.add_row({first ? letter_of(i) : "",
                     first ? units.least_temperature(gate.least_c) : "",
                     first ? units.temperature(gate.most_c) : "",
                     first ? units.length(gate.distance_mm) : "",
                     first ? waits_text(gate) : "",
                     line});
    }
  }
  return wrapped(
             "Gates: hold and measure before every pass, so far from the groove edge; weld only "
             "between these temperatures, else wait or heat",
             line_width,
             0) +
         "\n" + table.text() +
         wrapped(
             "Longest wait: from the start of a pass to the next over the same place, by the "
             "faster and the slower model of cooling; planned with the slower. " +
                 (plan.heating ? "Heating: " + plan.heating->method + "." : ""),
             line_width,
             0) +
         "\n";
}

}  // namespace seamturn::cli
