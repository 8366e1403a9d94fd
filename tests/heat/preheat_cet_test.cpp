// SPDX-License-Identifier: MIT
#include "seamturn/heat/preheat_cet.hpp"

#include <cmath>
#include <string>

#include "oracles/heat.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using heat::Preheat;
using heat::preheat_cet;
using heat::PreheatParams;

namespace {

double preheat_c(const PreheatParams& params) {
  const auto got = preheat_cet(params);
  REQUIRE(got.has_value());
  return got->preheat_c;
}

PreheatParams random_params(base::Random& random) {
  return {random.between(0.2, 0.5),
          random.between(10.0, 90.0),
          random.between(1.0, 20.0),
          random.between(0.5, 4.0)};
}

constexpr PreheatParams ordinary = {0.35, 40.0, 5.0, 1.5};

}  // namespace

TEST_SUITE("heat/preheat_cet") {
  TEST_CASE("given one printed exercise and seven computed cases, the preheat is theirs") {
    for (const PreheatRow& row : preheat_rows) {
      std::ostringstream inputs;
      inputs << "CET " << row.params.cet << ", d " << row.params.thickness_mm << ", HD "
             << row.params.hydrogen_ml_100g << ", Q " << row.params.heat_input_kj_mm;
      check_expected(inputs.str(), preheat_c(row.params), row.expected);
    }
  }

  TEST_CASE("given CET 0.35, 40 mm, 5 ml, 1.5 kJ/mm, each term is the remembered partial one") {
    const auto got = preheat_cet(ordinary);
    REQUIRE(got.has_value());
    constexpr const char* source = "partial terms from memory, evaluated by a separate script";
    check_expected("steel", got->steel_term_c, {112.5, 0.005, Origin::computed, source});
    check_expected("thickness", got->thickness_term_c, {20.46, 0.005, Origin::computed, source});
    check_expected("hydrogen", got->hydrogen_term_c, {8.90, 0.005, Origin::computed, source});
    check_expected("heat", got->heat_term_c, {-6.725, 0.0005, Origin::computed, source});
  }

  TEST_CASE("for any inputs, law: the four terms add up to the one line of the method") {
    base::Random random(base::named_seed(20261125, "preheat terms"));
    INFO("seed 20261125");
    for (int i = 0; i < 500; ++i) {
      const PreheatParams p = random_params(random);
      const auto got = preheat_cet(p);
      REQUIRE(got.has_value());
      const double line = 697.0 * p.cet + 160.0 * std::tanh(p.thickness_mm / 35.0) +
                          62.0 * std::pow(p.hydrogen_ml_100g, 0.35) +
                          (53.0 * p.cet - 32.0) * p.heat_input_kj_mm - 328.0;
      CHECK(std::abs(got->preheat_c - line) < 1e-9);
      CHECK(std::abs(got->steel_term_c + got->thickness_term_c + got->hydrogen_term_c +
                     got->heat_term_c - got->preheat_c) < 1e-9);
      CHECK(got->findings.empty());
    }
  }

  TEST_CASE(
      "for any inputs, law: preheat rises with CET, thickness and hydrogen, falls with heat") {
    base::Random random(base::named_seed(20261125, "preheat slopes"));
    INFO("seed 20261125");
    for (int i = 0; i < 500; ++i) {
      const PreheatParams p = random_params(random);
      const double here = preheat_c(p);
      PreheatParams more = p;
      more.cet += 0.01;
      CHECK(preheat_c(more) > here);
      more = p;
      more.thickness_mm += 1.0;
      CHECK(preheat_c(more) > here);
      more = p;
      more.hydrogen_ml_100g += 0.5;
      CHECK(preheat_c(more) > here);
      more = p;
      more.heat_input_kj_mm += 0.1;
      CHECK(preheat_c(more) < here);
    }
  }

  TEST_CASE("for a plate of any thickness, law: the thickness term stays below 50 degC") {
    PreheatParams thick = ordinary;
    thick.thickness_mm = 1e6;
    CHECK(preheat_cet(thick)->thickness_term_c == doctest::Approx(50.0));
  }

  TEST_CASE("given inputs at the borders there is no warning, just outside each has its own") {
    CHECK(preheat_cet({0.2, 10.0, 1.0, 0.5})->findings.empty());
    CHECK(preheat_cet({0.5, 90.0, 20.0, 4.0})->findings.empty());
    struct Row {
      PreheatParams params;
      const char* said;
      const char* quantity;
    };
    const Row rows[] = {
        {{0.199, 40.0, 5.0, 1.5}, "CET 0.199 %", "CET"},
        {{0.501, 40.0, 5.0, 1.5}, "CET 0.501 %", "CET"},
        {{0.35, 9.99, 5.0, 1.5}, "thickness 9.99 mm", "thickness"},
        {{0.35, 90.1, 5.0, 1.5}, "90.1 mm", "thickness"},
        {{0.35, 40.0, 0.9, 1.5}, "0.9 ml/100 g", "diffusible hydrogen"},
        {{0.35, 40.0, 20.1, 1.5}, "20.1 ml/100 g", "diffusible hydrogen"},
        {{0.35, 40.0, 5.0, 0.49}, "0.49 kJ/mm", "heat input"},
        {{0.35, 40.0, 5.0, 4.01}, "4.01 kJ/mm", "heat input"},
    };
    for (const Row& row : rows) {
      const auto got = preheat_cet(row.params);
      INFO(std::string(row.said));
      REQUIRE(got.has_value());
      REQUIRE(got->findings.size() == 1);
      CHECK(got->findings.front().code == "heat.preheat.out_of_range");
      CHECK(got->findings.front().severity == base::Severity::warning);
      CHECK(got->findings.front().text.find(row.said) != std::string::npos);
      CHECK(got->findings.front().quantity == row.quantity);
    }
    CHECK(preheat_cet({0.6, 5.0, 30.0, 0.1})->findings.size() == 4);
  }

  TEST_CASE("refuses plate thinner than 3 mm because the method says nothing about sheet") {
    CHECK(preheat_cet({0.35, 3.0, 5.0, 1.5}).has_value());
    const auto refused = preheat_cet({0.35, 2.99, 5.0, 1.5});
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().code == "heat.preheat.thickness");
    CHECK(refused.error().text.find("2.99 mm") != std::string::npos);
  }

  TEST_CASE("refuses inputs that are no quantities because they are a caller's bug") {
    CHECK_THROWS_AS((void)preheat_cet({-0.1, 40.0, 5.0, 1.5}), base::ContractViolation);
    CHECK_THROWS_AS((void)preheat_cet({0.3, 0.0, 5.0, 1.5}), base::ContractViolation);
    CHECK_THROWS_AS((void)preheat_cet({0.3, 40.0, 0.0, 1.5}), base::ContractViolation);
    CHECK_THROWS_AS((void)preheat_cet({0.3, 40.0, 5.0, std::nan("")}), base::ContractViolation);
  }

  TEST_CASE(
      "given SSAB-23's margin, the weld metal governs when it comes within 0.03 of the plate") {
    constexpr const char* source = "SSAB-23, p. 23: margin 0.03";
    check_expected(
        "plate", heat::governing_cet(0.34, 0.31), {0.34, 1e-12, Origin::published, source});
    check_expected(
        "weld", heat::governing_cet(0.34, 0.32), {0.35, 1e-12, Origin::published, source});
  }
}

}  // namespace seamturn::tests
