// SPDX-License-Identifier: MIT
// A weldment with every kind of preparation, read, planned and written.
#include "oracle.hpp"
#include "repository.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/planner/planner.hpp"
#include "xml_check.hpp"

namespace seamturn::tests {

namespace {

const plan::Plan& preparations_plan() {
  static const plan::Plan made =
      planner::make_plan(io::read_inputs(repository() / "tests/good/preparations.xml"));
  return made;
}

const plan::PlannedJoint& prepared(const std::string& id) {
  for (const plan::PlannedJoint& joint : preparations_plan().joints) {
    if (joint.id == id) return joint;
  }
  REQUIRE_MESSAGE(false, id);
  return preparations_plan().joints.front();
}

std::size_t findings_with(const std::string& code) {
  std::size_t count = 0;
  for (const base::Finding& finding : preparations_plan().findings) {
    if (finding.code == code) ++count;
  }
  return count;
}

}  // namespace

TEST_SUITE("planner/preparations") {
  TEST_CASE("given a double V cut 18 and 10 mm and gouged, each side is a seam of its own") {
    const plan::PlannedJoint& joint = prepared("double-v");
    REQUIRE(joint.seams.size() == 2);
    CHECK(joint.seams[0].side == 1);
    CHECK(joint.seams[1].side == 2);
    const double tan30 = 1.0 / std::sqrt(3.0);
    // Side 1: gap over 20 mm and the V of 18 mm; side 2 at least its own V of 10 mm with the gap.
    CHECK(joint.seams[0].section.area_mm2 ==
          doctest::Approx(2.0 * 20.0 + 18.0 * 18.0 * tan30).epsilon(1e-12));
    CHECK(joint.seams[1].section.height_mm == doctest::Approx(13.0));
    CHECK(joint.seams[1].section.area_mm2 > 2.0 * 10.0 + 100.0 * tan30);
    CHECK(plan::sections_of(joint).size() == 2);
  }

  TEST_CASE("given every preparation, law: pass areas of a seam add up to its side's section") {
    CHECK(preparations_plan().joints.size() == 11);
    for (const plan::PlannedJoint& joint : preparations_plan().joints) {
      for (const plan::PlannedSeam& seam : joint.seams) {
        double area_mm2 = 0.0;
        for (const plan::PlannedPass& pass : seam.passes) area_mm2 += pass.pass.area_mm2;
        INFO(seam.id);
        CHECK(area_mm2 == doctest::Approx(seam.section.area_mm2).epsilon(1e-9).scale(0.0));
      }
    }
  }

  TEST_CASE("given four plugs of 22 mm filled 12 mm, their metal is that of four cylinders") {
    CHECK(prepared("plugs").seams.front().metal_kg ==
          doctest::Approx(4.0 * 3.14159265358979 / 4.0 * 484.0 * 12.0 * 7.85e-6).epsilon(1e-12));
  }

  TEST_CASE("given full penetration over a root face, only the joint left alone is warned of") {
    CHECK(findings_with("joint.root.face_left") == 1);
    bool named = false;
    for (const base::Finding& finding : preparations_plan().findings) {
      named = named || finding.text.find("joint double-u") != std::string::npos;
    }
    CHECK(named);
  }

  TEST_CASE(
      "given the shop's tolerances, every seam has its band, grooves and fillets a gap table") {
    for (const plan::PlannedJoint& joint : preparations_plan().joints) {
      const joint::Joint& described = *joint::find_joint(preparations_plan().weldment, joint.id);
      const bool plug = std::holds_alternative<joint::Plug>(described.preparation);
      for (const plan::PlannedSeam& seam : joint.seams) {
        INFO(seam.id);
        REQUIRE(seam.fit_up.has_value());
        CHECK(seam.fit_up->tolerances == "plasma-cut");
        CHECK(seam.fit_up->low.area_mm2 <= seam.section.area_mm2 * (1.0 + 1e-12));
        CHECK(seam.fit_up->high.area_mm2 >= seam.section.area_mm2 * (1.0 - 1e-12));
        CHECK(seam.fit_up->gaps.has_value() == !plug);
        CHECK((seam.fit_up->misalignment_max_mm > 0.0) ==
              (described.type == joint::JointType::butt));
      }
    }
  }

  TEST_CASE("given a fillet of level C, its gaps end at no. 617, second-hand 0.5 + 0.2 a up to 3") {
    const plan::PlannedSeam& seam = prepared("lap").seams.front();
    REQUIRE(seam.fit_up->gaps.has_value());
    CHECK(seam.fit_up->gaps->stop.gap_mm ==
          doctest::Approx(0.5 + 0.2 * 8.0 / std::sqrt(2.0)).epsilon(1e-12));
    CHECK(seam.fit_up->gaps->stop.reason.find("617") != std::string::npos);
  }

  TEST_CASE(
      "given GB 985-88 double Y up to 3 mm, gaps end there, or before it where the shop says") {
    // published: GB 985-88, double Y: gap 0 to 3 mm. The drawing has 2 mm and the tolerance 0.5.
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/preparations.xml");
    std::erase_if(inputs.library.preparation_ranges, [](const joint::PreparationRange& range) {
      return range.id != "gb985-double-y";
    });
    inputs.library.fit_ups.front().gap_plus_mm = 0.5;
    const auto stop_of = [&](std::optional<double> shop_mm) {
      inputs.library.fit_ups.front().gap_stop_mm = shop_mm;
      const plan::Plan plan = planner::make_plan(inputs);
      return plan.joints.front().seams.front().fit_up->gaps.value().stop;
    };
    REQUIRE(inputs.weldment.joints.front().id == "double-v");
    const char* source = "GB 985-88, double Y";
    const fitup::StopLimit of_range = stop_of(std::nullopt);
    check_expected("no shop limit", of_range.gap_mm, {3.0, 1e-12, Origin::published, source});
    CHECK(of_range.reason == "range gb985-double-y");
    CHECK(of_range.status == base::Status::verified);
    const fitup::StopLimit wider = stop_of(6.0);
    check_expected("shop limit 6 mm", wider.gap_mm, {3.0, 1e-12, Origin::published, source});
    CHECK(wider.reason == of_range.reason);
    // law: the tighter of the two stops the welder.
    const fitup::StopLimit tighter = stop_of(2.25);
    CHECK(tighter.gap_mm == 2.25);
    CHECK(tighter.reason.find("shop's own limit") != std::string::npos);
    CHECK(tighter.status == base::Status::proposed);
    // Without row and shop limit, drawn gap and tolerance are left: 2 + 0.5 mm.
    inputs.library.preparation_ranges.clear();
    const fitup::StopLimit drawn = stop_of(std::nullopt);
    check_expected("tolerance", drawn.gap_mm, {2.5, 1e-12, Origin::closed_form, "2 + 0.5"});
  }

  TEST_CASE("given the same file, weldment and plan are valid by their schemas") {
    CHECK(schema_verdict("weldment.xsd",
                         text_of(repository() / "tests/good/preparations.xml"),
                         "preparations") == "");
    CHECK(schema_verdict("plan.xsd", io::plan_xml(preparations_plan()), "preparations_plan") == "");
  }
}

}  // namespace seamturn::tests
