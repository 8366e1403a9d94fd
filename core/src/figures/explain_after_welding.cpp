// SPDX-License-Identifier: MIT
// What is left when the joint is full: hold time, hardness, tearing.
#include "detail_explain.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::figures::detail {

void explain_hold_time(const Subject& subject, std::vector<ExplainStep>& steps) {
  const plan::Aftercare& after = subject.planned.aftercare;
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
  const auto& hardness = subject.planned.aftercare.hardness;
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
  const auto& check = subject.planned.aftercare.tearing;
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
