// SPDX-License-Identifier: MIT
// The demo weldments, read and planned once for every law of the planner.
#pragma once

#include "oracle.hpp"
#include "repository.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/planner/planner.hpp"

namespace seamturn::tests {

using plan::Plan;

struct Planned {
  std::string file;
  planner::Inputs inputs;
  Plan plan;
};

/// Each demo file is planned once for all laws.
inline const std::vector<Planned>& plans() {
  static const std::vector<Planned> all = [] {
    std::vector<Planned> made;
    for (const auto& entry : std::filesystem::directory_iterator(repository() / "joints")) {
      if (entry.path().extension() != ".xml") continue;
      Planned one;
      one.file = entry.path().filename().string();
      one.inputs = io::read_inputs(entry.path());
      one.plan = planner::make_plan(one.inputs);
      made.push_back(std::move(one));
    }
    return made;
  }();
  return all;
}

/// One of them. Pre: it is there.
inline const Planned& planned_demo(const std::string& file) {
  for (const Planned& planned : plans()) {
    if (planned.file == file) return planned;
  }
  FAIL("no demo ", file);
  return plans().front();
}
inline const Planned& hub() {
  return planned_demo("grab_hub.xml");
}

/// A plan whose order nobody looks at closely: little effort, for what does not depend on it.
inline Plan quick_plan(const planner::Inputs& inputs) {
  planner::PlanParams params;
  params.search.effort = 20000;
  params.search.bound_work = 0;
  return planner::make_plan(inputs, params);
}

inline const plan::PlannedSeam& seam_of(const Plan& plan, const std::string& id) {
  for (const plan::PlannedJoint& joint : plan.joints) {
    for (const plan::PlannedSeam& seam : joint.seams) {
      if (seam.id == id) return seam;
    }
  }
  FAIL("no seam ", id);
  return plan.joints.front().seams.front();
}

struct Arc {
  const plan::PlannedSeam* seam;
  const plan::PlannedPass* pass;
};

inline std::vector<Arc> arcs_of(const Plan& plan) {
  std::vector<Arc> arcs;
  for (const plan::PlannedJoint& joint : plan.joints) {
    for (const plan::PlannedSeam& seam : joint.seams) {
      for (const plan::PlannedPass& pass : seam.passes) arcs.push_back(Arc{&seam, &pass});
    }
  }
  return arcs;
}

inline const joint::Seam& described_seam(const Plan& plan, const std::string& id) {
  for (const joint::Joint& joint : plan.weldment.joints) {
    for (const joint::Seam& seam : joint.seams) {
      if (seam.id == id) return seam;
    }
  }
  FAIL("no seam ", id);
  return plan.weldment.joints.front().seams.front();
}

inline const plan::PlannedJoint& joint_of(const Plan& plan, const std::string& id) {
  for (const plan::PlannedJoint& joint : plan.joints) {
    if (joint.id == id) return joint;
  }
  FAIL("no joint ", id);
  return plan.joints.front();
}
inline joint::Joint& joint_of(planner::Inputs& inputs, const std::string& id) {
  for (joint::Joint& joint : inputs.weldment.joints) {
    if (joint.id == id) return joint;
  }
  FAIL("no joint ", id);
  return inputs.weldment.joints.front();
}

/// Text of the first finding of a code; "" when it was not told.
inline std::string text_told(const Plan& plan, const std::string& code) {
  for (const base::Finding& finding : plan.findings) {
    if (finding.code == code) return finding.text;
  }
  return "";
}

/// The tee of tests/good.
inline planner::Inputs tee_inputs() {
  return io::read_inputs(repository() / "tests/good/tee.xml");
}

}  // namespace seamturn::tests
