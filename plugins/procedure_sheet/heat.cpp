// SPDX-License-Identifier: MIT
// Temperatures, and the gates at which work stops until they are measured.
#include <algorithm>

#include "procedure_sheet/sheet.hpp"

namespace seamturn::procedure_sheet {

using plan_reader::number;
using plan_reader::put;
using plan_reader::rounded;
using plan_reader::text;

namespace {

void put_gate(pugi::xml_node parent, const std::string& before, pugi::xml_node heat) {
  pugi::xml_node gate = parent.append_child("gate");
  put(gate, "before", before);
  put(gate,
      "do",
      std::string(text(heat, "where_to_measure")) +
          " (ISO 13916); weld only between these temperatures");
  plan_reader::put_gate_limits(gate, heat);
}

/// Shortest and longest t8/5 over all passes.
void put_cooling_time(pugi::xml_node parent, const Subject& subject) {
  const pugi::xml_node first = subject.seam.child("pass");
  if (!first) return;
  double least = number(first, "t85_short_s");
  double most = number(first, "t85_long_s");
  for (const pugi::xml_node pass : subject.seam.children("pass")) {
    least = std::min(least, number(pass, "t85_short_s"));
    most = std::max(most, number(pass, "t85_long_s"));
  }
  pugi::xml_node node = parent.append_child("t85");
  put(node, "least_s", rounded(least, 1));
  put(node, "most_s", rounded(most, 1));
  put(node, "basis", "computed from the settings, start between preheat and interpass maximum");
}

void put_methods(pugi::xml_node node, pugi::xml_node heat) {
  for (const pugi::xml_node method : heat.children("method")) {
    pugi::xml_node row = node.append_child("method");
    plan_reader::copy(method, row, {"name", "says", "may_govern", "status"});
  }
}

void put_chemistry(pugi::xml_node node, pugi::xml_node heat) {
  put_item(
      node, "carbon equivalent CET of the plates, mass-%", rounded(number(heat, "cet_plate"), 3));
  put_item(node, "chemistry", text(heat, "composition_basis"));
  put_item(
      node,
      "combined thickness, mm",
      rounded(number(heat, "combined_thickness_mm"), 0) + " (" + text(heat, "combined_text") + ")");
}

/// Where and how long to heat, and what to do when work stops.
void put_heating(pugi::xml_node node, pugi::xml_node heat) {
  if (!plan_reader::is_true(heat, "needs_heating")) {
    put_item(node, "heating", "none: dry, clean and above 5 degC");
    return;
  }
  put_item(node,
           "heated width on each side of the weld and ahead of it, at least, mm",
           rounded(number(heat, "zone_width_mm"), 0));
  put_item(node,
           "soak when only the heated face can be measured, min",
           rounded(number(heat, "soak_s") / 60.0, 1));
  if (const pugi::xml_node keep = heat.child("keep")) {
    put_item(node,
             "stays at the preheat without heater, by two models, min; never to be relied on",
             rounded(number(keep, "strip_s") / 60.0, 0) + " to " +
                 rounded(number(keep, "heated_through_s") / 60.0, 0));
  }
  put_item(
      node,
      "interruptions",
      "keep the preheat until the joint is full; else cover it, let it cool slowly, and heat it "
      "again before the next arc");
}

void put_window(pugi::xml_node node, pugi::xml_node window) {
  const std::string range = rounded(number(window, "t85_least_s"), 0) + " to " +
                            rounded(number(window, "t85_most_s"), 0) + " s, " +
                            (plan_reader::is_true(window, "kept")    ? "kept by all passes, "
                             : plan_reader::is_true(window, "binds") ? "NOT kept by all passes, "
                                                                     : "not kept by all passes, ") +
                            text(window, "stated_by") + ", " + text(window, "status");
  put_item(node,
           plan_reader::is_true(window, "binds") ? "t8/5 to be kept" : "t8/5 usual for the steel",
           range);
  if (!window.attribute("heat_input_least_kj_mm")) return;
  put_item(node,
           "heat input that keeps it, kJ/mm",
           rounded(number(window, "heat_input_least_kj_mm"), 2) + " to " +
               rounded(number(window, "heat_input_most_kj_mm"), 2));
}

void put_hardness(pugi::xml_node node, pugi::xml_node hardness) {
  put_item(node,
           "hardness beside the weld, estimate of three formulas, HV; never a verdict",
           rounded(number(hardness, "lowest_hv"), 0) + " to " +
               rounded(number(hardness, "highest_hv"), 0) + ", each plus or minus " +
               rounded(number(hardness, "scatter_hv"), 0) + " (" + text(hardness, "member") +
               ", t8/5 " + rounded(number(hardness, "t85_s"), 1) + " s)");
}

void put_tearing(pugi::xml_node node, pugi::xml_node tearing) {
  put_item(node,
           ("lamellar tearing of plate " + std::string(text(tearing, "member"))).c_str(),
           "class asked for " + std::string(text(tearing, "required")) + ", ordered " +
               text(tearing, "plate") + " (" + rounded(number(tearing, "total"), 0) +
               " points, from memory of EN 1993-1-10; a caution, no release)");
}

/// What is left when the joint is full.
void put_afterwards(pugi::xml_node node, pugi::xml_node heat) {
  if (const pugi::xml_node soak = heat.child("soak")) {
    put_item(node, "hydrogen release after welding, advice from memory", text(soak, "text"));
  } else {
    put_open(node, "hydrogen release after welding");
  }
  if (const pugi::xml_node later = heat.child("later-heating")) {
    put_item(node,
             "later heating (stress relief, straightening) at most, degC",
             rounded(number(later, "at_most_c"), 0) + " (steel " + text(later, "steel") + ", " +
                 text(later, "source") + ", " + text(later, "status") + ")");
  }
  put_open(node, "heat treatment after welding");
}

}  // namespace

void put_heat(pugi::xml_node sheet, const Subject& subject) {
  const pugi::xml_node heat = subject.joint.child("heat");
  pugi::xml_node node = sheet.append_child("heat");
  pugi::xml_node limits = node.append_child("limits");
  plan_reader::put_gate_limits(limits, heat);
  put(limits, "needs_heating", text(heat, "needs_heating"));
  put(limits, "preheat_basis", text(heat, "preheat_basis"));
  put(limits, "interpass_basis", text(heat, "interpass_basis"));
  put_cooling_time(node, subject);
  put_methods(node, heat);
  put_gate(node, "the first arc, tacks included", heat);
  if (subject.seam.child("pass").next_sibling("pass")) {
    put_gate(node, "every further pass and after every interruption", heat);
  }
  put_chemistry(node, heat);
  put_heating(node, heat);
  if (const pugi::xml_node window = heat.child("window")) put_window(node, window);
  put_item(node,
           "ends of beads and tacks",
           "cool about twice as fast as the middle of a bead: no tack or stop on a corner or edge");
  if (const pugi::xml_node hardness = heat.child("hardness")) {
    put_hardness(node, hardness);
    if (plan_reader::is_true(heat, "from_grade_maxima")) {
      put_item(node, "hardness of a part without analysis", "not known: it may be the harder one");
    }
  }
  if (const pugi::xml_node tearing = heat.child("tearing")) put_tearing(node, tearing);
  put_afterwards(node, heat);
}

}  // namespace seamturn::procedure_sheet
