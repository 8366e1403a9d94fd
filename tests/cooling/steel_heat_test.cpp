// SPDX-License-Identifier: MIT
#include "seamturn/cooling/steel_heat.hpp"

#include <limits>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/cooling/between_passes.hpp"

namespace seamturn::tests {

using cooling::steel_heat;

TEST_SUITE("cooling/steel_heat") {
  TEST_CASE("given EN 1993-1-2, each formula gives what is worked from it by hand") {
    const auto check = [](double temperature_c, double c, double lambda) {
      const char* source = "EN 1993-1-2, worked from the formulas by a separate script";
      const auto got = steel_heat(temperature_c);
      REQUIRE(got.has_value());
      INFO(temperature_c, " degC");
      check_expected("c", got->specific_heat_j_kg_k, {c, 0.005 * 1.001, Origin::computed, source});
      check_expected(
          "lambda", got->conductivity_w_m_k, {lambda, 0.005 * 1.001, Origin::computed, source});
    };
    check(20.0, 439.80, 53.33);
    check(100.0, 487.62, 50.67);
    check(200.0, 529.76, 47.34);
    check(600.0, 760.22, 34.02);
    check(900.0, 650.00, 27.30);
    check(1200.0, 650.00, 27.30);
  }

  TEST_CASE("given 735 degC, both formulas of the peak meet at 5000 J/kg K") {
    // 666 + 13002/3 = 545 + 17820/4 = 5000.
    const Expected expected{5000.0, 1e-9, Origin::closed_form, "EN 1993-1-2, both formulas"};
    check_expected("from above", steel_heat(735.0)->specific_heat_j_kg_k, expected);
    check_expected("from below",
                   steel_heat(735.0 - 1e-9)->specific_heat_j_kg_k,
                   {5000.0, 1e-3, Origin::closed_form, "EN 1993-1-2"});
  }

  TEST_CASE("for any edge of the formulas, law: they meet within the 0.3 % that is stated") {
    for (const double edge_c : {600.0, 735.0, 900.0}) {
      const double below = steel_heat(edge_c - 1e-9)->specific_heat_j_kg_k;
      CHECK(steel_heat(edge_c)->specific_heat_j_kg_k == doctest::Approx(below).epsilon(0.001));
    }
    CHECK(steel_heat(800.0)->conductivity_w_m_k ==
          doctest::Approx(steel_heat(800.0 - 1e-9)->conductivity_w_m_k).epsilon(0.003));
  }

  TEST_CASE("from 20 to 250 degC, the mean heat is the constant the models of cooling take") {
    double heat_j_kg = 0.0;
    for (int i = 0; i < 2300; ++i)
      heat_j_kg += 0.1 * steel_heat(20.05 + 0.1 * i)->specific_heat_j_kg_k;
    check_expected("mean",
                   heat_j_kg / 230.0,
                   {500.5, 0.05, Origin::computed, "EN 1993-1-2, integral by hand"});
    CHECK(cooling::heat_capacity_j_mm3_k / 7.85e-6 ==
          doctest::Approx(heat_j_kg / 230.0).epsilon(0.0015));
    // Up to 6 % more between 150 and 250 degC: cooling there takes so much longer.
    CHECK(steel_heat(200.0)->specific_heat_j_kg_k / 500.0 == doctest::Approx(1.06).epsilon(0.001));
  }

  TEST_CASE("refuses temperatures the standard does not cover") {
    CHECK(steel_heat(20.0).has_value());
    CHECK(steel_heat(1200.0).has_value());
    for (const double outside_c : {19.9, 1200.1}) {
      const auto refused = steel_heat(outside_c);
      REQUIRE_FALSE(refused.has_value());
      CHECK(refused.error().code == "cooling.steel_heat.out_of_range");
    }
    CHECK_THROWS_AS((void)steel_heat(std::numeric_limits<double>::quiet_NaN()),
                    base::ContractViolation);
  }
}

}  // namespace seamturn::tests
