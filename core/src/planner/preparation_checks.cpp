// SPDX-License-Identifier: MIT
// What is said about a preparation before anything is computed from it: its root, and the ranges
// standards recommend.
#include "detail_joints.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/segments.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

/// Full penetration rests on the root: a root face that nothing backs, gouges out or melts through
/// for certain is said, whoever decided it.
void warn_unsound_root(const Inputs& inputs,
                       const joint::Joint& joint,
                       std::vector<Finding>& findings) {
  const auto* groove = std::get_if<joint::Groove>(&joint.preparation);
  const bool full = joint.depth_mm >= joint.thickness_mm - 1e-9;
  const bool left_alone =
      joint.root == joint::RootDecision::open || joint.root == joint::RootDecision::both_sides;
  if (groove == nullptr || !full || !left_alone || groove->root_face_mm <= 0.0) return;
  findings.push_back(Finding{
      Severity::warning,
      "joint.root.face_left",
      "joint " + joint.id + " asks for full penetration over a root face of " +
          base::digits_text(groove->root_face_mm) +
          " mm with neither gouging nor backing: the arc alone must melt it through; prove it by a "
          "procedure test, or state root=\"gouge\", a backing, or a sharp edge",
      place_of(inputs.weldment, "joint/" + joint.id),
      {}});
}

/// Gouging must reach the metal of the first side, through the root face (of a single groove: to
/// its root), or a notch stays inside.
void warn_short_gouge(const Inputs& inputs,
                      const joint::Joint& joint,
                      std::vector<Finding>& findings) {
  const auto* groove = std::get_if<joint::Groove>(&joint.preparation);
  const bool full = joint.depth_mm >= joint.thickness_mm - 1e-9;
  if (groove == nullptr || !full || joint.root != joint::RootDecision::gouge) return;
  if (groove->form == joint::GrooveForm::square) return;
  double due_mm = groove->root_face_mm;
  if (groove->is_double) {
    due_mm = joint.thickness_mm - section::cut_depth_mm(*groove, joint.thickness_mm, 1);
  }
  if (joint.gouge.depth_mm >= due_mm - 1e-9) return;
  findings.push_back(Finding{
      Severity::warning,
      "joint.gouge.short",
      "joint " + joint.id + " is gouged " + base::digits_text(joint.gouge.depth_mm) + " mm deep, " +
          base::digits_text(due_mm - joint.gouge.depth_mm) +
          " mm short of the first side's metal: the joint would not be full penetration; gouge at "
          "least " +
          base::digits_text(due_mm) + " mm deep from the second side",
      place_of(inputs.weldment, "joint/" + joint.id),
      {}});
}

joint::PreparationSizes sizes_of(const joint::Joint& joint) {
  joint::PreparationSizes sizes;
  sizes.thickness_mm = joint.thickness_mm;
  sizes.gap_mm = joint::root_gap_mm(joint.preparation);
  const auto* groove = std::get_if<joint::Groove>(&joint.preparation);
  if (groove == nullptr) {
    sizes.angle = joint.seams.front().between_walls;
    return sizes;
  }
  if (groove->form == joint::GrooveForm::square) return sizes;
  sizes.root_face_mm = groove->root_face_mm;
  sizes.angle = groove->side_1.angle;
  if (groove->side_1.radius_mm > 0.0) sizes.radius_mm = groove->side_1.radius_mm;
  return sizes;
}

/// Only where a library holds ranges, and only full penetration: they are given for that.
void check_ranges(const Inputs& inputs, const joint::Joint& joint, std::vector<Finding>& findings) {
  const bool full = joint.depth_mm >= joint.thickness_mm - 1e-9;
  const bool plug = std::holds_alternative<joint::Plug>(joint.preparation);
  if (inputs.library.preparation_ranges.empty() || plug) return;
  if (!full && !joint::is_fillet(joint.preparation)) return;
  for (Finding finding : joint::check_against_ranges(joint::preparation_name(joint.preparation),
                                                     sides_of(joint),
                                                     sizes_of(joint),
                                                     inputs.library.preparation_ranges,
                                                     joint::joint_type_name(joint.type))) {
    finding = base::said_of_joints(std::move(finding), {joint.id});
    finding.place = place_of(inputs.weldment, "joint/" + joint.id);
    findings.push_back(std::move(finding));
  }
}

}  // namespace

joint::RangeSides sides_of(const joint::Joint& joint) {
  const bool backed = joint.root == joint::RootDecision::steel_backing ||
                      joint.root == joint::RootDecision::ceramic_backing;
  if (backed) return joint::RangeSides::backing;
  const bool two = joint::has_two_sides(joint) || joint.root == joint::RootDecision::both_sides;
  const bool fillets = joint::is_fillet(joint.preparation) && joint::drawn_seams(joint) == 2;
  return two || fillets ? joint::RangeSides::two : joint::RangeSides::one;
}

void check_preparation(const Inputs& inputs,
                       const joint::Joint& joint,
                       std::vector<Finding>& findings) {
  warn_unsound_root(inputs, joint, findings);
  warn_short_gouge(inputs, joint, findings);
  check_ranges(inputs, joint, findings);
}

}  // namespace seamturn::planner::detail
