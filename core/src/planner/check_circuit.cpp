// SPDX-License-Identifier: MIT
// What welds of a duty need beside strength, and what the welding circuit asks for.
#include <algorithm>

#include "detail_tacking.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

/// Only where the file states stages: then all work is in them.
bool lacks_leak_test(const joint::Weldment& weldment, const std::string& joint) {
  for (const joint::Stage& stage : weldment.stages) {
    for (const joint::Operation& operation : stage.operations) {
      const auto& about = operation.joints;
      const bool ours =
          about.empty() || std::find(about.begin(), about.end(), joint) != about.end();
      if (operation.kind == joint::OperationKind::leak_test && ours) return false;
    }
  }
  return !weldment.stages.empty();
}

void check_tight(const Inputs& inputs,
                 const joint::Joint& joint,
                 const plan::PlannedJoint& planned,
                 plan::Plan& plan) {
  const auto warn = [&](const char* code, const std::string& text) {
    plan.findings.push_back(joint_finding(inputs, joint, Severity::warning, code, text));
  };
  if (lacks_leak_test(inputs.weldment, joint.id)) {
    warn("plan.duty.no_leak_test",
         "it is to be tight, and no stage holds a leak test of it; add <operation "
         "kind=\"leak-test\" joints=\"" +
             joint.id + "\" .../>");
  }
  for (const plan::PlannedSeam& seam : planned.seams) {
    if (seam.passes.size() > 1) continue;
    warn("plan.duty.one_pass",
         "seam " + seam.id +
             " is to be tight and is laid in one pass; two are due, so that no pore goes through "
             "(common practice)");
  }
}

double largest_current_a(const plan::Plan& plan) {
  double most_a = 0.0;
  for (const plan::PlannedJoint& joint : plan.joints) {
    for (const plan::PlannedSeam& seam : joint.seams) {
      for (const plan::PlannedPass& pass : seam.passes) {
        most_a = std::max(most_a, pass.pass.current_a);
      }
    }
  }
  return most_a;
}

}  // namespace

void check_duties(const Inputs& inputs, plan::Plan& plan) {
  for (const plan::PlannedJoint& planned : plan.joints) {
    const joint::Joint& joint = *joint::find_joint(inputs.weldment, planned.id);
    if (joint.duty == joint::Duty::tight) check_tight(inputs, joint, planned, plan);
  }
}

void check_return_path(const Inputs& inputs, plan::Plan& plan) {
  if (!plan.cell || !plan.cell->return_path) return;
  const auto tell = [&](const char* code, const std::string& text) {
    plan.findings.push_back(
        Finding{Severity::warning, code, text, place_of(inputs.weldment, "weldment"), {}});
  };
  const cell::ReturnPath& path = *plan.cell->return_path;
  if (!path.on_rotating_side) {
    tell("cell.return.fixed",
         "the cell's return lead ends on the fixed side: the welding current runs through the "
         "positioner's bearings and ruins them; clamp it on what turns with the part, or fit a "
         "slip ring");
  }
  const double most_a = largest_current_a(plan);
  if (most_a > path.current_max_a) {
    tell("cell.return.overload",
         "passes are planned with up to " + base::fixed_text(most_a, 0) +
             " A, the return path is rated for " + base::fixed_text(path.current_max_a, 0) +
             " A; take a larger clamp or slip ring, or two of them");
  }
}

}  // namespace seamturn::planner::detail
