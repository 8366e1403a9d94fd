// SPDX-License-Identifier: MIT
#include "seamturn/planner/planner.hpp"

#include <algorithm>
#include <utility>

#include "detail_assemble.hpp"
#include "detail_build.hpp"
#include "detail_joints.hpp"
#include "detail_segments.hpp"
#include "detail_tacking.hpp"
#include "detail_torch_room.hpp"
#include "detail_turns.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::planner {

namespace {

using base::Finding;
using base::Severity;

void stop_on_errors(const std::vector<Finding>& findings) {
  if (base::has_errors(findings)) throw base::InputError(findings);
}

void check_library(const Inputs& inputs, std::vector<Finding>& findings) {
  if (!inputs.library.rates) {
    findings.push_back(Finding{Severity::error,
                               "plan.rates.none",
                               "no library used by the weldment holds <rates>; add them (labour, "
                               "cell, energy, ...) to the shop's library",
                               detail::place_of(inputs.weldment, "weldment"),
                               {}});
  }
}

void warn(const Inputs& inputs, plan::Plan& plan, const char* code, const std::string& text) {
  plan.findings.push_back(
      Finding{Severity::warning, code, text, detail::place_of(inputs.weldment, "weldment"), {}});
}

/// Ids of the joints that answer yes, "J1, J2"; empty when none does.
template <class Joints, class Is>
std::string joints_that(const Joints& joints, const Is& is) {
  std::vector<std::string> ids;
  for (const auto& joint : joints) {
    if (is(joint)) ids.push_back(joint.id);
  }
  return base::listed(ids);
}

void note_not_turned(const Inputs& inputs, plan::Plan& plan) {
  if (!inputs.cell) {
    warn(inputs,
         plan,
         "plan.cell.none",
         "the weldment names no cell: no stances, order or cycle are planned, and the cell time is "
         "the arc time alone; add <use cell=\"...\"/>");
    return;
  }
  if (plan.not_turned.empty()) return;
  warn(inputs,
       plan,
       "plan.seam.not_turned",
       "seams without a place in the weldment are priced and heated but not turned; each adds its "
       "arc time to the cell time: " +
           base::listed(plan.not_turned));
}

void note_grade_maxima(const Inputs& inputs, plan::Plan& plan) {
  const std::string list = joints_that(
      plan.joints, [](const plan::PlannedJoint& joint) { return joint.heat.from_grade_maxima; });
  if (list.empty()) return;
  warn(inputs,
       plan,
       "heat.analysis.from_grade",
       "no heat analysis is given for members of joints " + list +
           ": the composition limits of the grade were used, with the cap on CEV of its standard, "
           "which ask for more preheat than most heats need; add <analysis> from the certificate");
}

void note_gouging(const Inputs& inputs, plan::Plan& plan) {
  const std::string list = joints_that(inputs.weldment.joints, [](const joint::Joint& joint) {
    return joint.root == joint::RootDecision::gouge;
  });
  if (inputs.library.gouging || list.empty()) return;
  warn(inputs,
       plan,
       "plan.gouging.no_rate",
       "joints " + list +
           " are gouged, and no library says how fast: that time is neither on the clock nor in "
           "the price; add a <gouging> row");
}

void note_heating(const Inputs& inputs, plan::Plan& plan) {
  const std::string list = joints_that(
      plan.joints, [](const plan::PlannedJoint& joint) { return joint.heat.needs_heating; });
  if (inputs.library.heating || list.empty()) return;
  warn(inputs,
       plan,
       "plan.heating.no_rate",
       "joints " + list +
           " are preheated, and no library says how: that time is neither on the clock nor in the "
           "price; add a <heating> row");
}

/// What no joint holds would fall off, or a joint was forgotten.
void note_loose_members(const Inputs& inputs, plan::Plan& plan) {
  std::vector<std::string> loose;
  for (const joint::Member& member : inputs.weldment.members) {
    const auto& joints = inputs.weldment.joints;
    const bool is_held = std::any_of(joints.begin(), joints.end(), [&](const joint::Joint& joint) {
      return joint.member_1 == member.id || joint.member_2 == member.id;
    });
    if (!is_held) loose.push_back(member.id);
  }
  if (loose.empty() || inputs.weldment.members.size() == loose.size()) return;
  warn(inputs,
       plan,
       "plan.member.loose",
       "no joint holds " + base::listed(loose) +
           ": it counts in weight, torque and floor all the same; describe its joint, or take it "
           "out");
}

/// A run that stops where it began leaves a cold start beside an open crater.
void note_bare_stops(const Inputs& inputs, plan::Plan& plan) {
  std::vector<std::string> bare;
  for (const joint::Joint& joint : inputs.weldment.joints) {
    for (const joint::Seam& seam : joint.seams) {
      const bool goes_round = seam.path && !seam.segment && geom::is_closed(*seam.path) &&
                              seam.asked.form != joint::LengthForm::intermittent;
      if (goes_round && seam.asked.overlap_mm <= 0.0) bare.push_back(seam.id);
    }
  }
  if (bare.empty()) return;
  plan.findings.push_back(
      base::Finding{base::Severity::note,
                    "plan.stops.no_overlap",
                    (bare.size() == 1 ? "closed seam " : "closed seams ") + base::listed(bare) +
                        ": no overlap is asked for, so they stop where they began, on a cold start "
                        "and beside their crater; state overlap= in <welded> (10 to 20 mm are "
                        "common practice)",
                    detail::place_of(inputs.weldment, "weldment"),
                    {}});
}

plan::Plan head_of(const Inputs& inputs) {
  plan::Plan plan;
  plan.weldment = inputs.weldment;
  plan.cell = inputs.cell;
  plan.part = joint::total_weight(inputs.weldment.members);
  plan.findings = inputs.findings;
  return plan;
}

}  // namespace

plan::Plan make_plan(const Inputs& as_read, const PlanParams& params) {
  SEAMTURN_REQUIRE(!as_read.cell || !as_read.weldment.setups.empty(), as_read.weldment.title);
  plan::Plan plan = head_of(as_read);
  const Inputs inputs = detail::in_segments(as_read, plan.findings);
  plan.weldment = inputs.weldment;
  check_library(inputs, plan.findings);
  if (params.progress) params.progress("joints");
  std::vector<detail::JointWork> joints = detail::work_joints(inputs, plan.findings);
  plan.findings = detail::told_together(std::move(plan.findings));
  const std::vector<detail::StageWork> stages = detail::work_stages(inputs, plan.findings);
  detail::check_stages(inputs, stages, plan.findings);
  detail::check_order(inputs, stages, plan.findings);
  stop_on_errors(plan.findings);
  if (inputs.cell) {
    detail::order_build(inputs, params, stages, joints, plan);
    stop_on_errors(plan.findings);
    detail::check_turns(inputs, stages, plan);
    stop_on_errors(plan.findings);
    detail::check_facing(inputs, plan);
  } else {
    detail::assemble_joints(inputs, joints, {}, plan);
    detail::list_build(stages, plan);
  }
  detail::check_hidden(inputs, stages, plan);
  if (params.progress) params.progress("documents");
  detail::assemble_aftercare(inputs, joints, plan);
  detail::assemble_start_temperatures(inputs, joints, plan);
  detail::assemble_sizes(inputs, joints, plan);
  detail::assemble_fit_up(inputs, joints, plan);
  detail::check_nozzle(inputs, plan);
  detail::check_torch_room(inputs, stages, plan);
  detail::assemble_hangs(inputs, stages, plan);
  detail::assemble_tacks(inputs, stages, joints, plan);
  detail::assemble_datums(inputs, stages, joints, plan);
  detail::check_duties(inputs, plan);
  detail::check_strength(inputs, joints, plan);
  detail::check_return_path(inputs, plan);
  detail::assemble_procedures(inputs, joints, plan);
  detail::add_build_lines(plan);
  detail::assemble_estimate(inputs, plan);
  note_not_turned(inputs, plan);
  note_grade_maxima(inputs, plan);
  note_gouging(inputs, plan);
  note_heating(inputs, plan);
  note_loose_members(inputs, plan);
  note_bare_stops(inputs, plan);
  stop_on_errors(plan.findings);
  return plan;
}

}  // namespace seamturn::planner
