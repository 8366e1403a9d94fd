// SPDX-License-Identifier: MIT
#include "seamturn/tack/tack_rules.hpp"

#include <cmath>
#include <limits>

#include "oracles/weld_size.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/joint/groove_size.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Status;
using tack::TackRules;

TEST_SUITE("tack/tack_rules") {
  TEST_CASE("given EN 1011-2 clause 13 as quoted, tacks of the default rule are as long") {
    for (const TackRow& row : tack_rows) {
      const tack::TackLength length = tack::tack_length(row.thicker_mm, 355.0, TackRules());
      check_expected("t " + std::to_string(row.thicker_mm), length.length_mm, row.length_mm);
      CHECK(length.runs == 1);
      CHECK(length.status == Status::verified);
    }
  }

  TEST_CASE("for any thickness, law: the default rule is never shorter than the joint room's") {
    for (double t = 0.5; t < 80.0; t += 0.25) {
      for (const double yield : {235.0, 500.0, 500.5, 960.0}) {
        const tack::TackLength length = tack::tack_length(t, yield, TackRules());
        const double least = joint::least_tack_length_mm(t);
        CHECK(length.length_mm >= least);
        CHECK((length.runs == 2) == joint::needs_two_run_tacks(t, yield));
        CHECK((length.runs == 2) == (length.length_mm > least));
      }
    }
  }

  TEST_CASE("given both sides of 12, 50 mm and 500 MPa, the length steps where the clause says") {
    // 47.96, 50, 75 and 60 follow from the clause; the 1.5 is a proposal of ours: no outside check.
    const TackRules rules;
    CHECK(tack::tack_length(11.99, 355.0, rules).length_mm == doctest::Approx(47.96));
    CHECK(tack::tack_length(50.0, 500.0, rules).length_mm == 50.0);
    CHECK(tack::tack_length(50.01, 500.0, rules).length_mm == 75.0);
    CHECK(tack::tack_length(20.0, 500.01, rules).length_mm == 75.0);
    CHECK(tack::tack_length(10.0, 690.0, rules).length_mm == 60.0);
    CHECK(tack::tack_length(10.0, 690.0, rules).status == Status::proposed);
  }

  TEST_CASE("given the shop's own values, they stand in place of the defaults and say so") {
    TackRules rules;
    rules.length_min_mm = {80.0, Status::common_practice, "shop rule 7"};
    const tack::TackLength length = tack::tack_length(30.0, 355.0, rules);
    CHECK(length.length_mm == 80.0);
    CHECK(length.status == Status::common_practice);
    CHECK(length.why.find("shop rule 7") != std::string::npos);
    rules.stress_mpa = tack::RuleValue{60.0, Status::proposed, "shop rule 8"};
    const auto stress = tack::permitted_stress(470.0, 355.0, rules);
    REQUIRE(stress);
    CHECK(stress->stress_mpa == 60.0);
    CHECK_FALSE(stress->beta_w_ratio.has_value());
    CHECK(tack::permitted_stress(800.0, 690.0, rules).has_value());
  }

  TEST_CASE("given a fillet's area, closed-form: its throat is the height of the triangle") {
    // closed-form: legs z at 90 deg hold z^2 / 2, throat z / sqrt 2.
    for (const double leg : {3.0, 5.0, 8.0}) {
      CHECK(tack::fillet_throat_mm(0.5 * leg * leg) == doctest::Approx(leg / std::sqrt(2.0)));
    }
    // closed-form: an equilateral triangle of side s, height s sqrt 3 / 2, area s^2 sqrt 3 / 4.
    CHECK(tack::fillet_throat_mm(9.0 * std::sqrt(3.0), Angle::deg(60.0)) ==
          doctest::Approx(3.0 * std::sqrt(3.0)));
  }

  TEST_CASE("given fu and yield, the permitted stress is that of the formula as remembered") {
    // Formula and factors remembered: no outside check; products by hand.
    struct Row {
      double fu, yield, beta, stress;
    };
    for (const Row& row : {Row{360.0, 235.0, 0.80, 207.85},
                           Row{430.0, 275.0, 0.85, 233.66},
                           Row{490.0, 355.0, 0.90, 251.47},
                           Row{520.0, 420.0, 1.00, 240.18},
                           Row{540.0, 460.0, 1.00, 249.42}}) {
      const auto got = tack::permitted_stress(row.fu, row.yield, TackRules());
      REQUIRE(got);
      CHECK(got->beta_w_ratio == row.beta);
      check_expected("fu " + std::to_string(row.fu),
                     got->stress_mpa,
                     {row.stress, 0.005, Origin::remembered, "EN 1993-1-8 4.5.3.3"});
      CHECK(got->status == Status::from_memory);
    }
    // Between two rows the higher factor, so the lower stress.
    CHECK(tack::permitted_stress(360.0, 235.1, TackRules())->beta_w_ratio == 0.85);
  }

  TEST_CASE("refuses a yield beyond the table of factors because none is known there") {
    const auto none = tack::permitted_stress(770.0, 460.1, TackRules());
    REQUIRE_FALSE(none);
    CHECK(none.error().code == "tack.stress.no_factor");
    CHECK(none.error().text.find("460.1 MPa") != std::string::npos);
  }

  TEST_CASE("refuses what is no quantity or no rule because it is a caller's bug") {
    const TackRules good;
    CHECK(tack::are_rules(good));
    CHECK_THROWS_AS((void)tack::tack_length(0.0, 355.0, good), base::ContractViolation);
    CHECK_THROWS_AS((void)tack::tack_length(10.0, std::nan(""), good), base::ContractViolation);
    CHECK_THROWS_AS((void)tack::fillet_throat_mm(0.0), base::ContractViolation);
    CHECK_THROWS_AS((void)tack::fillet_throat_mm(9.0, Angle::deg(180.0)), base::ContractViolation);
    CHECK_THROWS_AS((void)tack::permitted_stress(300.0, 355.0, good), base::ContractViolation);
    const auto broken = [&](auto change) {
      TackRules rules = good;
      change(rules);
      return !tack::are_rules(rules);
    };
    CHECK(broken([](TackRules& r) { r.length_min_mm.value = 0.0; }));
    CHECK(broken([](TackRules& r) { r.length_factor.value = -1.0; }));
    CHECK(broken([](TackRules& r) { r.long_factor.value = 0.99; }));
    CHECK(broken([](TackRules& r) { r.pitch_mm.value = std::nan(""); }));
    CHECK(broken([](TackRules& r) { r.clear_of_ends_mm.value = -0.1; }));
    CHECK(broken([](TackRules& r) { r.gap_max_mm.value = -0.1; }));
    CHECK(broken([](TackRules& r) { r.throat_mm = tack::RuleValue{}; }));
    CHECK(broken([](TackRules& r) { r.stress_mpa = tack::RuleValue{}; }));
    CHECK(broken([](TackRules& r) { r.gamma_m2.value = 0.9; }));
    TackRules bad = good;
    bad.pitch_mm.value = std::numeric_limits<double>::infinity();
    CHECK_THROWS_AS((void)tack::tack_length(10.0, 355.0, bad), base::ContractViolation);
  }

  TEST_CASE("given the yield of grades, remembered: their least tensile strength") {
    // EN 10025-2:2019 table 7 and EN 10025-3:2019 table 6, from memory.
    CHECK(tack::remembered_ultimate_mpa(235.0) == 360.0);
    CHECK(tack::remembered_ultimate_mpa(355.0) == 470.0);
    CHECK(tack::remembered_ultimate_mpa(354.9) == 410.0);
    CHECK(tack::remembered_ultimate_mpa(690.0) == 690.0);
    CHECK(tack::remembered_ultimate_mpa(200.0) == 300.0);
    CHECK_THROWS_AS((void)tack::remembered_ultimate_mpa(0.0), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
