// SPDX-License-Identifier: MIT
#include "seamturn/shrinkage/rules.hpp"

#include <cmath>
#include <limits>
#include <numbers>

#include "oracles/shrinkage.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using namespace shrinkage;  // NOLINT: the room under test

namespace {

bool warns(const RuleValue& value, const char* code) {
  return value.findings.size() == 1 && value.findings.front().code == code;
}

/// Area of a V of 60 deg without cap.
double v_area_mm2(double thickness_mm, double gap_mm) {
  return gap_mm * thickness_mm + thickness_mm * thickness_mm * std::tan(std::numbers::pi / 6.0);
}

}  // namespace

TEST_SUITE("shrinkage/rules") {
  TEST_CASE("given ten printed bevels, published: a tenth of the mean width is what stands there") {
    for (const BevelShrinkRow& row : bevel_shrink_rows) {
      const double t = row.thickness_mm;
      const double area_mm2 = 2.0 * t + (t - 2.0) * (t - 2.0) + (t + 2.0);
      check_expected("T " + std::to_string(t),
                     butt_by_mean_width({area_mm2, t}).mm,
                     {row.shrinkage_mm, 0.0051, Origin::published, "SHRINK-STATEMENT"});
    }
  }

  TEST_CASE("given inches, closed-form: the butt rule in mm is 25.4 times that in inches") {
    // Some copies of the rule write 5.08 A/t + 1.27 g, meant for inches, and are fed mm.
    const double inches = butt_by_area_and_gap({0.5, 0.5, 0.125}).mm;
    check_expected("inches", inches, {0.20625, 1e-12, Origin::closed_form, "0.2 + 0.05/8"});
    const double in_mm = butt_by_area_and_gap({0.5 * 25.4 * 25.4, 12.7, 0.125 * 25.4}).mm;
    check_expected("mm", in_mm, {5.239, 5e-4, Origin::closed_form, "0.20625 in"});
    CHECK(in_mm == doctest::Approx(25.4 * inches).epsilon(1e-12));
    CHECK(in_mm == doctest::Approx(5.08 * 0.5 / 0.5 + 1.27 * 0.125).epsilon(1e-12));
  }

  TEST_CASE("given a V in 12 mm plate, the usual 1/16 in lies between both butt rules") {
    // Plausibility: the print states no joint, so it is not counted.
    const ButtWeld weld{v_area_mm2(12.0, 3.0), 12.0, 3.0};
    CHECK(weld.area_mm2 == doctest::Approx(119.1).epsilon(1e-3));
    check_expected("0.2 rule",
                   butt_by_area_and_gap(weld).mm,
                   {2.14, 0.005, Origin::computed, "by a separate script"});
    check_expected("0.1 rule",
                   butt_by_mean_width(weld).mm,
                   {0.99, 0.005, Origin::computed, "by a separate script"});
    CHECK(butt_by_mean_width(weld).mm < usual_butt_mm);
    CHECK(butt_by_area_and_gap(weld).mm > usual_butt_mm);
  }

  TEST_CASE("given V and X in 25 mm plate, the rules give what was worked out beside them") {
    check_expected("V",
                   butt_by_area_and_gap({v_area_mm2(25.0, 3.0), 25.0, 3.0}).mm,
                   {3.64, 0.005, Origin::computed, "A 435.8"});
    check_expected("V",
                   butt_by_mean_width({v_area_mm2(25.0, 3.0), 25.0, 3.0}).mm,
                   {1.74, 0.005, Origin::computed, "A 435.8"});
    check_expected("X",
                   butt_by_area_and_gap({255.4, 25.0, 3.0}).mm,
                   {2.19, 0.005, Origin::computed, "A 255.4"});
    check_expected(
        "X", butt_by_mean_width({255.4, 25.0}).mm, {1.02, 0.005, Origin::computed, "A 255.4"});
  }

  TEST_CASE("given the published allowances, they are held") {
    constexpr const char* source = "TWI-SHRINK";
    const double held[] = {allowance_along_fillet(allowed_length_mm).mm.high,
                           allowance_along_butt(allowed_length_mm).mm.high,
                           allowance_across_fillet({6.0, 10.0})->mm.high,
                           allowance_across_v().mm.low,
                           allowance_across_v().mm.high};
    for (std::size_t i = 0; i < std::size(held); ++i) {
      check_expected("allowance", held[i], {allowances_mm[i], 1e-12, Origin::published, source});
    }
    check_expected("twin",
                   allowance_along_fillet(allowance_twin_length_mm).mm.high,
                   {allowance_twin_mm, 0.05, Origin::published, "SHRINK-ARTICLE", "a twin"});
    check_expected("per metre",
                   allowance_along_fillet(1000.0).mm.low,
                   {0.267, 5e-4, Origin::computed, "0.8/3"});
  }

  TEST_CASE("given fillets, the legs' bound lies at 3/4 of the plate") {
    CHECK(tee_fillets({15.0, 20.0}).findings.empty());
    CHECK(warns(tee_fillets({15.01, 20.0}), "shrinkage.fillet.leg"));
    CHECK(lap_fillets({15.0, 20.0}).findings.empty());
    CHECK(warns(lap_fillets({15.01, 20.0}), "shrinkage.fillet.leg"));
    CHECK(allowance_across_fillet({15.0, 20.0}).has_value());
    const auto refused = allowance_across_fillet({15.01, 20.0});
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().code == "shrinkage.allowance.leg");
    check_expected(
        "tee", tee_fillets({8.0, 20.0}).mm, {0.41, 0.005, Origin::computed, "1.02 x 8/20"});
    check_expected(
        "lap", lap_fillets({8.0, 20.0}).mm, {0.61, 0.005, Origin::computed, "1.52 x 8/20"});
  }

  TEST_CASE("given a butt along thin plate, the remembered rule stays below the allowance") {
    const RuleValue rule = along_butt({300.0, 3000.0, 12.0});
    check_expected("along", rule.mm, {2.29, 0.005, Origin::computed, "305 I L/t 1e-7"});
    CHECK(rule.mm < allowance_along_butt(3000.0).mm.high);
    CHECK(rule.citation.status == base::Status::from_memory);
    CHECK(along_butt({300.0, 3000.0, 20.0}).findings.empty());
    CHECK(warns(along_butt({300.0, 3000.0, 20.1}), "shrinkage.long_butt.thick"));
  }

  TEST_CASE("given 5 % of weld metal, the rule along fillets ends") {
    CHECK(along_fillet({49.9, 1000.0, 1000.0}).has_value());
    const auto refused = along_fillet({50.0, 1000.0, 1000.0});
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().code == "shrinkage.long_fillet.share");
  }

  TEST_CASE("given a T section with two fillets, bow and shortening are those worked out") {
    // Flange 200 x 20, web 300 x 12, 4 m, two fillets of 8 mm: A 7600, I 75.64e6, d 63.1.
    const BowedMember member{63.1, 4000.0, 75.64e6};
    const double force_n = force_by_heat_n(64.0 * 38.0);
    check_expected("F", force_n / 1000.0, {486.0, 0.5, Origin::computed, "0.2 x 38 x 64"});
    check_expected(
        "by area", bow_by_area(64.0, member).mm, {4.27, 0.005, Origin::computed, "0.005 A d L2/I"});
    check_expected(
        "by heat", bow_by_force(force_n, member).mm, {3.94, 0.005, Origin::computed, "F d L2/8EI"});
    check_expected("shorter by force",
                   shortening_by_force(force_n, 4000.0, 7600.0).mm,
                   {1.24, 0.005, Origin::computed, "F L/(E A)"});
    check_expected("shorter by area",
                   along_fillet({64.0, 7600.0, 4000.0})->mm,
                   {0.84, 0.005, Origin::computed, "25 x 64/7600 x 4"});
  }

  TEST_CASE("given 38 J/mm for every mm2, cross: both forces agree within 8 %") {
    const double ratio = force_by_heat_n(38.0) / force_by_area_n(1.0);
    CHECK(ratio == doctest::Approx(7.6 / 8.24));
    CHECK(ratio > 0.92);
    CHECK(ratio < 1.0);
    const BowedMember member{-20.0, 1500.0, 3.0e6};
    CHECK(bow_by_area(30.0, member).mm ==
          doctest::Approx(bow_by_force(force_by_area_n(30.0), member).mm));
    CHECK(bow_by_area(30.0, member).mm < 0.0);
  }

  TEST_CASE("given flanges, the tilt is that worked out, in mm and in inches") {
    const auto tilt = [](double w, double z, double t) { return flange_tilt({w, z, t}).mm; };
    constexpr const char* source = "0.1925 W z^1.3/t2";
    check_expected("t 20", tilt(200, 8, 20), {1.44, 0.005, Origin::computed, source});
    check_expected("t 12", tilt(200, 8, 12), {3.99, 0.005, Origin::computed, source});
    check_expected("t 25", tilt(300, 10, 25), {1.84, 0.005, Origin::computed, source});
    const double inches = 0.02 * 6.0 * std::pow(0.25, 1.3) / (0.375 * 0.375);
    check_expected("in inches",
                   tilt(6 * 25.4, 0.25 * 25.4, 0.375 * 25.4) / 25.4,
                   {inches, 1e-4, Origin::closed_form, "the same rule in inches: 0.141"});
  }

  TEST_CASE("given a lean, the published 2 deg over 6 in lies in the band and its edge is 1/2 in") {
    const auto lean = published_lean(6.0 * 25.4, 0.375 * 25.4);
    REQUIRE(lean.has_value());
    CHECK(lean->mm.low < lean_lift_mm);
    CHECK(lean->mm.high > lean_lift_mm);
    const auto one_metre = published_lean(1000.0, 12.7);
    REQUIRE(one_metre.has_value());
    check_expected(
        "1 deg", one_metre->mm.low, {17.4551, 1e-4, Origin::closed_form, "1000 tan 1 deg"});
    check_expected(
        "3 deg", one_metre->mm.high, {52.4078, 1e-4, Origin::closed_form, "1000 tan 3 deg"});
    const auto thick = published_lean(1000.0, 12.71);
    REQUIRE_FALSE(thick.has_value());
    CHECK(thick.error().code == "shrinkage.lean.thick");
  }

  TEST_CASE("for lengths k times as long, law: butt rules and bows are k times as large") {
    constexpr double k = 3.0;
    const ButtWeld small{40.0, 10.0, 2.0}, large{40.0 * k * k, 10.0 * k, 2.0 * k};
    CHECK(butt_by_area_and_gap(large).mm == doctest::Approx(k * butt_by_area_and_gap(small).mm));
    CHECK(butt_by_mean_width(large).mm == doctest::Approx(k * butt_by_mean_width(small).mm));
    const BowedMember member{10.0, 500.0, 2.0e5};
    const BowedMember grown{10.0 * k, 500.0 * k, 2.0e5 * k * k * k * k};
    CHECK(bow_by_area(40.0 * k * k, grown).mm == doctest::Approx(k * bow_by_area(40.0, member).mm));
    CHECK(bow_by_area(40.0, {0.0, 500.0, 2.0e5}).mm == 0.0);
  }

  TEST_CASE("refuses inputs that are no quantities because they are a caller's bug") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    using base::ContractViolation;
    CHECK_THROWS_AS((void)butt_by_area_and_gap({0.0, 10.0}), ContractViolation);
    CHECK_THROWS_AS((void)butt_by_area_and_gap({1.0, 10.0, -1.0}), ContractViolation);
    CHECK_THROWS_AS((void)butt_by_mean_width({1.0, nan}), ContractViolation);
    CHECK_THROWS_AS((void)tee_fillets({0.0, 10.0}), ContractViolation);
    CHECK_THROWS_AS((void)along_butt({nan, 1.0, 1.0}), ContractViolation);
    CHECK_THROWS_AS((void)along_fillet({1.0, 0.0, 1.0}), ContractViolation);
    CHECK_THROWS_AS((void)force_by_heat_n(-1.0), ContractViolation);
    CHECK_THROWS_AS((void)force_by_area_n(nan), ContractViolation);
    CHECK_THROWS_AS((void)bow_by_area(1.0, {nan, 1.0, 1.0}), ContractViolation);
    CHECK_THROWS_AS((void)bow_by_force(1.0, {1.0, 1.0, 0.0}), ContractViolation);
    CHECK_THROWS_AS((void)shortening_by_force(1.0, 1.0, 0.0), ContractViolation);
    CHECK_THROWS_AS((void)flange_tilt({1.0, 1.0, 0.0}), ContractViolation);
    CHECK_THROWS_AS((void)published_lean(0.0, 1.0), ContractViolation);
    CHECK_THROWS_AS((void)allowance_along_fillet(0.0), ContractViolation);
    CHECK_THROWS_AS((void)allowance_along_butt(nan), ContractViolation);
  }
}

}  // namespace seamturn::tests
