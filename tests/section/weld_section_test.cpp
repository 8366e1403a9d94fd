// SPDX-License-Identifier: MIT
// Sections against worked values, their limits and refusals.
#include "seamturn/section/weld_section.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include "oracles/section.hpp"
#include "section/shoelace.hpp"

namespace seamturn::tests {

using base::Angle;
using joint::Cap;
using joint::Fillet;
using joint::Preparation;
using joint::single_bevel;
using joint::single_v;
using joint::square_butt;
using section::SectionParams;
using section::weld_section;
using section::WeldSection;

namespace {

SectionParams groove_params(const Preparation& preparation,
                            double thickness_mm,
                            double depth_mm = 0.0) {
  SectionParams params;
  params.preparation = preparation;
  params.thickness_mm = thickness_mm;
  params.depth_mm = depth_mm;
  return params;
}

SectionParams fillet_params(double leg_1_mm, double leg_2_mm, double psi_deg) {
  SectionParams params;
  params.preparation = Fillet{leg_1_mm, leg_2_mm};
  params.between_plates = Angle::deg(psi_deg);
  return params;
}

WeldSection made(const SectionParams& params) {
  const auto section = weld_section(params);
  REQUIRE(section.has_value());
  return *section;
}

std::string code_of(const SectionParams& params) {
  const auto section = weld_section(params);
  return section.has_value() ? "accepted" : section.error().code;
}

std::string code_of(const Preparation& preparation, double thickness_mm, double depth_mm = 0.0) {
  return code_of(groove_params(preparation, thickness_mm, depth_mm));
}

const Angle v60 = Angle::deg(60.0);
const Angle b45 = Angle::deg(45.0);

}  // namespace

TEST_SUITE("section/weld_section") {
  TEST_CASE("given throat 5 mm between plates at 60 to 135 deg, area, legs and face are known") {
    for (const SkewRow& row : skew_rows) {
      const double leg_mm = joint::leg_from_throat_mm(skew_throat_mm, Angle::deg(row.psi_deg));
      const WeldSection section = made(fillet_params(leg_mm, leg_mm, row.psi_deg));
      const std::string item = std::to_string(row.psi_deg) + " deg";
      const char* source = "triangle, docs/methods/section.md";
      check_expected(
          item + " area", section.area_mm2, {row.area_mm2, 0.005, Origin::computed, source});
      check_expected(
          item + " face", section.opening_mm, {row.face_mm, 0.005, Origin::computed, source});
      check_expected(
          item + " throat", section.throat_mm, {skew_throat_mm, 1e-9, Origin::computed, source});
      CHECK(section.height_mm == doctest::Approx(skew_throat_mm).epsilon(1e-12));
      // The other way to state a leg: from a toe square to the other plate. Read off the outline.
      REQUIRE(section.outline.size() == 3);
      const section::Point& toe = section.outline[1];
      const double half = Angle::deg(0.5 * row.psi_deg).rad();
      const double perpendicular = toe.x_mm * std::cos(half) + toe.y_mm * std::sin(half);
      check_expected(item + " perpendicular",
                     perpendicular,
                     {row.perpendicular_mm, 0.005, Origin::computed, source});
    }
  }

  TEST_CASE("given legs 3 and 4 mm at 90 deg, area 6 mm2, face 5 mm, throat 2.4 mm") {
    const WeldSection section = made(fillet_params(3.0, 4.0, 90.0));
    const char* source = "right triangle 3-4-5";
    check_expected("area", section.area_mm2, {6.0, 1e-12, Origin::closed_form, source});
    check_expected("face", section.opening_mm, {5.0, 1e-12, Origin::closed_form, source});
    check_expected("throat", section.throat_mm, {2.4, 1e-12, Origin::closed_form, source});
    CHECK(section.leg_1_mm == 3.0);
    CHECK(section.leg_2_mm == 4.0);
    CHECK(section.is_fillet);
    CHECK(section.findings.empty());
    CHECK(section.seam_line_x_mm == 0.0);
    CHECK(section.seam_line_y_mm == 0.0);
  }

  TEST_CASE("given unequal legs, the first member's leg ends at x > 0, the second's at x < 0") {
    const double r = std::numbers::sqrt2 / 2.0;
    for (const bool first_longer : {true, false}) {
      const double leg_1 = first_longer ? 8.0 : 5.0;
      const double leg_2 = first_longer ? 5.0 : 8.0;
      const WeldSection section = made(fillet_params(leg_1, leg_2, 90.0));
      double right = 0.0;
      double left = 0.0;
      for (const section::Point& point : section.outline) {
        right = std::max(right, point.x_mm);
        left = std::min(left, point.x_mm);
      }
      CHECK(right == doctest::Approx(r * leg_1).epsilon(1e-12));
      CHECK(left == doctest::Approx(-r * leg_2).epsilon(1e-12));
      CHECK(section.height_mm == doctest::Approx(r * 8.0).epsilon(1e-12));
    }
  }

  TEST_CASE("given a skewed fillet over a gap, its metal is the polygon drawn on the plates") {
    // Closed form: the first plate is y = 0, the second's corner lies the gap above it on a line at
    // psi. Legs of 8 mm beyond the gap stand on lines through that corner, one along each plate;
    // the face runs on through their toes down to y = 0.
    for (const double psi_deg : {60.0, 75.0, 90.0, 120.0, 135.0}) {
      const double leg = 8.0, gap = 2.0, reach = 3.0;
      const Angle psi = Angle::deg(psi_deg);
      const double c = std::cos(psi.rad()), s = std::sin(psi.rad());
      const double corner_x = gap * c / s;
      const double high_x = corner_x + leg * c, high_y = gap + leg * s;
      const double low_x = corner_x + leg;  // at y = gap
      const double toe_x = low_x + (low_x - high_x) * gap / (high_y - gap);
      const double triangle_mm2 = 0.5 * toe_x * high_y;  // root at the origin, first toe on y = 0
      SectionParams params;
      params.preparation = Fillet{leg, leg, 0.0, gap, reach};
      params.between_plates = psi;
      const WeldSection section = made(params);
      const std::string item = std::to_string(psi_deg) + " deg";
      const char* source = "polygon on two plates";
      check_expected(item + " area",
                     section.area_mm2,
                     {triangle_mm2 + gap * reach, 1e-9, Origin::closed_form, source});
      check_expected(item + " leg on the first plate",
                     section.leg_1_mm,
                     {toe_x, 1e-9, Origin::closed_form, source});
      check_expected(item + " leg on the second plate",
                     section.leg_2_mm,
                     {std::hypot(high_x, high_y), 1e-9, Origin::closed_form, source});
      // What is drawn holds the same metal, and its second toe stands the leg beyond the corner.
      check_expected(item + " drawn",
                     shoelace_mm2(section.outline),
                     {triangle_mm2 + gap * reach, 1e-9, Origin::closed_form, source});
      REQUIRE(section.outline.size() == 5);
      check_expected(item + " drawn beyond the gap",
                     std::hypot(section.outline[1].x_mm - section.outline[2].x_mm,
                                section.outline[1].y_mm - section.outline[2].y_mm),
                     {leg, 1e-9, Origin::closed_form, source});
    }
  }

  TEST_CASE("given worked grooves, area and opening are the closed forms") {
    for (const GrooveRow& row : groove_rows) {
      const Angle angle = Angle::deg(row.angle_deg);
      const Preparation preparation =
          row.is_v ? Preparation(single_v({row.gap_mm, row.root_face_mm}, angle))
                   : Preparation(single_bevel({row.gap_mm, row.root_face_mm}, angle));
      const WeldSection section = made(groove_params(preparation, row.thickness_mm));
      const char* source = "closed forms, docs/methods/section.md";
      check_expected(row.item, section.area_mm2, {row.area_mm2, 0.005, Origin::computed, source});
      check_expected(
          row.item, section.opening_mm, {row.opening_mm, 0.005, Origin::computed, source});
      CHECK(section.throat_mm == row.thickness_mm);
      CHECK(section.seam_line_y_mm == row.thickness_mm);
      CHECK_FALSE(section.is_fillet);
    }
  }

  TEST_CASE("given GB/T 10854, V t 20 p 2 of 30 deg per face and gap 2 opens 22.78 mm") {
    const WeldSection section = made(groove_params(single_v({2.0, 2.0}, v60), 20.0));
    check_expected(
        "opening",
        section.opening_mm,
        {22.78, 0.005, Origin::computed, "GB/T 10854 rule 2 (t - p) tan beta + b, worked by hand"});
  }

  TEST_CASE("given a square butt of 3 mm gap in 6 mm plate, the area is 18 mm2") {
    check_expected("square",
                   made(groove_params(square_butt(3.0), 6.0)).area_mm2,
                   {18.0, 1e-12, Origin::closed_form, "rectangle"});
    check_expected("square, 4 mm deep",
                   made(groove_params(square_butt(3.0), 6.0, 4.0)).area_mm2,
                   {12.0, 1e-12, Origin::closed_form, "rectangle"});
  }

  TEST_CASE("given a partial bevel of 15 mm, 45 deg, the area is that of the groove alone") {
    // 25 mm plate, root face 10 mm, welded 15 mm deep: a half square of 15 mm, gap closed.
    const WeldSection section = made(groove_params(single_bevel({0.0, 10.0}, b45), 25.0, 15.0));
    check_expected(
        "area", section.area_mm2, {112.5, 1e-9, Origin::closed_form, "half a square of 15 mm"});
    CHECK(section.throat_mm == 15.0);
    CHECK(section.opening_mm == doctest::Approx(15.0).epsilon(1e-12));
    CHECK(section.outline.size() == 3);
    // 2 mm into the root face with a gap of 1 mm: 2 x 1 more, and the gap over the groove.
    const WeldSection deeper = made(groove_params(single_bevel({1.0, 10.0}, b45), 25.0, 17.0));
    check_expected(
        "area", deeper.area_mm2, {129.5, 1e-9, Origin::closed_form, "112.5 + 17 x 1 mm2"});
  }

  TEST_CASE("given a single bevel, the square wall stands at x = 0 and the seam runs on it") {
    const WeldSection section = made(groove_params(single_bevel({3.0, 2.0}, b45), 20.0));
    for (const section::Slice& slice : section.profile) CHECK(slice.left_mm == 0.0);
    CHECK(section.profile.front().right_mm == 3.0);
    CHECK(section.profile.back().right_mm == doctest::Approx(21.0).epsilon(1e-12));
    CHECK(section.seam_line_x_mm == 0.0);
  }

  TEST_CASE("given a cap with toe lap, width, area and total are those of 2/3 w h") {
    SectionParams params = groove_params(single_v({2.0, 1.0}, v60), 12.0);
    params.cap = Cap{2.0, 1.5};
    const WeldSection section = made(params);
    check_expected(
        "width", section.cap_width_mm, {17.70, 0.005, Origin::computed, "opening 14.70 + 2 x 1.5"});
    check_expected(
        "total", section.area_mm2, {117.46, 0.01, Origin::computed, "93.86 + 2/3 x 17.70 x 2"});
    CHECK(section.cap_height_mm == 2.0);
    // A cap ground flush is none, whatever its lap.
    params.cap = Cap{0.0, 1.5};
    CHECK(made(params).cap_width_mm == 0.0);
    CHECK(made(params).cap_area_mm2 == 0.0);
  }

  TEST_CASE("given a fillet leg 10 mm round a hub of radius 200 mm, the ring holds 63879 mm3") {
    const WeldSection section = made(fillet_params(10.0, 10.0, 90.0));
    // The centroid of the triangle lies a third of the leg off each plate.
    const section::Point c = section::centroid(section);
    CHECK(c.x_mm == doctest::Approx(0.0).scale(1.0).epsilon(1e-12));
    const double off_plate_mm = c.y_mm / std::numbers::sqrt2;
    check_expected("volume",
                   section::ring_volume_mm3(section.area_mm2, 200.0 + off_plate_mm),
                   {63879.0, 0.5, Origin::computed, "Pappus, 2 pi (200 + 10/3) x 50"});
  }

  TEST_CASE("given a square butt, its centroid is the middle") {
    const section::Point c = section::centroid(made(groove_params(square_butt(4.0), 10.0)));
    CHECK(c.x_mm == doctest::Approx(0.0).scale(1.0).epsilon(1e-12));
    CHECK(c.y_mm == doctest::Approx(5.0).epsilon(1e-12));
  }

  TEST_CASE("warns where the throat meets the face beyond a toe, just past the limit only") {
    // At 60 deg the foot leaves the face when one leg is below half of the other.
    CHECK(made(fillet_params(5.001, 10.0, 60.0)).findings.empty());
    const WeldSection far = made(fillet_params(10.0, 4.999, 60.0));
    REQUIRE(far.findings.size() == 1);
    CHECK(far.findings[0].code == "section.throat.beyond_face");
    CHECK(far.findings[0].severity == base::Severity::warning);
    CHECK(made(fillet_params(1.0, 10.0, 90.0)).findings.empty());
  }

  TEST_CASE("refuses dihedral angles of fillets outside 60 to 135 deg because rules end there") {
    CHECK(code_of(fillet_params(6.0, 6.0, 60.0)) == "accepted");
    CHECK(code_of(fillet_params(6.0, 6.0, 59.99)) == "section.angle.out_of_range");
    CHECK(code_of(fillet_params(6.0, 6.0, 135.0)) == "accepted");
    CHECK(code_of(fillet_params(6.0, 6.0, 135.01)) == "section.angle.out_of_range");
  }

  TEST_CASE("refuses sizes that are not there, or a metre large, because a slip of unit is meant") {
    CHECK(code_of(fillet_params(0.0, 6.0, 90.0)) == "section.size.not_positive");
    CHECK(code_of(fillet_params(6.0, -1.0, 90.0)) == "section.size.not_positive");
    CHECK(code_of(fillet_params(1000.0, 6.0, 90.0)) == "accepted");
    CHECK(code_of(fillet_params(1000.1, 6.0, 90.0)) == "section.size.too_large");
    CHECK(code_of(square_butt(2.0), 0.0) == "section.size.not_positive");
    CHECK(code_of(square_butt(2.0), -5.0) == "section.size.not_positive");
    CHECK(code_of(square_butt(2.0), 1000.1) == "section.size.too_large");
    CHECK(code_of(square_butt(1000.1), 10.0) == "section.size.too_large");
  }

  TEST_CASE("refuses gaps, root faces and groove angles that make no groove") {
    CHECK(code_of(square_butt(-0.01), 6.0) == "section.gap.negative");
    CHECK(code_of(single_v({0.0, 0.0}, v60), 6.0) == "accepted");
    CHECK(code_of(single_v({-0.01, 0.0}, v60), 6.0) == "section.gap.negative");
    CHECK(code_of(single_v({2.0, -0.01}, v60), 6.0) == "section.root_face.negative");
    CHECK(code_of(single_v({2.0, 5.99}, v60), 6.0) == "accepted");
    CHECK(code_of(single_v({2.0, 6.0}, v60), 6.0) == "section.root_face.too_thick");
    CHECK(code_of(single_bevel({2.0, 6.0}, b45), 6.0) == "section.root_face.too_thick");
    CHECK(code_of(single_v({2.0, 1.0}, Angle::deg(0.0)), 6.0) == "section.angle.out_of_range");
    CHECK(code_of(single_v({2.0, 1.0}, Angle::deg(0.1)), 6.0) == "accepted");
    CHECK(code_of(single_v({2.0, 1.0}, Angle::deg(170.0)), 6.0) == "accepted");
    CHECK(code_of(single_v({2.0, 1.0}, Angle::deg(180.0)), 6.0) == "section.angle.out_of_range");
    CHECK(code_of(single_v({2.0, 1.0}, Angle::deg(179.9)), 6.0) == "section.size.too_large");
    CHECK(code_of(single_bevel({2.0, 1.0}, Angle::deg(89.0)), 6.0) == "accepted");
    CHECK(code_of(single_bevel({2.0, 1.0}, Angle::deg(90.0)), 6.0) == "section.angle.out_of_range");
    CHECK(code_of(single_bevel({2.0, 1.0}, Angle::deg(-5.0)), 6.0) == "section.angle.out_of_range");
  }

  TEST_CASE("refuses depths beyond the plate or ending in the bevel because a hollow would stay") {
    CHECK(code_of(square_butt(2.0), 6.0, 6.0) == "accepted");
    CHECK(code_of(square_butt(2.0), 6.0, 6.001) == "section.depth.out_of_range");
    CHECK(code_of(square_butt(2.0), 6.0, -1.0) == "section.depth.out_of_range");
    CHECK(code_of(single_v({0.0, 4.0}, v60), 20.0, 16.0) == "accepted");
    CHECK(code_of(single_v({0.0, 4.0}, v60), 20.0, 15.99) == "section.depth.in_bevel");
    CHECK(code_of(single_bevel({0.0, 0.0}, b45), 20.0, 10.0) == "section.depth.in_bevel");
  }

  TEST_CASE("refuses a side of a double V that reaches into the other side's cut") {
    // law: 30 mm plate, root face 2, cuts of 14: side 1 has 16 mm to itself.
    joint::Groove groove = single_v({2.0, 2.0}, v60);
    groove.is_double = true;
    groove.side_2 = groove.side_1;
    CHECK(code_of(groove, 30.0, 16.0) == "accepted");
    CHECK(code_of(groove, 30.0, 16.01) == "section.depth.out_of_range");
  }

  TEST_CASE("given a gouge shallower than the second cut, that side is as deep as its cut") {
    // law: a gouge takes metal away and fills nothing.
    joint::Groove groove = single_v({2.0, 2.0}, v60);
    groove.is_double = true;
    groove.side_2 = groove.side_1;
    SectionParams params = groove_params(groove, 30.0);
    params.side = 2;
    params.gouge = {10.0, 5.0, Angle::deg(10.0)};
    CHECK(made(params).height_mm == doctest::Approx(14.0).epsilon(1e-12));
  }

  TEST_CASE("refuses caps below zero, caps on fillets and welds without metal") {
    SectionParams params = groove_params(square_butt(0.0), 6.0);
    CHECK(code_of(params) == "section.area.zero");
    CHECK(weld_section(params).error().text.find("no cap; state a gap") != std::string::npos);
    params.cap = Cap{2.0, 0.0};
    const auto narrow = weld_section(params);
    REQUIRE_FALSE(narrow.has_value());
    CHECK(narrow.error().code == "section.area.zero");
    CHECK(narrow.error().text.find("the cap of 2 mm has no width") != std::string::npos);
    CHECK(narrow.error().text.find("toe-lap") != std::string::npos);
    params.cap = Cap{2.0, 3.0};
    CHECK(code_of(params) == "accepted");
    params.cap = Cap{-0.1, 3.0};
    CHECK(code_of(params) == "section.cap.negative");
    params.cap = Cap{2.0, -0.1};
    CHECK(code_of(params) == "section.cap.negative");
    params = fillet_params(6.0, 6.0, 90.0);
    params.cap.height_mm = 1.0;
    CHECK(code_of(params) == "section.cap.on_fillet");
  }

  TEST_CASE("refuses several faults in one text because nobody mends them one by one") {
    const auto refused = weld_section(groove_params(single_v({-1.0, 9.0}, Angle::deg(200.0)), 6.0));
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().code == "section.gap.negative");
    for (const char* part : {"root gap is -1 mm", "root face of 9 mm", "200.000 deg"}) {
      CHECK(refused.error().text.find(part) != std::string::npos);
    }
  }

  TEST_CASE("refuses numbers that are none and heights outside because that is a caller's bug") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS((void)weld_section(fillet_params(nan, 6.0, 90.0)), base::ContractViolation);
    CHECK_THROWS_AS((void)weld_section(groove_params(square_butt(2.0), nan)),
                    base::ContractViolation);
    const WeldSection section = made(groove_params(square_butt(2.0), 6.0));
    CHECK_THROWS_AS((void)section::width_at_mm(section, -0.1), base::ContractViolation);
    CHECK_THROWS_AS((void)section::width_at_mm(section, 6.1), base::ContractViolation);
    CHECK_THROWS_AS((void)section::area_below_mm2(section, 6.1), base::ContractViolation);
    CHECK_THROWS_AS((void)section::height_of_area_mm(section, 12.1), base::ContractViolation);
    CHECK_THROWS_AS((void)section::height_of_area_mm(section, nan), base::ContractViolation);
    CHECK_THROWS_AS((void)section::ring_volume_mm3(-1.0, 10.0), base::ContractViolation);
    CHECK(section::width_at_mm(section, 6.0) == 2.0);
    CHECK(section::height_of_area_mm(section, 12.0) == doctest::Approx(6.0).epsilon(1e-12));
  }

  TEST_CASE("cuts share what the root face leaves, or are as stated") {
    // closed-form: 30 mm, root face 2 mm: 28 mm to share
    joint::Groove groove;
    groove.form = joint::GrooveForm::v;
    groove.root_face_mm = 2.0;
    CHECK(section::cut_depth_mm(groove, 30.0, 1) == 28.0);
    CHECK(section::cut_depth_mm(groove, 30.0, 2) == 0.0);
    groove.is_double = true;
    CHECK(section::cut_depth_mm(groove, 30.0, 1) == 14.0);
    CHECK(section::cut_depth_mm(groove, 30.0, 2) == 14.0);
    groove.side_1.depth_mm = 18.0;
    CHECK(section::cut_depth_mm(groove, 30.0, 1) == 18.0);
    CHECK(section::cut_depth_mm(groove, 30.0, 2) == 10.0);
  }
}

}  // namespace seamturn::tests
