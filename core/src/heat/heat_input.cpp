// SPDX-License-Identifier: MIT
#include "seamturn/heat/heat_input.hpp"

#include <cmath>
#include <string>

#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::heat {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

constexpr double kj_per_j = 1e-3;

struct ProcessEfficiency {
  std::string_view process;  ///< ISO 4063 number
  double efficiency_ratio;
};

// [EN 1011-1] table 1 as quoted by [TWI-HI]: submerged arc 1.0; manual metal arc, MIG/MAG and cored
// wire 0.8; TIG and plasma 0.6. Which ISO 4063 number is which process: docs/methods/heat-input.md.
constexpr ProcessEfficiency efficiencies[] = {
    {"111", 0.8},
    {"114", 0.8},
    {"12", 1.0},
    {"121", 1.0},
    {"122", 1.0},
    {"124", 1.0},
    {"125", 1.0},
    {"126", 1.0},
    {"131", 0.8},
    {"132", 0.8},
    {"133", 0.8},
    {"135", 0.8},
    {"136", 0.8},
    {"138", 0.8},
    {"141", 0.6},
    {"15", 0.6},
};

std::string known_processes() {
  std::string text;
  for (const ProcessEfficiency& row : efficiencies) {
    if (!text.empty()) text += ", ";
    text += row.process;
  }
  return text;
}

void require_arc(const ArcParams& arc) {
  SEAMTURN_REQUIRE(base::is_positive(arc.voltage_v), arc.voltage_v);
  SEAMTURN_REQUIRE(base::is_positive(arc.current_a), arc.current_a);
  SEAMTURN_REQUIRE(base::is_positive(arc.travel_mm_s), arc.travel_mm_s);
}

}  // namespace

base::Outcome<double> arc_efficiency_ratio(std::string_view process) {
  for (const ProcessEfficiency& row : efficiencies) {
    if (row.process == process) return row.efficiency_ratio;
  }
  return base::Refusal{"heat.process.unknown",
                       "no thermal efficiency is known for process \"" + std::string(process) +
                           "\"; known ISO 4063 numbers: " + known_processes()};
}

double arc_energy_kj_mm(const ArcParams& arc) {
  require_arc(arc);
  return kj_per_j * arc.voltage_v * arc.current_a / arc.travel_mm_s;
}

base::Outcome<double> heat_input_kj_mm(std::string_view process, const ArcParams& arc) {
  const double energy_kj_mm = arc_energy_kj_mm(arc);
  const base::Outcome<double> efficiency = arc_efficiency_ratio(process);
  if (!efficiency) return efficiency.error();
  return *efficiency * energy_kj_mm;
}

const base::FigureCard& arc_energy_card() {
  static const FigureKey keys[] = {
      {"voltage", Dimension::voltage, "arc voltage, mean", "> 0"},
      {"current", Dimension::current, "welding current, mean", "> 0"},
      {"travel", Dimension::speed, "travel speed along the seam", "> 0"},
  };
  static const Citation sources[] = {
      {"TWI-HI", "arc energy and its difference from heat input", Status::verified},
      {"ISO/TR 18491", "2015, pulsed sources need instantaneous values", Status::verified},
  };
  static const base::FigureCard card{
      "arc-energy",
      "electrical energy the arc spends on a length of weld; no efficiency in it",
      "U x I / v",
      "kJ/mm",
      "voltage, current and travel above 0; means are right for a steady arc, a pulsed one is "
      "misstated by them. Called heat input by AWS, ASME and in Japan",
      keys,
      sources};
  return card;
}

const base::FigureCard& heat_input_card() {
  static const FigureKey keys[] = {
      {"process",
       Dimension::none,
       "ISO 4063 number of the process",
       "111, 114, 12, 121, 122, 124 to 126, 131 to 133, 135, 136, 138, 141 or 15",
       true,
       true},
      {"voltage", Dimension::voltage, "arc voltage, mean", "> 0"},
      {"current", Dimension::current, "welding current, mean", "> 0"},
      {"travel", Dimension::speed, "travel speed along the seam", "> 0"},
  };
  static const Citation sources[] = {
      {"EN 1011-1", "table 1, as quoted by [TWI-HI]: k", Status::verified},
      {"JWES", "2009: the same k for submerged arc, manual, MAG and TIG", Status::verified},
  };
  static const base::FigureCard card{
      "heat-input",
      "heat a length of weld receives by the European convention",
      "k x U x I / v, with k 1.0 submerged arc, 0.8 manual metal arc, MIG/MAG and cored wire, 0.6 "
      "TIG and plasma",
      "kJ/mm",
      "voltage, current and travel above 0; k is a convention relative to submerged arc, not a "
      "measured efficiency. Preheat and cooling time by EN 1011-2 want this value",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
