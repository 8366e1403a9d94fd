// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "print.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "table.hpp"

namespace seamturn::cli {

namespace {

using base::fixed_text;

std::string range_text(double low, double high, int decimals) {
  const std::string a = fixed_text(low, decimals);
  const std::string b = fixed_text(high, decimals);
  return a == b ? a : a + "-" + b;
}

/// The energy a US code speaks of is another one than the heat input shown.
std::string us_heat_text(const UnitsShown& units) {
  if (!units.is_us()) return "";
  return " Heat input has the factor k of EN 1011-1 in it (0.8 for wire under gas); what AWS codes "
         "call heat input is the arc energy, without k: explain JOINT heat-input and the sheets "
         "show both.";
}

struct JointSums {
  double length_mm = 0.0, metal_kg = 0.0, arc_s = 0.0;
  double heat_low = 0.0, heat_high = 0.0, t85_low = 0.0, t85_high = 0.0;
  int passes = 0;
  std::vector<std::string> positions;
};

JointSums sums_of(const plan::PlannedJoint& joint) {
  JointSums sums;
  sums.passes = plan::pass_count(joint);
  for (const plan::PlannedSeam& seam : joint.seams) {
    sums.length_mm += seam.length_mm;
    sums.metal_kg += seam.metal_kg;
    sums.arc_s += seam.stack.arc_time_s;
    const std::string position(process::position_name(seam.position));
    if (std::find(sums.positions.begin(), sums.positions.end(), position) == sums.positions.end()) {
      sums.positions.push_back(position);
    }
    for (const plan::PlannedPass& pass : seam.passes) {
      const bool first = &seam == &joint.seams.front() && &pass == &seam.passes.front();
      const double heat = pass.pass.heat_input_kj_mm;
      sums.heat_low = first ? heat : std::min(sums.heat_low, heat);
      sums.heat_high = first ? heat : std::max(sums.heat_high, heat);
      sums.t85_low = first ? pass.t85_s : std::min(sums.t85_low, pass.t85_s);
      sums.t85_high = first ? pass.t85_long_s : std::max(sums.t85_high, pass.t85_long_s);
    }
  }
  return sums;
}

std::string groove_text(const joint::Groove& groove) {
  std::string text = groove.is_double ? "double " : "";
  switch (groove.form) {
    case joint::GrooveForm::square:
      return text + "square";
    case joint::GrooveForm::v:
      text += "V ";
      break;
    case joint::GrooveForm::bevel:
      text += "bevel ";
      break;
    case joint::GrooveForm::u:
      text += "U ";
      break;
    case joint::GrooveForm::j:
      text += "J ";
      break;
    case joint::GrooveForm::compound_v:
      text += "compound V ";
      break;
  }
  return text + fixed_text(groove.side_1.angle.deg(), 0);
}

}  // namespace

std::string preparation_text(const joint::Joint& joint, const UnitsShown& units) {
  if (const auto* fillet = std::get_if<joint::Fillet>(&joint.preparation)) {
    const bool equal = std::abs(fillet->leg_1_mm - fillet->leg_2_mm) < 1e-9;
    return "fillet z" + units.size(fillet->leg_1_mm) +
           (equal ? "" : "/" + units.size(fillet->leg_2_mm));
  }
  if (const auto* plug = std::get_if<joint::Plug>(&joint.preparation)) {
    return std::string(joint::preparation_name(*plug)) + " " + units.size(plug->width_mm) +
           (plug->length_mm > plug->width_mm ? "x" + units.size(plug->length_mm) : "");
  }
  const std::string text = groove_text(std::get<joint::Groove>(joint.preparation));
  const bool partial = joint.depth_mm < joint.thickness_mm - 1e-9;
  return text + " " + (partial ? "s" : "t") + units.size(joint.depth_mm);
}

std::string joints_text(const plan::Plan& plan, const UnitsShown& units) {
  Table table({{"joint", "", Align::left},
               {"type", "", Align::left},
               {"preparation", units.length_unit(), Align::left},
               {"length", units.length_unit()},
               {"section", units.area_unit()},
               {"metal", units.mass_unit()},
               {"passes", ""},
               {"pos", "", Align::left},
               {"arc", "min"},
               {"heat input", units.heat_input_unit()},
               {"preheat", units.temperature_unit()},
               {"interp", "max"},
               {"t8/5", "s"}},
              1);  // thirteen columns in a hundred characters
  for (const plan::PlannedJoint& joint : plan.joints) {
    const joint::Joint& described = *joint::find_joint(plan.weldment, joint.id);
    const JointSums sums = sums_of(joint);
    const std::string low = units.heat_input(sums.heat_low);
    const std::string high = units.heat_input(sums.heat_high);
    table.add_row(
        {joint.id,
         std::string(joint::joint_type_name(described.type)),
         preparation_text(described, units),
         units.length(sums.length_mm),
         units.area(plan::section_area_mm2(joint)),
         units.mass(sums.metal_kg),
         std::to_string(sums.passes),
         base::listed(sums.positions, "/"),
         fixed_text(sums.arc_s / 60.0, 1),
         low == high ? low : low + "-" + high,
         joint.heat.needs_heating ? units.least_temperature(joint.heat.preheat_c) : "none",
         units.temperature(joint.heat.interpass_max_c),
         range_text(sums.t85_low, sums.t85_high, 0)});
  }
  table.add_rule();
  table.add_row({"total",
                 "",
                 "",
                 units.length(plan.totals.length_mm),
                 "",
                 units.mass(plan.totals.metal_kg),
                 std::to_string(plan.totals.passes),
                 "",
                 fixed_text(plan.totals.arc_time_s / 60.0, 1),
                 "",
                 "",
                 "",
                 ""});
  const std::string fit_up = fit_up_text(plan, units);
  return title_text(plan) + "\n\n" + table.text() + "\n" +
         wrapped(
             "V included, bevel, U and J angle of one face; z leg, t full penetration of "
             "thickness t, s depth of penetration. Preheat: the highest of the methods "
             "that may govern, of a neighbour's where this lies in its heated zone, or as the file "
             "states (explain JOINT preheat-methods); \"none\": no heating, but dry and above " +
                 units.temperature(5.0) + " " + units.temperature_unit() +
                 ". t8/5 from the coolest to the hottest permitted start. Length: all seams of a "
                 "joint; section: of one seam, of a groove closed from two sides of both; metal: "
                 "of all that is welded." +
                 us_heat_text(units),
             line_width,
             0) +
         "\n" + (fit_up.empty() ? "" : "\n" + fit_up);
}

}  // namespace seamturn::cli
