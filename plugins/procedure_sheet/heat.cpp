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
  put(gate, "do", "measure beside the weld (ISO 13916); weld only between these temperatures");
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
  put_gate(node, "the first arc, tacks included", heat);
  if (subject.seam.child("pass").next_sibling("pass")) {
    put_gate(node, "every further pass and after every interruption", heat);
  }
  put_item(node,
           "carbon equivalent CET of the plates, mass-%",
           plan_reader::rounded(plan_reader::number(heat, "cet_plate"), 3));
  put_item(node,
           "chemistry",
           plan_reader::is_true(heat, "from_grade_maxima")
               ? "limits of the grade: no analysis was given"
               : "analysis of the heat as given");
  put_open(node, "temperature kept during interruptions");
  put_open(node, "hydrogen release after welding");
  put_open(node, "heat treatment after welding");
}

}  // namespace seamturn::procedure_sheet
