// SPDX-License-Identifier: MIT
#include "seamturn/shrinkage/cut_section.hpp"

#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using base::Angle;
using geom::Vec3;
using joint::Member;
using shrinkage::Cut;
using shrinkage::cut_section;
using shrinkage::CutSection;

namespace {

constexpr double pi = std::numbers::pi;

Member placed(const joint::Shape& shape, const geom::Pose& X_JM = {}) {
  Member member;
  member.shape = shape;
  member.X_JM = X_JM;
  return member;
}

Member moved(const joint::Shape& shape, const Vec3& by) {
  return placed(shape, {geom::Mat3::Identity(), by});
}

CutSection section_of(const std::vector<const Member*>& members, const Cut& cut) {
  const auto section = cut_section(members, cut);
  REQUIRE(section.has_value());
  return *section;
}

void check_section(const char* what,
                   const CutSection& got,
                   const CutSection& expected,
                   double area_share,
                   double height_mm,
                   double moment_share) {
  constexpr const char* source = "closed form of the outline";
  check_expected(std::string(what) + " area",
                 got.area_mm2,
                 {expected.area_mm2, area_share * expected.area_mm2, Origin::closed_form, source});
  check_expected(std::string(what) + " height",
                 got.centroid_mm,
                 {expected.centroid_mm, height_mm, Origin::closed_form, source});
  check_expected(std::string(what) + " moment",
                 got.second_moment_mm4,
                 {expected.second_moment_mm4,
                  moment_share * expected.second_moment_mm4,
                  Origin::closed_form,
                  source});
}

}  // namespace

TEST_SUITE("shrinkage/cut_section") {
  TEST_CASE("given a plate cut square, closed-form: width times thickness, to rounding") {
    const Member plate = placed(joint::Plate{400, 300, 25});
    const CutSection flat =
        section_of({&plate}, {Vec3(200, 150, 25), Vec3::UnitX(), Vec3::UnitZ()});
    check_section("flat", flat, {7500, -12.5, 300 * 25 * 625 / 12.0}, 1e-9, 1e-9, 1e-9);
    const CutSection edge = section_of({&plate}, {Vec3(0.1, 0, 0), Vec3::UnitX(), -Vec3::UnitY()});
    check_section("edge", edge, {7500, -150, 25 * 2.7e7 / 12.0}, 1e-9, 1e-9, 1e-9);
  }

  TEST_CASE("given a T of flange and web, the section is the one worked out by hand") {
    // Flange 200 x 20, web 300 x 12 on it; heights from the flange's free face.
    const Member flange = placed(joint::Plate{4000, 200, 20});
    const Member web = moved(joint::Plate{4000, 12, 300}, Vec3(0, 94, 20));
    const CutSection t =
        section_of({&flange, &web}, {Vec3(2000, 0, 0), Vec3::UnitX(), Vec3::UnitZ()});
    const double y = (4000.0 * 10.0 + 3600.0 * 170.0) / 7600.0;
    const double moment = 200.0 * 8000.0 / 12.0 + 4000.0 * (y - 10.0) * (y - 10.0) +
                          12.0 * 2.7e7 / 12.0 + 3600.0 * (170.0 - y) * (170.0 - y);
    check_section("T", t, {7600.0, y, moment}, 1e-9, 1e-9, 1e-9);
    check_expected("y", t.centroid_mm, {85.8, 0.05, Origin::computed, "reference example"});
    check_expected("I", t.second_moment_mm4 / 1e6, {75.64, 0.005, Origin::computed, "the same"});
  }

  TEST_CASE("given round solids, closed-form within the stated accuracy") {
    const Member bar = placed(joint::Bar{joint::BarShape::round, 80, 80, 300});
    const Cut across{Vec3(0, 0, 150), Vec3::UnitZ(), Vec3::UnitX()};
    check_section("bar",
                  section_of({&bar}, across),
                  {pi * 1600, 0.0, pi / 64.0 * std::pow(80.0, 4)},
                  0.003,
                  0.06,
                  0.003);
    for (const double wall_mm : {20.0, 5.0}) {
      const Member tube = placed(joint::Tube{200, wall_mm, 300});
      const double bore = 200.0 - 2.0 * wall_mm;
      check_section("tube",
                    section_of({&tube}, across),
                    {pi / 4.0 * (4.0e4 - bore * bore),
                     0.0,
                     pi / 64.0 * (std::pow(200.0, 4) - std::pow(bore, 4))},
                    0.003,
                    0.2,
                    0.003);
    }
    const Member hexagon = placed(joint::Bar{joint::BarShape::hexagon, 60, 60, 300});
    const double side = 60.0 / std::sqrt(3.0);
    check_section(
        "hexagon",
        section_of({&hexagon}, across),
        {std::sqrt(3.0) / 2.0 * 3600.0, 0.0, 5.0 * std::sqrt(3.0) / 16.0 * std::pow(side, 4)},
        0.003,
        0.06,
        0.003);
  }

  TEST_CASE("given a ring and a bored cone cut along their axis, closed-form: both sides count") {
    const Member ring = placed(joint::Ring{300, 100, 40});
    const CutSection cut = section_of({&ring}, {Vec3(0, 0, 40), Vec3::UnitX(), Vec3::UnitZ()});
    check_section("ring", cut, {200 * 40, -20, 200 * 64000 / 12.0}, 0.003, 0.08, 0.003);
    // A cone from 200 to 100 over 60 mm: the cut is a trapezium.
    const Member cone = placed(joint::Forging{{{60, 200, 100}}, 0.0});
    const CutSection trapezium = section_of({&cone}, {Vec3::Zero(), Vec3::UnitY(), Vec3::UnitZ()});
    const double a = 200.0, b = 100.0, h = 60.0;
    check_section("cone",
                  trapezium,
                  {(a + b) / 2.0 * h,
                   h / 3.0 * (a + 2.0 * b) / (a + b),
                   h * h * h * (a * a + 4.0 * a * b + b * b) / (36.0 * (a + b))},
                  0.003,
                  0.06,
                  0.003);
  }

  TEST_CASE("given a tube cut along its axis, closed-form: two walls") {
    const Member tube = placed(joint::Tube{203, 5.3, 310});
    const double bore = 203 - 10.6;
    for (const bool along : {true, false}) {
      // Up along the axis, then up across it: walls stand across the columns, then across the rows.
      const Vec3 up = along ? Vec3(Vec3::UnitZ()) : Vec3(Vec3::UnitX());
      const double moment = along ? 10.6 * std::pow(310.0, 3) / 12.0
                                  : 310.0 * (std::pow(203.0, 3) - std::pow(bore, 3)) / 12.0;
      check_section("tube along",
                    section_of({&tube}, {Vec3(0, 0, 155), Vec3::UnitY(), up}),
                    {10.6 * 310.0, 0.0, moment},
                    203.0 / 1024.0 / 5.3,
                    0.2,
                    203.0 / 1024.0 / 5.3);
    }
  }

  TEST_CASE("given a plate turned within the cut, closed-form: the turned rectangle") {
    const double turn = pi / 6.0;
    const Member plate =
        placed(joint::Plate{400, 200, 10},
               {geom::rotation_about(Vec3::UnitX(), Angle::rad(turn)), Vec3(0, 0, 0)});
    const Vec3 middle = plate.X_JM.point(Vec3(200, 100, 5));
    const double thin = 200.0 * 1000.0 / 12.0, wide = 10.0 * 8.0e6 / 12.0;
    const double c2 = std::cos(turn) * std::cos(turn);
    check_section("turned",
                  section_of({&plate}, {middle, Vec3::UnitX(), Vec3::UnitZ()}),
                  {2000.0, 0.0, thin * c2 + wide * (1.0 - c2)},
                  0.003,
                  0.1,
                  0.003);
  }

  TEST_CASE("given parts that overlap or meet in the plane, law: metal counts once") {
    const Cut cut{Vec3(50, 0, 0), Vec3::UnitX(), Vec3::UnitZ()};
    const Member one = placed(joint::Plate{100, 50, 20});
    const Member inner = moved(joint::Plate{100, 30, 10}, Vec3(0, 10, 5));
    const CutSection alone = section_of({&one}, cut);
    const CutSection both = section_of({&one, &inner}, cut);
    CHECK(both.area_mm2 == alone.area_mm2);
    CHECK(both.second_moment_mm4 == alone.second_moment_mm4);
    const Member left = placed(joint::Plate{50, 50, 20});
    const Member right = moved(joint::Plate{50, 50, 20}, Vec3(50, 0, 0));
    CHECK(section_of({&left, &right}, cut).area_mm2 == doctest::Approx(1000.0));
  }

  TEST_CASE("for lengths twice as long, law: area four, height two, moment sixteen times") {
    const auto at = [](double k) {
      const Member ring = moved(joint::Ring{300 * k, 100 * k, 40 * k}, Vec3(0, 0, 7 * k));
      const Member bar =
          moved(joint::Bar{joint::BarShape::hexagon, 60 * k, 60 * k, 90 * k}, Vec3(0, 0, -83 * k));
      return section_of({&ring, &bar}, {Vec3(0, 10 * k, 0), Vec3::UnitX(), Vec3::UnitZ()});
    };
    const CutSection small = at(1.0), large = at(2.0);
    CHECK(large.area_mm2 == doctest::Approx(4.0 * small.area_mm2).epsilon(1e-9));
    CHECK(large.centroid_mm == doctest::Approx(2.0 * small.centroid_mm).epsilon(1e-9));
    CHECK(large.second_moment_mm4 == doctest::Approx(16.0 * small.second_moment_mm4).epsilon(1e-9));
  }

  TEST_CASE("refuses a plane that cuts nothing, and directions that are none") {
    const Member plate = placed(joint::Plate{400, 300, 25});
    const auto none = cut_section({&plate}, {Vec3(401, 0, 0), Vec3::UnitX(), Vec3::UnitZ()});
    REQUIRE_FALSE(none.has_value());
    CHECK(none.error().code == "shrinkage.section.empty");
    CHECK_FALSE(cut_section({}, {}).has_value());
    using base::ContractViolation;
    const auto call = [&plate](const Cut& cut) { (void)cut_section({&plate}, cut); };
    CHECK_THROWS_AS(call({Vec3::Zero(), Vec3(2, 0, 0), Vec3::UnitZ()}), ContractViolation);
    CHECK_THROWS_AS(call({Vec3::Zero(), Vec3::UnitX(), Vec3::UnitX()}), ContractViolation);
    CHECK_THROWS_AS(call({Vec3::Zero(), Vec3::UnitX(), Vec3(0, 0, 2)}), ContractViolation);
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS(call({Vec3(nan, 0, 0), Vec3::UnitX(), Vec3::UnitZ()}), ContractViolation);
    CHECK_THROWS_AS((void)cut_section({nullptr}, {}), ContractViolation);
  }
}

}  // namespace seamturn::tests
