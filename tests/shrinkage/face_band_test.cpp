// SPDX-License-Identifier: MIT
#include "seamturn/shrinkage/face_band.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using namespace shrinkage;  // NOLINT: the room under test
using base::Angle;
using geom::Mat3;
using geom::Vec3;

namespace {

constexpr double pi = std::numbers::pi;
constexpr double heat_j_mm3 = 38.0;  // J/mm for every mm2 of weld metal

/// The T of the rules' worked example: face on the flange, its normal away from the web.
constexpr CutSection t_section{7600.0, -85.79, 75.64e6};
constexpr CutSection plate_section{4000.0 * 20.0, -10.0, 4000.0 * 8000.0 / 12.0};

DatumFace t_face() {
  DatumFace face;
  face.length_u_mm = 4000.0;
  face.length_v_mm = 200.0;
  return face;
}

std::vector<FaceStage> t_stages() {
  return {{t_section, plate_section}};
}

FaceWeld along_u(const char* id, double area_mm2, double height_mm, double length_mm = 4000.0) {
  FaceWeld weld;
  weld.seam_id = id;
  weld.area_mm2 = area_mm2;
  weld.net_heat_j_mm = heat_j_mm3 * area_mm2;
  weld.tangents_mm = tangent_integral_mm(geom::LinePath{Vec3::Zero(), Vec3(length_mm, 0, 0)});
  weld.height_mm = height_mm;
  return weld;
}

FaceWeld fillet_across(double leg_mm, double thickness_mm, double width_mm) {
  FaceWeld weld = along_u("f", leg_mm * leg_mm / 2.0, -thickness_mm);
  OnPlate on;
  on.fillet = true;
  on.leg_mm = leg_mm;
  on.thickness_mm = thickness_mm;
  on.width_mm = width_mm;
  weld.on_plate = on;
  return weld;
}

bool has_code(const FaceBand& band, const char* code) {
  return std::any_of(band.findings.begin(), band.findings.end(), [code](const auto& finding) {
    return finding.code == code && finding.severity == base::Severity::warning;
  });
}

}  // namespace

TEST_SUITE("shrinkage/face_band") {
  TEST_CASE("given welds along the whole T, cross: the band is the beam's between both rules") {
    const FaceBand band =
        face_band(t_face(), t_stages(), {along_u("1", 32, -22.67), along_u("2", 32, -22.67)});
    const BowedMember member{-22.67 + 85.79, 4000.0, 75.64e6};
    CHECK(band.u.bow_mm.high == doctest::Approx(bow_by_area(64.0, member).mm));
    CHECK(band.u.bow_mm.low ==
          doctest::Approx(bow_by_force(force_by_heat_n(64.0 * heat_j_mm3), member).mm));
    check_expected(
        "by area", band.u.bow_mm.high, {4.27, 0.005, Origin::computed, "reference example"});
    check_expected(
        "by heat", band.u.bow_mm.low, {3.94, 0.005, Origin::computed, "reference example"});
    CHECK(band.u.bow_mm.low / band.u.bow_mm.high > 0.92);
    CHECK(band.u.bend == Bend::hollow);
    check_expected(
        "by force", band.u.along_mm.high, {1.24, 0.005, Origin::computed, "reference example"});
    check_expected(
        "by area", band.u.along_mm.low, {0.84, 0.005, Origin::computed, "reference example"});
    REQUIRE(band.u.shares.size() == 2);
    CHECK(band.u.shares[1].seam_id == "2");
    CHECK(band.u.shares[1].bow_mm.high == doctest::Approx(band.u.bow_mm.high / 2.0));
    CHECK(band.v.bow_mm == Band{0.0, 0.0});
    CHECK(band.v.bend == Bend::none);
    CHECK(band.v.along_mm == Band{0.0, 0.0});
    CHECK(band.findings.empty());
  }

  TEST_CASE("given a weld below the centroid, law: the face crowns by as much") {
    const FaceBand above = face_band(t_face(), t_stages(), {along_u("1", 32, -85.79 + 20)});
    const FaceBand below = face_band(t_face(), t_stages(), {along_u("1", 32, -85.79 - 20)});
    CHECK(above.u.bow_mm.low > 0.0);
    CHECK(below.u.bow_mm.low == doctest::Approx(-above.u.bow_mm.high));
    CHECK(below.u.bow_mm.high == doctest::Approx(-above.u.bow_mm.low));
    CHECK(below.u.bend == Bend::crowned);
    CHECK(below.u.worst_on_the_way_mm.high == doctest::Approx(above.u.worst_on_the_way_mm.high));
  }

  TEST_CASE("given mirror pairs, law: no bow at the end, the largest after the first of a pair") {
    const std::vector<FaceWeld> alternating = {along_u("a", 30, -85.79 + 40),
                                               along_u("b", 30, -85.79 - 40),
                                               along_u("c", 30, -85.79 + 40),
                                               along_u("d", 30, -85.79 - 40)};
    const FaceBand band = face_band(t_face(), t_stages(), alternating);
    CHECK(std::abs(band.u.bow_mm.low) < 1e-9);
    CHECK(std::abs(band.u.bow_mm.high) < 1e-9);
    CHECK(band.u.bend == Bend::none);
    CHECK(band.u.worst_after_welds == 1);
    const FaceBand one_side = face_band(
        t_face(), t_stages(), {alternating[0], alternating[2], alternating[1], alternating[3]});
    CHECK(one_side.u.worst_after_welds == 2);
    CHECK(one_side.u.worst_on_the_way_mm.high ==
          doctest::Approx(2.0 * band.u.worst_on_the_way_mm.high));
  }

  TEST_CASE("given rules whose worst moments differ, the moment of the larger amount stands") {
    FaceWeld hot = along_u("hot", 10, -85.79 - 40);
    hot.net_heat_j_mm *= 9.0;
    const FaceBand band = face_band(t_face(), t_stages(), {along_u("big", 15, -85.79 + 40), hot});
    // By area 15 then 5, worst after one; by heat 15 then -75, worst after two and larger.
    CHECK(band.u.worst_after_welds == 2);
    CHECK(band.u.worst_on_the_way_mm.high == doctest::Approx(-band.u.bow_mm.low));
  }

  TEST_CASE("given a weld along v, cross: the section across v resists it over the length of v") {
    FaceWeld weld = along_u("v", 64, 4.0);
    weld.tangents_mm = tangent_integral_mm(geom::LinePath{Vec3::Zero(), Vec3(0, 200, 0)});
    const FaceBand band = face_band(t_face(), t_stages(), {weld});
    const BowedMember member{14.0, 200.0, plate_section.second_moment_mm4};
    CHECK(band.v.bow_mm.high == doctest::Approx(bow_by_area(64.0, member).mm));
    CHECK(band.v.along_mm.low ==
          doctest::Approx(along_fillet({64.0, plate_section.area_mm2, 200.0})->mm));
    CHECK(band.u.bow_mm == Band{0.0, 0.0});
  }

  TEST_CASE("given rules that disagree on the side, the bend is undecided") {
    FaceWeld hot = along_u("hot", 10, -85.79 + 40);
    hot.net_heat_j_mm *= 2.0;
    const FaceBand band = face_band(t_face(), t_stages(), {hot, along_u("big", 15, -85.79 - 40)});
    CHECK(band.u.bow_mm.low < 0.0);
    CHECK(band.u.bow_mm.high > 0.0);
    CHECK(band.u.bend == Bend::undecided);
    CHECK(bend_name(band.u.bend) == "undecided");
    CHECK(bend_name(Bend::hollow) == "hollow");
  }

  TEST_CASE(
      "for any order on one section, law: the sum stays, and no start is worse than the worst") {
    base::Random random(base::named_seed(44, "face band"));
    for (int run = 0; run < 50; ++run) {
      std::vector<FaceWeld> welds;
      for (int i = 0; i < 6; ++i) {
        FaceWeld weld = along_u("w", random.between(10, 60), random.between(-200, 50));
        const Vec3 to(random.between(-900, 900), random.between(-90, 90), random.between(-90, 90));
        weld.tangents_mm = tangent_integral_mm(geom::LinePath{Vec3(1, 2, 3), to});
        weld.net_heat_j_mm = random.between(500, 2500);
        welds.push_back(weld);
      }
      const FaceBand first = face_band(t_face(), t_stages(), welds);
      for (std::size_t i = welds.size() - 1; i > 0; --i) {
        std::swap(welds[i], welds[random.below(i + 1)]);
      }
      const FaceBand second = face_band(t_face(), t_stages(), welds);
      INFO("seed 44, run " << run);
      for (const auto direction : {&FaceBand::u, &FaceBand::v}) {
        const DirectionBand& a = first.*direction;
        const DirectionBand& b = second.*direction;
        CHECK(a.bow_mm.low == doctest::Approx(b.bow_mm.low).epsilon(1e-9));
        CHECK(a.bow_mm.high == doctest::Approx(b.bow_mm.high).epsilon(1e-9));
        CHECK(a.along_mm.high == doctest::Approx(b.along_mm.high).epsilon(1e-9));
        const double end_mm = std::max(std::abs(a.bow_mm.low), std::abs(a.bow_mm.high));
        CHECK(a.worst_on_the_way_mm.high >= end_mm - 1e-9);
      }
    }
  }

  TEST_CASE("for lengths k times as long, law: bows and shrinkages are k times as large") {
    const auto at = [](double k) {
      DatumFace face = t_face();
      face.length_u_mm *= k;
      face.length_v_mm *= k;
      const auto grown = [k](const CutSection& s) {
        return CutSection{
            s.area_mm2 * k * k, s.centroid_mm * k, s.second_moment_mm4 * k * k * k * k};
      };
      FaceWeld weld = along_u("1", 32 * k * k, -22.67 * k, 3000.0 * k);
      weld.on_plate = OnPlate{false, 20.0 * k, 2.0 * k, 0.0, 0.0, false};
      return face_band(face, {{grown(t_section), grown(plate_section)}}, {weld});
    };
    const FaceBand small = at(1.0), large = at(4.0);
    CHECK(large.u.bow_mm.low == doctest::Approx(4.0 * small.u.bow_mm.low));
    CHECK(large.u.bow_mm.high == doctest::Approx(4.0 * small.u.bow_mm.high));
    CHECK(large.u.along_mm.high == doctest::Approx(4.0 * small.u.along_mm.high));
    CHECK(large.v.across_mm.high == doctest::Approx(4.0 * small.v.across_mm.high));
    CHECK(small.v.across_mm.high > 0.0);
  }

  TEST_CASE("given two stages, each weld is resisted by the section of its own") {
    const CutSection flange{4000.0, -10.0, 200.0 * 8000.0 / 12.0};
    FaceWeld late = along_u("late", 32, -22.67);
    late.stage = 1;
    const std::vector<FaceStage> stages = {{flange, plate_section}, {t_section, plate_section}};
    const FaceBand both = face_band(t_face(), stages, {along_u("early", 32, -22.67), late});
    const FaceBand alone = face_band(t_face(), t_stages(), {along_u("late", 32, -22.67)});
    CHECK(both.u.shares[1].bow_mm == alone.u.shares[0].bow_mm);
    const BowedMember member{-12.67, 4000.0, flange.second_moment_mm4};
    CHECK(both.u.shares[0].bow_mm.low == doctest::Approx(bow_by_area(32.0, member).mm));
  }

  TEST_CASE("given a ring weld, closed-form: pi/4 of the turn of a ring under a force beside it") {
    // A ring of one section I turns by F e r/(E I). Cut across, two sections resist: 2 I.
    const double r = 150.0, e = 12.0, one_i = 4.0e5, area = 40.0;
    geom::CirclePath circle;
    circle.radius_mm = r;
    FaceWeld weld = along_u("ring", area, e - 30.0);
    weld.tangents_mm = tangent_integral_mm(circle);
    const Mat3 expected = pi * r * Vec3(1, 1, 0).asDiagonal().toDenseMatrix();
    CHECK((weld.tangents_mm - expected).norm() < 1e-5 * pi * r);
    DatumFace face;
    face.length_u_mm = face.length_v_mm = 2.0 * r;
    const CutSection cut{6000.0, -30.0, 2.0 * one_i};
    const FaceBand band = face_band(face, {{cut, cut}}, {weld});
    const double turn_rad = force_by_area_n(area) * e * r / (youngs_modulus_n_mm2 * one_i);
    const double curvature = 8.0 * band.u.bow_mm.high / (4.0 * r * r);
    check_expected("turn at the rim",
                   curvature * r / turn_rad,
                   {pi / 4.0, 1e-5, Origin::closed_form, "mean of the force over the diameter"});
    CHECK(band.v.bow_mm.high == doctest::Approx(band.u.bow_mm.high));
    weld.closed_ring = true;  // the band then reaches to the whole turn
    const FaceBand wide = face_band(face, {{cut, cut}}, {weld});
    const double most = 8.0 * wide.u.bow_mm.high / (4.0 * r * r);
    check_expected("turn of the whole ring",
                   most * r / turn_rad,
                   {1.0, 1e-5, Origin::closed_form, "F e r over E I"});
    CHECK(wide.u.bow_mm.low == doctest::Approx(band.u.bow_mm.low));
    CHECK(wide.u.shares.front().bow_mm == wide.u.bow_mm);
  }

  TEST_CASE("given lines, polylines and arcs, closed-form: the tangents' integral") {
    const Mat3 line = tangent_integral_mm(geom::LinePath{Vec3(1, 1, 1), Vec3(4, 5, 1)});
    CHECK(line.trace() == doctest::Approx(5.0));
    CHECK(line(0, 1) == doctest::Approx(12.0 / 5.0));
    const geom::PolylinePath square{{{0, 0, 0}, {10, 0, 0}, {10, 10, 0}, {0, 10, 0}}, true};
    const Mat3 round = tangent_integral_mm(square);
    CHECK(round(0, 0) == doctest::Approx(20.0));
    CHECK(round(1, 1) == doctest::Approx(20.0));
    geom::ArcPath arc;
    arc.radius_mm = 100.0;
    arc.sweep = Angle::deg(90.0);
    const Mat3 quarter = tangent_integral_mm(arc);
    CHECK(quarter(0, 0) == doctest::Approx(100.0 * pi / 4.0).epsilon(1e-5));
    CHECK(quarter(0, 1) == doctest::Approx(-50.0).epsilon(1e-5));
  }

  TEST_CASE("given paths beside a face, closed-form: only what lies over it is taken") {
    DatumFace face;
    face.point = Vec3(100, 0, 0);
    face.length_u_mm = 200.0;
    face.length_v_mm = 80.0;
    const geom::LinePath along{Vec3(-100, 10, -15), Vec3(300, 10, -15)};  // 200 of 400 over it
    CHECK(tangents_over_mm(face, along)(0, 0) == doctest::Approx(200.0).epsilon(1e-2));
    CHECK(tangents_over_mm(face, geom::LinePath{Vec3(-9, 41, 0), Vec3(209, 41, 0)}).norm() == 0.0);
    const geom::LinePath within{Vec3(10, -30, 5), Vec3(150, 30, 5)};
    CHECK(tangents_over_mm(face, within) == tangent_integral_mm(within));
    // A ring on the edge of a disc lies over it, one outside does not.
    face.length_u_mm = face.length_v_mm = 100.0;
    geom::CirclePath ring;
    ring.centre = face.point;
    ring.radius_mm = 49.9;
    const double pi_r = pi * ring.radius_mm;
    for (const bool round : {false, true}) {
      face.round = round;
      ring.radius_mm = 49.9;
      CHECK(tangents_over_mm(face, ring)(0, 0) == doctest::Approx(pi_r).epsilon(1e-5));
      ring.radius_mm = 60.0;  // over a square of 100 near its corners only
      CHECK((tangents_over_mm(face, ring).trace() > 0.0) == !round);
    }
  }

  TEST_CASE("given bows, closed-form: how far the face is out of plane") {
    DatumFace face;
    FaceBand band;
    band.u.bow_mm = {-0.5, -0.2}, band.u.bend = Bend::crowned;
    band.v.bow_mm = {-0.3, -0.1}, band.v.bend = Bend::crowned;
    CHECK(out_of_plane_mm(face, band) == doctest::Approx(0.8));  // corners against the middle
    face.round = true;
    CHECK(out_of_plane_mm(face, band) == doctest::Approx(0.5));  // a bowl
    band.v.bow_mm = {0.1, 0.3}, band.v.bend = Bend::hollow;
    CHECK(out_of_plane_mm(face, band) == doctest::Approx(0.8));  // a saddle
    band.tilts.push_back({"S1", {0.0, 1.2}, true});
    CHECK(out_of_plane_mm(face, band) == doctest::Approx(1.2));
  }

  TEST_CASE("given butts across the face, the face shortens between both butt rules") {
    FaceWeld weld = along_u("b", 100, -10, 200.0);
    weld.tangents_mm = tangent_integral_mm(geom::LinePath{Vec3::Zero(), Vec3(0, 200, 0)});
    weld.on_plate = OnPlate{false, 20.0, 2.0, 0.0, 0.0, false};
    const FaceBand full = face_band(t_face(), t_stages(), {weld});
    CHECK(full.u.across_mm.low == doctest::Approx(0.5));
    CHECK(full.u.across_mm.high == doctest::Approx(1.1));
    CHECK(full.v.across_mm == Band{0.0, 0.0});
    weld.tangents_mm *= 0.5;  // over half the width
    CHECK(face_band(t_face(), t_stages(), {weld}).u.across_mm.high == doctest::Approx(0.55));
  }

  TEST_CASE("given fillets, across them stands half the tee's rule to the allowance") {
    const FaceBand band = face_band(t_face(), t_stages(), {fillet_across(8, 20, 200)});
    const double full_length_share = 1.0;
    CHECK(band.v.across_mm.low == doctest::Approx(0.204 * full_length_share));
    CHECK(band.v.across_mm.high == doctest::Approx(0.8 * full_length_share));
    CHECK_FALSE(has_code(band, "shrinkage.fillet.leg"));
    CHECK_FALSE(has_code(face_band(t_face(), t_stages(), {fillet_across(15, 20, 0)}),
                         "shrinkage.fillet.leg"));
    const FaceBand large = face_band(t_face(), t_stages(), {fillet_across(15.1, 20, 0)});
    CHECK(has_code(large, "shrinkage.fillet.leg"));
    CHECK(large.v.across_mm.low == 0.0);
    CHECK(large.v.across_mm.high == doctest::Approx(0.51 * 15.1 / 20.0));
    CHECK(large.tilts.empty());
  }

  TEST_CASE("given plates of 12.7 mm and more, two rules of tilt speak, then one from 0") {
    const FaceBand thin = face_band(t_face(), t_stages(), {fillet_across(8, 12.7, 200)});
    REQUIRE(thin.tilts.size() == 1);
    CHECK_FALSE(thin.tilts[0].one_rule);
    CHECK(thin.tilts[0].lift_mm.low == doctest::Approx(200.0 * std::tan(pi / 180.0)));
    CHECK(thin.tilts[0].lift_mm.high == doctest::Approx(200.0 * std::tan(pi / 60.0)));
    const double by_rule = flange_tilt({200, 8, 4}).mm;
    CHECK(by_rule > 200.0 * std::tan(pi / 60.0));
    CHECK(face_band(t_face(), t_stages(), {fillet_across(8, 4, 200)}).tilts[0].lift_mm.high ==
          doctest::Approx(by_rule));
    CHECK_FALSE(has_code(thin, "shrinkage.tilt.one_rule"));
    const FaceBand thick = face_band(t_face(), t_stages(), {fillet_across(8, 12.71, 200)});
    CHECK(thick.tilts[0].one_rule);
    CHECK(thick.tilts[0].lift_mm.low == 0.0);
    CHECK(thick.tilts[0].lift_mm.high == doctest::Approx(flange_tilt({200, 8, 12.71}).mm));
    CHECK(has_code(thick, "shrinkage.tilt.one_rule"));
    FaceWeld pair = fillet_across(8, 10, 200);
    pair.on_plate->balanced = true;
    const FaceBand balanced = face_band(t_face(), t_stages(), {pair});
    CHECK(balanced.tilts[0].lift_mm.low == 0.0);
    CHECK(balanced.tilts[0].lift_mm.high == doctest::Approx(flange_tilt({200, 8, 10}).mm));
  }

  TEST_CASE("given weld metal of 5 % of the section, the rules are said to be beyond their use") {
    CHECK(has_code(face_band(t_face(), t_stages(), {along_u("x", 380.0, -20)}),
                   "shrinkage.section.small"));
    const FaceBand less = face_band(t_face(), t_stages(), {along_u("x", 379.9, -20)});
    CHECK_FALSE(has_code(less, "shrinkage.section.small"));
    CHECK(less.u.along_mm.low > 0.0);
    const FaceBand more = face_band(t_face(), t_stages(), {along_u("x", 380.0, -20)});
    CHECK(more.u.along_mm.low == 0.0);
    REQUIRE_FALSE(more.findings.empty());
    CHECK(more.findings.front().text.rfind("x: ", 0) == 0);
  }

  TEST_CASE("given ring welds by a bore, closed-form: hoop strain times the diameter") {
    const BoreWeld weld{36.0, 36.0 * heat_j_mm3, 2000.0};
    const Band one = bore_closing_mm(120.0, {weld});
    CHECK(one.low == doctest::Approx(0.025 * 36.0 / 2000.0 * 120.0));
    CHECK(one.high == doctest::Approx(200.0 * 36.0 * heat_j_mm3 / (206000.0 * 2000.0) * 120.0));
    CHECK(bore_closing_mm(120.0, {weld, weld}).high == doctest::Approx(2.0 * one.high));
    CHECK(bore_closing_mm(120.0, {}) == Band{0.0, 0.0});
    CHECK(bore_closing_mm(120.0, {{100.0, 3800.0, 2000.0}}).low == 0.0);
    CHECK(bore_closing_mm(120.0, {{99.9, 3796.0, 2000.0}}).low > 0.0);
    CHECK_THROWS_AS((void)bore_closing_mm(0.0, {}), base::ContractViolation);
    CHECK_THROWS_AS((void)bore_closing_mm(1.0, {{1.0, 1.0, 0.0}}), base::ContractViolation);
  }

  TEST_CASE("refuses what is no face, stage or weld because it is a caller's bug") {
    using base::ContractViolation;
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const auto with_face = [](auto change) {
      DatumFace face = t_face();
      change(face);
      (void)face_band(face, t_stages(), {});
    };
    CHECK_THROWS_AS(with_face([](DatumFace& f) { f.length_u_mm = 0.0; }), ContractViolation);
    CHECK_THROWS_AS(with_face([](DatumFace& f) { f.u = Vec3(2, 0, 0); }), ContractViolation);
    CHECK_THROWS_AS(with_face([](DatumFace& f) { f.v = f.u; }), ContractViolation);
    CHECK_THROWS_AS(with_face([](DatumFace& f) { f.normal = f.u; }), ContractViolation);
    CHECK_THROWS_AS(with_face([nan](DatumFace& f) { f.point.x() = nan; }), ContractViolation);
    const auto with_weld = [](auto change) {
      FaceWeld weld = along_u("1", 32, -20);
      change(weld);
      (void)face_band(t_face(), t_stages(), {weld});
    };
    CHECK_THROWS_AS(with_weld([](FaceWeld& w) { w.stage = 1; }), ContractViolation);
    CHECK_THROWS_AS(with_weld([](FaceWeld& w) { w.area_mm2 = 0.0; }), ContractViolation);
    CHECK_THROWS_AS(with_weld([nan](FaceWeld& w) { w.net_heat_j_mm = nan; }), ContractViolation);
    CHECK_THROWS_AS(with_weld([nan](FaceWeld& w) { w.tangents_mm(1, 1) = nan; }),
                    ContractViolation);
    CHECK_THROWS_AS(with_weld([nan](FaceWeld& w) { w.height_mm = nan; }), ContractViolation);
  }
}

}  // namespace seamturn::tests
