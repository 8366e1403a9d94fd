// SPDX-License-Identifier: MIT
// Stages and set-ups: what the build does not allow, weights, re-hangs, and the clock of the whole.
#include <cmath>
#include <set>

#include "planner/detail_stages.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "staged_part.hpp"
#include "xml_check.hpp"

namespace seamturn::tests {

namespace {

using Change = void (*)(planner::Inputs&);

std::string refused_after(Change change) {
  planner::Inputs inputs = staged_part();
  change(inputs);
  return refused_with(inputs);
}

const Plan& staged_plan() {
  static const Plan plan = planner::make_plan(staged_part());
  return plan;
}

/// The demo weldments and the small part.
std::vector<const Plan*> all_plans() {
  std::vector<const Plan*> all = {&staged_plan()};
  for (const Planned& planned : plans()) all.push_back(&planned.plan);
  return all;
}

joint::Setup& setup_in(planner::Inputs& inputs, const std::string& id) {
  for (joint::Setup& setup : inputs.weldment.setups) {
    if (setup.id == id) return setup;
  }
  FAIL("no set-up ", id);
  return inputs.weldment.setups.front();
}

std::size_t stage_number(const Plan& plan, const std::string& id) {
  for (std::size_t k = 0; k < plan.stages.size(); ++k) {
    if (plan.stages[k].id == id) return k;
  }
  FAIL("no stage ", id);
  return 0;
}

}  // namespace

TEST_SUITE("planner/stages") {
  TEST_CASE("given a build that can be, no error, and each mistake in it is told by its code") {
    CHECK(refused_after([](planner::Inputs&) {}).empty());
    struct Row {
      const char* code;
      Change change;
    };
    using planner::Inputs;
    const Row rows[] = {
        {"stage.member.never",
         [](Inputs& in) {
           operation_in(in, "fit ribs 2").members = {"rib_1"},
                            operation_in(in, "fit ribs").members.clear(),
                            in.weldment.joints.resize(4);
         }},
        {"stage.member.twice",
         [](Inputs& in) { operation_in(in, "fit tee").members.push_back("rib_1"); }},
        {"stage.member.floating",
         [](Inputs& in) {
           in.weldment.joints.erase(in.weldment.joints.begin() + 2, in.weldment.joints.begin() + 4);
         }},
        {"stage.joint.too_early", [](Inputs& in) { joint_in(in, "J3").stage = "tee"; }},
        {"stage.joint.away", [](Inputs& in) { joint_in(in, "J6").stage = "furnace"; }},
        {"stage.joint.after_later", [](Inputs& in) { joint_in(in, "J1").after = {"J3"}; }},
        {"stage.operation.elsewhere",
         [](Inputs& in) { operation_in(in, "VT_back").after = {"J3"}; }},
        {"stage.operation.elsewhere", [](Inputs& in) { operation_in(in, "MT").before = {"J1"}; }},
        {"stage.operation.member",
         [](Inputs& in) { operation_in(in, "VT_back").members = {"rib_1"}; }},
        {"stage.setup.no_hang", [](Inputs& in) { setup_in(in, "quarter").hang_s.reset(); }},
        {"stage.setup.unused", [](Inputs& in) { in.weldment.stages.clear(); }},
        {"setup.hides.welded", [](Inputs& in) { setup_in(in, "quarter").hides.push_back("J3"); }},
    };
    for (const Row& row : rows) {
      INFO(row.code);
      CHECK(refused_after(row.change) == row.code);
    }
  }

  TEST_CASE("a member floats though one that is fitted later will hold it") {
    // rib_1 is joined to rib_2 alone, and only rib_2 to the base
    planner::Inputs inputs = staged_part();
    std::erase_if(inputs.weldment.joints, [](const joint::Joint& one) { return one.id == "J3"; });
    joint_in(inputs, "J4").member_1 = "rib_2";
    std::vector<base::Finding> findings;
    const auto check = [&] {
      findings.clear();
      planner::detail::check_stages(
          inputs, planner::detail::work_stages(inputs, findings), findings);
      return codes_of(findings);
    };
    CHECK(check().empty());
    operation_in(inputs, "fit tee").members.push_back("rib_1");
    operation_in(inputs, "fit ribs").members.clear();
    CHECK(check() == "stage.member.floating");
  }

  TEST_CASE("a joint is welded in the stage of its later member, whichever is named first") {
    planner::Inputs inputs = staged_part();
    for (const bool swapped : {false, true}) {
      joint::Joint& joint = joint_in(inputs, "J5");
      if (swapped) std::swap(joint.member_1, joint.member_2);
      std::vector<base::Finding> findings;
      const auto stages = planner::detail::work_stages(inputs, findings);
      CHECK(stages[1].welds(joint));
      CHECK_FALSE(stages[0].welds(joint));
    }
  }

  TEST_CASE("for every plan, law: it is proved best when every stage is, and bounds add up") {
    int not_proved = 0;
    for (const Plan* plan : all_plans()) {
      bool all = true;
      double bound_s = 0.0;
      for (const plan::PlannedStage& stage : plan->stages) {
        if (!stage.start_s) continue;
        all = all && stage.proved_best;
        bound_s += stage.rehang_s + stage.lower_bound_s;
      }
      INFO(plan->weldment.title);
      CHECK(plan->proved_best == all);
      CHECK(plan->lower_bound_s == doctest::Approx(bound_s));
      if (!all) ++not_proved;
    }
    CHECK(not_proved > 0);
    REQUIRE(staged_plan().proved_best);
    // The shortest cycle is known too; turns saved may cost a few seconds, no more than their
    // worth.
    const double spent_s = staged_plan().cycle_s - staged_plan().lower_bound_s;
    CHECK(spent_s >= 0.0);
    CHECK(spent_s < 20.0 * planner::usual_stance_worth_s);
  }

  TEST_CASE("an axis an operation asks for lies within the positioner's travel, or is refused") {
    // The table of tests/good tilts from -15 to 135 deg and has no axis "turn".
    const auto asking = [](const char* axis, double deg) {
      planner::Inputs inputs = staged_part();
      operation_in(inputs, "MT").axes = {{axis, base::Angle::deg(deg)}};
      return refused_with(inputs);
    };
    CHECK(asking("tilt", 135.0).empty());
    CHECK(asking("tilt", 135.1) == "stage.operation.axis");
    CHECK(asking("tilt", -15.0).empty());
    CHECK(asking("tilt", -15.1) == "stage.operation.axis");
    CHECK(asking("turn", 0.0) == "stage.operation.axis");
  }

  TEST_CASE("a clamp covers what lies within its radius, closed-form, and only in its set-up") {
    // J3 begins at (194, 50, 25); a clamp at (194, 20, 25) is 30 mm from there.
    const auto clamped = [](const char* setup, geom::Vec3 at, double radius_mm) {
      planner::Inputs inputs = staged_part();
      setup_in(inputs, setup).clamps = {{"K9", at, radius_mm}};
      return refused_with(inputs);
    };
    const geom::Vec3 beside(194.0, 20.0, 25.0);
    CHECK(clamped("quarter", beside, 29.9).empty());
    CHECK(clamped("quarter", beside, 30.1) == "setup.clamp.on_seam");
    CHECK(clamped("flat", beside, 30.1).empty());
    const geom::Vec3 on_J1(100.0, 157.5, 25.0);
    CHECK(clamped("quarter", on_J1, 20.0).empty());
    CHECK(clamped("flat", on_J1, 20.0) == "setup.clamp.on_seam");
  }

  TEST_CASE("given members and fixtures, each stage weighs what is there, closed-form") {
    // volumes by hand, 7850 kg/m3: base 400 x 300 x 25, web 400 x 120 x 15, rib 100 x 100 x 12
    const double base_kg = 23.55;
    const double web_kg = 5.652;
    const double rib_kg = 0.942;
    const plan::PlannedStage& tee = stage_in(staged_plan(), "tee");
    CHECK(tee.part.mass_kg == doctest::Approx(base_kg + web_kg));
    CHECK(tee.load.mass_kg == doctest::Approx(base_kg + web_kg + 85.0 + 12.0));
    // z of the web's middle 85, of the base's 12.5; 60 mm above the faceplate
    const double part_z = (base_kg * 12.5 + web_kg * 85.0) / (base_kg + web_kg) + 60.0;
    CHECK(tee.load.centre.z() ==
          doctest::Approx(((base_kg + web_kg) * part_z + 85.0 * 30.0 - 12.0 * 5.0) /
                          (base_kg + web_kg + 97.0)));
    const plan::PlannedStage& ribs = stage_in(staged_plan(), "ribs");
    CHECK(ribs.part.mass_kg == doctest::Approx(base_kg + web_kg + 2.0 * rib_kg));
    CHECK(ribs.load.mass_kg == doctest::Approx(base_kg + web_kg + 2.0 * rib_kg + 60.0));
    const plan::PlannedStage& furnace = stage_in(staged_plan(), "furnace");
    CHECK(furnace.part.mass_kg == doctest::Approx(ribs.part.mass_kg));
    CHECK(furnace.load.mass_kg == 0.0);
    CHECK(tee.present == std::vector<std::string>{"base", "web"});
    CHECK(ribs.fitted == std::vector<std::string>{"rib_1", "rib_2"});
    CHECK(ribs.present.size() == 4);
  }

  TEST_CASE(
      "for every plan, law: stages stand on the clock as the file lists them, none overlaps") {
    for (const Plan* plan : all_plans()) {
      double now_s = 0.0;
      for (const plan::PlannedStage& stage : plan->stages) {
        INFO(plan->weldment.title, " ", stage.id);
        CHECK(stage.start_s.has_value() == !stage.setup.empty());
        if (!stage.start_s) continue;
        CHECK(*stage.start_s == now_s);
        CHECK(stage.end_s >= *stage.start_s + stage.rehang_s);
        now_s = stage.end_s;
      }
      CHECK(now_s == plan->cycle_s);
      for (std::size_t k = 0; k < plan->weldment.stages.size(); ++k) {
        CHECK(plan->stages[k].id == plan->weldment.stages[k].id);
      }
    }
  }

  TEST_CASE("for every plan, law: a seam's arcs lie in its stage, after its members are fitted") {
    std::size_t seen = 0;
    for (const Plan* plan : all_plans()) {
      if (plan->weldment.stages.empty()) continue;
      for (const joint::Joint& joint : plan->weldment.joints) {
        INFO(plan->weldment.title, " ", joint.id);
        std::size_t first = 0;
        double fitted_s = 0.0;
        for (std::size_t k = 0; k < plan->weldment.stages.size(); ++k) {
          for (const joint::Operation& fit : plan->weldment.stages[k].operations) {
            if (fit.kind != joint::OperationKind::fit) continue;
            for (const std::string& member : fit.members) {
              if (member != joint.member_1 && member != joint.member_2) continue;
              first = std::max(first, k);
              const plan::PlannedOperation& done = planned_in(*plan, fit.id);
              fitted_s = std::max(fitted_s, *done.start_s + done.time_s);
            }
          }
        }
        const plan::PlannedStage& stage =
            plan->stages[joint.stage.empty() ? first : stage_number(*plan, joint.stage)];
        const Span span = span_of(*plan, joint.id);
        CHECK(span.from_s >= *stage.start_s + stage.rehang_s);
        CHECK(span.to_s <= stage.end_s);
        CHECK(span.from_s >= fitted_s);
        for (const Arc& arc : arcs_of(*plan)) {
          if (arc.seam->joint == joint.id) CHECK(arc.seam->stage == stage.id);
        }
        ++seen;
      }
    }
    CHECK(seen > 40);
  }

  TEST_CASE("for every plan, law: a stance belongs to one set-up and holds its heaviest stage") {
    for (const Plan* plan : all_plans()) {
      for (std::size_t s = 0; s < plan->stances.size(); ++s) {
        const plan::PlannedStance& stance = plan->stances[s];
        double heaviest_kg = 0.0;
        for (const plan::PlannedEvent& event : plan->timeline) {
          if (event.stance != stance.id) continue;
          for (const plan::PlannedStage& stage : plan->stages) {
            const bool within =
                stage.start_s && event.start_s >= *stage.start_s && event.start_s < stage.end_s;
            if (!within) continue;
            CHECK(stage.setup == stance.setup);
            heaviest_kg = std::max(heaviest_kg, stage.load.mass_kg);
          }
        }
        INFO(plan->weldment.title, " ", stance.id);
        CHECK(stance.load.mass_kg == heaviest_kg);
      }
    }
  }

  TEST_CASE("given a set-up hung anew, the crane's time stands first in its stage, closed-form") {
    const Plan& plan = staged_plan();
    const plan::PlannedStage& ribs = stage_in(plan, "ribs");
    CHECK(ribs.rehang_s == 20.0 * 60.0);
    CHECK(ribs.rehang_people == 3);
    CHECK(stage_in(plan, "tee").rehang_s == 0.0);
    CHECK(plan.seconds[static_cast<std::size_t>(timeline::SecondKind::hang)] == 20.0 * 60.0);
    for (const plan::PlannedEvent& event : plan.timeline) {
      if (event.kind != timeline::SecondKind::hang) continue;
      CHECK(event.start_s == *ribs.start_s);
      CHECK(event.end_s == *ribs.start_s + 20.0 * 60.0);
      CHECK(event.operation == "hang quarter");
      CHECK(event.stance.empty());
    }
  }

  TEST_CASE("given another 20 min of hanging, the part costs cell and three people more") {
    // closed-form: 1/3 h x (65 + 3 x 42) EUR/h, the rates of tests/good
    const double expected = (65.0 + 3.0 * 42.0) / 3.0;
    planner::Inputs inputs = staged_part();
    setup_in(inputs, "quarter").hang_s = 40.0 * 60.0;
    const Plan longer = planner::make_plan(inputs);
    CHECK(longer.estimate.total - staged_plan().estimate.total == doctest::Approx(expected));
    CHECK(plan::rehang_price(staged_plan(), stage_in(staged_plan(), "ribs")) ==
          doctest::Approx(expected));
    CHECK(longer.cycle_s - staged_plan().cycle_s == doctest::Approx(1200.0));
  }

  TEST_CASE("the first hang is the cell's loading, wherever the build began") {
    // law: what is fitted before the part comes to the cell makes no re-hang of its loading.
    planner::Inputs inputs = staged_part();
    joint::Stage bench;
    bench.id = "bench";
    bench.operations = {operation_in(inputs, "fit tee")};
    bench.operations.front().id = "fit bench";
    std::erase_if(inputs.weldment.stages.front().operations,
                  [](const joint::Operation& one) { return one.id == "fit tee"; });
    inputs.weldment.stages.insert(inputs.weldment.stages.begin(), bench);
    const Plan plan = planner::make_plan(inputs);
    CHECK_FALSE(stage_in(plan, "bench").start_s);
    CHECK(stage_in(plan, "tee").rehang_s == 0.0);
    CHECK(*stage_in(plan, "tee").start_s == 0.0);
    // J1 has no stage of its own: it is welded in the first stage after the bench.
    CHECK(span_of(plan, "J1").to_s <= stage_in(plan, "tee").end_s);
    // Back from elsewhere the part is hung anew, in the same set-up too.
    joint::Stage away;
    away.id = "away";
    inputs.weldment.stages.insert(inputs.weldment.stages.begin() + 2, away);
    inputs.weldment.stages[3].setup = "flat";
    setup_in(inputs, "flat").hang_s = 60.0;
    CHECK(stage_in(planner::make_plan(inputs), "ribs").rehang_s == 60.0);
  }

  TEST_CASE("given work away from the cell, its hands are paid and no time of the cell passes") {
    // closed-form: 1 h of two people at 42 EUR/h; VT_back 90 s, fit ribs 2 180 s and hanging 1200 s
    // need one, two and two people besides the operator.
    planner::Inputs inputs = staged_part();
    inputs.weldment.stages.pop_back();
    const Plan without = planner::make_plan(inputs);
    CHECK(without.cycle_s == staged_plan().cycle_s - 0.0);
    CHECK(staged_plan().estimate.total - without.estimate.total == doctest::Approx(84.0));
    CHECK(without.estimate.crew_s == doctest::Approx(90.0 + 2.0 * 180.0 + 2.0 * 1200.0));
    CHECK(staged_plan().estimate.crew_s == doctest::Approx(without.estimate.crew_s + 2.0 * 3600.0));
    CHECK_FALSE(planned_in(staged_plan(), "relief").start_s);
  }

  TEST_CASE("given no cell, all hands of stages and hangs are paid") {
    // closed-form: operations 600 + 2 x 90 + 240 + 3 x 180 + 120 + 720 + 60 + 2 x 3600 s, and
    // 3 x 1200 s of hanging
    planner::Inputs inputs = staged_part();
    inputs.cell.reset();
    const Plan plan = planner::make_plan(inputs);
    CHECK(plan.estimate.crew_s == doctest::Approx(9660.0 + 3600.0));
    CHECK(plan.stages.size() == 3);
    CHECK(plan.operations.size() == 7 + 1 + 3);
  }

  TEST_CASE("for a part in stages, law: seconds add up, same bytes twice, plan.xml is valid") {
    const Plan& plan = staged_plan();
    double total_s = 0.0;
    for (const double seconds : plan.seconds) total_s += seconds;
    CHECK(total_s == doctest::Approx(plan.cycle_s).epsilon(1e-12));
    double now_s = 0.0;
    for (const plan::PlannedEvent& event : plan.timeline) {
      CHECK(event.start_s == doctest::Approx(now_s));
      now_s = event.end_s;
    }
    const std::string xml = io::plan_xml(plan);
    CHECK(xml == io::plan_xml(planner::make_plan(staged_part())));
    CHECK(schema_verdict("plan.xsd", xml, "staged_plan") == "");
    CHECK(plan.lower_bound_s <= plan.cycle_s * (1.0 + 1e-12));
  }
}

}  // namespace seamturn::tests
