// SPDX-License-Identifier: MIT
// The weldments of the benchmark: whole, and the same every time.
#include "bench/generated_weldment.hpp"

#include "planned_demos.hpp"
#include "scratch.hpp"
#include "xml_check.hpp"

namespace seamturn::tests {

TEST_SUITE("planner/generated_weldment") {
  TEST_CASE("for any number of seams asked for, law: so many are planned, without an error") {
    for (const int seams : {2, 34, 50}) {
      INFO(seams);
      const std::string text = generated_weldment(seams);
      CHECK(text == generated_weldment(seams));
      CHECK(schema_verdict("weldment.xsd", text, "generated_weldment") == "");
      const planner::Inputs inputs = io::read_inputs(write_generated_weldment(
          seams, repository() / "joints", scratch_folder("generated_weldment")));
      CHECK(inputs.findings.empty());
      const Plan plan = quick_plan(inputs);
      CHECK(plan.not_turned.empty());
      std::size_t planned = 0;
      for (const plan::PlannedJoint& joint : plan.joints) planned += joint.seams.size();
      CHECK(planned == static_cast<std::size_t>(seams));
      for (const base::Finding& finding : plan.findings) {
        INFO(finding.text);
        CHECK(finding.severity == base::Severity::note);
      }
    }
  }
}

}  // namespace seamturn::tests
