// SPDX-License-Identifier: MIT
// Is each weld of a sensible size, what throat counts of it, and is more laid than drawn.
#include <algorithm>
#include <cmath>
#include <limits>

#include "detail_assemble.hpp"
#include "detail_joints.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/groove_size.hpp"
#include "seamturn/joint/seam_faces.hpp"
#include "seamturn/joint/weld_size.hpp"

namespace seamturn::planner::detail {

namespace {

using joint::SizeCheck;
using Checks = base::Outcome<std::vector<SizeCheck>>;

bool is_full_groove(const joint::Joint& joint) {
  return std::holds_alternative<joint::Groove>(joint.preparation) &&
         joint.depth_mm >= joint.thickness_mm - 1e-9;
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

double least_leg_mm(const joint::Fillet& fillet) {
  return std::min(fillet.leg_1_mm, fillet.leg_2_mm);
}

/// Leg of the fillet with equal legs whose throat, root to face, is the same.
double alike_leg_mm(const joint::Fillet& fillet, base::Angle between) {
  const double a_mm = fillet.leg_1_mm;
  const double b_mm = fillet.leg_2_mm;
  const double face_mm =
      std::sqrt(a_mm * a_mm + b_mm * b_mm - 2.0 * a_mm * b_mm * std::cos(between.rad()));
  return a_mm * b_mm * std::sin(between.rad()) / face_mm / std::cos(0.5 * between.rad());
}

plan::PlannedThroat fillet_throat(const joint::Fillet& fillet, const joint::Seam& seam) {
  plan::PlannedThroat out;
  const auto counted =
      joint::counted_throat(alike_leg_mm(fillet, seam.between_walls), seam.between_walls);
  if (!counted) {
    out.refused = counted.error().text;
    return out;
  }
  out.throat_mm = counted->throat_mm;
  out.citation = counted->citation;
  return out;
}

base::Outcome<joint::CountedGroove> groove_alone(const JointWork& work,
                                                 const joint::Groove& groove,
                                                 const plan::PlannedSeam& seam) {
  joint::PartialGroove partial;
  partial.shape = shape_of(groove.form);
  partial.depth_mm = work.joint->depth_mm;
  partial.angle = seam.side == 2 ? groove.side_2.angle : groove.side_1.angle;
  partial.process = work.wire->process;
  partial.position = seam.position;
  return joint::counted_groove_throat(partial);
}

/// With the cover's fillet, where there is one.
plan::PlannedThroat groove_throat(const JointWork& work,
                                  const joint::Groove& groove,
                                  const plan::PlannedSeam& seam) {
  plan::PlannedThroat out;
  const auto counted = groove_alone(work, groove, seam);
  if (!counted) {
    out.refused = counted.error().text;
    return out;
  }
  const double leg_mm = work.joint->cap.leg_mm;
  out.with_cover = leg_mm > 0.0;
  out.throat_mm =
      out.with_cover ? joint::combined_throat_mm(counted->throat_mm, leg_mm) : counted->throat_mm;
  out.deduction_mm = counted->deduction_mm;
  out.citation = counted->citation;
  return out;
}

std::optional<plan::PlannedThroat> throat_of(const JointWork& work,
                                             const joint::Seam& described,
                                             const plan::PlannedSeam& seam) {
  if (is_full_groove(*work.joint)) return std::nullopt;
  if (const auto* fillet = std::get_if<joint::Fillet>(&work.joint->preparation)) {
    return fillet_throat(*fillet, described);
  }
  if (const auto* groove = std::get_if<joint::Groove>(&work.joint->preparation)) {
    return groove_throat(work, *groove, seam);
  }
  return std::nullopt;
}

/// Of all seams the shortest stretch, and of interrupted ones the widest clear space between two.
void take_lengths(const joint::Joint& joint, joint::FilletSize& size) {
  double shortest_mm = std::numeric_limits<double>::infinity();
  double clear_mm = 0.0;
  for (const joint::Seam& seam : joint.seams) {
    std::vector<joint::Stretch> stretches = joint::stretches_of(seam);
    if (seam.segment) stretches = {{0.0, geom::path_length_mm(seam.segment->course)}};
    for (std::size_t i = 0; i < stretches.size(); ++i) {
      shortest_mm = std::min(shortest_mm, stretches[i].to_mm - stretches[i].from_mm);
      if (i > 0) clear_mm = std::max(clear_mm, stretches[i].from_mm - stretches[i - 1].to_mm);
    }
  }
  if (!std::isfinite(shortest_mm)) return;
  size.length_mm = shortest_mm;
  if (clear_mm > 0.0) size.intermittent = joint::IntermittentRun{shortest_mm, clear_mm};
}

Checks fillet_checks(const JointWork& work, const joint::Fillet& fillet) {
  const double wall_1_mm = joint::wall_thickness_mm(work.member_1->shape);
  const double wall_2_mm = joint::wall_thickness_mm(work.member_2->shape);
  joint::FilletSize size;
  size.leg_mm = least_leg_mm(fillet);
  size.between_plates = work.joint->seams.front().between_walls;
  size.thinner_mm = std::min(wall_1_mm, wall_2_mm);
  size.thicker_mm = std::max(wall_1_mm, wall_2_mm);
  size.low_hydrogen = joint::is_low_hydrogen(work.wire->process).value_or(false);
  take_lengths(*work.joint, size);
  if (work.joint->type == joint::JointType::lap) {
    const int of = joint::lapping_member(*work.joint, *work.member_1, *work.member_2);
    size.edge_thickness_mm = of == 1 ? wall_1_mm : wall_2_mm;
  }
  return joint::check_fillet_size(size);
}

Checks plug_checks(const JointWork& work, const joint::Plug& plug) {
  joint::PlugSize size;
  size.plate_mm = joint::wall_thickness_mm(work.member_1->shape);
  size.width_mm = plug.width_mm;
  if (plug.length_mm > plug.width_mm) size.slot_length_mm = plug.length_mm;
  size.fill_mm = plug.fill_mm;
  return joint::check_plug_size(size);
}

/// By the least throat that counts of any of its seams, the cover's fillet left out; where none can
/// be told, by the depth.
Checks partial_checks(const JointWork& work,
                      const joint::Groove& groove,
                      const plan::PlannedJoint& planned) {
  double throat_mm = planned.seams.front().section.throat_mm;
  for (const plan::PlannedSeam& seam : planned.seams) {
    const auto counted = groove_alone(work, groove, seam);
    if (counted) throat_mm = std::min(throat_mm, counted->throat_mm);
  }
  return joint::check_partial_size({throat_mm,
                                    std::min(joint::wall_thickness_mm(work.member_1->shape),
                                             joint::wall_thickness_mm(work.member_2->shape))});
}

std::optional<plan::PlannedSize> size_of(const JointWork& work, const plan::PlannedJoint& planned) {
  if (is_full_groove(*work.joint) || planned.seams.empty()) return std::nullopt;
  const joint::Preparation& preparation = work.joint->preparation;
  const auto* fillet = std::get_if<joint::Fillet>(&preparation);
  const auto* plug = std::get_if<joint::Plug>(&preparation);
  const Checks checks = fillet != nullptr ? fillet_checks(work, *fillet)
                        : plug != nullptr
                            ? plug_checks(work, *plug)
                            : partial_checks(work, std::get<joint::Groove>(preparation), planned);
  plan::PlannedSize out;
  if (!checks) {
    out.refused = checks.error().text;
    return out;
  }
  out.checks = *checks;
  out.verdict = joint::size_verdict(out.checks);
  return out;
}

/// Metal of the passes over metal drawn; what differs by rounding only is 1.
double over_weld_ratio(const joint::Joint& joint,
                       const joint::Seam& described,
                       const plan::PlannedSeam& seam) {
  double laid_mm2 = 0.0;
  for (const plan::PlannedPass& pass : seam.passes) laid_mm2 += pass.pass.area_mm2;
  const auto drawn = section::weld_section(drawn_params(joint, described));
  SEAMTURN_REQUIRE(drawn.has_value(), seam.id);  // the larger section was made
  const double ratio = laid_mm2 / drawn->area_mm2;
  return std::abs(ratio - 1.0) < 1e-9 ? 1.0 : ratio;
}

bool is_interrupted(const JointWork& work) {
  const auto& seams = work.joint->seams;
  return std::any_of(seams.begin(), seams.end(), [](const joint::Seam& seam) {
    return seam.asked.form == joint::LengthForm::intermittent;
  });
}

/// Rules broken and sizes nobody can judge. What stands in the file alone (elements of an
/// interrupted weld, edges of laps) was told when it was read.
void tell(const JointWork& work,
          const plan::PlannedSize& size,
          const base::Place& place,
          plan::Plan& plan) {
  const auto add = [&](const std::string& code, const std::string& text) {
    plan.findings.push_back(base::Finding{
        base::Severity::warning, code, "joint " + work.joint->id + ": " + text, place, {}});
  };
  if (!size.refused.empty()) add("joint.size.value", size.refused);
  for (const joint::SizeCheck& check : size.checks) {
    const bool told = check.rule == "largest-leg-edge" || check.rule == "least-segment-aws" ||
                      check.rule == "largest-clear-aws" ||
                      (check.rule == "least-length-aws" && is_interrupted(work));
    if (check.holds || told) continue;
    add("joint.size.rule_broken", joint::check_text(check));
  }
}

/// The reinforcing fillet over a groove in a tee or corner.
void check_cover(const joint::Joint& joint, const base::Place& place, plan::Plan& plan) {
  const double due_mm = joint::reinforcing_leg_mm(joint.thickness_mm);
  if (!(joint.cap.leg_mm > 0.0) || joint.cap.leg_mm >= due_mm - 1e-9) return;
  plan.findings.push_back(base::Finding{
      base::Severity::warning,
      "joint.size.rule_broken",
      "joint " + joint.id + ": leg of the cover " + base::digits_text(joint.cap.leg_mm) +
          " mm, at least " + base::digits_text(due_mm) +
          " mm asked for: a quarter of the thickness, at most 10 mm [AWS D1.1, verified]",
      place,
      {}});
}

}  // namespace

void assemble_sizes(const Inputs& inputs, const std::vector<JointWork>& joints, plan::Plan& plan) {
  for (std::size_t i = 0; i < joints.size(); ++i) {
    plan::PlannedJoint& planned = plan.joints[i];
    for (std::size_t k = 0; k < planned.seams.size(); ++k) {
      plan::PlannedSeam& seam = planned.seams[k];
      seam.counted = throat_of(joints[i], *joints[i].seams[k].seam, seam);
      seam.over_weld_area_ratio = over_weld_ratio(*joints[i].joint, *joints[i].seams[k].seam, seam);
    }
    planned.size = size_of(joints[i], planned);
    const base::Place place = place_of(inputs.weldment, "joint/" + planned.id);
    if (planned.size) tell(joints[i], *planned.size, place, plan);
    check_cover(*joints[i].joint, place, plan);
  }
}

}  // namespace seamturn::planner::detail
