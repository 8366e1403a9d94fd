// SPDX-License-Identifier: MIT
// Every method of preheat is asked with the joint's own values. What a method answers is tested
// where it lives (tests/heat); here its answer must be the one its own function gives (law).
#include <algorithm>

#include "planner/joint_work.hpp"
#include "planner/planned_demos.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/heat/preheat_cet.hpp"
#include "seamturn/heat/preheat_ito_bessyo.hpp"
#include "seamturn/heat/preheat_tables.hpp"

namespace seamturn::tests {

namespace {

using base::Status;
using procedure::HeatLimits;
using procedure::PreheatAnswer;

const PreheatAnswer& of(const std::vector<PreheatAnswer>& answers, std::string_view method) {
  const auto found = std::find_if(
      answers.begin(), answers.end(), [&](const auto& one) { return one.method == method; });
  REQUIRE_MESSAGE(found != answers.end(), method);
  return *found;
}

HeatLimits planned(const planner::Inputs& inputs) {
  return planner::make_plan(inputs).joints.front().heat;
}

/// Values inside the range of every method.
HeatLimits inside_all() {
  HeatLimits limits;
  limits.cet_governing = limits.cet_plate = 0.30;
  limits.cev_plate = 0.42;
  limits.pcm_plate = 0.24;
  limits.thickness_mm = 30.0;
  limits.combined_thickness_mm = 45.0;
  limits.hydrogen_ml_100g = 5.0;
  limits.lowest_heat_input_kj_mm = 1.8;
  limits.preheat_computed_c = 62.0;
  return limits;
}

std::vector<PreheatAnswer> ask(const HandJoint& hand,
                               const HeatLimits& limits,
                               double ambient_c = 20.0) {
  return planner::detail::ask_methods(hand.work, limits, ambient_c);
}

void categorize(material::Steel& steel, const char* name, Status status = Status::verified) {
  steel.aws_category = material::AwsCategory{name, "test", status};
}

}  // namespace

TEST_SUITE("planner/preheat_methods") {
  TEST_CASE("given a planned tee, law: each answer is what its own function gives") {
    const HeatLimits limits = planned(tee_inputs());
    REQUIRE(limits.answers.size() == 5);
    const char* names[] = {"cet", "table-c1", "aws-category", "aws-hydrogen", "ito-bessyo"};
    for (std::size_t i = 0; i < 5; ++i) CHECK(limits.answers[i].method == names[i]);

    heat::PreheatParams cet;
    cet.cet = limits.cet_governing;
    cet.thickness_mm = 25.0;
    cet.hydrogen_ml_100g = 5.0;
    cet.heat_input_kj_mm = limits.lowest_heat_input_kj_mm;
    CHECK(of(limits.answers, "cet").preheat_c == heat::preheat_cet(cet)->preheat_c);

    // closed-form: C .20 + Mn 1.60/6; C + Si .55/30 + Mn 1.60/20, the limits of the grade.
    check_expected("CEV", *limits.cev_plate, {0.466666667, 1e-9, Origin::closed_form, "CE(IIW)"});
    check_expected("Pcm", *limits.pcm_plate, {0.298333333, 1e-9, Origin::closed_form, "Pcm"});
    const auto cell = heat::table_c1({*limits.cev_plate, limits.lowest_heat_input_kj_mm, 5.0});
    REQUIRE(cell);
    const PreheatAnswer& c1 = of(limits.answers, "table-c1");
    CHECK(c1.no_preheat == cell->no_preheat(65.0));
    CHECK_FALSE(c1.preheat_c);
    CHECK_FALSE(c1.may_govern);

    const PreheatAnswer& aws = of(limits.answers, "aws-category");
    CHECK(aws.preheat_c == heat::aws_category_preheat({'B', 25.0, 5.0})->preheat_c);
    CHECK(aws.may_govern);
    CHECK(aws.status == Status::from_memory);  // the steel's category is, in this library

    const auto annex =
        heat::aws_hydrogen_preheat({*limits.pcm_plate, 5.0, joint::Restraint::medium, 25.0});
    const PreheatAnswer& hydrogen = of(limits.answers, "aws-hydrogen");
    CHECK(hydrogen.preheat_c == annex->preheat_c);
    CHECK(hydrogen.says.find("medium restraint assumed") != std::string::npos);

    const double glycerine = *heat::glycerine_hydrogen_ml_100g(5.0);
    const auto old = heat::preheat_ito_bessyo(
        {*limits.pcm_plate, glycerine, 25.0, limits.lowest_heat_input_kj_mm});
    CHECK(of(limits.answers, "ito-bessyo").preheat_c == old->preheat_c);
  }

  TEST_CASE("given the annex with the highest temperature of all, it is shown and never governs") {
    planner::Inputs inputs = tee_inputs();
    inputs.weldment.joints[0].heat.restraint = joint::Restraint::high;
    inputs.weldment.joints[0].heat.restraint_stated = true;
    inputs.library.wires[0].hydrogen_ml_100g = 20.0;
    material::Composition lean;  // CET 0.20, Pcm 0.279: low alloy in CET's eyes, much Cr in Pcm's
    lean.c = 0.10;
    lean.mn = 0.6;
    lean.cr = 0.8;
    lean.si = 0.5;
    lean.b = 0.004;
    lean.v = 0.1;
    for (joint::Member& member : inputs.weldment.members) member.analysis = lean;
    const HeatLimits limits = planned(inputs);
    const PreheatAnswer& annex = of(limits.answers, "aws-hydrogen");
    REQUIRE(annex.preheat_c);
    for (const PreheatAnswer& other : limits.answers) {
      INFO(other.method, ": ", other.says);
      if (other.may_govern) CHECK(*other.preheat_c < *annex.preheat_c);
    }
    CHECK_FALSE(annex.may_govern);
    CHECK(annex.says.find("high restraint)") != std::string::npos);
    CHECK(annex.says.find("never governing") != std::string::npos);
    CHECK(limits.preheat_c < *annex.preheat_c);
  }

  TEST_CASE("given values at the edges of its range, Ito-Bessyo governs inside only") {
    // remembered: t 19 to 50 mm, 1.7 to 3.0 kJ/mm, glycerine hydrogen 1 to 5 ml/100 g.
    const auto governs = [](const auto& change) {
      HandJoint hand;
      HeatLimits limits = inside_all();
      change(limits);
      const PreheatAnswer answer = of(ask(hand, limits), "ito-bessyo");
      REQUIRE(answer.preheat_c);
      CHECK((answer.says.find("outside its range") != std::string::npos) == !answer.may_govern);
      return answer.may_govern;
    };
    CHECK(governs([](HeatLimits&) {}));
    CHECK(governs([](HeatLimits& l) { l.thickness_mm = 19.0; }));
    CHECK_FALSE(governs([](HeatLimits& l) { l.thickness_mm = 18.9; }));
    CHECK(governs([](HeatLimits& l) { l.thickness_mm = 50.0; }));
    CHECK_FALSE(governs([](HeatLimits& l) { l.thickness_mm = 50.1; }));
    CHECK(governs([](HeatLimits& l) { l.lowest_heat_input_kj_mm = 1.71; }));
    CHECK_FALSE(governs([](HeatLimits& l) { l.lowest_heat_input_kj_mm = 1.69; }));
    CHECK_FALSE(governs([](HeatLimits& l) { l.lowest_heat_input_kj_mm = 3.01; }));
    CHECK_FALSE(governs([](HeatLimits& l) { l.hydrogen_ml_100g = 3.0; }));  // no conversion
    CHECK_FALSE(governs([](HeatLimits& l) { l.hydrogen_ml_100g = 9.0; }));  // glycerine 5.4
  }

  TEST_CASE("given table C.1, it says no preheat up to its thickness and is silent above") {
    // published: [EN-C1] CEV 0.43, 1 kJ/mm (next lower), hydrogen up to 5: up to 100 mm combined,
    // as the function's own tests have it.
    HandJoint hand;
    HeatLimits limits = inside_all();
    const double most_mm = heat::table_c1({0.42, 1.8, 5.0})->largest_combined_mm;
    limits.combined_thickness_mm = most_mm;
    const PreheatAnswer none = of(ask(hand, limits), "table-c1");
    CHECK(none.no_preheat);
    CHECK(none.says.find("no preheat up to") == 0);
    limits.combined_thickness_mm = most_mm + 0.1;
    const PreheatAnswer silent = of(ask(hand, limits), "table-c1");
    CHECK_FALSE(silent.no_preheat);
    CHECK(silent.says.find("silent above") == 0);
    limits.cev_plate = 0.491;
    CHECK_FALSE(of(ask(hand, limits), "table-c1").no_preheat);
    limits.cev_plate.reset();
    CHECK(of(ask(hand, limits), "table-c1").says == "no CEV within its range");
    CHECK_FALSE(of(ask(hand, limits), "table-c1").no_preheat);
  }

  TEST_CASE("given steels of two categories, the higher cell counts, and none without both") {
    // published: AWS D1.1:2015 table 3.3, > 20 to 38 mm: B 10 degC, A 65 degC; C by analogy.
    HandJoint hand;
    const HeatLimits limits = inside_all();
    categorize(hand.steel_1, "B");
    CHECK_FALSE(of(ask(hand, limits), "aws-category").preheat_c);
    CHECK_FALSE(of(ask(hand, limits), "aws-category").may_govern);
    CHECK(of(ask(hand, limits), "aws-category").says.find("STEEL2") == 0);
    categorize(hand.steel_2, "C");
    CHECK(of(ask(hand, limits), "aws-category").preheat_c == 65.0);
    CHECK(of(ask(hand, limits), "aws-category").status == Status::computed);
    categorize(hand.steel_2, "A/B");  // wire under gas is low-hydrogen: B
    CHECK(of(ask(hand, limits), "aws-category").preheat_c == 10.0);
    CHECK(of(ask(hand, limits), "aws-category").status == Status::verified);
  }

  TEST_CASE("given a plate colder than 0 degC where a cell says 0 degC, it is warmed to 20 degC") {
    // remembered: the note under the table of AWS D1.1.
    HandJoint hand;
    HeatLimits limits = inside_all();
    limits.thickness_mm = 15.0;
    categorize(hand.steel_1, "B");
    categorize(hand.steel_2, "B");
    CHECK(of(ask(hand, limits, 5.0), "aws-category").preheat_c == 0.0);
    CHECK(of(ask(hand, limits, 0.0), "aws-category").preheat_c == 0.0);
    CHECK(of(ask(hand, limits, -1.0), "aws-category").preheat_c == 20.0);
  }

  TEST_CASE("given category D with 9 ml/100 g or no Pcm, the methods say why they are silent") {
    HandJoint hand;
    HeatLimits limits = inside_all();
    categorize(hand.steel_1, "D");
    categorize(hand.steel_2, "D");
    limits.hydrogen_ml_100g = 9.0;
    limits.pcm_plate.reset();
    const auto answers = ask(hand, limits);
    CHECK(of(answers, "aws-category").says.find("8 ml/100 g") != std::string::npos);
    CHECK(of(answers, "aws-hydrogen").says == "no Pcm within its range");
    CHECK(of(answers, "ito-bessyo").says == "no Pcm within its range");
    for (const PreheatAnswer& answer : answers) {
      CHECK_FALSE((answer.may_govern && !answer.preheat_c));
      CHECK(answer.says.size() > 5);
    }
  }

  TEST_CASE("given values outside the CET method or an analysis out of range, findings say so") {
    const auto text_of_finding = [](const planner::Inputs& inputs, const std::string& code) {
      for (const auto& finding : planner::make_plan(inputs).findings) {
        if (finding.code == code) return finding.text;
      }
      return std::string("no ") + code;
    };
    planner::Inputs lean = tee_inputs();
    material::Composition analysis;
    analysis.c = 0.08;
    analysis.mn = 0.9;
    for (joint::Member& member : lean.weldment.members) member.analysis = analysis;
    lean.library.wires[0].cet = 0.15;
    CHECK(text_of_finding(lean, "heat.preheat.out_of_range").find("0.2 to 0.5 %") !=
          std::string::npos);
    planner::Inputs odd = tee_inputs();
    analysis.c = 0.16;
    analysis.mn = 2.2;
    odd.weldment.members[1].analysis = analysis;
    const std::string said = text_of_finding(odd, "material.composition.out_of_range");
    CHECK(said.find("part web: Mn 2.2 % lies outside") != std::string::npos);
    CHECK(text_of_finding(tee_inputs(), "material.composition.out_of_range") ==
          "no material.composition.out_of_range");
  }

  TEST_CASE("given the worked example of the page, each method gives what it prints") {
    // computed by hand from the formulas; docs/methods/preheat-choice.md.
    HandJoint hand;
    categorize(hand.steel_1, "B");
    categorize(hand.steel_2, "B");
    HeatLimits limits;
    limits.cet_governing = limits.cet_plate = 0.16 + 1.45 / 10.0;
    limits.cev_plate = 0.16 + 1.45 / 6.0;
    limits.pcm_plate = 0.16 + 0.35 / 30.0 + 1.45 / 20.0;
    limits.thickness_mm = 30.0;
    limits.combined_thickness_mm = 60.0;
    limits.hydrogen_ml_100g = 5.0;
    const auto at = [&](double heat_input_kj_mm) {
      limits.lowest_heat_input_kj_mm = heat_input_kj_mm;
      limits.preheat_computed_c =
          heat::preheat_cet({limits.cet_governing, 30.0, 5.0, heat_input_kj_mm})->preheat_c;
      std::vector<base::Finding> findings;
      limits.answers = ask(hand, limits);
      REQUIRE(planner::detail::choose_preheat({}, hand.work, limits, findings));
      return limits.preheat_c;
    };
    const auto row = [&](const char* method, double expected_c) {
      check_expected(method,
                     *of(limits.answers, method).preheat_c,
                     {expected_c, 0.05, Origin::computed, "hand arithmetic"});
    };
    check_expected("choice", at(1.8), {84.7, 0.05, Origin::computed, "hand arithmetic"});
    row("cet", 76.15);
    row("aws-category", 10.0);
    row("aws-hydrogen", 110.0);
    row("ito-bessyo", 84.7);
    CHECK(of(limits.answers, "table-c1").says == "no preheat up to 100 mm; 60 mm combined here");
    check_expected("choice", at(1.6), {79.3, 0.05, Origin::computed, "hand arithmetic"});
    CHECK(limits.preheat_basis.find("CET method") == 0);
    const std::string page = text_of(repository() / "docs/methods/preheat-choice.md");
    for (const char* printed : {"| 76.15 degC |", "| 84.7 degC |", "with 79.3 degC", ": 100 mm;"}) {
      INFO(printed);
      CHECK(page.find(printed) != std::string::npos);
    }
  }

  TEST_CASE("given plates of 2.9 mm, no method is stretched so far, and at 3 mm they are") {
    // Own choice of the heat room: below 3 mm sheet is another matter.
    for (const double thickness_mm : {2.9, 3.0}) {
      planner::Inputs inputs = tee_inputs();
      for (joint::Member& member : inputs.weldment.members) {
        std::get<joint::Plate>(member.shape).thickness_mm = thickness_mm;
      }
      std::vector<base::Finding> findings;
      try {
        findings = planner::make_plan(inputs).findings;
      } catch (const base::InputError& error) {
        findings = error.findings();
      }
      CHECK(has_code(findings, "heat.preheat.thickness") == (thickness_mm < 3.0));
      CHECK(has_code(findings, "heat.preheat.out_of_range") == (thickness_mm >= 3.0));
    }
  }

  TEST_CASE("given an interpass maximum of 400 and of 500 degC, the limits of t8/5 are told once") {
    for (const double interpass_c : {350.0, 400.0, 499.9, 500.0}) {
      INFO(interpass_c);
      planner::Inputs inputs = tee_inputs();
      inputs.library.steels[0].interpass_max_c = interpass_c;
      const plan::Plan plan = planner::make_plan(inputs);
      std::size_t warm = 0;
      std::size_t hot = 0;
      for (const auto& finding : plan.findings) {
        if (finding.code == "heat.t85.out_of_range") {
          ++warm;
          CHECK(finding.text.find("joints J1, J2: ") == 0);
        }
        if (finding.code == "heat.t85.start_too_hot") ++hot;
      }
      CHECK(warm == (interpass_c > 350.0 && interpass_c < 500.0 ? 1 : 0));  // for both joints
      CHECK(hot == (interpass_c >= 500.0 ? 2 : 0));
    }
  }
}

}  // namespace seamturn::tests
