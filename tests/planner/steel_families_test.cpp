// SPDX-License-Identifier: MIT
// What planning does with steels whose chemistry leaves the carbon equivalents, or says nothing.
#include "joints/steel_library.hpp"
#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/planner/planner.hpp"

namespace seamturn::tests {

namespace {

bool has_code(const std::vector<base::Finding>& findings, const std::string& code) {
  return std::any_of(
      findings.begin(), findings.end(), [&](const auto& one) { return one.code == code; });
}

plan::Plan plan_of(const std::string& base_steel,
                   const std::string& web_steel,
                   const std::string& analysis = "") {
  return planner::make_plan(
      io::read_inputs(steel_tee("steel_families", base_steel, web_steel, analysis)));
}

/// What stands in the way of a plan; fails when there is one.
std::vector<base::Finding> refused(const std::string& web_steel) {
  try {
    (void)plan_of("S355J2", web_steel);
  } catch (const base::InputError& error) {
    return error.findings();
  }
  FAIL_CHECK("a plan of " << web_steel);
  return {};
}

}  // namespace

TEST_SUITE("planner/steel_families") {
  TEST_CASE("given C45 by its limits, the preheat is refused and there is no plan") {
    // remembered: C45 up to 0.50 % C; CET reaches to 0.32 % (EN 1011-2, from memory).
    for (const char* steel : {"C35E", "C45", "C45E", "C60", "42CrMo4"}) {
      INFO(steel);
      const auto findings = refused(steel);
      REQUIRE(findings.size() == 1);
      CHECK(findings[0].code == "material.carbon.out_of_range");
      CHECK(findings[0].severity == base::Severity::error);
    }
  }

  TEST_CASE("given steels inside the range of CET, each gets a preheat from its limits") {
    for (const char* steel : {"S275J2", "S460ML", "16Mo3", "E355", "G20Mn5+N", "C22E", "A572-50"}) {
      INFO(steel);
      const plan::Plan plan = plan_of("S355J2", steel);
      REQUIRE(plan.joints.size() == 1);
      CHECK(plan.joints[0].heat.from_grade_maxima);
      CHECK(plan.joints[0].heat.cet_plate > 0.20);
      CHECK(plan.steels.size() == 2);
    }
  }

  TEST_CASE("given a wear plate of 500 HBW by its limits, range and interpass conflict are told") {
    // closed form: C .30 + (Mn 1.60 + Mo .60)/10 + Cr 1.50/20 + Ni 1.50/40 = 0.6325, above 0.50.
    const auto findings = refused("WEAR500");
    CHECK(has_code(findings, "heat.preheat.out_of_range"));
    // remembered: 697 CET alone asks for more than the 225 degC this plate may have between passes.
    CHECK(has_code(findings, "heat.preheat.above_interpass"));
    CHECK(std::any_of(findings.begin(), findings.end(), [](const auto& one) {
      return one.text.find("CET 0.6325 %") != std::string::npos;
    }));
  }

  TEST_CASE("refuses a steel without limits on C or Mn unless the analysis is given") {
    for (const char* steel : {"GE240", "A36"}) {
      INFO(steel);
      std::vector<base::Finding> findings;
      try {
        findings = io::read_inputs(steel_tee("steel_families", "S355J2", steel)).findings;
      } catch (const base::InputError& error) {
        findings = error.findings();
      }
      REQUIRE(findings.size() == 1);
      CHECK(findings[0].code == "read.steel.analysis");
      const plan::Plan plan =
          plan_of("S355J2", steel, R"(<analysis c="0.20" si="0.30" mn="1.10"/>)");
      REQUIRE(plan.joints.size() == 1);
    }
    // A36 of 25 mm has a limit on Mn: as the base it needs none.
    CHECK(plan_of("A36", "S355J2").joints.size() == 1);
  }
}

}  // namespace seamturn::tests
