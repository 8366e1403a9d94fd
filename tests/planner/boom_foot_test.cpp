// SPDX-License-Identifier: MIT
// Heat of a thick joint from the file to the plan: window, neighbour, hold, tearing, predicted
// temperatures.
#include <doctest/doctest.h>

#include <algorithm>

#include "planned_demos.hpp"

namespace seamturn::tests {

namespace {

planner::Inputs boom_foot() {
  return io::read_inputs(repository() / "joints/boom_foot.xml");
}

const plan::Plan& boom_foot_plan() {
  static const plan::Plan plan = planner::make_plan(boom_foot(), {});
  return plan;
}

bool is_told(const plan::Plan& plan, const std::string& code) {
  return std::any_of(plan.findings.begin(), plan.findings.end(), [&](const base::Finding& finding) {
    return finding.code == code;
  });
}

bool has_caution(const plan::Plan& plan, const std::string& code) {
  return std::any_of(plan.cautions.begin(), plan.cautions.end(), [&](const auto& caution) {
    return caution.code == code;
  });
}

}  // namespace

TEST_SUITE("planner/boom_foot") {
  TEST_CASE("given a window of the file, law: every pass of the lugs keeps it at both starts") {
    for (const char* id : {"J1", "J2"}) {
      const plan::PlannedJoint& joint = joint_of(boom_foot_plan(), id);
      REQUIRE(joint.heat.window);
      CHECK(joint.heat.window->kept);
      for (const plan::PlannedSeam& seam : joint.seams) {
        for (const plan::PlannedPass& pass : seam.passes) {
          CHECK(pass.t85_s >= 5.0 - 1e-9);
          CHECK(pass.t85_long_s <= 25.0 + 1e-9);
        }
      }
    }
    CHECK_FALSE(is_told(boom_foot_plan(), "heat.window.not_closed"));
  }

  TEST_CASE("given a rib beside the lugs, it takes over their preheat and says from whom") {
    const procedure::HeatLimits& lug = joint_of(boom_foot_plan(), "J1").heat;
    const procedure::HeatLimits& rib = joint_of(boom_foot_plan(), "J3").heat;
    CHECK(lug.neighbour.empty());
    CHECK_FALSE(rib.neighbour.empty());
    CHECK(rib.preheat_c >= lug.preheat_c - 1e-9);
    CHECK(rib.own_preheat_c < rib.preheat_c - 1.0);
  }

  // published: EN 1090-2:2008 table 23, above 12 mm, up to 3 kJ/mm, S235 to S420: 16 h
  TEST_CASE("given 60 mm in S355, the hold time is 16 h, and it stands on the sheet") {
    CHECK(joint_of(boom_foot_plan(), "J1").aftercare.hold.hours == 16.0);
    CHECK(joint_of(boom_foot_plan(), "J1").aftercare.hold_size_mm == 60.0);
    const auto& lines = boom_foot_plan().procedures.front().inspection;
    CHECK(std::any_of(lines.begin(), lines.end(), [](const std::string& line) {
      return line.find("at least 16 h after the last pass") != std::string::npos;
    }));
  }

  // published: same table, above 12 mm, up to 3 kJ/mm: S460 and above 40 h. Above 6 to 12 mm, up to
  // 3 kJ/mm, S235 to S420: 8 h
  TEST_CASE("given a steel without a yield it counts as strong, and two fillets at once as one") {
    planner::Inputs inputs = boom_foot();
    for (joint::Joint& joint : inputs.weldment.joints) {
      if (joint.id == "J4") joint.heat.sides_together = true;
    }
    const plan::Plan together = planner::make_plan(inputs, {});
    CHECK(joint_of(boom_foot_plan(), "J4").aftercare.hold_size_mm == doctest::Approx(8.0));
    CHECK(joint_of(boom_foot_plan(), "J4").aftercare.hold.hours == 8.0);
    CHECK(joint_of(together, "J4").aftercare.hold_size_mm == doctest::Approx(16.0));
    CHECK(joint_of(together, "J4").aftercare.hold.hours == 16.0);
    for (material::Steel& steel : inputs.library.steels) {
      for (material::SteelBand& band : steel.bands) band.yield_mpa.reset();
    }
    CHECK(joint_of(planner::make_plan(inputs, {}), "J1").aftercare.hold.hours == 40.0);
  }

  TEST_CASE("for one joint outside a range, law: its sheet and the plan say so, no other sheet") {
    planner::Inputs inputs = boom_foot();
    for (joint::Member& member : inputs.weldment.members) {
      if (member.id == "lug_left") member.analysis->mn = 2.4;  // CET is known up to 1.9 %
    }
    const plan::Plan plan = planner::make_plan(inputs, {});
    CHECK(has_caution(plan, "caution.outside_range"));
    CHECK_FALSE(has_caution(boom_foot_plan(), "caution.outside_range"));
    for (const procedure::Procedure& procedure : plan.procedures) {
      const auto& ids = procedure.joints;
      const bool holds_lug = std::any_of(
          ids.begin(), ids.end(), [](const std::string& id) { return id == "J1" || id == "J4"; });
      const auto& all = procedure.cautions;
      const bool says = std::any_of(all.begin(), all.end(), [](const procedure::Caution& caution) {
        return caution.code == "caution.outside_range";
      });
      INFO(procedure.id);
      CHECK(says == holds_lug);
    }
  }

  // remembered: points of EN 1993-1-10 table 3.2: above 50 mm 15, penetration 5, 60 mm 12, high
  // restraint 5, heated above 100 degC -8
  TEST_CASE("given the plate under the lugs, 29 points ask for Z25, and Z35 is ordered") {
    const auto& check = joint_of(boom_foot_plan(), "J1").aftercare.tearing;
    REQUIRE(check);
    CHECK(check->member == "foot");
    CHECK(check->points.total == 29.0);
    CHECK(check->points.required == heat::ZClass::z25);
    CHECK(check->verdict == heat::TearingVerdict::met);
    CHECK_FALSE(is_told(boom_foot_plan(), "heat.tearing.class_missing"));
    CHECK_FALSE(has_caution(boom_foot_plan(), "caution.tearing"));
    const auto& lines = boom_foot_plan().procedures.front().inspection;
    CHECK(std::any_of(lines.begin(), lines.end(), [](const std::string& line) {
      return line.find("ultrasonic") != std::string::npos && line.find("Z25") != std::string::npos;
    }));
  }

  TEST_CASE("given the same plate ordered in no class, plan and cautions say so") {
    planner::Inputs inputs = boom_foot();
    for (joint::Member& member : inputs.weldment.members) {
      if (member.id == "foot") member.z_quality.clear();
    }
    const plan::Plan plan = planner::make_plan(inputs, {});
    CHECK(joint_of(plan, "J2").aftercare.tearing->verdict == heat::TearingVerdict::not_met);
    CHECK(is_told(plan, "heat.tearing.class_missing"));
    CHECK(has_caution(plan, "caution.tearing"));
  }

  TEST_CASE("given analyses, hardness is estimated where the joint cools fastest") {
    const plan::PlannedJoint& joint = joint_of(boom_foot_plan(), "J1");
    REQUIRE(joint.aftercare.hardness);
    double shortest_s = 1e9;
    for (const plan::PlannedSeam& seam : joint.seams) {
      for (const plan::PlannedPass& pass : seam.passes)
        shortest_s = std::min(shortest_s, pass.t85_s);
    }
    CHECK(joint.aftercare.hardness->t85_s == shortest_s);
    CHECK(joint.aftercare.hardness->member == "lug_left");  // the one with more carbon
    planner::Inputs inputs = boom_foot();
    for (joint::Member& member : inputs.weldment.members) member.analysis.reset();
    inputs.weldment.joints.resize(1);
    inputs.weldment.joints.front().heat.preheat_c = 150.0;
    inputs.weldment.joints.front().heat.preheat_reason = "a test";
    CHECK_FALSE(planner::make_plan(inputs, {}).joints.front().aftercare.hardness);
  }

  TEST_CASE("for every pass on the clock, law: it starts between preheat and interpass maximum") {
    for (const plan::PlannedJoint& joint : boom_foot_plan().joints) {
      for (const plan::PlannedSeam& seam : joint.seams) {
        for (const plan::PlannedPass& pass : seam.passes) {
          INFO(seam.id << " pass " << pass.pass.number);
          REQUIRE(pass.start_low_c);
          CHECK(*pass.start_low_c >= joint.heat.preheat_c - 1e-9);
          CHECK(*pass.start_low_c <= *pass.start_high_c);
          CHECK(*pass.start_high_c <= joint.heat.interpass_max_c + 1e-6);
          CHECK(pass.gap_short_s <= pass.gap_long_s);
        }
      }
    }
    // law: two models that differ leave a bracket open over a place that was welded before
    int open = 0;
    for (const plan::PlannedSeam& seam : joint_of(boom_foot_plan(), "J1").seams) {
      for (const plan::PlannedPass& pass : seam.passes)
        open += *pass.start_high_c > *pass.start_low_c + 1.0 ? 1 : 0;
    }
    CHECK(open > 5);
    const plan::PlannedPass& first = joint_of(boom_foot_plan(), "J1").seams.front().passes.front();
    CHECK(*first.start_high_c == joint_of(boom_foot_plan(), "J1").heat.preheat_c);
  }
}

}  // namespace seamturn::tests
