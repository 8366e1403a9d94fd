// SPDX-License-Identifier: MIT
// Is the weld of a sensible size, and what throat counts: the rules of codes, one by one.
#include <algorithm>

#include "detail_explain.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/groove_size.hpp"
#include "seamturn/joint/seam_faces.hpp"
#include "seamturn/joint/weld_size.hpp"

namespace seamturn::figures::detail {

namespace {

using joint::SizeCheck;

double wall_mm(const Subject& subject, const std::string& member) {
  const joint::Member* found = joint::find_member(subject.inputs.weldment, member);
  SEAMTURN_REQUIRE(found != nullptr, member);
  return joint::wall_thickness_mm(found->shape);
}

int lapping_member(const Subject& subject) {
  const joint::Joint& joint = subject.described;
  const joint::Member* first = joint::find_member(subject.inputs.weldment, joint.member_1);
  const joint::Member* second = joint::find_member(subject.inputs.weldment, joint.member_2);
  SEAMTURN_REQUIRE(first != nullptr && second != nullptr, joint.id);
  return joint::lapping_member(joint, *first, *second);
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
    if (joint.type == joint::JointType::lap) {
      size.edge_thickness_mm = lapping_member(subject) == 1 ? wall_1_mm : wall_2_mm;
    }
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

joint::PartialShape shape_of(joint::GrooveForm form) {
  switch (form) {
    case joint::GrooveForm::square:
      return joint::PartialShape::square;
    case joint::GrooveForm::u:
    case joint::GrooveForm::j:
      return joint::PartialShape::u_or_j;
    case joint::GrooveForm::v:
    case joint::GrooveForm::compound_v:
      return joint::PartialShape::v;
    case joint::GrooveForm::bevel:
      return joint::PartialShape::bevel;
  }
  return joint::PartialShape::bevel;
}

/// Throat that counts of a partial groove, per seam for its position, with the cover's fillet.
void add_counted_throats(const Subject& subject, const joint::Groove& groove, ExplainStep& step) {
  for (const plan::PlannedSeam& seam : subject.planned.seams) {
    joint::PartialGroove partial;
    partial.shape = shape_of(groove.form);
    partial.depth_mm = subject.described.depth_mm;
    partial.angle = seam.side == 2 ? groove.side_2.angle : groove.side_1.angle;
    partial.process = subject.wire().process;
    partial.position = seam.position;
    const std::string name = "throat counted of " + seam.id;
    const auto counted = joint::counted_groove_throat(partial);
    if (!counted) {
      step.results.push_back(Given{name, counted.error().text, "", ""});
      continue;
    }
    const double leg_mm = subject.described.cap.leg_mm;
    const double throat_mm =
        leg_mm > 0.0 ? joint::combined_throat_mm(counted->throat_mm, leg_mm) : counted->throat_mm;
    add(step.results,
        name,
        throat_mm,
        "mm",
        "depth less " + base::digits_text(counted->deduction_mm) + " mm in this position" +
            (leg_mm > 0.0 ? ", with the cover's fillet" : "") + " [" +
            std::string(counted->citation.key) + " " + std::string(counted->citation.locator) +
            ", " + std::string(base::status_name(counted->citation.status)) + "]");
  }
}

/// Every number judged, once, against the tightest of the rules about it.
void add_size_limits(const std::vector<SizeCheck>& checks, ExplainStep& step) {
  std::vector<std::string> told;
  for (const SizeCheck& first : checks) {
    if (std::find(told.begin(), told.end(), first.subject) != told.end()) continue;
    told.push_back(first.subject);
    const SizeCheck* low = nullptr;
    const SizeCheck* high = nullptr;
    for (const SizeCheck& check : checks) {
      if (check.subject != first.subject) continue;
      const bool at_least = check.bound == joint::SizeBound::at_least;
      if (at_least && (low == nullptr || check.required > low->required)) low = &check;
      if (!at_least && (high == nullptr || check.required < high->required)) high = &check;
    }
    Limits limits;
    for (const SizeCheck* check : {low, high}) {
      if (check == nullptr) continue;
      (check == low ? limits.least : limits.largest) = check->required;
      limits.origin += (limits.origin.empty() ? "" : " and ") + check->rule;
    }
    step.how_close.push_back(how_close(first.subject, first.found, first.unit, std::move(limits)));
  }
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
  add_size_limits(*checks, step);
  if (groove) add_counted_throats(subject, std::get<joint::Groove>(joint.preparation), step);
  step.results.push_back(
      Given{"together", std::string(joint::verdict_name(joint::size_verdict(*checks))), "", ""});
  steps.push_back(std::move(step));
}

}  // namespace seamturn::figures::detail
