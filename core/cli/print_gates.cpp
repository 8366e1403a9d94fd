// SPDX-License-Identifier: MIT
// Temperatures at which work stops until they are measured.
#include <algorithm>
#include <cmath>
#include <sstream>

#include "print.hpp"
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
  std::string seams;
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
    gate.seams += (gate.seams.empty() ? "" : " ") + joint.id;
    for (const plan::PlannedSeam& seam : joint.seams) {
      for (const plan::PlannedPass& pass : seam.passes) {
        gate.wait_short_s = std::max(gate.wait_short_s, pass.gap_short_s);
        gate.wait_long_s = std::max(gate.wait_long_s, pass.gap_long_s);
      }
    }
  }
  return gates;
}

std::string waits_text(const Gate& gate) {
  if (gate.wait_long_s < 0.5) return "none";
  const std::string low = base::fixed_text(gate.wait_short_s, 0);
  const std::string high = base::fixed_text(gate.wait_long_s, 0);
  return low == high ? low : low + "-" + high;
}

}  // namespace

std::string gates_text(const plan::Plan& plan, const UnitsShown& units) {
  Table table({{"at least", units.temperature_unit()},
               {"at most", units.temperature_unit()},
               {"measured", units.length_unit()},
               {"longest wait", "s"},
               {"joints", "", Align::left}});
  for (const Gate& gate : gates_of(plan)) {
    std::istringstream lines(wrapped(gate.seams, 50, 0));
    bool first = true;
    for (std::string line; std::getline(lines, line); first = false) {
      table.add_row({first ? units.least_temperature(gate.least_c) : "",
                     first ? units.temperature(gate.most_c) : "",
                     first ? units.length(gate.distance_mm) : "",
                     first ? waits_text(gate) : "",
                     line});
    }
  }
  return "Gates: measure before every pass, so far from the groove edge, and weld only between\n" +
         table.text() +
         wrapped(
             "Longest wait: from the start of a pass to the next over the same place, by the "
             "faster and the slower model of cooling; planned with the slower. " +
                 (plan.heating ? "Heating: " + plan.heating->method + "." : ""),
             line_width,
             0) +
         "\n";
}

}  // namespace seamturn::cli
