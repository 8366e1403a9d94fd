// SPDX-License-Identifier: MIT
#include "detail_plan_xml.hpp"

namespace seamturn::io::detail {

namespace {

void put_procedure(pugi::xml_node parent, const procedure::Procedure& procedure) {
  pugi::xml_node node = parent.append_child("procedure");
  put_text(node, "id", procedure.id);
  put_text(node, "position", process::position_name(procedure.position));
  put_text(node, "wire", procedure.wire);
  put_text(node, "gas", procedure.gas);
  put_text(node, "steel_1", procedure.steel_1);
  put_text_if(node, "group_1", procedure.group_1);
  put_number(node, "thickness_1_mm", procedure.thickness_1_mm);
  put_text(node, "steel_2", procedure.steel_2);
  put_text_if(node, "group_2", procedure.group_2);
  put_number(node, "thickness_2_mm", procedure.thickness_2_mm);
  put_count(node, "side", procedure.side);
  put_flag(node, "closed", procedure.closed);
  if (procedure.closed) put_number(node, "diameter_mm", procedure.diameter_mm);
  put_text(node, "qualification", procedure.qualification);
  for (const std::string& id : procedure.joints) put_text(node.append_child("joint"), "id", id);
  for (const std::string& id : procedure.seams) put_text(node.append_child("seam"), "id", id);
  for (const std::string& line : procedure.inspection) {
    put_text(node.append_child("inspection"), "text", line);
  }
  for (const procedure::Caution& caution : procedure.cautions) put_caution(node, caution);
}

void put_rates(pugi::xml_node parent, const cost::Rates& rates) {
  pugi::xml_node node = parent.append_child("rates");
  put_number(node, "labour_per_hour", rates.labour_per_hour);
  put_number(node, "cell_per_hour", rates.cell_per_hour);
  put_number(node, "energy_per_kwh", rates.energy_per_kwh);
  put_number(node, "power_source_efficiency_ratio", rates.power_source_efficiency_ratio);
  put_number(node, "gas_loss_ratio", rates.gas_loss_ratio);
  put_number(node, "gas_pre_post_flow_s", rates.gas_pre_post_flow_s);
  put_number(node, "setup_per_batch_h", rates.setup_per_batch_h);
  put_number(node, "time_band_ratio", rates.time_band_ratio);
  put_number(node, "consumption_band_ratio", rates.consumption_band_ratio);
  put_text(node, "source", rates.source);
}

/// Only where an order was planned.
void put_other_order(pugi::xml_node timeline,
                     const char* name,
                     const plan::Plan& plan,
                     const plan::OtherOrder& other) {
  if (other.visits == 0) return;
  pugi::xml_node node = timeline.append_child("other-order");
  put_text(node, "name", name);
  put_number(node, "cycle_s", plan.cycle_s + other.longer_s);
  put_count(node, "visits", other.visits);
}

}  // namespace

void put_procedures(pugi::xml_node root, const plan::Plan& plan) {
  pugi::xml_node procedures = root.append_child("procedures");
  for (const procedure::Procedure& procedure : plan.procedures) {
    put_procedure(procedures, procedure);
  }
}

void put_timeline(pugi::xml_node root, const plan::Plan& plan) {
  pugi::xml_node node = root.append_child("timeline");
  put_number(node, "cycle_s", plan.cycle_s);
  put_number(node, "lower_bound_s", plan.lower_bound_s);
  put_flag(node, "proved_best", plan.proved_best);
  for (std::size_t kind = 0; kind < timeline::second_kinds; ++kind) {
    const auto name = timeline::second_kind_name(static_cast<timeline::SecondKind>(kind));
    put_number(node, (std::string(name) + "_time_s").c_str(), plan.seconds[kind]);
  }
  put_other_order(node, "greedy", plan, plan.greedy_order);
  put_other_order(node, "file", plan, plan.file_order);
  for (const plan::PlannedEvent& event : plan.timeline) {
    pugi::xml_node child = node.append_child("event");
    put_text(child, "kind", timeline::second_kind_name(event.kind));
    put_number(child, "start_s", event.start_s);
    put_number(child, "end_s", event.end_s);
    put_stage_if(child, plan, event.stage);
    put_text_if(child, "stance", event.stance);
    put_text_if(child, "seam", event.seam);
    put_text_if(child, "operation", event.operation);
    if (event.pass > 0) put_count(child, "pass", event.pass);
  }
  for (const std::string& id : plan.not_turned) {
    put_text(node.append_child("not-turned"), "seam", id);
  }
}

void put_estimate(pugi::xml_node root, const plan::Plan& plan) {
  const cost::Estimate& estimate = plan.estimate;
  pugi::xml_node node = root.append_child("estimate");
  put_text(node, "currency", estimate.currency);
  put_number(node, "wire_kg", estimate.wire_kg);
  put_number(node, "gas_m3", estimate.gas_m3);
  put_number(node, "energy_kwh", estimate.energy_kwh);
  put_number(node, "arc_time_s", estimate.arc_time_s);
  put_number(node, "cell_time_s", estimate.cell_time_s);
  put_number(node, "total", estimate.total);
  put_number(node, "total_low", estimate.total_low);
  put_number(node, "total_high", estimate.total_high);
  put_count(node, "batch_parts", estimate.batch_parts);
  put_number(node, "batch_total", estimate.batch_total);
  for (const cost::Item& item : estimate.items) {
    pugi::xml_node child = node.append_child("item");
    put_text(child, "name", item.name);
    put_number(child, "amount", item.amount);
    put_number(child, "low", item.low);
    put_number(child, "high", item.high);
  }
  put_rates(node, plan.rates);
}

void put_totals(pugi::xml_node root, const plan::Plan& plan) {
  pugi::xml_node node = root.append_child("totals");
  put_number(node, "length_mm", plan.totals.length_mm);
  put_number(node, "metal_kg", plan.totals.metal_kg);
  put_count(node, "passes", plan.totals.passes);
  put_number(node, "arc_time_s", plan.totals.arc_time_s);
}

}  // namespace seamturn::io::detail
