// SPDX-License-Identifier: MIT
// What heat sees and leaves to do: carbon equivalents, thickness, methods side by side, waits, hold
// times, hardness, tearing.
#include "detail_explain.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/heat/heat_input_band.hpp"
#include "seamturn/material/carbon_equivalent.hpp"

namespace seamturn::figures::detail {

namespace {

void add_word(std::vector<Given>& list, std::string name, std::string word, std::string origin) {
  list.push_back(Given{std::move(name), std::move(word), "", std::move(origin)});
}

void add_equivalent(ExplainStep& step, const char* name, const std::optional<double>& value) {
  if (value) {
    add(step.results, name, *value, "mass-%", "");
  } else {
    add_word(step.results, name, "none: the composition lies outside its range", "");
  }
}

std::string origin_of(const Subject& subject) {
  return subject.planned.heat.from_grade_maxima
             ? "limits of the grades " + subject.planned.steel_1 + ", " + subject.planned.steel_2
             : "analyses of the members";
}

}  // namespace

void explain_carbon_equivalent(const Subject& subject, std::vector<ExplainStep>& steps) {
  const procedure::HeatLimits& heat = subject.planned.heat;
  ExplainStep step = step_of(material::carbon_equivalent_card(),
                             "carbon-equivalent",
                             "joint " + subject.planned.id + ", the higher of both members");
  add_word(step.inputs, "composition", origin_of(subject), "");
  add_equivalent(step, "CEV", heat.cev_plate);
  add_equivalent(step, "CET", heat.cet_plate);
  add_equivalent(step, "Pcm", heat.pcm_plate);
  add_equivalent(step, "CEN", heat.cen_plate);
  add_equivalent(step, "Ceq (JIS)", heat.jis_plate);
  steps.push_back(std::move(step));
}

void explain_combined_thickness(const Subject& subject, std::vector<ExplainStep>& steps) {
  const procedure::HeatLimits& heat = subject.planned.heat;
  ExplainStep step =
      step_of(heat::combined_thickness_card(), "combined-thickness", "joint " + subject.planned.id);
  int number = 0;
  for (const heat::HeatPath& path : heat.paths) {
    add(step.inputs,
        "path " + std::to_string(++number),
        path.average_mm,
        "mm",
        "averaged over 75 mm, " + subject.of_member(path.member, "thickness"));
  }
  add(step.results, "combined thickness", heat.combined_thickness_mm, "mm", heat.combined_text);
  steps.push_back(std::move(step));
}

void explain_methods(const Subject& subject, std::vector<ExplainStep>& steps) {
  const procedure::HeatLimits& heat = subject.planned.heat;
  ExplainStep step;
  step.figure = "preheat-methods";
  step.subject = "joint " + subject.planned.id;
  step.formula =
      "every method by its own inputs, never mixed; the highest that may govern, unless the file "
      "names another with a reason; within another joint's heated zone the higher of both";
  step.range = "each method's own; what is unconfirmed or outside its range is shown only";
  step.sources = {"docs/methods/preheat-choice.md"};
  for (const procedure::PreheatAnswer& answer : heat.answers) {
    const std::string origin = answer.says + "; " + std::string(base::status_name(answer.status));
    const std::string name = answer.method + (answer.may_govern ? "" : " (does not govern)");
    if (answer.preheat_c) {
      add(step.inputs, name, *answer.preheat_c, "degC", origin);
    } else {
      add_word(step.inputs, name, "none", origin);
    }
  }
  add(step.results, "preheat", heat.preheat_c, "degC", heat.preheat_basis);
  add_word(step.results, "measured", heat.where_to_measure, "");
  add(step.results, "heated each side", heat.zone_width_mm, "mm", "");
  steps.push_back(std::move(step));
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
      if (pass.gap_long_s <= 0.0) continue;
      add_word(step.results,
               "before pass " + std::to_string(pass.pass.number),
               base::fixed_text(pass.gap_short_s, 0) + " to " +
                   base::fixed_text(pass.gap_long_s, 0) + " s",
               "");
    }
    if (const auto& keep = subject.planned.after.keep) {
      add_word(step.results,
               "stays at the preheat after heating",
               base::fixed_text(keep->strip_s, 0) + " to " +
                   base::fixed_text(keep->heated_through_s, 0) + " s",
               "shorter: heated near the weld only");
    }
    if (!step.results.empty()) steps.push_back(std::move(step));
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

void explain_hold_time(const Subject& subject, std::vector<ExplainStep>& steps) {
  const plan::PlannedHeat& after = subject.planned.after;
  ExplainStep step = step_of(heat::hold_time_card(), "hold-time", "joint " + subject.planned.id);
  add(step.inputs, "size", after.hold_size_mm, "mm", "throat or depth");
  add_word(step.inputs, "row", after.hold.row, "highest heat input of all passes");
  add_word(step.inputs, "column", after.hold.column, "nominal yield of the stronger steel");
  if (after.hold.cooling_only) {
    add_word(step.results, "hold time", "until the weld is cold", "");
  } else {
    add(step.results, "hold time", after.hold.hours, "h", "");
  }
  if (after.soak) add_word(step.results, "hydrogen soak", after.soak->text, "from memory");
  if (after.later) {
    add(step.results,
        "later heating at most",
        after.later->limit.value_c,
        "degC",
        "steel " + after.later->steel + ", " + after.later->limit.source);
  }
  steps.push_back(std::move(step));
}

void explain_hardness(const Subject& subject, std::vector<ExplainStep>& steps) {
  const auto& hardness = subject.planned.after.hardness;
  if (!hardness) return;
  ExplainStep step = step_of(heat::hardness_card(), "hardness", "joint " + subject.planned.id);
  add_word(step.inputs, "member", hardness->member, "its analysis");
  add(step.inputs, "shortest t8/5", hardness->t85_s, "s", "cooling time above");
  add(step.results, "lowest of three formulas", hardness->estimate.lowest_hv, "HV", "");
  add(step.results, "highest", hardness->estimate.highest_hv, "HV", "");
  add(step.results, "scatter of each", heat::hardness_scatter_hv, "HV", "plus or minus");
  add_word(
      step.results, "is", "an estimate, never a verdict; bead ends cool about twice as fast", "");
  steps.push_back(std::move(step));
}

void explain_tearing(const Subject& subject, std::vector<ExplainStep>& steps) {
  const auto& check = subject.planned.after.tearing;
  if (!check) return;
  ExplainStep step =
      step_of(heat::lamellar_tearing_card(), "lamellar-tearing", "joint " + subject.planned.id);
  add_word(step.inputs, "through plate", check->member, "");
  add_word(step.inputs, "weld", check->shape, "");
  add(step.results, "Za, depth of the weld", check->points.za, "", "");
  add(step.results, "Zb, shape", check->points.zb, "", "");
  add(step.results, "Zc, thickness", check->points.zc, "", "");
  add(step.results,
      "Zd, restraint",
      check->points.zd,
      "",
      subject.described.heat.restraint_stated ? subject.of_joint("restraint") : "medium assumed");
  add(step.results, "Ze, preheat", check->points.ze, "", "");
  add_word(step.results,
           "class asked for",
           std::string(heat::z_class_name(check->points.required)),
           base::fixed_text(check->points.total, 0) + " points");
  add_word(step.results,
           "class ordered",
           std::string(heat::z_class_name(check->plate)),
           subject.of_member(check->member, "z-quality"));
  steps.push_back(std::move(step));
}

}  // namespace seamturn::figures::detail
