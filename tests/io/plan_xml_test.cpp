// SPDX-License-Identifier: MIT
#include "seamturn/io/plan_xml.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "sample_plan.hpp"
#include "seamturn/base/error.hpp"
#include "xml_check.hpp"

namespace seamturn::io {

namespace {

/// The codes of the InputError that check_plan_xml throws; empty when it throws none.
std::vector<std::string> codes(const std::string& bytes) {
  std::vector<std::string> found;
  try {
    check_plan_xml(bytes, "plan.xml");
  } catch (const base::InputError& error) {
    for (const base::Finding& finding : error.findings()) found.push_back(finding.code);
  }
  return found;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

}  // namespace

TEST_SUITE("io/plan_xml") {
  TEST_CASE("given a plan with lines, a ring and a run, its XML is valid by plan.xsd") {
    CHECK(tests::schema_verdict("plan.xsd", plan_xml(tests::sample_plan()), "plan_xml") == "");
  }

  TEST_CASE("given what is stated of a steel, its XML says it with source and status") {
    const std::string xml = plan_xml(tests::sample_plan());
    for (const char* part :
         {"t85_min_s=\"11\" t85_max_s=\"22\" t85_source=\"test\" t85_status=\"proposed\"",
          "later_heating_max_c=\"555\"",
          "aws_category=\"A/B\" aws_source=\"test\" aws_status=\"from memory\"",
          "mn_is_open=\"true\"",
          "<band up_to_mm=\"40\" c_is_open=\"true\""}) {
      INFO(part);
      CHECK(xml.find(part) != std::string::npos);
    }
  }

  TEST_CASE("given an empty plan, its XML is valid by plan.xsd") {
    CHECK(tests::schema_verdict("plan.xsd", plan_xml(plan::Plan{}), "plan_xml_empty") == "");
  }

  TEST_CASE("for any plan, law: written twice it gives the same bytes") {
    CHECK(plan_xml(tests::sample_plan()) == plan_xml(tests::sample_plan()));
  }

  TEST_CASE("given a schema verdict on a damaged plan, it is not empty") {
    const std::string good = plan_xml(tests::sample_plan());
    const auto verdict = [](const std::string& xml) {
      return tests::schema_verdict("plan.xsd", xml, "plan_xml_damaged");
    };
    CHECK(verdict(replaced(good, "voltage_v=\"22.2\"", "voltage_v=\"nan\"")) != "");
    CHECK(verdict(replaced(good, "<weld seam=\"J2\"", "<weld seam=\"J9\"")) != "");
    CHECK(verdict(replaced(good, " currency=\"EUR\"", "")) != "");
    CHECK(verdict(replaced(good, "procedure=\"P02\"", "procedure=\"P09\"")) != "");
  }

  TEST_CASE("given a tee whose web stands up in J, straight up is told in each pass' section") {
    plan::Plan plan = tests::sample_plan();
    // Table level: J is the world, and both walls of the fillet J1.a are known.
    plan.weldment.joints[0].seams[0].wall_1 = geom::Vec3::UnitZ();
    plan.weldment.joints[0].seams[0].wall_2 = geom::Vec3::UnitY();
    plan.weldment.joints[0].seams[0].face = geom::unit(geom::Vec3(0.0, 1.0, 1.0));
    plan.stances[0].stance.axes = {base::Angle::deg(0.0), base::Angle::deg(0.0)};
    const std::string level = plan_xml(plan);
    const std::string pass =
        level.substr(level.find("<pass ", level.find("<seam id=\"J1.a\" side")));
    const auto value = [&](const std::string& name) {
      const std::size_t at = pass.find(name + "=\"") + name.size() + 2;
      return std::stod(pass.substr(at, pass.find('"', at) - at));
    };
    // closed form: the face halves a right angle, the first member's toe lies below it.
    CHECK(value("up_x") == doctest::Approx(-std::sqrt(0.5)));
    CHECK(value("up_y") == doctest::Approx(std::sqrt(0.5)));
    CHECK(value("up_along") == doctest::Approx(0.0));
    // On end: the seam runs along x of J, which the table turns straight down at 90 degrees.
    plan.stances[0].stance.axes = {base::Angle::deg(90.0), base::Angle::deg(0.0)};
    const std::string steep = plan_xml(plan);
    CHECK(steep.find("up_along=\"-1\"") != std::string::npos);
  }

  TEST_CASE("given a pass and the same welded from the other end, slope and bank change sign") {
    // closed-form: a fillet along x, its face halfway between y and z. Level it leans 45 deg, to
    // the side of y: against n x t; turning about y does not change that.
    plan::Plan plan = tests::sample_plan();
    plan.weldment.joints[0].seams[0].wall_1 = geom::Vec3::UnitZ();
    plan.weldment.joints[0].seams[0].wall_2 = geom::Vec3::UnitY();
    plan.weldment.joints[0].seams[0].face = geom::unit(geom::Vec3(0.0, 1.0, 1.0));
    for (const bool reversed : {false, true}) {
      const double sense = reversed ? -1.0 : 1.0;
      plan.joints[0].seams[0].passes[0].reversed = reversed;
      for (const double tilt_deg : {0.0, 30.0}) {
        INFO("tilt ", tilt_deg, ", reversed ", reversed);
        plan.stances[0].stance.axes = {base::Angle::deg(tilt_deg), base::Angle::deg(0.0)};
        const std::string xml = plan_xml(plan);
        const std::string pass = xml.substr(xml.find("<pass ", xml.find("<seam id=\"J1.a\" side")));
        const auto value = [&](const std::string& name) {
          const std::size_t at = pass.find(name + "=\"");
          REQUIRE(at < pass.find('>'));
          return std::stod(pass.substr(at + name.size() + 2));
        };
        CHECK(value("slope_deg") == doctest::Approx(-sense * tilt_deg));
        CHECK(value("bank_deg") == doctest::Approx(-sense * 45.0));
        CHECK(value("up_along") == doctest::Approx(-std::sin(base::Angle::deg(tilt_deg).rad())));
      }
    }
  }

  TEST_CASE("given a pass from the far end of a bent seam, straight up is told of that end") {
    // closed-form: the last leg runs along y, about which the table leans: it stays level.
    plan::Plan plan = tests::sample_plan();
    joint::Seam& seam = plan.weldment.joints[0].seams[0];
    seam.wall_1 = geom::Vec3::UnitZ();
    seam.wall_2 = geom::Vec3::UnitY();
    seam.face = geom::unit(geom::Vec3(0.0, 1.0, 1.0));
    seam.path = geom::PolylinePath{{{0, 0, 0}, {100, 0, 0}, {100, 100, 0}}, false};
    plan.stances[0].stance.axes = {base::Angle::deg(30.0), base::Angle::deg(0.0)};
    plan::PlannedPass& pass = plan.joints[0].seams[0].passes[0];
    pass.points.clear();
    for (const bool reversed : {false, true}) {
      pass.reversed = reversed;
      const std::string xml = plan_xml(plan);
      const std::size_t at = xml.find("<pass ", xml.find("<seam id=\"J1.a\" side"));
      const std::string name = "up_along=\"";
      const double up_along = std::stod(xml.substr(xml.find(name, at) + name.size()));
      CHECK(up_along == doctest::Approx(reversed ? 0.0 : -0.5).scale(1.0));
    }
  }

  TEST_CASE("given a pass without a stance, nothing is said of straight up") {
    plan::Plan plan = tests::sample_plan();
    for (plan::PlannedJoint& joint : plan.joints) {
      for (plan::PlannedSeam& seam : joint.seams) {
        for (plan::PlannedPass& pass : seam.passes) pass.stance = -1;
      }
    }
    CHECK(plan_xml(plan).find(" up_x=") == std::string::npos);
    CHECK(plan_xml(tests::sample_plan()).find(" up_x=") != std::string::npos);
  }

  TEST_CASE("given numbers of the sample, they stand in the XML with their units") {
    const std::string xml = plan_xml(tests::sample_plan());
    for (const char* piece : {"leg_1_mm=\"7.5\"",
                              "travel_mm_s=\"7.7\"",
                              "work_angle_deg=\"-7",
                              "preheat_c=\"77\"",
                              "roll_deg=\"-360\"",
                              "roll_deg_s=\"-7.2\"",
                              "radius_mm=\"60\"",
                              "outer_diameter_mm=\"120\"",
                              "transfer=\"spray\"",
                              "standard=\"ZZ 1\"",
                              "stance=\"S02\"",
                              "angle_deg=\"45\"",
                              "cycle_s=\"380\"",
                              "analysis c=\"0.111\"",
                              "not-turned seam=\"J3\"",
                              "retract_mm=\"80\""}) {
      INFO(piece);
      CHECK(xml.find(piece) != std::string::npos);
    }
    CHECK(tests::count_of(xml, "<pass ") == 7);
    CHECK(tests::count_of(xml, "<point ") == 34);
    CHECK(tests::count_of(xml, "<event ") == 14);
  }

  TEST_CASE("given texts no XML may hold, they are written as question marks and stay valid") {
    plan::Plan plan = tests::sample_plan();
    plan.weldment.title =
        "a\x01"
        "b\xff"
        "c\xed\xa0\x80"
        "d";
    const std::string xml = plan_xml(plan);
    CHECK(tests::schema_verdict("plan.xsd", xml, "plan_xml_characters") == "");
    CHECK(xml.find("title=\"a?b?c") != std::string::npos);
  }

  TEST_CASE("refuses a number that is none because no reader could use it") {
    plan::Plan plan = tests::sample_plan();
    plan.cycle_s = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS((void)plan_xml(plan), base::ContractViolation);
  }

  TEST_CASE("refuses a pass in a stance that the plan does not have because it is our mistake") {
    plan::Plan plan = tests::sample_plan();
    plan.joints[0].seams[0].passes[0].stance = 2;
    CHECK_THROWS_AS((void)plan_xml(plan), base::ContractViolation);
  }

  TEST_CASE("for any plan written, law: it is known as a plan and passes its own check") {
    const std::string xml = plan_xml(tests::sample_plan());
    CHECK(is_plan_xml(xml));
    CHECK(codes(xml).empty());
    CHECK(codes(plan_xml(plan::Plan{})).empty());
  }

  TEST_CASE("given other beginnings, a plan is told from what is none") {
    const std::string tag = "<plan xmlns=\"urn:seamturn:plan:1\" schema=\"1.0\"/>";
    CHECK(is_plan_xml(tag));
    CHECK(is_plan_xml("\xef\xbb\xbf<?xml version=\"1.0\"?>\n<!-- kept -> -->\n" + tag));
    CHECK(is_plan_xml("<plan\n schema=\"2.0\" xmlns=\"urn:seamturn:plan:2\">"));
    CHECK_FALSE(is_plan_xml(""));
    CHECK_FALSE(is_plan_xml("<!-- never ends"));
    CHECK_FALSE(is_plan_xml("<?xml"));
    CHECK_FALSE(is_plan_xml("<planet xmlns=\"urn:seamturn:plan:1\"/>"));
    CHECK_FALSE(is_plan_xml("<plan xmlns=\"urn:other\"/>"));
    CHECK_FALSE(is_plan_xml("<weldment xmlns=\"urn:seamturn:weldment:1\" title=\"<plan\"/>"));
  }

  TEST_CASE("refuses what is no plan of this version because a writer would stumble") {
    using Codes = std::vector<std::string>;
    const std::string good = plan_xml(tests::sample_plan());
    CHECK(codes(replaced(good, "schema=\"1.0\"", "schema=\"2.0\"")) ==
          Codes{"read.schema.newer_major"});
    CHECK(codes(replaced(good, "schema=\"1.0\"", "schema=\"1.7\"")).empty());
    CHECK(codes(replaced(good, "plan:1", "plan:2")) == Codes{"read.namespace.wrong"});
    CHECK_FALSE(codes(good.substr(0, good.size() / 2)).empty());
    CHECK_FALSE(codes(good + good).empty());
    CHECK(codes("<plan xmlns=\"urn:seamturn:plan:1\" schema=\"1.0\"/>") ==
          Codes(5, "read.element.missing"));
  }
}

}  // namespace seamturn::io
