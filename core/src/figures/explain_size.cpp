// SPDX-License-Identifier: MIT
// Is the weld of a sensible size, and what throat counts: the rules of codes, one by one.
#include <algorithm>

#include "detail_explain.hpp"
#include "seamturn/joint/groove_size.hpp"
#include "seamturn/joint/weld_size.hpp"

namespace seamturn::figures::detail {

namespace {

using joint::SizeCheck;

double wall_mm(const Subject& subject, const std::string& member) {
  const joint::Member* found = joint::find_member(subject.inputs.weldment, member);
  SEAMTURN_REQUIRE(found != nullptr, member);
  return joint::wall_thickness_mm(found->shape);
}

/// The rules of a weld, or why there are none.
base::Outcome<std::vector<SizeCheck>> checks_of(const Subject& subject) {
  const joint::Joint& joint = subject.described;
  const double wall_1_mm = wall_mm(subject, joint.member_1);
  const double wall_2_mm = wall_mm(subject, joint.member_2);
  if (const auto* fillet = std::get_if<joint::Fillet>(&joint.preparation)) {
    joint::FilletSize size;
    size.leg_mm = std::min(fillet->leg_1_mm, fillet->leg_2_mm);
    size.between_plates = joint.seams.front().between_walls;
    size.thinner_mm = std::min(wall_1_mm, wall_2_mm);
    size.thicker_mm = std::max(wall_1_mm, wall_2_mm);
    size.low_hydrogen = joint::is_low_hydrogen(subject.wire().process).value_or(false);
    size.length_mm = joint.seams.front().length_mm;
    if (joint.type == joint::JointType::lap) size.edge_thickness_mm = wall_2_mm;
    return joint::check_fillet_size(size);
  }
  if (const auto* plug = std::get_if<joint::Plug>(&joint.preparation)) {
    joint::PlugSize size;
    size.plate_mm = wall_1_mm;
    size.width_mm = plug->width_mm;
    if (plug->length_mm > plug->width_mm) size.slot_length_mm = plug->length_mm;
    size.fill_mm = plug->fill_mm;
    return joint::check_plug_size(size);
  }
  return joint::check_partial_size(
      {subject.planned.seams.front().section.throat_mm, std::min(wall_1_mm, wall_2_mm)});
}

}  // namespace

void explain_weld_size(const Subject& subject, std::vector<ExplainStep>& steps) {
  const joint::Joint& joint = subject.described;
  const bool groove = std::holds_alternative<joint::Groove>(joint.preparation);
  const bool full = joint.depth_mm >= joint.thickness_mm - 1e-9;
  if (subject.planned.seams.empty() || (groove && full)) return;  // as thick as the plate
  ExplainStep step = step_of(joint::weld_size_card(), "weld-size", "joint " + joint.id);
  step.sources.clear();
  const auto checks = checks_of(subject);
  if (!checks) {
    step.results.push_back(Given{"refused", checks.error().text, "", ""});
    steps.push_back(std::move(step));
    return;
  }
  for (const SizeCheck& check : *checks) {
    step.results.push_back(Given{check.rule, joint::check_text(check), "", ""});
  }
  step.results.push_back(
      Given{"together", std::string(joint::verdict_name(joint::size_verdict(*checks))), "", ""});
  steps.push_back(std::move(step));
}

}  // namespace seamturn::figures::detail
