// SPDX-License-Identifier: MIT
// Heat input, preheat, interpass maximum and cooling time of a joint, link by link.
#include <algorithm>

#include "detail_explain.hpp"
#include "seamturn/heat/cooling_time.hpp"
#include "seamturn/heat/heat_input.hpp"
#include "seamturn/heat/preheat_cet.hpp"

namespace seamturn::figures::detail {

namespace {

void add_word(std::vector<Given>& list, std::string name, std::string word, std::string origin) {
  list.push_back(Given{std::move(name), std::move(word), "", std::move(origin)});
}

bool cooler(const plan::PlannedPass& a, const plan::PlannedPass& b) {
  return a.pass.heat_input_kj_mm < b.pass.heat_input_kj_mm;
}

constexpr const char* cet_method = "CET method, EN 1011-2 C.3, from memory";

/// What the settings of a pass can bring between their fastest and their slowest travel.
std::optional<Limits> window_of(const Subject& subject, const pass::Pass& pass) {
  const process::LinkedSettings* row = subject.settings(pass.settings);
  if (row == nullptr) return std::nullopt;
  const double at_1_mm_s = pass.heat_input_kj_mm * pass.travel_mm_s;
  return Limits{at_1_mm_s / row->travel_max_mm_s,
                at_1_mm_s / row->travel_min_mm_s,
                "travel-max and travel-min of settings " + row->id};
}

ExplainStep heat_step(const Subject& subject,
                      const plan::PlannedSeam& seam,
                      const plan::PlannedPass& planned) {
  const pass::Pass& pass = planned.pass;
  ExplainStep step = step_of(heat::heat_input_card(),
                             "heat-input",
                             "seam " + seam.id + " pass " + std::to_string(pass.number));
  const std::string row = "settings/" + pass.settings;
  const auto k = heat::arc_efficiency_ratio(subject.wire().process);
  add(step.inputs, "voltage", pass.voltage_v, "V", subject.of_library(row, "voltage"));
  add(step.inputs, "current", pass.current_a, "A", subject.of_library(row, "current"));
  add(step.inputs, "travel", pass.travel_mm_s * 6.0, "cm/min", "passes above");
  if (k) add(step.inputs, "k", *k, "", "process " + subject.wire().process);
  add(step.results, "arc energy", pass.arc_energy_kj_mm, "kJ/mm", "");
  add(step.results, "heat input", pass.heat_input_kj_mm, "kJ/mm", "");
  if (const auto window = window_of(subject, pass)) {
    step.how_close.push_back(how_close("heat input", pass.heat_input_kj_mm, "kJ/mm", *window));
  }
  step.how_close.push_back(how_close("heat input",
                                     pass.heat_input_kj_mm,
                                     "kJ/mm",
                                     within(heat::preheat_heat_input_kj_mm, cet_method)));
  return step;
}

}  // namespace

void explain_heat_input(const Subject& subject, std::vector<ExplainStep>& steps) {
  for (const plan::PlannedSeam& seam : subject.planned.seams) {
    if (seam.passes.empty()) continue;
    const auto [low, high] = std::minmax_element(seam.passes.begin(), seam.passes.end(), cooler);
    steps.push_back(heat_step(subject, seam, *low));
    if (high != low) steps.push_back(heat_step(subject, seam, *high));
  }
}

void explain_preheat(const Subject& subject, std::vector<ExplainStep>& steps) {
  const procedure::HeatLimits& heat = subject.planned.heat;
  ExplainStep step = step_of(heat::preheat_card(), "preheat", "joint " + subject.planned.id);
  add(step.inputs,
      "CET",
      heat.cet_governing,
      "mass-%",
      heat.from_grade_maxima
          ? "limits of the grades " + subject.planned.steel_1 + ", " + subject.planned.steel_2
          : "analyses of the members");
  add(step.inputs, "thickness", heat.thickness_mm, "mm", "thickest member of the joint");
  add(step.inputs,
      "hydrogen",
      heat.hydrogen_ml_100g,
      "ml/100 g",
      subject.of_library("wire/" + subject.wire().id, "hydrogen"));
  add(step.inputs,
      "lowest heat input",
      heat.lowest_heat_input_kj_mm,
      "kJ/mm",
      "tacks and all passes of the joint");
  add(step.results, "preheat computed", heat.preheat_computed_c, "degC", "");
  add_word(step.results, "governed by", heat.preheat_basis, "");
  add(step.results,
      "preheat",
      heat.preheat_c,
      "degC",
      heat.needs_heating ? "" : "no heating needed: the ambient temperature");
  step.how_close = {
      how_close(
          "CET", heat.cet_governing, "mass-%", within(heat::preheat_cet_mass_percent, cet_method)),
      how_close(
          "thickness", heat.thickness_mm, "mm", within(heat::preheat_thickness_mm, cet_method)),
      how_close("hydrogen",
                heat.hydrogen_ml_100g,
                "ml/100 g",
                within(heat::preheat_hydrogen_ml_100g, cet_method)),
      how_close("lowest heat input",
                heat.lowest_heat_input_kj_mm,
                "kJ/mm",
                within(heat::preheat_heat_input_kj_mm, cet_method)),
      how_close("preheat",
                heat.preheat_c,
                "degC",
                up_to(heat.interpass_max_c, "interpass maximum below"))};
  steps.push_back(std::move(step));
}

void explain_interpass(const Subject& subject, std::vector<ExplainStep>& steps) {
  const procedure::HeatLimits& heat = subject.planned.heat;
  ExplainStep step;
  step.figure = "interpass";
  step.subject = "joint " + subject.planned.id;
  step.formula = "the lowest of what steels, wire and joint state";
  step.range = "never below the preheat";
  step.sources = {"each row's own source in the library"};
  add_word(step.inputs, "governed by", heat.interpass_basis, "");
  add(step.results, "interpass maximum", heat.interpass_max_c, "degC", "");
  step.how_close.push_back(how_close("interpass maximum",
                                     heat.interpass_max_c,
                                     "degC",
                                     Limits{heat.preheat_c, std::nullopt, "preheat above"}));
  steps.push_back(std::move(step));
}

void explain_cooling_time(const Subject& subject, std::vector<ExplainStep>& steps) {
  const procedure::HeatLimits& heat = subject.planned.heat;
  for (const plan::PlannedSeam& seam : subject.planned.seams) {
    if (seam.passes.empty()) continue;
    const auto [low, high] = std::minmax_element(seam.passes.begin(), seam.passes.end(), cooler);
    ExplainStep step = step_of(heat::cooling_time_card(), "cooling-time", "seam " + seam.id);
    add(step.inputs, "lowest heat input", low->pass.heat_input_kj_mm, "kJ/mm", "heat input above");
    add(step.inputs,
        "highest heat input",
        high->pass.heat_input_kj_mm,
        "kJ/mm",
        "heat input above");
    add(step.inputs, "coolest start", heat.preheat_c, "degC", "preheat above");
    add(step.inputs, "hottest start", heat.interpass_max_c, "degC", "interpass maximum above");
    add(step.results, "shortest t8/5", low->t85_s, "s", "coolest start, least heat");
    add(step.results, "longest t8/5", high->t85_long_s, "s", "hottest start, most heat");
    step.how_close.push_back(how_close(
        "hottest start",
        heat.interpass_max_c,
        "degC",
        up_to(heat::cooling_start_usual_max_c, "usual use of the formula, project choice")));
    steps.push_back(std::move(step));
  }
}

}  // namespace seamturn::figures::detail
