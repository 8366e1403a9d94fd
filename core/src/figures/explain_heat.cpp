// SPDX-License-Identifier: MIT
// Heat input, waits, interpass maximum and cooling time of a joint, link by link.
#include <algorithm>

#include "detail_explain.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/heat/cooling_time.hpp"
#include "seamturn/heat/heat_input.hpp"
#include "seamturn/heat/heat_input_band.hpp"
#include "seamturn/heat/preheat_cet.hpp"

namespace seamturn::figures::detail {

namespace {

bool cooler(const plan::PlannedPass& a, const plan::PlannedPass& b) {
  return a.pass.heat_input_kj_mm < b.pass.heat_input_kj_mm;
}

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

std::string predicted_text(const plan::PlannedPass& pass) {
  if (!pass.start_low_c || !pass.start_high_c) return {};
  const std::string low = base::fixed_text(*pass.start_low_c, 0);
  const std::string high = base::fixed_text(*pass.start_high_c, 0);
  return "then at " + (low == high ? low : low + " to " + high) + " degC by the models";
}

/// Which flow governs the shortest time, and from which thickness on.
void add_flow(const Subject& subject, const plan::PlannedPass& pass, ExplainStep& step) {
  const auto time = heat::cooling_time({heat::cooling_case_of(subject.described.type),
                                        pass.pass.heat_input_kj_mm,
                                        subject.planned.heat.thickness_mm,
                                        subject.planned.heat.preheat_c});
  if (!time) return;
  add_word(step.results,
           "flow of the shortest",
           std::string(heat::heat_flow_name(time->flow)),
           "thick from " + base::fixed_text(time->transition_thickness_mm, 1) + " mm on; F2 " +
               base::fixed_text(time->factor_2d, 2) + ", F3 " +
               base::fixed_text(time->factor_3d, 2));
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

void explain_waits(const Subject& subject, std::vector<ExplainStep>& steps) {
  for (const plan::PlannedSeam& seam : subject.planned.seams) {
    ExplainStep step;
    step.figure = "waits";
    step.subject = "seam " + seam.id;
    step.formula =
        "from the start of the pass before over the same place until the place is below the "
        "interpass maximum: heat running into the cold plate, and a strip heated through; planned "
        "with the longer";
    step.range = "times for clock and price; the floor measures";
    step.sources = {
        "docs/methods/cooling.md; measured/predicted rise -45/+20 % on the one data "
        "set known"};
    for (const plan::PlannedPass& pass : seam.passes) {
      const bool first = pass.gap_long_s <= 0.0;
      const std::string wait = base::fixed_text(pass.gap_short_s, 0) + " to " +
                               base::fixed_text(pass.gap_long_s, 0) + " s";
      add_word(step.results,
               "before pass " + std::to_string(pass.pass.number),
               first ? "none" : wait,
               predicted_text(pass));
    }
    if (const auto& keep = subject.planned.aftercare.keep) {
      add_word(step.results,
               "stays at the preheat after heating",
               base::fixed_text(keep->strip_s, 0) + " to " +
                   base::fixed_text(keep->heated_through_s, 0) + " s",
               "shorter: heated near the weld only");
    }
    if (!step.results.empty()) steps.push_back(std::move(step));
  }
}

void explain_interpass(const Subject& subject, std::vector<ExplainStep>& steps) {
  const procedure::HeatLimits& heat = subject.planned.heat;
  ExplainStep step;
  step.figure = "interpass";
  step.subject = "joint " + subject.planned.id;
  step.formula = "the lowest of what steels, wire, record and joint state";
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
    add_flow(subject, *low, step);
    step.how_close.push_back(how_close(
        "hottest start",
        heat.interpass_max_c,
        "degC",
        up_to(heat::cooling_start_usual_max_c, "usual use of the formula, project choice")));
    steps.push_back(std::move(step));
  }
}

void explain_window(const Subject& subject, std::vector<ExplainStep>& steps) {
  const auto& window = subject.planned.heat.window;
  if (!window) return;
  ExplainStep step = step_of(heat::heat_band_card(), "heat-band", "joint " + subject.planned.id);
  add(step.inputs, "shortest t8/5", window->t85_least_s, "s", window->stated_by);
  add(step.inputs, "longest t8/5", window->t85_most_s, "s", window->stated_by);
  add(step.inputs, "coolest start", subject.planned.heat.preheat_c, "degC", "preheat above");
  add(step.inputs,
      "hottest start",
      subject.planned.heat.interpass_max_c,
      "degC",
      "interpass maximum above");
  if (window->heat_input_least_kj_mm) {
    add(step.results, "least heat input", *window->heat_input_least_kj_mm, "kJ/mm", "");
    add(step.results, "most heat input", *window->heat_input_most_kj_mm, "kJ/mm", "");
  } else {
    add_word(step.results, "no such heat input", window->refused, "");
  }
  add_word(step.results,
           "settings",
           window->kept    ? "inside it"
           : window->binds ? "not all inside it"
                           : "not bound by it: shown only",
           std::string(base::status_name(window->status)));
  steps.push_back(std::move(step));
}

}  // namespace seamturn::figures::detail
