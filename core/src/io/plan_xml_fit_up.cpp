// SPDX-License-Identifier: MIT
#include "detail_plan_xml.hpp"

namespace seamturn::io::detail {

namespace {

void put_end(pugi::xml_node parent, const char* name, const plan::FitUpEnd& end) {
  pugi::xml_node node = parent.append_child(name);
  put_number(node, "area_mm2", end.area_mm2);
  put_number(node, "metal_kg", end.metal_kg);
  put_flag(node, "closes", end.closes);
  if (!end.closes) {
    put_text(node, "why", end.why);
    return;
  }
  put_count(node, "passes", end.passes);
  put_number(node, "arc_time_s", end.arc_time_s);
  put_number(node, "heat_input_min_kj_mm", end.heat_input_min_kj_mm);
  put_number(node, "heat_input_max_kj_mm", end.heat_input_max_kj_mm);
}

void put_row_pass(pugi::xml_node parent, const pass::Pass& pass) {
  pugi::xml_node node = parent.append_child("run");
  put_count(node, "number", pass.number);
  put_text(node, "role", process::role_name(pass.role));
  put_text(node, "settings", pass.settings);
  put_number(node, "travel_mm_s", pass.travel_mm_s);
  put_number(node, "weave_width_mm", pass.weave_width_mm);
  put_number(node, "heat_input_kj_mm", pass.heat_input_kj_mm);
}

void put_gaps(pugi::xml_node parent, const fitup::GapTable& table) {
  pugi::xml_node node = parent.append_child("gaps");
  put_number(node, "stop_above_mm", table.stop.gap_mm);
  put_text(node, "stop_reason", table.stop.reason);
  put_text(node, "stop_status", base::status_name(table.stop.status));
  for (const fitup::GapRow& row : table.rows) {
    pugi::xml_node item = node.append_child("gap");
    put_number(item, "from_mm", row.from_mm);
    put_number(item, "to_mm", row.to_mm);
    if (!row.stack) {
      put_text(item, "stop_and_call", row.why);
      continue;
    }
    put_number(item, "area_mm2", row.area_mm2);
    put_number(item, "arc_time_s", row.stack->arc_time_s);
    for (const pass::Pass& pass : row.stack->passes) put_row_pass(item, pass);
  }
}

}  // namespace

void put_fit_up(pugi::xml_node seam, const plan::PlannedFitUp& fit_up) {
  pugi::xml_node node = seam.append_child("fit-up");
  put_text(node, "tolerances", fit_up.tolerances);
  put_text(node, "status", base::status_name(fit_up.status));
  if (fit_up.misalignment_max_mm > 0.0) {
    put_number(node, "misalignment_max_mm", fit_up.misalignment_max_mm);
    put_text(node,
             "misalignment_source",
             std::string(fit_up.misalignment.key) + " " + std::string(fit_up.misalignment.locator));
    put_text(node, "misalignment_status", base::status_name(fit_up.misalignment.status));
  }
  put_end(node, "least", fit_up.low);
  put_end(node, "most", fit_up.high);
  if (fit_up.gaps) put_gaps(node, *fit_up.gaps);
}

}  // namespace seamturn::io::detail
