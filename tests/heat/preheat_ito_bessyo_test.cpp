// SPDX-License-Identifier: MIT
#include "seamturn/heat/preheat_ito_bessyo.hpp"

#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using heat::glycerine_hydrogen_ml_100g;
using heat::preheat_ito_bessyo;

TEST_SUITE("heat/preheat_ito_bessyo") {
  TEST_CASE("given three cases computed from the printed formula, Pc and To are theirs") {
    struct Row {
      heat::ItoBessyoParams params;
      double pc, preheat_c;
    };
    constexpr const char* source = "formula of [ITO], evaluated by a separate script";
    const Row rows[] = {
        {{.22, 3.0, 30.0, 2.0}, .3200, 68.8},
        {{.2612, 2.0, 25.0, 2.0}, .33617, 92.1},
        {{.3013, 2.0, 40.0, 2.0}, .40133, 185.9},
    };
    for (const Row& row : rows) {
      const auto got = preheat_ito_bessyo(row.params);
      REQUIRE(got.has_value());
      check_expected("Pc", got->pc, {row.pc, 0.00005, Origin::computed, source});
      check_expected("To", got->preheat_c, {row.preheat_c, 0.1, Origin::computed, source});
      CHECK(got->findings.empty());
    }
  }

  TEST_CASE("for any case, law: 60 ml of hydrogen or 600 mm weigh as much as 1 % of Pcm") {
    const double here = preheat_ito_bessyo({.20, 2.0, 30.0, 2.0})->preheat_c;
    CHECK(preheat_ito_bessyo({.21, 2.0, 30.0, 2.0})->preheat_c == doctest::Approx(here + 14.4));
    CHECK(preheat_ito_bessyo({.20, 2.6, 30.0, 2.0})->preheat_c == doctest::Approx(here + 14.4));
    CHECK(preheat_ito_bessyo({.20, 2.0, 36.0, 2.0})->preheat_c == doctest::Approx(here + 14.4));
    CHECK(preheat_ito_bessyo({.20, 2.0, 30.0, 3.0})->preheat_c == doctest::Approx(here));
  }

  TEST_CASE("given the borders there is no warning, just outside each has its own") {
    CHECK(preheat_ito_bessyo({.2, 1.0, 19.0, 1.7})->findings.empty());
    CHECK(preheat_ito_bessyo({.2, 5.0, 50.0, 3.0})->findings.empty());
    const heat::ItoBessyoParams outside[] = {
        {.2, 0.99, 30.0, 2.0},
        {.2, 5.01, 30.0, 2.0},
        {.2, 3.0, 18.9, 2.0},
        {.2, 3.0, 50.1, 2.0},
        {.2, 3.0, 30.0, 1.69},
        {.2, 3.0, 30.0, 3.01},
    };
    for (const heat::ItoBessyoParams& params : outside) {
      const auto got = preheat_ito_bessyo(params);
      REQUIRE(got.has_value());
      REQUIRE(got->findings.size() == 1);
      CHECK(got->findings.front().code == "heat.ito_bessyo.out_of_range");
    }
  }

  TEST_CASE("refuses sheet below 3 mm, and inputs that are no quantities") {
    CHECK(preheat_ito_bessyo({.2, 3.0, 3.0, 2.0}).has_value());
    CHECK(preheat_ito_bessyo({.2, 3.0, 2.99, 2.0}).error().code == "heat.ito_bessyo.thickness");
    CHECK_THROWS_AS((void)preheat_ito_bessyo({-.2, 3.0, 30.0, 2.0}), base::ContractViolation);
    CHECK_THROWS_AS((void)preheat_ito_bessyo({.2, 0.0, 30.0, 2.0}), base::ContractViolation);
    CHECK_THROWS_AS((void)preheat_ito_bessyo({.2, 3.0, std::nan(""), 2.0}),
                    base::ContractViolation);
  }

  TEST_CASE("given ISO 3690 hydrogen, the remembered regression turned round gives less") {
    // remembered twice: H_ISO = 1.27 H + 2.19, and H = 0.79 H_ISO - 1.73 from another place.
    for (const double iso : {4.0, 5.0, 8.0, 10.0}) {
      const auto got = glycerine_hydrogen_ml_100g(iso);
      REQUIRE(got.has_value());
      CHECK(1.27 * *got + 2.19 == doctest::Approx(iso));
      CHECK(std::abs(*got - (0.79 * iso - 1.73)) < 0.05);
      CHECK(*got < iso);
    }
    CHECK(glycerine_hydrogen_ml_100g(3.461).has_value());
    const auto dry = glycerine_hydrogen_ml_100g(3.459);
    REQUIRE_FALSE(dry.has_value());
    CHECK(dry.error().code == "heat.ito_bessyo.conversion");
    CHECK_THROWS_AS((void)glycerine_hydrogen_ml_100g(0.0), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
