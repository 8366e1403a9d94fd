// SPDX-License-Identifier: MIT
// A small part in stages, changed in code by each test: a tee with a rib before and behind.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "planned_demos.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

inline planner::Inputs staged_part() {
  return io::read_inputs(repository() / "tests/good/stages.xml");
}

inline joint::Joint& joint_in(planner::Inputs& inputs, const std::string& id) {
  for (joint::Joint& joint : inputs.weldment.joints) {
    if (joint.id == id) return joint;
  }
  FAIL("no joint ", id);
  return inputs.weldment.joints.front();
}

inline joint::Operation& operation_in(planner::Inputs& inputs, const std::string& id) {
  for (joint::Stage& stage : inputs.weldment.stages) {
    for (joint::Operation& operation : stage.operations) {
      if (operation.id == id) return operation;
    }
  }
  FAIL("no operation ", id);
  return inputs.weldment.stages.front().operations.front();
}

inline const plan::PlannedOperation& planned_in(const Plan& plan, const std::string& id) {
  for (const plan::PlannedOperation& operation : plan.operations) {
    if (operation.id == id) return operation;
  }
  FAIL("no operation ", id);
  return plan.operations.front();
}

inline const plan::PlannedStage& stage_in(const Plan& plan, const std::string& id) {
  for (const plan::PlannedStage& stage : plan.stages) {
    if (stage.id == id) return stage;
  }
  FAIL("no stage ", id);
  return plan.stages.front();
}

/// Only the stage given, its fits without other work.
inline void keep_stage(planner::Inputs& inputs, const std::string& id) {
  std::erase_if(inputs.weldment.stages, [&](const joint::Stage& stage) { return stage.id != id; });
}

inline void drop_operations(planner::Inputs& inputs) {
  for (joint::Stage& stage : inputs.weldment.stages) {
    std::erase_if(stage.operations, [](const joint::Operation& operation) {
      return operation.kind != joint::OperationKind::fit;
    });
  }
}

inline std::string codes_of(const std::vector<base::Finding>& findings) {
  std::string codes;
  for (const base::Finding& finding : findings) {
    if (finding.severity != base::Severity::error) continue;
    codes += (codes.empty() ? "" : " ") + finding.code;
  }
  return codes;
}

/// Codes of the errors that keep a plan from being made; empty when it is made.
inline std::string refused_with(const planner::Inputs& inputs) {
  try {
    (void)planner::make_plan(inputs);
  } catch (const base::InputError& error) {
    return codes_of(error.findings());
  }
  return "";
}

/// First arc and last arc of a joint.
struct Span {
  double from_s = 0.0;
  double to_s = 0.0;
};
inline Span span_of(const Plan& plan, const std::string& joint) {
  Span span{1e12, -1.0};
  for (const Arc& arc : arcs_of(plan)) {
    if (arc.seam->joint != joint || !arc.pass->start_s) continue;
    span.from_s = std::min(span.from_s, *arc.pass->start_s);
    span.to_s = std::max(span.to_s, *arc.pass->end_s);
  }
  return span;
}

}  // namespace seamturn::tests
