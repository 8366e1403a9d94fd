// SPDX-License-Identifier: MIT
// Which of the answers governs: by hand, with temperatures put in, and through whole plans.
#include <algorithm>

#include "planner/joint_work.hpp"
#include "planner/planned_demos.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

namespace {

using base::Severity;
using base::Status;
using procedure::PreheatAnswer;

PreheatAnswer answer(const char* method, std::optional<double> preheat_c, bool may_govern) {
  PreheatAnswer made;
  made.method = method;
  made.preheat_c = preheat_c;
  made.says = std::string("says of ") + method;
  made.may_govern = may_govern;
  return made;
}

/// A fillet of one run between parts whose answers are put in; the place where they are made is
/// tested in planner/preheat_methods.
struct Asked {
  HandJoint hand;
  planner::Inputs inputs;
  procedure::HeatLimits limits;
  std::vector<base::Finding> findings;

  Asked() {
    inputs.weldment.ambient_c = 20.0;
    hand.joint.preparation = joint::Fillet{};
    hand.joint.seams.emplace_back();
    planner::detail::SeamWork seam;
    seam.seam = &hand.joint.seams.front();
    planner::detail::StackChoice choice;
    choice.stack.passes.resize(1);
    seam.stacks.push_back(choice);
    hand.work.seams.push_back(seam);
    limits.cet_plate = 0.36;
    limits.answers = {answer("cet", 100.0, true),
                      answer("table-c1", std::nullopt, false),
                      answer("aws-category", 65.0, true),
                      answer("aws-hydrogen", 160.0, false),
                      answer("ito-bessyo", 180.0, false)};
    limits.preheat_computed_c = 100.0;
  }
  PreheatAnswer& of(std::string_view method) {
    return *std::find_if(limits.answers.begin(), limits.answers.end(), [&](const auto& one) {
      return one.method == method;
    });
  }
  joint::StatedHeat& stated() { return hand.joint.heat; }
  bool choose() {
    findings.clear();
    return planner::detail::choose_preheat(inputs, hand.work, limits, findings);
  }
};

/// What stands in the way of a plan; fails when there is one.
std::vector<base::Finding> refused(const planner::Inputs& inputs) {
  try {
    (void)planner::make_plan(inputs);
  } catch (const base::InputError& error) {
    return error.findings();
  }
  FAIL_CHECK("there is a plan");
  return {};
}

}  // namespace

TEST_SUITE("planner/preheat_choice") {
  // docs/methods/preheat-choice.md: the highest answer that may govern does. Our own rule.
  TEST_CASE("given several answers, the highest that may govern does, and no other") {
    Asked asked;
    REQUIRE(asked.choose());
    CHECK(asked.limits.preheat_c == 100.0);
    CHECK(asked.limits.own_preheat_c == 100.0);
    CHECK(asked.limits.needs_heating);
    CHECK(asked.limits.preheat_basis.find("CET method") == 0);
    asked.of("aws-category").preheat_c = 110.0;
    REQUIRE(asked.choose());
    CHECK(asked.limits.preheat_c == 110.0);
    CHECK(asked.limits.preheat_basis.find("table of categories") != std::string::npos);
    asked.of("ito-bessyo").may_govern = true;
    REQUIRE(asked.choose());
    CHECK(asked.limits.preheat_c == 180.0);
    CHECK(asked.limits.preheat_basis.find("Ito-Bessyo") == 0);
    CHECK(asked.findings.empty());
  }

  TEST_CASE("given answers below the shop's temperature, the plate starts there unheated") {
    Asked asked;
    asked.of("cet").preheat_c = -30.0;
    asked.of("aws-category").preheat_c = 10.0;
    REQUIRE(asked.choose());
    CHECK(asked.limits.preheat_c == 20.0);
    CHECK_FALSE(asked.limits.needs_heating);
    asked.inputs.weldment.ambient_c = 5.0;
    REQUIRE(asked.choose());
    CHECK(asked.limits.preheat_c == 10.0);
    CHECK(asked.limits.needs_heating);
  }

  TEST_CASE("given a temperature stated, it is taken, and warned of below what is asked for") {
    Asked asked;
    asked.stated().preheat_reason = "trial plate";
    for (const double stated_c : {99.0, 100.0, 130.0}) {
      asked.stated().preheat_c = stated_c;
      REQUIRE(asked.choose());
      CHECK(asked.limits.preheat_c == stated_c);
      CHECK(has_code(asked.findings, "heat.preheat.stated_below_computed") == (stated_c < 100.0));
      CHECK(asked.limits.preheat_basis.find("trial plate") != std::string::npos);
    }
    asked.stated().preheat_c = 105.0;
    asked.of("aws-category").preheat_c = 110.0;
    REQUIRE(asked.choose());
    REQUIRE(asked.findings.size() == 1);
    CHECK(asked.findings[0].severity == Severity::warning);
    CHECK(asked.findings[0].text.find("table of categories asks for 110 degC") !=
          std::string::npos);
  }

  TEST_CASE("given a method named, it governs alone and is warned of below the highest") {
    Asked asked;
    asked.stated().preheat_by = "aws-category";
    asked.stated().preheat_reason = "contract";
    REQUIRE(asked.choose());
    CHECK(asked.limits.preheat_c == 65.0);
    CHECK(has_code(asked.findings, "heat.preheat.stated_below_computed"));
    CHECK(asked.limits.preheat_basis.find("contract") != std::string::npos);
    asked.stated().preheat_by = "cet";
    REQUIRE(asked.choose());
    CHECK(asked.limits.preheat_c == 100.0);
    CHECK(asked.findings.empty());
  }

  TEST_CASE("given a method named that does not speak here, there is no preheat") {
    for (const char* method : {"table-c1", "ito-bessyo", "aws-hydrogen"}) {
      INFO(method);
      Asked asked;
      asked.stated().preheat_by = method;
      asked.stated().preheat_reason = "contract";
      CHECK_FALSE(asked.choose());
      REQUIRE(asked.findings.size() == 1);
      CHECK(asked.findings[0].code == "heat.preheat.method_silent");
      CHECK(asked.findings[0].severity == Severity::error);
      CHECK(asked.findings[0].text.find(std::string("says of ") + method) != std::string::npos);
    }
  }

  TEST_CASE("given table C.1 named where it asks for none, the plate starts cold with a warning") {
    Asked asked;
    asked.of("table-c1").no_preheat = true;
    REQUIRE(asked.choose());
    CHECK(asked.limits.preheat_c == 100.0);  // not named: it never lowers what others ask for
    asked.stated().preheat_by = "table-c1";
    asked.stated().preheat_reason = "coordinator";
    REQUIRE(asked.choose());
    CHECK(asked.limits.preheat_c == 20.0);
    CHECK_FALSE(asked.limits.needs_heating);
    CHECK(has_code(asked.findings, "heat.preheat.stated_below_computed"));
  }

  TEST_CASE("given the reduction asked for, the CET method alone asks for 60 K less") {
    // remembered: 60 K of EN 1011-2 C.3.
    Asked asked;
    asked.stated().single_run_reduction = true;
    asked.stated().preheat_reason = "coordinator";
    asked.of("aws-category").preheat_c = 10.0;
    REQUIRE(asked.choose());
    CHECK(asked.limits.preheat_c == 40.0);
    CHECK(asked.limits.preheat_basis.find("less 60 K") != std::string::npos);
    CHECK(asked.limits.preheat_basis.find("coordinator") != std::string::npos);
    CHECK(has_code(asked.findings, "heat.preheat.stated_below_computed"));
    CHECK(*asked.of("cet").preheat_c == 100.0);  // the answer shown stays as it was
    asked.of("aws-category").preheat_c = 65.0;
    REQUIRE(asked.choose());
    CHECK(asked.limits.preheat_c == 65.0);
    CHECK(asked.limits.preheat_basis.find("table of categories") != std::string::npos);
    asked.stated().single_run_reduction = false;
    REQUIRE(asked.choose());
    CHECK(asked.limits.preheat_c == 100.0);
  }

  TEST_CASE("refuses the reduction of a second run, a groove, or a margin that is not there") {
    const auto is_refused = [](const auto& change) {
      Asked asked;
      asked.stated().single_run_reduction = true;
      asked.stated().preheat_reason = "coordinator";
      change(asked);
      const bool taken = asked.choose();
      CHECK(has_code(asked.findings, "heat.preheat.reduction") == !taken);
      return !taken;
    };
    CHECK_FALSE(is_refused([](Asked&) {}));
    CHECK(is_refused([](Asked& a) { a.hand.work.seams[0].stacks[0].stack.passes.resize(2); }));
    CHECK(is_refused([](Asked& a) {
      planner::detail::StackChoice upright;
      upright.stack.passes.resize(3);
      a.hand.work.seams[0].stacks.push_back(upright);
    }));
    CHECK(is_refused([](Asked& a) { a.hand.joint.preparation = joint::Groove{}; }));
    // remembered: the margin of 0.03 % CET, plate over weld metal.
    CHECK(is_refused([](Asked& a) { a.hand.wire.cet = 0.331; }));
    CHECK_FALSE(is_refused([](Asked& a) { a.hand.wire.cet = 0.329; }));
    CHECK(is_refused([](Asked& a) { a.hand.wire.cet.reset(); }));
  }

  TEST_CASE("given a preheat at the interpass maximum, the conflict names ways out") {
    Asked asked;
    asked.hand.work.heat.interpass_max_c = 150.0;
    asked.hand.work.heat.preheat_c = 149.9;
    CHECK(planner::detail::check_conflict(asked.inputs, asked.hand.work, asked.findings));
    CHECK(asked.findings.empty());
    asked.hand.work.heat.preheat_c = 150.0;
    asked.hand.work.heat.neighbour = "J7";
    CHECK_FALSE(planner::detail::check_conflict(asked.inputs, asked.hand.work, asked.findings));
    REQUIRE(asked.findings.size() == 1);
    CHECK(asked.findings[0].code == "heat.preheat.above_interpass");
    CHECK(asked.findings[0].text.find("joint J7") != std::string::npos);
    CHECK(asked.findings[0].text.find("ways out") != std::string::npos);
  }

  // docs/methods/cooling.md: heating ends 25 K above the preheat.
  TEST_CASE("given a gate narrower than heating overshoots, it is warned of with ways out") {
    Asked asked;
    procedure::HeatLimits& heat = asked.hand.work.heat;
    heat.interpass_max_c = 180.0;
    heat.preheat_c = 155.0;
    heat.needs_heating = true;
    CHECK(planner::detail::check_conflict(asked.inputs, asked.hand.work, asked.findings));
    CHECK(asked.findings.empty());
    heat.preheat_c = 176.0;
    CHECK(planner::detail::check_conflict(asked.inputs, asked.hand.work, asked.findings));
    REQUIRE(asked.findings.size() == 1);
    CHECK(asked.findings[0].code == "heat.preheat.narrow_gate");
    CHECK(asked.findings[0].severity == Severity::warning);
    CHECK(asked.findings[0].text.find("only 4.0 K lie between preheat 176 degC") !=
          std::string::npos);
    CHECK(asked.findings[0].text.find("ways out") != std::string::npos);
    asked.findings.clear();
    heat.needs_heating = false;
    CHECK(planner::detail::check_conflict(asked.inputs, asked.hand.work, asked.findings));
    CHECK(asked.findings.empty());
  }

  TEST_CASE("given a plan, a preheat above the interpass maximum stops it, a neighbour's too") {
    planner::Inputs own = tee_inputs();
    own.weldment.joints[0].heat.interpass_max_c = 60.0;
    CHECK(has_code(refused(own), "heat.preheat.above_interpass"));
    planner::Inputs beside = tee_inputs();
    beside.weldment.joints[0].heat.preheat_c = 180.0;
    beside.weldment.joints[0].heat.preheat_reason = "test";
    beside.weldment.joints[1].heat.interpass_max_c = 170.0;
    const auto findings = refused(beside);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].code == "heat.preheat.above_interpass");
    CHECK(findings[0].text.find("asked for by joint J1") != std::string::npos);
    beside.weldment.joints[1].heat.interpass_max_c = 190.0;
    CHECK(planner::make_plan(beside).joints[1].heat.preheat_c == 180.0);
  }

  TEST_CASE(
      "for a plan, law: more carbon, thickness or hydrogen asks for more, more heat for less") {
    const auto computed_c = [](const auto& change) {
      planner::Inputs inputs = tee_inputs();
      change(inputs);
      return planner::make_plan(inputs).joints[0].heat.preheat_computed_c;
    };
    const double as_is_c = computed_c([](planner::Inputs&) {});
    const auto analysis = [](planner::Inputs& inputs, double c_percent) {
      material::Composition lean;
      lean.c = c_percent;
      lean.mn = 1.6;
      for (joint::Member& member : inputs.weldment.members) member.analysis = lean;
    };
    double last_c = -1e9;
    // From CET 0.29: below 0.28 the weld metal's 0.25 + 0.03 would govern.
    for (const double c_percent : {0.13, 0.15, 0.17, 0.20}) {
      const double here_c = computed_c([&](auto& inputs) { analysis(inputs, c_percent); });
      CHECK(here_c > last_c);
      last_c = here_c;
    }
    CHECK(computed_c([](auto& inputs) { inputs.library.wires[0].hydrogen_ml_100g = 8.0; }) >
          as_is_c);
    CHECK(computed_c([](auto& inputs) {
            std::get<joint::Plate>(inputs.weldment.members[0].shape).thickness_mm = 35.0;
          }) > as_is_c);
    CHECK(computed_c([](auto& inputs) {
            for (auto& row : inputs.library.settings) row.current_a *= 1.2;
          }) < as_is_c);
  }
}

}  // namespace seamturn::tests
