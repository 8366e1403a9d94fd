// SPDX-License-Identifier: MIT
// Which values of plates, wire and file decide the preheat of a joint.
#include <algorithm>

#include "planned_demos.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

namespace {

planner::Inputs bracket() {
  return io::read_inputs(repository() / "joints/bracket.xml");
}

const procedure::HeatLimits& heat_of(const Plan& plan, const std::string& id) {
  const auto found = std::find_if(plan.joints.begin(),
                                  plan.joints.end(),
                                  [&](const plan::PlannedJoint& joint) { return joint.id == id; });
  REQUIRE(found != plan.joints.end());
  return found->heat;
}

}  // namespace

TEST_SUITE("planner/heat") {
  TEST_CASE("for every joint of the demos, law: the thicker member decides the preheat") {
    // published: SSAB-23: the single thickness of the thickest part.
    for (const Planned& planned : plans()) {
      for (const plan::PlannedJoint& joint : planned.plan.joints) {
        const joint::Joint& described = *joint::find_joint(planned.plan.weldment, joint.id);
        const auto wall = [&](const std::string& id) {
          return joint::wall_thickness_mm(joint::find_member(planned.plan.weldment, id)->shape);
        };
        INFO(planned.file, " ", joint.id);
        CHECK(joint.heat.thickness_mm ==
              std::max(wall(described.member_1), wall(described.member_2)));
      }
    }
  }

  TEST_CASE("given weld metal of CET 0.40 on a leaner plate, 0.43 governs") {
    planner::Inputs inputs = bracket();
    for (process::Wire& wire : inputs.library.wires) wire.cet = 0.40;
    const Plan plan = planner::make_plan(inputs);
    check_expected("J2",
                   heat_of(plan, "J2").cet_governing,
                   {0.43, 1e-12, Origin::published, "SSAB-23 p. 23: weld metal + 0.03"});
    CHECK(heat_of(plan, "J2").cet_plate < 0.40);
  }

  TEST_CASE("given a preheat stated below the shop's own 20 degC, the plate starts at 20 degC") {
    // law: nothing stated cools a plate below its surroundings.
    planner::Inputs inputs = bracket();
    inputs.weldment.ambient_c = 20.0;
    joint::Joint& joint = inputs.weldment.joints.front();
    joint.heat.preheat_c = 5.0;
    joint.heat.preheat_reason = "a test";
    const Plan plan = planner::make_plan(inputs);
    CHECK(heat_of(plan, joint.id).preheat_c == 20.0);
    CHECK_FALSE(heat_of(plan, joint.id).needs_heating);
  }

  TEST_CASE("given tacks colder than the method's range, one warning names them and all joints") {
    planner::Inputs inputs = bracket();
    for (process::LinkedSettings& row : inputs.library.settings) {
      if (row.role == process::PassRole::tack) row.voltage_v *= 0.5;
    }
    const Plan plan = planner::make_plan(inputs);
    std::vector<std::string> told;
    for (const base::Finding& finding : plan.findings) {
      if (finding.code == "heat.preheat.out_of_range") told.push_back(finding.text);
    }
    REQUIRE(told.size() == 1);
    CAPTURE(told[0]);
    CHECK(told[0].find("joints J1, J2, J3, J4, J5, J6: the tacks' heat input") == 0);
  }

  TEST_CASE("given sheet of 2 mm, the preheat of the file is taken and the method's silence told") {
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/sheet.xml");
    const Plan plan = planner::make_plan(inputs);
    const procedure::HeatLimits& heat = heat_of(plan, "S1");
    CHECK(heat.preheat_c == 20.0);
    CHECK(heat.outside_range);
    // law: at 3 mm the method asks for more than at any thinner plate, for it rises with thickness.
    CHECK(heat.answers.front().says.find(", 3 mm, hydrogen") != std::string::npos);
    const auto told =
        [](const std::vector<base::Finding>& findings, const char* code, const char* words) {
          return std::any_of(findings.begin(), findings.end(), [&](const base::Finding& finding) {
            return finding.code == code && finding.text.find(words) != std::string::npos;
          });
        };
    CHECK(told(plan.findings, "heat.preheat.out_of_range", "says nothing of sheet below 3 mm"));
    inputs.weldment.joints.front().heat.preheat_c.reset();
    try {
      (void)planner::make_plan(inputs);
      FAIL("sheet was planned without a preheat stated");
    } catch (const base::InputError& error) {
      CHECK(told(error.findings(), "heat.preheat.thickness", "and state preheat= with its reason"));
    }
    // remembered: EN 10164 begins at 15 mm, so sheet is not to be had with a class.
    inputs.weldment.joints.front().heat.preheat_c = 20.0;
    inputs.weldment.joints.front().heat.restraint = joint::Restraint::high;
    inputs.weldment.joints.front().type = joint::JointType::corner;
    CHECK(told(planner::make_plan(inputs).findings,
               "heat.tearing.class_missing",
               "EN 10164 begins at 15 mm"));
  }

  TEST_CASE("given cool tacks, law: they and no pass set the lowest heat input of a joint") {
    planner::Inputs inputs = bracket();
    const Plan tacked = planner::make_plan(inputs);
    std::erase_if(inputs.library.settings, [](const process::LinkedSettings& row) {
      return row.role == process::PassRole::tack;
    });
    const Plan untacked = planner::make_plan(inputs);
    // The demo's tacks bring 0.8 x 28 V x 265 A at 40 cm/min or faster: 0.89 kJ/mm at most.
    CHECK(heat_of(tacked, "J2").lowest_heat_input_kj_mm <
          heat_of(untacked, "J2").lowest_heat_input_kj_mm);
    CHECK(heat_of(tacked, "J2").preheat_computed_c >= heat_of(untacked, "J2").preheat_computed_c);
  }
}

}  // namespace seamturn::tests
