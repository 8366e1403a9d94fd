// SPDX-License-Identifier: MIT
// Every preparation against its closed form, and against polygons of a geometry library that never
// saw our profile.
#include <cmath>
#include <numbers>
#include <string>

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>

#include "oracle.hpp"
#include "seamturn/section/weld_section.hpp"
#include "section/random_section.hpp"

namespace seamturn::tests {

using base::Angle;
using joint::Fillet;
using joint::Groove;
using joint::GrooveForm;
using joint::GrooveSide;
using section::SectionParams;
using section::weld_section;
using section::WeldSection;

namespace {

WeldSection made(const SectionParams& params) {
  const auto section = weld_section(params);
  const std::string refused = section.has_value() ? std::string() : section.error().text;
  INFO(refused);
  REQUIRE(section.has_value());
  return *section;
}

std::string code_of(const SectionParams& params) {
  const auto section = weld_section(params);
  return section.has_value() ? "accepted" : section.error().code;
}

/// Metal of all sides.
double all_sides_mm2(SectionParams params) {
  double area_mm2 = 0.0;
  for (params.side = 1; params.side <= section::side_count(params); ++params.side) {
    area_mm2 += made(params).area_mm2;
  }
  return area_mm2;
}

/// A groove as a drawing states it; doubles of equal sides.
struct GrooveRow {
  const char* name;
  GrooveForm form;
  bool is_double;
  double thickness_mm, gap_mm, root_face_mm, angle_deg, radius_mm, cut_1_mm;
  double area_mm2;
  double opening_mm;  // 0: not stated
};

SectionParams params_of(const GrooveRow& row) {
  Groove groove;
  groove.form = row.form;
  groove.is_double = row.is_double;
  groove.gap_mm = row.gap_mm;
  groove.root_face_mm = row.root_face_mm;
  groove.side_1.angle = Angle::deg(row.angle_deg);
  groove.side_1.radius_mm = row.radius_mm;
  groove.side_2 = groove.side_1;
  groove.side_1.depth_mm = row.cut_1_mm;
  SectionParams params;
  params.preparation = groove;
  params.thickness_mm = row.thickness_mm;
  return params;
}

// Computed from the closed forms of docs/methods/section.md, U and J with the tangent arc, by a
// script apart from this program; half a printed digit.
constexpr GrooveRow rows[] = {
    {"V t20", GrooveForm::v, false, 20, 3, 2, 60, 0, 0, 247.06, 23.78},
    {"V t12", GrooveForm::v, false, 12, 2, 1, 60, 0, 0, 93.86, 14.70},
    {"V on backing t16", GrooveForm::v, false, 16, 6, 0, 45, 0, 0, 202.04, 19.25},
    {"steep V on backing t20", GrooveForm::v, false, 20, 6, 0, 30, 0, 0, 227.18, 0},
    {"double V t30", GrooveForm::v, true, 30, 2, 2, 60, 0, 0, 286.32, 0},
    {"single V t30", GrooveForm::v, false, 30, 2, 2, 60, 0, 0, 512.64, 0},
    {"double V t30, two thirds", GrooveForm::v, true, 30, 2, 2, 60, 0, 56.0 / 3.0, 311.47, 0},
    {"double V t40", GrooveForm::v, true, 40, 3, 2, 50, 0, 0, 456.67, 0},
    {"bevel t15", GrooveForm::bevel, false, 15, 3, 2, 45, 0, 0, 129.50, 0},
    {"bevel t25", GrooveForm::bevel, false, 25, 4, 1, 50, 0, 0, 443.23, 0},
    {"K t30", GrooveForm::bevel, true, 30, 3, 2, 45, 0, 0, 286.00, 0},
    {"U t30 beta 10", GrooveForm::u, false, 30, 2, 3, 10, 6, 0, 450.26, 21.59},
    {"U t30 beta 8", GrooveForm::u, false, 30, 2, 3, 8, 6, 0, 433.04, 20.02},
    {"U t50", GrooveForm::u, false, 50, 2, 3, 10, 8, 0, 1102.47, 0},
    {"double U t50", GrooveForm::u, true, 50, 2, 3, 10, 6, 0, 747.71, 0},
    {"J t30", GrooveForm::j, false, 30, 3, 2, 15, 8, 0, 359.70, 0},
    {"double J t50", GrooveForm::j, true, 50, 2, 2, 15, 8, 0, 534.55, 0},
};

using Spot = boost::geometry::model::d2::point_xy<double>;
using Polygon = boost::geometry::model::polygon<Spot, false, true>;
using Polygons = boost::geometry::model::multi_polygon<Polygon>;

Polygon polygon_of(const std::vector<section::Point>& outline) {
  Polygon polygon;
  for (const section::Point& p : outline) {
    boost::geometry::append(polygon.outer(), Spot(p.x_mm, p.y_mm));
  }
  boost::geometry::correct(polygon);
  return polygon;
}

double united_mm2(const Polygon& a, const Polygon& b) {
  Polygons both;
  boost::geometry::union_(a, b, both);
  return boost::geometry::area(both);
}

/// A gouge as drawn: a round bottom with tangent flanks, as a polygon of many corners; x from the
/// middle plane, y from the surface downwards turned to count up to it.
Polygon drawn_gouge(const joint::Gouge& gouge, double surface_mm) {
  constexpr int corners = 4000;
  const double flank = gouge.flank.rad();
  const double sweep = std::numbers::pi / 2.0 - flank;
  const double centre_mm = surface_mm - gouge.depth_mm + gouge.radius_mm;
  Polygon polygon;
  std::vector<Spot> right;
  for (int i = 0; i <= corners; ++i) {
    const double at = sweep * i / corners;
    right.emplace_back(gouge.radius_mm * std::sin(at), centre_mm - gouge.radius_mm * std::cos(at));
  }
  const double rise_mm = surface_mm - right.back().y();
  right.emplace_back(right.back().x() + rise_mm * std::tan(flank), surface_mm);
  for (const Spot& spot : right) boost::geometry::append(polygon.outer(), spot);
  for (std::size_t i = right.size(); i-- > 0;) {
    boost::geometry::append(polygon.outer(), Spot(-right[i].x(), right[i].y()));
  }
  boost::geometry::correct(polygon);
  return polygon;
}

}  // namespace

TEST_SUITE("section/preparations") {
  TEST_CASE("given seventeen grooves as drawn, area and opening are those of the closed forms") {
    for (const GrooveRow& row : rows) {
      const SectionParams params = params_of(row);
      const char* source = "closed forms of docs/methods/section.md, by script";
      check_expected(
          row.name, all_sides_mm2(params), {row.area_mm2, 0.005, Origin::computed, source});
      if (row.opening_mm > 0.0) {
        check_expected(std::string(row.name) + " opening",
                       made(params).opening_mm,
                       {row.opening_mm, 0.005, Origin::computed, source});
      }
    }
  }

  TEST_CASE("given a U of 27 mm cut, R 6 at 10 deg, half the cut holds 195.1305 mm2") {
    const WeldSection u = made(params_of({"", GrooveForm::u, false, 30, 0, 3, 10, 6, 0, 0, 0}));
    check_expected("half profile",
                   0.5 * u.area_mm2,
                   {195.1305, 5e-5, Origin::computed, "200 000 slices by script"});
    // The arc's area is exact; the shape between chords is off by the header's 0.2 % of R at most.
    const double y_mm = 3.0 + 6.0 * (1.0 - std::cos(0.7));
    CHECK(std::abs(section::width_at_mm(u, y_mm) - 2.0 * 6.0 * std::sin(0.7)) < 2.0 * 0.012);
  }

  TEST_CASE("given GB/T 10854's rule for a V of 20 mm, the opening is 22.78 mm") {
    SectionParams params;
    params.preparation = joint::single_v({2.0, 2.0}, Angle::deg(60.0));
    params.thickness_mm = 20.0;
    check_expected("opening",
                   made(params).opening_mm,
                   {22.78, 0.005, Origin::computed, "2(t-p)tan(beta)+b, GB/T 10854"});
  }

  TEST_CASE("given a V of unequal faces, the first member's face lies left and leans as stated") {
    Groove groove = joint::single_v({2.0, 1.0}, Angle::deg(50.0));
    groove.side_1.first_face = Angle::deg(10.0);
    SectionParams params;
    params.preparation = groove;
    params.thickness_mm = 21.0;
    const WeldSection section = made(params);
    const double tan_sum = std::tan(Angle::deg(10.0).rad()) + std::tan(Angle::deg(40.0).rad());
    CHECK(section.area_mm2 == doctest::Approx(2.0 * 21.0 + 0.5 * 400.0 * tan_sum).epsilon(1e-12));
    CHECK(section.profile.back().left_mm ==
          doctest::Approx(-1.0 - 20.0 * std::tan(Angle::deg(10.0).rad())).epsilon(1e-12));
  }

  TEST_CASE("given a compound V, its two slopes make the trapezia of the drawing") {
    Groove groove = joint::single_v({2.0, 2.0}, Angle::deg(16.0));
    groove.form = GrooveForm::compound_v;
    groove.side_1.lower_depth_mm = 9.0;
    groove.side_1.lower_angle = Angle::deg(65.0);
    SectionParams params;
    params.preparation = groove;
    params.thickness_mm = 40.0;
    const double low_mm = 2.0 + 18.0 * std::tan(Angle::deg(32.5).rad());
    const double high_mm = low_mm + 2.0 * 29.0 * std::tan(Angle::deg(8.0).rad());
    const WeldSection section = made(params);
    CHECK(section.opening_mm == doctest::Approx(high_mm).epsilon(1e-12));
    CHECK(section.area_mm2 ==
          doctest::Approx(4.0 + 0.5 * (2.0 + low_mm) * 9.0 + 0.5 * (low_mm + high_mm) * 29.0)
              .epsilon(1e-12));
  }

  TEST_CASE("given a tee with web 20, the two models of a 5 mm cover make 234.5 and 274.5 mm2") {
    SectionParams params;
    params.preparation = joint::single_bevel({3.0, 2.0}, Angle::deg(45.0));
    params.thickness_mm = 20.0;
    params.cap.leg_mm = 5.0;
    params.cap.shape = joint::CoverShape::corner_fillet;
    const char* source = "groove 222 + corner 12.5 or + full 52.5, by script";
    check_expected("corner", made(params).area_mm2, {234.5, 0.05, Origin::computed, source});
    params.cap.shape = joint::CoverShape::full_cover;
    check_expected("full", made(params).area_mm2, {274.5, 0.05, Origin::computed, source});
    const WeldSection full = made(params);
    CHECK(full.cap_shape == section::CapShape::triangle);
    CHECK(boost::geometry::area(polygon_of(full.outline)) ==
          doctest::Approx(full.area_mm2).epsilon(1e-12));
  }

  TEST_CASE("given fillets with a bulged face, area and throat are those of the circle's segment") {
    // Chord 11.31, rise 1: a circle of radius (w2/4 + e2) / 2e.
    SectionParams params;
    params.preparation = Fillet{8.0, 8.0, 1.0};
    const double w = 8.0 * std::numbers::sqrt2;
    const double radius = (w * w / 4.0 + 1.0) / 2.0;
    const double sweep = 2.0 * std::asin(w / (2.0 * radius));
    const double segment = 0.5 * radius * radius * (sweep - std::sin(sweep));
    const WeldSection convex = made(params);
    CHECK(convex.area_mm2 == doctest::Approx(32.0 + segment).epsilon(1e-12));
    CHECK(convex.throat_mm == doctest::Approx(8.0 / std::numbers::sqrt2).epsilon(1e-12));
    // A parabola of the same rise holds 0.6 % less (computed, docs/methods/section.md).
    CHECK(2.0 / 3.0 * w / segment == doctest::Approx(0.994).epsilon(1e-3));
    params.preparation = Fillet{8.0, 8.0, -1.0};
    const WeldSection concave = made(params);
    CHECK(concave.area_mm2 == doctest::Approx(32.0 - segment).epsilon(1e-12));
    CHECK(concave.throat_mm == doctest::Approx(8.0 / std::numbers::sqrt2 - 1.0).epsilon(1e-12));
  }

  TEST_CASE("given a fillet over a gap, both legs grow by it and the counted throat stays") {
    SectionParams params;
    params.preparation = Fillet{8.0, 8.0, 0.0, 2.0, 3.0};
    const WeldSection section = made(params);
    CHECK(section.area_mm2 == doctest::Approx(0.5 * 100.0 + 2.0 * 3.0).epsilon(1e-12));
    CHECK(section.behind_area_mm2 == doctest::Approx(6.0).epsilon(1e-12));
    CHECK(section.throat_mm == doctest::Approx(8.0 / std::numbers::sqrt2).epsilon(1e-12));
  }

  TEST_CASE("given plug and slot, the strip laid round fills the hole exactly") {
    SectionParams params;
    params.preparation = joint::Plug{22.0, 22.0, 12.0};
    const WeldSection plug = made(params);
    CHECK(plug.area_mm2 * plug.welded_round_mm ==
          doctest::Approx(std::numbers::pi / 4.0 * 22.0 * 22.0 * 12.0).epsilon(1e-12));
    params.preparation = joint::Plug{22.0, 60.0, 12.0};
    const WeldSection slot = made(params);
    CHECK(slot.area_mm2 * slot.welded_round_mm ==
          doctest::Approx((38.0 * 22.0 + std::numbers::pi / 4.0 * 22.0 * 22.0) * 12.0)
              .epsilon(1e-12));
  }

  TEST_CASE("for any preparation, a geometry library finds the same area in the drawn outline") {
    const std::uint64_t seed = base::named_seed(20261125, "polygons");
    base::Random random(seed);
    for (int i = 0; i < 600; ++i) {
      const SectionParams params = i % 4 == 0 ? random_fillet(random) : random_groove(random);
      const WeldSection section = made(params);
      const Polygon polygon = polygon_of(section.outline);
      // Chords of cap and bulge: 32, so 1/1024 of the cap and at most twice that of the bulge.
      const double drawn_mm2 = section.area_mm2 - section.cap_area_mm2 / 1024.0;
      const double slack_mm2 =
          1e-10 * section.area_mm2 + 2.0 * std::abs(section.bulge_area_mm2) / 1024.0;
      INFO("seed ",
           seed,
           " case ",
           i,
           " ",
           std::string(joint::preparation_name(params.preparation)));
      CHECK(boost::geometry::is_valid(polygon));
      CHECK(std::abs(boost::geometry::area(polygon) - drawn_mm2) <= slack_mm2);
    }
  }

  TEST_CASE("for any gouge behind a double V, the second side is the union of cut and gouge") {
    const std::uint64_t seed = base::named_seed(20261125, "gouge");
    base::Random random(seed);
    int gouged = 0;
    for (int i = 0; i < 200; ++i) {
      SectionParams params = params_of({"", GrooveForm::v, true, 30, 2, 2, 60, 0, 0, 0, 0});
      params.side = 2;
      const double alone_mm2 = made(params).area_mm2;
      const Polygon cut = polygon_of(made(params).outline);
      params.gouge = {random.between(4.0, 20.0),
                      random.between(3.0, 9.0),
                      Angle::deg(random.between(0.0, 30.0))};
      const auto section = weld_section(params);
      if (!section.has_value()) {
        CHECK(section.error().code == "section.gouge.out_of_range");
        continue;
      }
      const double surface_mm = section->height_mm;
      Polygon moved;
      const double lift_mm = surface_mm - 14.0;
      boost::geometry::transform(
          cut,
          moved,
          boost::geometry::strategy::transform::translate_transformer<double, 2, 2>(0.0, lift_mm));
      const bool has_flank = params.gouge.depth_mm >=
                             params.gouge.radius_mm * (1.0 - std::sin(params.gouge.flank.rad()));
      if (!has_flank) continue;  // a shallow segment is tested below
      ++gouged;
      INFO("seed ", seed, " case ", i);
      CHECK(
          section->area_mm2 ==
          doctest::Approx(united_mm2(moved, drawn_gouge(params.gouge, surface_mm))).epsilon(2e-3));
      CHECK(section->area_mm2 >= alone_mm2 * (1.0 - 1e-12));
    }
    CHECK(gouged > 50);
  }

  TEST_CASE("given a gouge behind a single V, the back weld fills it, a shallow one as a segment") {
    SectionParams params;
    params.preparation = joint::single_v({2.0, 2.0}, Angle::deg(60.0));
    params.thickness_mm = 20.0;
    params.gouge = {3.0, 6.0, Angle::deg(10.0)};
    CHECK(section::side_count(params) == 2);
    params.side = 2;
    const double half_sweep = std::acos(0.5);
    CHECK(made(params).area_mm2 ==
          doctest::Approx(36.0 * (half_sweep - std::sin(half_sweep) * 0.5)).epsilon(1e-12));
    params.gouge.depth_mm = 8.0;
    CHECK(made(params).area_mm2 ==
          doctest::Approx(boost::geometry::area(drawn_gouge(params.gouge, 8.0))).epsilon(1e-6));
  }

  TEST_CASE("refuses what cannot be cut or filled, each under its own code") {
    SectionParams params = params_of({"", GrooveForm::u, false, 10, 2, 3, 10, 9, 0, 0, 0});
    CHECK(code_of(params) == "section.radius.too_large");
    params = params_of({"", GrooveForm::u, false, 10, 2, 3, 10, 0, 0, 0, 0});
    CHECK(code_of(params) == "section.size.not_positive");
    params = params_of({"", GrooveForm::v, true, 30, 2, 2, 60, 0, 29, 0, 0});
    CHECK(code_of(params) == "section.depth.sum");
    params = params_of({"", GrooveForm::v, false, 30, 2, 2, 60, 0, 0, 0, 0});
    params.side = 2;
    CHECK(code_of(params) == "section.side.none");
    params.gouge = {30.0, 6.0, Angle()};
    CHECK(code_of(params) == "section.gouge.out_of_range");
    params = params_of({"", GrooveForm::v, true, 30, 5, 2, 60, 0, 0, 0, 0});
    params.side = 2;
    params.gouge = {14.2, 0.5, Angle()};
    CHECK(code_of(params) == "section.gouge.out_of_range");
    params = SectionParams{};
    params.preparation = Fillet{8.0, 8.0, 6.0};
    CHECK(code_of(params) == "section.bulge.out_of_range");
    params.preparation = Fillet{8.0, 8.0, -5.7};
    CHECK(code_of(params) == "section.bulge.out_of_range");
    params.preparation = Fillet{8.0, 8.0, 0.0, 0.0, 2.0};
    CHECK(code_of(params) == "section.gap.behind");
    params.preparation = joint::Plug{22.0, 20.0, 12.0};
    CHECK(code_of(params) == "section.plug.shape");
    params.preparation = joint::single_v({2.0, 2.0}, Angle::deg(60.0));
    params.thickness_mm = 20.0;
    params.cap.shape = joint::CoverShape::full_cover;
    params.cap.leg_mm = 5.0;
    CHECK(code_of(params) == "section.cover.misplaced");
  }

  TEST_CASE("given limits just inside, they are accepted") {
    // R (1 - sin 10) of R = 8.4 is 6.94 mm in a 7 mm cut.
    CHECK(code_of(params_of({"", GrooveForm::u, false, 10, 2, 3, 10, 8.4, 0, 0, 0})) == "accepted");
    CHECK(code_of(params_of({"", GrooveForm::v, true, 30, 2, 2, 60, 0, 27.9, 0, 0})) == "accepted");
    SectionParams params;
    params.preparation = Fillet{8.0, 8.0, 5.6};
    CHECK(code_of(params) == "accepted");
  }
}

}  // namespace seamturn::tests
