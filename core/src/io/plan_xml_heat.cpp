// SPDX-License-Identifier: MIT
// Heat of a joint: chemistry, what every method asks for, zone, window, and what is left to do.
#include "detail_plan_xml.hpp"

namespace seamturn::io::detail {

namespace {

void put_chemistry(pugi::xml_node node, const procedure::HeatLimits& heat) {
  put_number(node, "cet_plate", heat.cet_plate);
  put_number_if(node, "cev_plate", heat.cev_plate);
  put_number_if(node, "pcm_plate", heat.pcm_plate);
  put_number_if(node, "cen_plate", heat.cen_plate);
  put_number_if(node, "jis_plate", heat.jis_plate);
  put_number(node, "cet_governing", heat.cet_governing);
  put_flag(node, "from_grade_maxima", heat.from_grade_maxima);
  put_text(node, "composition_basis", heat.composition_basis);
}

void put_temperatures(pugi::xml_node node, const procedure::HeatLimits& heat) {
  put_number(node, "thickness_mm", heat.thickness_mm);
  put_number(node, "combined_thickness_mm", heat.combined_thickness_mm);
  put_text(node, "combined_text", heat.combined_text);
  put_number(node, "hydrogen_ml_100g", heat.hydrogen_ml_100g);
  put_number(node, "lowest_heat_input_kj_mm", heat.lowest_heat_input_kj_mm);
  put_number(node, "preheat_computed_c", heat.preheat_computed_c);
  put_number(node, "preheat_c", heat.preheat_c);
  put_number(node, "own_preheat_c", heat.own_preheat_c);
  put_text_if(node, "neighbour", heat.neighbour);
  put_flag(node, "needs_heating", heat.needs_heating);
  put_text(node, "preheat_basis", heat.preheat_basis);
  put_number(node, "measure_distance_mm", heat.measure_distance_mm);
  put_text(node, "where_to_measure", heat.where_to_measure);
  put_number(node, "zone_width_mm", heat.zone_width_mm);
  put_number(node, "soak_s", heat.soak_s);
  put_number(node, "interpass_max_c", heat.interpass_max_c);
  put_text(node, "interpass_basis", heat.interpass_basis);
}

void put_answers(pugi::xml_node node, const procedure::HeatLimits& heat) {
  for (const heat::HeatPath& path : heat.paths) {
    pugi::xml_node way = node.append_child("path");
    put_text(way, "member", path.member);
    put_number(way, "average_mm", path.average_mm);
  }
  for (const procedure::PreheatAnswer& answer : heat.answers) {
    pugi::xml_node row = node.append_child("method");
    put_text(row, "name", answer.method);
    put_number_if(row, "preheat_c", answer.preheat_c);
    put_text(row, "says", answer.says);
    put_flag(row, "may_govern", answer.may_govern);
    put_text(row, "status", base::status_name(answer.status));
  }
}

void put_window(pugi::xml_node parent, const procedure::HeatWindow& window) {
  pugi::xml_node node = parent.append_child("window");
  put_number(node, "t85_least_s", window.t85_least_s);
  put_number(node, "t85_most_s", window.t85_most_s);
  put_text(node, "stated_by", window.stated_by);
  put_text(node, "status", base::status_name(window.status));
  put_flag(node, "binds", window.binds);
  put_flag(node, "kept", window.kept);
  put_number_if(node, "heat_input_least_kj_mm", window.heat_input_least_kj_mm);
  put_number_if(node, "heat_input_most_kj_mm", window.heat_input_most_kj_mm);
  put_text_if(node, "refused", window.refused);
}

void put_tearing(pugi::xml_node parent, const plan::TearingCheck& check) {
  pugi::xml_node node = parent.append_child("tearing");
  put_text(node, "member", check.member);
  put_text(node, "shape", check.shape);
  put_number(node, "za", check.points.za);
  put_number(node, "zb", check.points.zb);
  put_number(node, "zc", check.points.zc);
  put_number(node, "zd", check.points.zd);
  put_number(node, "ze", check.points.ze);
  put_number(node, "total", check.points.total);
  put_text(node, "required", heat::z_class_name(check.points.required));
  put_text(node, "plate", heat::z_class_name(check.plate));
  put_text(node, "verdict", heat::tearing_verdict_name(check.verdict));
}

void put_aftercare(pugi::xml_node parent, const plan::Aftercare& after) {
  pugi::xml_node hold = parent.append_child("hold");
  put_number(hold, "hours", after.hold.hours);
  put_flag(hold, "cooling_only", after.hold.cooling_only);
  put_number(hold, "size_mm", after.hold_size_mm);
  put_text(hold, "row", after.hold.row);
  put_text(hold, "column", after.hold.column);
  if (after.soak) put_text(parent.append_child("soak"), "text", after.soak->text);
  if (after.keep) {
    pugi::xml_node keep = parent.append_child("keep");
    put_number(keep, "strip_s", after.keep->strip_s);
    put_number(keep, "heated_through_s", after.keep->heated_through_s);
  }
  if (after.hardness) {
    pugi::xml_node hardness = parent.append_child("hardness");
    put_text(hardness, "member", after.hardness->member);
    put_number(hardness, "t85_s", after.hardness->t85_s);
    put_number(hardness, "lowest_hv", after.hardness->estimate.lowest_hv);
    put_number(hardness, "highest_hv", after.hardness->estimate.highest_hv);
    put_number(hardness, "scatter_hv", heat::hardness_scatter_hv);
  }
  if (after.tearing) put_tearing(parent, *after.tearing);
  if (after.later) {
    pugi::xml_node later = parent.append_child("later-heating");
    put_text(later, "steel", after.later->steel);
    put_number(later, "at_most_c", after.later->limit.value_c);
    put_text(later, "source", after.later->limit.source);
    put_text(later, "status", base::status_name(after.later->limit.status));
  }
}

}  // namespace

void put_heat(pugi::xml_node parent, const plan::PlannedJoint& joint) {
  pugi::xml_node node = parent.append_child("heat");
  put_chemistry(node, joint.heat);
  put_temperatures(node, joint.heat);
  put_answers(node, joint.heat);
  if (joint.heat.window) put_window(node, *joint.heat.window);
  put_aftercare(node, joint.aftercare);
}

}  // namespace seamturn::io::detail
