// SPDX-License-Identifier: MIT
// Hook, return path, what a build does not allow: on the plan of the demo hub and a small part.
#include <algorithm>
#include <cmath>

#include "seamturn/base/error.hpp"
#include "staged_findings.hpp"

namespace seamturn::tests {

TEST_SUITE("planner/build") {
  TEST_CASE("given a return path, one on the fixed side and one too weak are told") {
    planner::Inputs inputs = hub().inputs;
    inputs.weldment.joints.resize(1);  // C1
    inputs.weldment.stages.resize(1);
    std::erase_if(inputs.weldment.members, [](const joint::Member& member) {
      return member.id != "flange" && member.id != "centring";
    });
    REQUIRE(inputs.cell->return_path);
    CHECK(inputs.cell->return_path->on_rotating_side);
    CHECK(inputs.cell->return_path->current_max_a == 500.0);
    const Plan right = quick_plan(inputs);
    CHECK(findings_of(right, "cell.return.fixed").empty());
    CHECK(findings_of(right, "cell.return.overload").empty());
    double most_a = 0.0;
    for (const plan::PlannedPass& pass : right.joints.front().seams.front().passes) {
      most_a = std::max(most_a, pass.pass.current_a);
    }
    inputs.cell->return_path->on_rotating_side = false;
    inputs.cell->return_path->current_max_a = most_a;
    const Plan fixed = quick_plan(inputs);
    CHECK(findings_of(fixed, "cell.return.fixed").size() == 1);
    CHECK(findings_of(fixed, "cell.return.overload").empty());
    inputs.cell->return_path->current_max_a = most_a - 1.0;
    CHECK(findings_of(quick_plan(inputs), "cell.return.overload").size() == 1);
  }

  TEST_CASE(
      "given three eyes round the axis, closed-form: a third each at the angle of the slings") {
    const Plan& plan = hub().plan;
    REQUIRE(plan.hangs.size() == 2);
    const plan::PlannedHang& lifted = plan.hangs.front();
    CHECK_FALSE(lifted.off);
    CHECK(lifted.turned_over.deg() == doctest::Approx(180.0));
    CHECK(findings_of(plan, "turn.hang.turned_over").size() == 1);
    CHECK(findings_of(plan, "turn.hang.off_part").empty());
    CHECK(findings_of(plan, "turn.hang.top_heavy").empty());
    CHECK(plan.hangs.back().off);
    CHECK(plan.hangs.back().lifting == "shackles");
    CHECK(plan.hangs.back().mass_kg == doctest::Approx(plan.part.mass_kg));
    CHECK(lifted.stage == "core");
    CHECK(lifted.mass_kg == doctest::Approx(plan.stages.front().part.mass_kg));
    REQUIRE(lifted.hang);
    CHECK(lifted.hang->lean.deg() < 0.01);
    const double angle = std::atan2(480.0, 1240.0);
    for (const turn::SlingLoad& sling : lifted.hang->slings) {
      check_expected("share",
                     sling.share_ratio,
                     {1.0 / 3.0, 1e-4, Origin::closed_form, "threefold about the axis"});
      check_expected("force",
                     sling.force_n,
                     {lifted.mass_kg * 9.80665 / 3.0 / std::cos(angle),
                      1.0,
                      Origin::closed_form,
                      "a third of the weight over the cosine"});
    }
  }

  TEST_CASE("given eyes on one side only, the hook tells that the part tips") {
    planner::Inputs inputs = hub().inputs;
    for (joint::LiftPoint& point : inputs.weldment.liftings.front().points) {
      point.at.x() += 1000.0;
    }
    const Plan plan = quick_plan(inputs);
    CHECK_FALSE(plan.hangs.front().hang.has_value());
    CHECK(findings_of(plan, "turn.hang.tips").size() == 1);
  }

  TEST_CASE("given points in the air and the eyes of the flange for the whole hub, both are told") {
    planner::Inputs inputs = hub().inputs;
    inputs.weldment.liftings.front().points.front().at.z() = 600.0;
    inputs.weldment.setups[1].lifting_off = "eyes_up";
    const Plan plan = quick_plan(inputs);
    CHECK(findings_of(plan, "turn.hang.off_part").size() == 2);  // hung, and taken off
    planner::Inputs low = hub().inputs;
    low.weldment.setups[1].lifting_off = "eyes_up";
    CHECK(findings_of(quick_plan(low), "turn.hang.top_heavy").size() == 1);
  }

  TEST_CASE("given a tight joint, a missing leak test is told, one of it or of all is enough") {
    planner::Inputs inputs = tee_in_stages();
    CHECK(findings_of(quick_plan(inputs), "plan.duty.no_leak_test").size() == 1);
    for (const std::vector<std::string>& about :
         {std::vector<std::string>{"J2"}, std::vector<std::string>{}}) {
      planner::Inputs tested = inputs;
      joint::Operation test;
      test.id = "LT";
      test.kind = joint::OperationKind::leak_test;
      test.joints = about;
      tested.weldment.stages.front().operations.push_back(test);
      CHECK(findings_of(quick_plan(tested), "plan.duty.no_leak_test").empty());
    }
  }

  TEST_CASE(
      "given a weld under the hub, the faceplate or the fixture hides it, unless its reach is "
      "proved") {
    planner::Inputs inputs = hub().inputs;
    for (joint::Joint& joint : inputs.weldment.joints) {
      if (joint.id == "C1") joint.stage = "core";
    }
    for (const bool with_size : {true, false}) {
      if (!with_size) {
        for (joint::SetupSolid& solid : inputs.weldment.setups[1].solids) solid.size_mm.reset();
      }
      try {
        (void)quick_plan(inputs);
        FAIL("planned");
      } catch (const base::InputError& error) {
        const auto& all = error.findings();
        CHECK(std::any_of(all.begin(), all.end(), [](const base::Finding& finding) {
          return finding.code == "stage.seam.hidden" &&
                 finding.text.find("C1") != std::string::npos;
        }));
      }
    }
    inputs.weldment.joints.front().reach_proved = true;
    CHECK(findings_of(quick_plan(inputs), "stage.seam.hidden").empty());
  }

  TEST_CASE(
      "refuses a stage that hangs nothing and a clamp in the air because neither can be built") {
    const auto refused = [](const planner::Inputs& inputs) {
      try {
        (void)quick_plan(inputs);
      } catch (const base::InputError& error) {
        std::string codes;
        for (const base::Finding& finding : error.findings()) {
          if (finding.severity == base::Severity::error) codes += finding.code + " ";
        }
        return codes;
      }
      return std::string();
    };
    planner::Inputs empty = hub().inputs;
    joint::Stage first;
    first.id = "nothing";
    first.setup = "bearing_up";
    empty.weldment.stages.insert(empty.weldment.stages.begin(), first);
    CHECK(refused(empty).find("stage.member.none") != std::string::npos);
    planner::Inputs off = hub().inputs;
    off.weldment.setups.front().clamps.front().at.z() = -700.0;
    CHECK(refused(off).find("setup.clamp.off_part") != std::string::npos);
    planner::Inputs unused = hub().inputs;
    unused.weldment.setups.push_back(unused.weldment.setups.back());
    unused.weldment.setups.back().id = "spare";
    CHECK(findings_of(quick_plan(unused), "stage.setup.unused").size() == 1);
  }

  TEST_CASE("given the shop's row for tacks, what it states is taken, the rest stays as it was") {
    const tack::TackRules& shop = hub().inputs.library.tack_rules;
    CHECK(shop.pitch_mm.value == 220.0);
    CHECK(shop.pitch_mm.status == base::Status::proposed);
    CHECK(shop.pitch_mm.source == "demo");
    CHECK(shop.clear_of_ends_mm.value == 20.0);
    CHECK(shop.gap_max_mm.value == 1.5);
    CHECK(shop.length_min_mm.value == 50.0);
    CHECK_FALSE(shop.throat_mm.has_value());
    const planner::Inputs stated = io::read_inputs(repository() / "tests/good/heat_stated.xml");
    const tack::TackRules& own = stated.library.tack_rules;
    CHECK(own.length_min_mm.value == 25.0);
    CHECK(own.length_min_mm.status == base::Status::common_practice);
    CHECK(own.throat_mm->value == 3.0);
    CHECK(own.stress_mpa->value == 80.0);
  }
}

}  // namespace seamturn::tests
