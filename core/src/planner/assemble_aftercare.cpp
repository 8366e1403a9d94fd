// SPDX-License-Identifier: MIT
// Hold times, hydrogen soak, hardness, tearing and later heating of planned joints.
#include <algorithm>
#include <limits>
#include <map>

#include "detail_assemble.hpp"
#include "detail_heat.hpp"
#include "detail_preheating.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

double most_heat_kj_mm(const plan::PlannedJoint& joint) {
  double most = 0.0;
  for (const plan::PlannedSeam& seam : joint.seams) {
    most = std::max(most, seam.stack.heat_input_max_kj_mm);
  }
  return most;
}

double shortest_t85_s(const plan::PlannedJoint& joint) {
  double least = std::numeric_limits<double>::infinity();
  for (const plan::PlannedSeam& seam : joint.seams) {
    for (const plan::PlannedPass& pass : seam.passes) least = std::min(least, pass.t85_s);
  }
  return least;
}

/// Nominal yield of the stronger steel, of its thinnest band. One without counts as high strength,
/// for which hold times ask more.
double nominal_yield_mpa(const JointWork& work) {
  double strongest_mpa = 0.0;
  for (const material::Steel* steel : {work.steel_1, work.steel_2}) {
    strongest_mpa =
        std::max(strongest_mpa, steel->bands.front().yield_mpa.value_or(unknown_yield_mpa));
  }
  return strongest_mpa;
}

/// A fillet's throat, a plug's fill, else the depth; two fillets laid at the same time count as
/// one.
double hold_size_mm(const JointWork& work, const plan::PlannedJoint& joint) {
  const auto* plug = std::get_if<joint::Plug>(&work.joint->preparation);
  if (plug != nullptr) return plug->fill_mm;
  if (!joint::is_fillet(work.joint->preparation)) return work.joint->depth_mm;
  double largest_mm = 0.0;
  double sum_mm = 0.0;
  for (const plan::PlannedSeam& seam : joint.seams) {
    largest_mm = std::max(largest_mm, seam.section.throat_mm);
    sum_mm += seam.section.throat_mm;
  }
  return work.joint->heat.sides_together ? sum_mm : largest_mm;
}

void set_hold(const JointWork& work, const plan::PlannedJoint& joint, plan::Aftercare& out) {
  out.hold_size_mm = hold_size_mm(work, joint);
  out.hold = heat::hold_time({out.hold_size_mm, most_heat_kj_mm(joint), nominal_yield_mpa(work)});
}

/// The harder of both members; nothing for limits of a grade, which no heat of steel has.
void set_hardness(const JointWork& work, const plan::PlannedJoint& joint, plan::Aftercare& out) {
  const double t85_s = shortest_t85_s(joint);
  if (!(t85_s > 0.0 && t85_s < std::numeric_limits<double>::infinity())) return;
  for (const joint::Member* member : {work.member_1, work.member_2}) {
    if (!member->analysis) continue;
    const auto estimate = heat::hardness({*member->analysis, t85_s});
    if (!estimate) continue;
    if (out.hardness && estimate->highest_hv <= out.hardness->estimate.highest_hv) continue;
    out.hardness = plan::HardnessEstimate{member->id, t85_s, *estimate};
  }
}

heat::TearingShape shape_of(const JointWork& work, const plan::PlannedJoint& joint) {
  if (work.joint->type == joint::JointType::corner) return heat::TearingShape::corner;
  if (!joint::is_fillet(work.joint->preparation)) return heat::TearingShape::penetration;
  const bool one_run =
      std::all_of(joint.seams.begin(), joint.seams.end(), [](const plan::PlannedSeam& seam) {
        return seam.passes.size() == 1;
      });
  return one_run ? heat::TearingShape::single_run_fillet : heat::TearingShape::multi_run_fillet;
}

/// Leg of a fillet, depth of everything else.
double effective_depth_mm(const JointWork& work, const plan::PlannedJoint& joint) {
  if (!joint::is_fillet(work.joint->preparation)) return work.joint->depth_mm;
  double leg_mm = 0.0;
  for (const plan::PlannedSeam& seam : joint.seams) {
    leg_mm = std::max({leg_mm, seam.section.leg_1_mm, seam.section.leg_2_mm});
  }
  return leg_mm;
}

void set_tearing(const JointWork& work, const plan::PlannedJoint& joint, plan::Aftercare& out) {
  const bool pulls =
      work.joint->type == joint::JointType::tee || work.joint->type == joint::JointType::corner;
  const bool rolled = std::holds_alternative<joint::Plate>(work.member_1->shape) ||
                      std::holds_alternative<joint::Ring>(work.member_1->shape);
  if (!pulls || !rolled) return;
  heat::TearingParams params;
  params.effective_depth_mm = effective_depth_mm(work, joint);
  params.shape = shape_of(work, joint);
  params.through_thickness_mm = joint::wall_thickness_mm(work.member_1->shape);
  params.restraint = work.joint->heat.restraint;
  params.preheat_c = work.heat.needs_heating ? work.heat.preheat_c : 0.0;
  plan::TearingCheck check;
  check.member = work.member_1->id;
  check.shape = heat::tearing_shape_name(params.shape);
  check.points = heat::lamellar_tearing(params);
  check.plate = heat::find_z_class(work.member_1->z_quality).value_or(heat::ZClass::none);
  check.verdict = heat::compare(check.points.required, check.plate);
  out.tearing = check;
}

void set_later(const JointWork& work, plan::Aftercare& out) {
  for (const material::Steel* steel : {work.steel_1, work.steel_2}) {
    if (!steel->later_heating_max) continue;
    if (out.later && out.later->limit.value_c <= steel->later_heating_max->value_c) continue;
    out.later = plan::LaterHeating{steel->designation, *steel->later_heating_max};
  }
}

// EN 10164:2018, from memory: plates of 15 mm and more are delivered with a class.
constexpr double classes_from_mm = 15.0;

/// One warning for each class that is missing, naming plates and joints.
void note_tearing(const Inputs& inputs, plan::Plan& plan) {
  std::map<std::string, std::string> joints_of;
  for (const plan::PlannedJoint& joint : plan.joints) {
    const auto& check = joint.aftercare.tearing;
    if (!check || check->verdict != heat::TearingVerdict::not_met) continue;
    const std::string ordered(heat::z_class_name(check->plate));
    std::string& list =
        joints_of[check->member + " (" + std::string(heat::z_class_name(check->points.required)) +
                  " asked for, " + ordered + " ordered)"];
    list += (list.empty() ? "" : ", ") + joint.id;
  }
  for (const auto& [plate, joints] : joints_of) {
    const joint::Member* member =
        joint::find_member(inputs.weldment, plate.substr(0, plate.find(" (")));
    const bool too_thin =
        member != nullptr && joint::wall_thickness_mm(member->shape) < classes_from_mm;
    plan.findings.push_back(Finding{
        Severity::warning,
        "heat.tearing.class_missing",
        "plate " + plate + " is pulled through its thickness at joints " + joints +
            ": lamellar tearing; " +
            (too_thin ? "EN 10164 begins at " + base::shortest_text(classes_from_mm) +
                            " mm (from memory), so no class is to be had: "
                      : std::string("order the class (z-quality=), ")) +
            "test the plate by ultrasound before and after welding, or change the joint. Points "
            "from memory of EN 1993-1-10",
        place_of(inputs.weldment, "weldment"),
        {}});
  }
}

}  // namespace

void assemble_aftercare(const Inputs& inputs,
                        const std::vector<JointWork>& joints,
                        plan::Plan& plan) {
  SEAMTURN_REQUIRE(joints.size() == plan.joints.size(), joints.size());
  for (std::size_t i = 0; i < joints.size(); ++i) {
    const JointWork& work = joints[i];
    plan::PlannedJoint& joint = plan.joints[i];
    set_hold(work, joint, joint.aftercare);
    set_hardness(work, joint, joint.aftercare);
    set_tearing(work, joint, joint.aftercare);
    set_later(work, joint.aftercare);
    if (work.heat.needs_heating) {
      joint.aftercare.soak = heat::hydrogen_soak(work.heat.thickness_mm);
      joint.aftercare.keep = keep_after_heating(inputs, work);
    }
  }
  note_tearing(inputs, plan);
}

}  // namespace seamturn::planner::detail
