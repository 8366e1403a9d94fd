// SPDX-License-Identifier: MIT
// The highest carbon equivalents within a standard's limits and its cap on CEV.
#include "oracle.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/material/carbon_equivalent.hpp"

namespace seamturn::tests {

namespace {

using material::CarbonFormula;
using material::Composition;

constexpr CarbonFormula all_formulas[] = {CarbonFormula::iiw,
                                          CarbonFormula::cet,
                                          CarbonFormula::pcm,
                                          CarbonFormula::cen,
                                          CarbonFormula::jis};

double highest(CarbonFormula formula, const Composition& limits, std::optional<double> cap) {
  const auto found = material::highest_carbon_equivalent(formula, limits, cap);
  REQUIRE(found);
  return found->value;
}

/// S355J2 up to 30 mm, as joints/library/standards.xml has it.
Composition s355j2() {
  Composition limits;
  limits.c = 0.20;
  limits.si = 0.55;
  limits.mn = 1.60;
  limits.cr = 0.29;
  limits.mo = 0.11;
  limits.ni = 0.42;
  limits.cu = 0.55;
  return limits;
}

}  // namespace

TEST_SUITE("material/grade_limits") {
  TEST_CASE("given the limits of S355J2 and its cap of 0.45, closed-form") {
    const Composition limits = s355j2();
    // Carbon takes .20 of .45; for CET then copper .55 (.0367), and manganese what is left, 1.28.
    check_expected("CET",
                   highest(CarbonFormula::cet, limits, 0.45),
                   {0.20 + 0.55 / 20.0 + 1.28 / 10.0, 1e-9, Origin::closed_form, "by hand"});
    check_expected("CEV",
                   highest(CarbonFormula::iiw, limits, 0.45),
                   {0.45, 1e-9, Origin::closed_form, "EN 10025-2:2019: the cap itself"});
    // Without a cap: all of them together.
    check_expected(
        "CET at the limits",
        highest(CarbonFormula::cet, limits, std::nullopt),
        {0.20 + 1.71 / 10.0 + 0.84 / 20.0 + 0.42 / 40.0, 1e-9, Origin::closed_form, "by hand"});
    CHECK(highest(CarbonFormula::iiw, limits, 2.0) ==
          doctest::Approx(highest(CarbonFormula::iiw, limits, std::nullopt)));
  }

  TEST_CASE("for random limits and caps, law: no composition within them lies higher") {
    const std::uint64_t seed = base::named_seed(1, "grade limits");
    INFO("seed ", seed);
    base::Random random(seed);
    using K = Composition;
    double K::*const elements[] = {&K::c, &K::si, &K::mn, &K::cr, &K::mo, &K::v, &K::ni, &K::cu};
    int capped = 0;
    for (int i = 0; i < 300; ++i) {
      Composition limits;
      for (double K::*const element : elements) limits.*element = random.between(0.0, 0.5);
      limits.c = random.between(0.05, 0.22);
      limits.mn = random.between(0.5, 1.7);
      const double cap = random.between(0.1, 0.8);
      for (const CarbonFormula formula : all_formulas) {
        const double most = highest(formula, limits, cap);
        CHECK(most <= highest(formula, limits, std::nullopt) + 1e-12);
        if (most < highest(formula, limits, std::nullopt) - 1e-9) ++capped;
        for (int k = 0; k < 20; ++k) {
          Composition one;
          for (double K::*const element : elements) {
            one.*element = random.between(0.0, 1.0) < 0.3 ? limits.*element
                                                          : random.between(0.0, limits.*element);
          }
          const double cev = material::carbon_equivalent(CarbonFormula::iiw, one)->value;
          // What is above the cap is thinned until it keeps it.
          if (cev > cap) {
            for (double K::*const element : elements) one.*element *= cap / cev;
          }
          CHECK(material::carbon_equivalent(formula, one)->value <= most + 1e-12);
        }
      }
    }
    CHECK(capped > 300);
  }

  TEST_CASE("given carbon above a formula's range, the cap does not make it answer") {
    Composition limits = s355j2();
    limits.c = 0.60;
    const auto found = material::highest_carbon_equivalent(CarbonFormula::cet, limits, 0.45);
    REQUIRE_FALSE(found);
    CHECK(found.error().code == "material.carbon.out_of_range");
  }
}

}  // namespace seamturn::tests
