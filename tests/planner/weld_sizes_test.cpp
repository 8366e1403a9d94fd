// SPDX-License-Identifier: MIT
// Weld sizes, throats that count and fit-up by name, in the plan and in plan.xml.
#include <algorithm>

#include "planner/planned_demos.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "xml_check.hpp"

namespace seamturn::tests {

namespace {

const Planned& demo(const std::string& file) {
  for (const Planned& one : plans()) {
    if (one.file == file) return one;
  }
  FAIL("no demo ", file);
  return plans().front();
}

const joint::SizeCheck& check_of(const plan::PlannedJoint& joint, const std::string& rule) {
  for (const joint::SizeCheck& check : joint.size.value().checks) {
    if (check.rule == rule) return check;
  }
  FAIL("no rule ", rule);
  return joint.size->checks.front();
}

/// The hub without its cell, where nothing but PF has settings: every seam lies upright.
Plan upright_hub() {
  planner::Inputs inputs = demo("grab_hub.xml").inputs;
  inputs.cell.reset();
  auto& rows = inputs.library.settings;
  rows.erase(std::remove_if(rows.begin(),
                            rows.end(),
                            [](const process::LinkedSettings& row) {
                              return row.positions !=
                                     std::vector<process::WeldPosition>{process::WeldPosition::pf};
                            }),
             rows.end());
  position::WorkingTolerance upright;
  upright.position = process::WeldPosition::pf;
  inputs.library.tolerances.push_back(upright);
  return planner::make_plan(inputs);
}

}  // namespace

TEST_SUITE("planner/weld_sizes") {
  TEST_CASE("given the bracket, full penetration has no size and its fillets have a throat") {
    const Plan& plan = demo("bracket.xml").plan;
    for (const char* id : {"J1", "J2"}) {
      CHECK_FALSE(joint_of(plan, id).size.has_value());
      CHECK_FALSE(joint_of(plan, id).seams.front().counted.has_value());
    }
    const plan::PlannedJoint& fillet = joint_of(plan, "J3");
    const plan::PlannedThroat& counted = fillet.seams.front().counted.value();
    CHECK(counted.refused.empty());
    // The drawing asks for a throat of 4 mm; published rule: leg / sqrt 2 at 90 deg.
    check_expected("J3",
                   counted.throat_mm,
                   {4.0, 1e-9, Origin::published, "AWS D1.1 2010 2.4.2: 80 to 100 deg"});
    CHECK(counted.citation.status == base::Status::verified);
    CHECK(check_of(fillet, "least-throat-en").required == 3.0);  // remembered: EN 1993-1-8 4.5.2
    CHECK(check_of(fillet, "least-leg-aws").citation.status == base::Status::from_memory);
  }

  TEST_CASE("given a partial bevel of 45 deg, its whole depth counts in PA and 3 mm less in PF") {
    const plan::PlannedThroat& flat =
        joint_of(demo("grab_hub.xml").plan, "R1").seams.front().counted.value();
    check_expected("R1 in PA",
                   flat.throat_mm,
                   {15.0, 1e-9, Origin::published, "AISC-PJP BTC-P4-GF: E = S in F and H"});
    const Plan upright = upright_hub();
    const plan::PlannedSeam& seam = joint_of(upright, "R1").seams.front();
    CHECK(seam.position == process::WeldPosition::pf);
    check_expected("R1 in PF",
                   seam.counted.value().throat_mm,
                   {12.0, 1e-9, Origin::published, "AISC-PJP BTC-P4-GF: E = S - 1/8 in in V"});
    CHECK(seam.counted->deduction_mm == 3.0);
    // What counts is held against the least throat, not the depth prepared.
    CHECK(check_of(joint_of(upright, "R1"), "least-partial-throat").found == 12.0);
    CHECK(check_of(joint_of(demo("grab_hub.xml").plan, "R1"), "least-partial-throat").found ==
          15.0);
  }

  TEST_CASE("for any joint, law: the verdict is that of its checks, and metal laid is as drawn") {
    int sized = 0;
    for (const Planned& one : plans()) {
      for (const plan::PlannedJoint& joint : one.plan.joints) {
        INFO(one.file << ' ' << joint.id);
        const joint::Joint& described = *joint::find_joint(one.plan.weldment, joint.id);
        const bool full = std::holds_alternative<joint::Groove>(described.preparation) &&
                          described.depth_mm == described.thickness_mm;
        CHECK(joint.size.has_value() == !full);
        for (const plan::PlannedSeam& seam : joint.seams) {
          CHECK(seam.over_weld_area_ratio == 1.0);
          if (!seam.counted || !seam.counted->refused.empty()) continue;
          CHECK(seam.counted->throat_mm > 0.0);
          CHECK_FALSE(std::string(seam.counted->citation.key).empty());
        }
        if (!joint.size || !joint.size->refused.empty()) continue;
        ++sized;
        CHECK(joint.size->verdict == joint::size_verdict(joint.size->checks));
        const bool fails = std::any_of(joint.size->checks.begin(),
                                       joint.size->checks.end(),
                                       [](const auto& check) { return !check.holds; });
        CHECK((joint.size->verdict == joint::SizeVerdict::fails) == fails);
      }
    }
    CHECK(sized > 20);
  }

  TEST_CASE("given an interrupted fillet, its segments and clear spaces are judged, not the seam") {
    const planner::Inputs inputs = io::read_inputs(repository() / "tests/good/lengths.xml");
    const Plan plan = planner::make_plan(inputs);
    const auto interrupted = std::find_if(
        inputs.weldment.joints.begin(), inputs.weldment.joints.end(), [](const auto& j) {
          return joint::stretches_of(j.seams.front()).size() == 3;
        });
    REQUIRE(interrupted != inputs.weldment.joints.end());
    const plan::PlannedJoint& planned = joint_of(plan, interrupted->id);
    // closed-form: drawn 3 x 40 (80); published: AWS D1.1 2010 2.4.2, a segment has 38 mm at least.
    CHECK(check_of(planned, "least-segment-aws").found == doctest::Approx(40.0));
    CHECK(check_of(planned, "least-segment-aws").required == 38.0);
    CHECK(check_of(planned, "least-length-aws").found == doctest::Approx(40.0));
    CHECK(check_of(planned, "largest-clear-aws").found == doctest::Approx(80.0));
  }

  TEST_CASE("given the bracket, plan.xml holds sizes, throats and the misalignment's status") {
    const std::string xml = io::plan_xml(demo("bracket.xml").plan);
    CHECK(schema_verdict("plan.xsd", xml, "weld_sizes") == "");
    CHECK(count_of(xml, "<weld-size ") == 4);
    CHECK(count_of(xml, "<counted-throat ") == 6);
    CHECK(xml.find("rule=\"least-throat-en\" question=\"least size\" subject=\"throat\"") !=
          std::string::npos);
    const std::size_t seam = xml.find("misalignment_max_mm=");
    REQUIRE(seam != std::string::npos);
    CHECK(xml.find("misalignment_status=\"", seam) != std::string::npos);
    CHECK(count_of(xml, "misalignment_max_mm=") == count_of(xml, "misalignment_status="));
    // A verdict outside its words is no plan.
    std::string damaged = xml;
    const std::size_t at = damaged.find("bound=\"at least\"");
    REQUIRE(at != std::string::npos);
    damaged.replace(at, 16, "bound=\"about\"");
    CHECK(schema_verdict("plan.xsd", damaged, "weld_sizes_damaged") != "");
  }

  TEST_CASE("given a joint that names its tolerances, it has those and the others the first") {
    const planner::Inputs inputs = io::read_inputs(repository() / "tests/good/tee_fit_up.xml");
    REQUIRE(inputs.library.fit_ups.size() == 2);
    CHECK(inputs.weldment.joints[0].fit_up == "milled");
    CHECK(inputs.weldment.joints[1].fit_up.empty());
    const Plan plan = planner::make_plan(inputs);
    const plan::PlannedFitUp& milled = joint_of(plan, "J1").seams.front().fit_up.value();
    const plan::PlannedFitUp& usual = joint_of(plan, "J2").seams.front().fit_up.value();
    CHECK(milled.tolerances == "milled");
    CHECK(usual.tolerances == "flame-cut");
    // closed-form: throat 6 mm is leg 8.485; 0.5 and 1 mm more on both legs.
    const double leg_mm = 6.0 * std::sqrt(2.0);
    const auto area_mm2 = [&](double more_mm) { return 0.5 * std::pow(leg_mm + more_mm, 2.0); };
    CHECK(milled.high.area_mm2 < usual.high.area_mm2);
    CHECK(milled.low.area_mm2 == doctest::Approx(area_mm2(0.0)).epsilon(1e-9));
    CHECK(usual.low.area_mm2 == doctest::Approx(area_mm2(0.0)).epsilon(1e-9));
  }

  TEST_CASE("given an unknown name of tolerances, the finding tells the nearest one") {
    try {
      (void)io::read_inputs(repository() / "tests/bad/fit_up_unknown.xml");
      FAIL("read without an error");
    } catch (const base::InputError& error) {
      REQUIRE(error.findings().size() == 1);
      const base::Finding& finding = error.findings().front();
      CHECK(finding.code == "read.fit_up.unknown");
      CHECK(finding.text.find("did you mean") != std::string::npos);
      CHECK(finding.text.find("\"milled\"") != std::string::npos);
    }
  }
}

}  // namespace seamturn::tests
