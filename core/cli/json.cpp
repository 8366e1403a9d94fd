// SPDX-License-Identifier: MIT
#include "json.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "json_build.hpp"
#include "json_heat.hpp"
#include "sources_shown.hpp"

namespace seamturn::cli {

namespace {

using Json = nlohmann::ordered_json;
using timeline::SecondKind;

std::string written(const Json& json) {
  return json.dump(2) + '\n';
}

Json finding_list(const std::vector<base::Finding>& findings) {
  Json list = Json::array();
  for (const base::Finding& finding : findings) {
    list.push_back(Json{{"severity", std::string(base::severity_name(finding.severity))},
                        {"code", finding.code},
                        {"text", finding.text},
                        {"file", finding.place.file},
                        {"line", finding.place.line},
                        {"column", finding.place.column}});
  }
  return list;
}

Json fit_end_of(const plan::FitUpEnd& end) {
  Json json{{"area_mm2", end.area_mm2}, {"metal_kg", end.metal_kg}, {"closes", end.closes}};
  if (!end.closes) {
    json["why"] = end.why;
    return json;
  }
  json["passes"] = end.passes;
  json["arc_time_s"] = end.arc_time_s;
  json["heat_input_min_kj_mm"] = end.heat_input_min_kj_mm;
  json["heat_input_max_kj_mm"] = end.heat_input_max_kj_mm;
  return json;
}

Json fit_up_of(const plan::PlannedSeam& seam) {
  const plan::PlannedFitUp& fit = *seam.fit_up;
  Json json{{"seam", seam.id},
            {"tolerances", fit.tolerances},
            {"least", fit_end_of(fit.low)},
            {"most", fit_end_of(fit.high)}};
  if (fit.misalignment_max_mm > 0.0) {
    json["misalignment_max_mm"] = fit.misalignment_max_mm;
    json["misalignment_status"] = std::string(base::status_name(fit.misalignment.status));
  }
  if (!fit.gaps) return json;
  Json rows = Json::array();
  for (const fitup::GapRow& row : fit.gaps->rows) {
    Json item{{"from_mm", row.from_mm}, {"to_mm", row.to_mm}, {"closes", row.stack.has_value()}};
    if (row.stack) {
      item["passes"] = row.stack->passes.size();
      item["arc_time_s"] = row.stack->arc_time_s;
    }
    rows.push_back(item);
  }
  json["gaps"] = rows;
  json["stop_above_mm"] = fit.gaps->stop.gap_mm;
  json["stop_reason"] = fit.gaps->stop.reason;
  return json;
}

void add_citation(Json& json, const base::Citation& citation) {
  json["source"] = std::string(citation.key) + " " + std::string(citation.locator);
  json["status"] = std::string(base::status_name(citation.status));
}

Json size_of(const plan::PlannedSize& size) {
  if (!size.refused.empty()) return Json{{"refused", size.refused}};
  Json checks = Json::array();
  for (const joint::SizeCheck& check : size.checks) {
    Json item{{"rule", check.rule},
              {"question", check.question},
              {"subject", check.subject},
              {"found", check.found},
              {"bound", check.bound == joint::SizeBound::at_least ? "at least" : "at most"},
              {"required", check.required},
              {"unit", check.unit},
              {"holds", check.holds}};
    add_citation(item, check.citation);
    checks.push_back(item);
  }
  return Json{{"verdict", std::string(joint::verdict_name(size.verdict))}, {"checks", checks}};
}

Json throats_of(const plan::PlannedJoint& joint) {
  Json list = Json::array();
  for (const plan::PlannedSeam& seam : joint.seams) {
    Json item{{"seam", seam.id}, {"over_weld_area_ratio", seam.over_weld_area_ratio}};
    if (seam.counted && !seam.counted->refused.empty()) item["refused"] = seam.counted->refused;
    if (seam.counted && seam.counted->refused.empty()) {
      item["counted_throat_mm"] = seam.counted->throat_mm;
      item["deduction_mm"] = seam.counted->deduction_mm;
      add_citation(item, seam.counted->citation);
    }
    list.push_back(item);
  }
  return list;
}

Json joint_entry(const plan::Plan& plan, const plan::PlannedJoint& joint) {
  const joint::Joint& described = *joint::find_joint(plan.weldment, joint.id);
  Json seams = Json::array();
  Json positions = Json::array();
  double length = 0.0, welded = 0.0, metal = 0.0, arc = 0.0, low = 0.0, high = 0.0, t85_min = 0.0,
         t85_max = 0.0;
  for (const plan::PlannedSeam& seam : joint.seams) {
    seams.push_back(seam.id);
    const std::string position(process::position_name(seam.position));
    if (std::find(positions.begin(), positions.end(), position) == positions.end()) {
      positions.push_back(position);
    }
    length += seam.length_mm;
    welded += seam.welded_mm;
    metal += seam.metal_kg;
    arc += seam.stack.arc_time_s;
    for (const plan::PlannedPass& pass : seam.passes) {
      const bool first = &seam == &joint.seams.front() && &pass == &seam.passes.front();
      low = first ? pass.pass.heat_input_kj_mm : std::min(low, pass.pass.heat_input_kj_mm);
      high = first ? low : std::max(high, pass.pass.heat_input_kj_mm);
      t85_min = first ? pass.t85_s : std::min(t85_min, pass.t85_s);
      t85_max = first ? pass.t85_long_s : std::max(t85_max, pass.t85_long_s);
    }
  }
  Json fits = Json::array();
  for (const plan::PlannedSeam& seam : joint.seams) {
    if (seam.fit_up) fits.push_back(fit_up_of(seam));
  }
  return Json{{"id", joint.id},
              {"seams", seams},
              {"type", std::string(joint::joint_type_name(described.type))},
              {"preparation", std::string(joint::preparation_name(described.preparation))},
              {"length_mm", length},
              {"welded_mm", welded},
              {"section_area_mm2", plan::section_area_mm2(joint)},
              {"metal_kg", metal},
              {"positions", positions},
              {"passes", plan::pass_count(joint)},
              {"arc_time_s", arc},
              {"heat_input_min_kj_mm", low},
              {"heat_input_max_kj_mm", high},
              {"preheat_c", joint.heat.preheat_c},
              {"needs_heating", joint.heat.needs_heating},
              {"preheat_basis", joint.heat.preheat_basis},
              {"interpass_max_c", joint.heat.interpass_max_c},
              {"interpass_basis", joint.heat.interpass_basis},
              {"cet", joint.heat.cet_governing},
              {"cev", joint.heat.cev_plate ? Json(*joint.heat.cev_plate) : Json(nullptr)},
              {"pcm", joint.heat.pcm_plate ? Json(*joint.heat.pcm_plate) : Json(nullptr)},
              {"t85_min_s", t85_min},
              {"t85_max_s", t85_max},
              {"weld_size", joint.size ? size_of(*joint.size) : Json(nullptr)},
              {"throats", throats_of(joint)},
              {"fit_up", fits},
              {"heat", heat_entry(joint)}};
}

Json axes_of(const plan::PlannedStance& stance) {
  Json axes = Json::object();
  for (std::size_t i = 0; i < stance.axis_names.size(); ++i) {
    axes[stance.axis_names[i]] = stance.stance.axes[i].deg();
  }
  return axes;
}

Json torques_of(const plan::PlannedStance& stance) {
  Json torques = Json::object();
  for (std::size_t i = 0; i < stance.axis_names.size(); ++i) {
    torques[stance.axis_names[i]] = stance.torque_nm[i];
  }
  return torques;
}

std::string position_of(const plan::Plan& plan, const std::string& id) {
  for (const plan::PlannedJoint& joint : plan.joints) {
    for (const plan::PlannedSeam& seam : joint.seams) {
      if (seam.id == id) return std::string(process::position_name(seam.position));
    }
  }
  return {};
}

Json value_of(const figures::FigureValue& value) {
  if (const auto* number = std::get_if<double>(&value.value)) return *number;
  return std::get<std::string>(value.value);
}

Json table_rows(const figures::FigureTable& table) {
  Json rows = Json::array();
  for (const auto& row : table.rows) {
    Json item = Json::object();
    for (std::size_t i = 0; i < row.size(); ++i) {
      std::visit([&](const auto& value) { item[table.columns[i].name] = value; }, row[i]);
    }
    rows.push_back(item);
  }
  return rows;
}

Json how_close_list(const std::vector<figures::HowClose>& how_close) {
  Json list = Json::array();
  for (const figures::HowClose& close : how_close) {
    Json item{{"name", close.name},
              {"value", close.value},
              {"unit", close.unit},
              {"nearest", close.nearest},
              {"distance", close.distance},
              {"origin", close.origin}};
    if (close.least) item["least"] = *close.least;
    if (close.largest) item["largest"] = *close.largest;
    if (close.share_ratio) item["share_ratio"] = *close.share_ratio;
    list.push_back(item);
  }
  return list;
}

}  // namespace

std::string joints_json(const plan::Plan& plan) {
  Json joints = Json::array();
  for (const plan::PlannedJoint& joint : plan.joints) joints.push_back(joint_entry(plan, joint));
  return written(Json{{"weldment", plan.weldment.title},
                      {"joints", joints},
                      {"totals",
                       {{"length_mm", plan.totals.length_mm},
                        {"welded_mm", plan.totals.welded_mm},
                        {"metal_kg", plan.totals.metal_kg},
                        {"passes", plan.totals.passes},
                        {"arc_time_s", plan.totals.arc_time_s}}},
                      {"findings", finding_list(plan.findings)}});
}

std::string turns_json(const plan::Plan& plan) {
  Json stances = Json::array();
  for (const plan::PlannedStance& stance : plan.stances) {
    stances.push_back(Json{{"stance", stance.id},
                           {"setup", stance.setup},
                           {"load_kg", stance.load.mass_kg},
                           {"rolling", stance.stance.rolling},
                           {"axes_deg", axes_of(stance)},
                           {"torque_nm", torques_of(stance)},
                           {"seams", stance.seams},
                           {"visits", stance.visits},
                           {"turn_time_s", stance.turn_time_s}});
  }
  Json sequence = Json::array();
  for (const plan::PlannedEvent& event : plan.timeline) {
    if (event.kind != SecondKind::arc) continue;
    sequence.push_back(Json{{"seam", event.seam},
                            {"pass", event.pass},
                            {"position", position_of(plan, event.seam)},
                            {"stance", event.stance},
                            {"start_s", event.start_s},
                            {"end_s", event.end_s}});
  }
  Json out{{"weldment", plan.weldment.title}, {"stances", stances}, {"sequence", sequence}};
  for (std::size_t i = 0; i < timeline::second_kinds; ++i) {
    const std::string kind(timeline::second_kind_name(static_cast<SecondKind>(i)));
    out[kind + "_time_s"] = plan.seconds[i];
  }
  // Work of people at the part counts as other: the seven kinds of the contract add up.
  double other_s = plan.seconds[static_cast<std::size_t>(SecondKind::other)];
  for (std::size_t i = 0; i < timeline::second_kinds; ++i) {
    if (timeline::is_by_people(static_cast<SecondKind>(i))) other_s += plan.seconds[i];
  }
  out["other_time_s"] = other_s;
  add_build(plan, out);
  out["cycle_time_s"] = plan.cycle_s;
  out["lower_bound_s"] = plan.lower_bound_s;
  out["proved_best"] = plan.proved_best;
  add_other_orders(plan, out);
  out["not_turned"] = plan.not_turned;
  out["findings"] = finding_list(plan.findings);
  return written(out);
}

std::string cost_json(const plan::Plan& plan) {
  const cost::Estimate& estimate = plan.estimate;
  Json items = Json::array();
  for (const cost::Item& item : estimate.items) {
    items.push_back(
        Json{{"name", item.name}, {"amount", item.amount}, {"low", item.low}, {"high", item.high}});
  }
  return written(Json{{"weldment", plan.weldment.title},
                      {"wire_kg", estimate.wire_kg},
                      {"gas_m3", estimate.gas_m3},
                      {"energy_kwh", estimate.energy_kwh},
                      {"arc_time_s", estimate.arc_time_s},
                      {"cell_time_s", estimate.cell_time_s},
                      {"crew_s", estimate.crew_s},
                      {"rehangs", rehangs_of(plan)},
                      {"items", items},
                      {"currency", estimate.currency},
                      {"total", estimate.total},
                      {"total_low", estimate.total_low},
                      {"total_high", estimate.total_high},
                      {"batch", {{"parts", estimate.batch_parts}, {"total", estimate.batch_total}}},
                      {"findings", finding_list(plan.findings)}});
}

std::string plan_json(const plan::Plan& plan, const std::vector<std::string>& files) {
  Json cautions = Json::array();
  for (const procedure::Caution& caution : plan.cautions) {
    cautions.push_back(
        Json{{"code", caution.code}, {"text", caution.text}, {"defer_to", caution.defer_to}});
  }
  return written(Json{{"weldment", plan.weldment.title},
                      {"revision", plan.weldment.revision},
                      {"part_mass_kg", plan.part.mass_kg},
                      {"totals",
                       {{"length_mm", plan.totals.length_mm},
                        {"welded_mm", plan.totals.welded_mm},
                        {"metal_kg", plan.totals.metal_kg},
                        {"passes", plan.totals.passes},
                        {"arc_time_s", plan.totals.arc_time_s}}},
                      {"procedures", plan.procedures.size()},
                      {"stances", plan.stances.size()},
                      {"cycle_time_s", plan.cycle_s},
                      {"lower_bound_s", plan.lower_bound_s},
                      {"currency", plan.estimate.currency},
                      {"total", plan.estimate.total},
                      {"documents", files},
                      {"cautions", cautions},
                      {"findings", finding_list(plan.findings)}});
}

std::string figure_json(const figures::FigureResult& result, const base::FigureCard& card) {
  Json out{{"name", result.name},
           {"value", value_of(result.principal)},
           {"unit", result.principal.unit},
           {"source", source_text(card)},
           {"status", status_text(card)}};
  if (!result.values.empty()) {
    Json values = Json::object();
    for (const auto& [name, value] : result.values) {
      values[name] = Json{{"value", value_of(value)}, {"unit", value.unit}};
    }
    out["values"] = values;
  }
  if (result.table) out[result.table->name] = table_rows(*result.table);
  out["findings"] = finding_list(result.findings);
  return written(out);
}

std::string explain_json(const std::string& joint, const std::vector<figures::ExplainStep>& steps) {
  Json list = Json::array();
  const auto rows = [](const std::vector<figures::Given>& given) {
    Json all = Json::array();
    for (const figures::Given& row : given) {
      Json item{{"name", row.name}, {"unit", row.unit}, {"origin", row.origin}};
      std::visit([&](const auto& value) { item["value"] = value; }, row.value);
      all.push_back(item);
    }
    return all;
  };
  for (const figures::ExplainStep& step : steps) {
    list.push_back(Json{{"figure", step.figure},
                        {"subject", step.subject},
                        {"formula", step.formula},
                        {"inputs", rows(step.inputs)},
                        {"results", rows(step.results)},
                        {"sources", step.sources},
                        {"range", step.range},
                        {"how_close", how_close_list(step.how_close)}});
  }
  return written(Json{{"joint", joint}, {"steps", list}});
}

std::string cards_json() {
  Json list = Json::array();
  for (const base::FigureCard* card : figures::all_cards()) {
    Json keys = Json::array();
    for (const base::FigureKey& key : card->keys) {
      keys.push_back(Json{{"key", std::string(key.name)},
                          {"meaning", std::string(key.meaning)},
                          {"units", key.is_text ? "" : base::unit_symbols(key.dimension)},
                          {"range", std::string(key.range)},
                          {"required", key.required}});
    }
    list.push_back(Json{{"name", std::string(card->name)},
                        {"meaning", std::string(card->meaning)},
                        {"unit", std::string(card->unit)},
                        {"keys", keys},
                        {"source", source_text(*card)},
                        {"status", status_text(*card)}});
  }
  return written(Json{{"figures", list}});
}

std::string findings_json(const std::vector<base::Finding>& findings) {
  return written(Json{{"findings", finding_list(findings)}});
}

std::string plugins_json(const std::vector<plugin_host::Verdict>& verdicts) {
  Json list = Json::array();
  for (const plugin_host::Verdict& verdict : verdicts) {
    list.push_back(Json{{"file", verdict.file.string()},
                        {"loaded", verdict.loaded},
                        {"id", verdict.id},
                        {"title", verdict.title},
                        {"version", verdict.version},
                        {"kind", verdict.kind},
                        {"reason", verdict.reason}});
  }
  return written(Json{{"plugins", list}});
}

}  // namespace seamturn::cli
