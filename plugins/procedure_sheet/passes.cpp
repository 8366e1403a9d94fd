// SPDX-License-Identifier: MIT
// Process, consumables and the table of passes.
#include <algorithm>
#include <cstring>

#include "procedure_sheet/sheet.hpp"

namespace seamturn::procedure_sheet {

using plan_reader::copy;
using plan_reader::copy_rounded;
using plan_reader::number;
using plan_reader::put;
using plan_reader::rounded;
using plan_reader::text;

namespace {

pugi::xml_node settings_row(const Subject& subject, pugi::xml_node pass) {
  for (const pugi::xml_node row :
       subject.plan.root().child("consumables").children("settings-row")) {
    if (std::strcmp(text(row, "id"), text(pass, "settings")) == 0) return row;
  }
  return {};
}

void put_pass(pugi::xml_node parent, const Subject& subject, pugi::xml_node pass) {
  pugi::xml_node node = parent.append_child("pass");
  copy(pass, node, {"number", "role", "layer", "bead"});
  put(node, "wire_mm", rounded(number(subject.wire, "diameter_mm"), 2));
  copy_rounded(pass, node, 0, {"current_a"});
  copy_rounded(pass, node, 1, {"voltage_v"});
  copy_rounded(pass, node, 3, {"feed_mm_s"});
  put(node, "feed_m_min", rounded(number(pass, "feed_mm_s") * 0.06, 2));
  copy_rounded(pass, node, 3, {"travel_mm_s"});
  put(node, "travel_mm_min", rounded(number(pass, "travel_mm_s") * 60.0, 0));
  copy_rounded(pass, node, 3, {"arc_energy_kj_mm", "heat_input_kj_mm"});
  copy_rounded(pass, node, 1, {"tip_distance_mm", "gas_flow_l_min"});
  copy_rounded(pass, node, 2, {"weave_width_mm", "weave_frequency_hz"});
  copy_rounded(pass, node, 1, {"work_angle_deg", "push_deg"});
  copy_rounded(pass, node, 2, {"area_mm2", "centre_x_mm", "centre_y_mm", "aim_x_mm", "aim_y_mm"});
  copy_rounded(pass, node, 1, {"t85_short_s", "t85_long_s"});
  copy(pass, node, {"limited_by"});
  const pugi::xml_node row = settings_row(subject, pass);
  copy(row, node, {"transfer"});
  if (row) {
    put(node, "settings", text(row, "id"));
    put(node, "settings_status", text(row, "status"));
    put(node, "settings_source", text(row, "source"));
    put(node,
        "travel_range_mm_min",
        rounded(number(row, "travel_min_mm_s") * 60.0, 0) + " to " +
            rounded(number(row, "travel_max_mm_s") * 60.0, 0));
  }
}

/// Empty without a cell.
std::string nozzle_text(pugi::xml_node torch) {
  return torch ? rounded(number(torch, "nozzle_diameter_mm"), 2) : "";
}

bool weaves(const Subject& subject) {
  for (const pugi::xml_node pass : subject.seam.children("pass")) {
    if (number(pass, "weave_width_mm") > 0.0) return true;
  }
  return false;
}

/// "fill-pb 2 x, cap-pb": the settings of a row of the gap table, in the order laid.
std::string runs_text(pugi::xml_node gap) {
  std::string all;
  for (pugi::xml_node run = gap.child("run"); run;) {
    const std::string settings = text(run, "settings");
    int count = 0;
    for (; run && settings == text(run, "settings"); run = run.next_sibling("run")) ++count;
    all += (all.empty() ? "" : ", ") + settings + (count > 1 ? " x " + std::to_string(count) : "");
  }
  return all;
}

void put_gap(pugi::xml_node table, pugi::xml_node gap) {
  pugi::xml_node node = table.append_child("gap");
  copy_rounded(gap, node, 2, {"from_mm", "to_mm"});
  if (!gap.child("run")) {
    copy(gap, node, {"stop_and_call"});
    return;
  }
  int passes = 0;
  double weave_mm = 0.0;
  for (const pugi::xml_node run : gap.children("run")) {
    ++passes;
    weave_mm = std::max(weave_mm, number(run, "weave_width_mm"));
  }
  put(node, "passes", std::to_string(passes));
  put(node, "settings", runs_text(gap));
  put(node, "weave_max_mm", rounded(weave_mm, 1));
}

}  // namespace

void put_fit_up(pugi::xml_node sheet, const Subject& subject) {
  const pugi::xml_node fit_up = subject.seam.child("fit-up");
  if (!fit_up.child("gaps")) return;
  const pugi::xml_node gaps = fit_up.child("gaps");
  pugi::xml_node node = sheet.append_child("fit-up");
  put(node, "tolerances", text(fit_up, "tolerances"));
  const pugi::xml_node preparation = subject.joint.child("preparation");
  const bool has_gap = bool(preparation.attribute("gap_mm"));
  put(node,
      "passes_above_for_gap_mm",
      has_gap ? rounded(number(preparation, "gap_mm"), 2) : std::string("0"));
  copy_rounded(fit_up, node, 2, {"misalignment_max_mm"});
  copy(fit_up, node, {"misalignment_source", "misalignment_status"});
  copy_rounded(gaps, node, 2, {"stop_above_mm"});
  copy(gaps, node, {"stop_reason", "stop_status"});
  for (const pugi::xml_node gap : gaps.children("gap")) put_gap(node, gap);
}

void put_process(pugi::xml_node sheet, const Subject& subject) {
  pugi::xml_node node = sheet.append_child("process");
  put(node, "number", text(subject.wire, "process"));
  put(node, "position", text(subject.procedure, "position"));
  put_open(node, "degree of mechanisation");
  put_open(node, "limits of slope and rotation");
  put_open(node, "current type and polarity");
  put_open(node, "power source and pulse programme");
  put_item(node, "number of wires", "one");
  put_item(
      node, "runs", subject.seam.child("pass").next_sibling("pass") ? "multi-run" : "single run");
  put_item(node,
           "weaving",
           weaves(subject) ? "width and frequency in the table of passes" : "none planned");
  if (weaves(subject)) put_open(node, "weaving: dwell at the sides");
  put_item(
      node, "nozzle diameter, mm", nozzle_text(subject.plan.root().child("cell").child("torch")));
}

void put_consumables(pugi::xml_node sheet, const Subject& subject) {
  pugi::xml_node node = sheet.append_child("consumables");
  pugi::xml_node wire = node.append_child("wire");
  copy(subject.wire, wire, {"designation"});
  copy_rounded(subject.wire, wire, 2, {"diameter_mm"});
  copy(subject.wire, wire, {"hydrogen_ml_100g", "source", "status"});
  if (subject.gas) {
    copy(subject.gas, node.append_child("gas"), {"designation", "source", "status"});
  } else {
    put_open(node, "shielding gas");
  }
  put_open(node, "wire: make and trade name");
  put_open(node, "gas: supplier and trade name");
  put_open(node, "handling and storage of the consumables");
  put_open(node, "flux and additional filler, if any");
}

void put_passes(pugi::xml_node sheet, const Subject& subject) {
  pugi::xml_node node = sheet.append_child("passes");
  put(node, "of_seam", text(subject.seam, "id"));
  copy(subject.seam, node, {"layers"});
  copy_rounded(subject.seam, node, 3, {"over_weld_area_ratio"});
  copy_rounded(subject.seam, node, 3, {"heat_input_min_kj_mm", "heat_input_max_kj_mm"});
  for (const pugi::xml_node pass : subject.seam.children("pass")) put_pass(node, subject, pass);
}

}  // namespace seamturn::procedure_sheet
