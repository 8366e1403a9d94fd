// SPDX-License-Identifier: MIT
// Carbon equivalents, thickness seen by heat, and preheat by every method.
#include <algorithm>

#include "detail_explain.hpp"
#include "seamturn/heat/preheat_cet.hpp"
#include "seamturn/material/carbon_equivalent.hpp"

namespace seamturn::figures::detail {

namespace {

void add_equivalent(ExplainStep& step, const char* name, const std::optional<double>& value) {
  if (value) {
    add(step.results, name, *value, "mass-%", "");
  } else {
    add_word(step.results, name, "none: the composition lies outside its range", "");
  }
}

}  // namespace

void explain_carbon_equivalent(const Subject& subject, std::vector<ExplainStep>& steps) {
  const procedure::HeatLimits& heat = subject.planned.heat;
  ExplainStep step = step_of(material::carbon_equivalent_card(),
                             "carbon-equivalent",
                             "joint " + subject.planned.id + ", the higher of both members");
  add_word(step.inputs, "composition", heat.composition_basis, "");
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

void explain_preheat(const Subject& subject, std::vector<ExplainStep>& steps) {
  const procedure::HeatLimits& heat = subject.planned.heat;
  ExplainStep step = step_of(heat::preheat_card(), "preheat", "joint " + subject.planned.id);
  add(step.inputs, "CET", heat.cet_governing, "mass-%", heat.composition_basis);
  const double asked_mm = std::max(heat.thickness_mm, heat::preheat_least_thickness_mm);
  add(step.inputs,
      "thickness",
      asked_mm,
      "mm",
      asked_mm > heat.thickness_mm ? "the least the method speaks of: all members are thinner"
                                   : "thickest member of the joint");
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

}  // namespace seamturn::figures::detail
