// SPDX-License-Identifier: MIT
#include "seamturn/process/spool.hpp"

#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using process::plan_spools;
using process::SpoolUse;

namespace {

/// A wire of 10 g/m: 15 kg are 1500 m.
SpoolUse use(double needed_m, double leftover_m = 10.0, double started_m = 0.0) {
  SpoolUse made;
  made.linear_mass_kg_m = 0.010;
  made.wire_needed_kg = needed_m * made.linear_mass_kg_m;
  made.leftover_m = leftover_m;
  made.started_m = started_m;
  return made;
}

std::string code(const SpoolUse& made) {
  const auto plan = plan_spools(made);
  return plan ? std::string("none") : plan.error().code;
}

}  // namespace

TEST_SUITE("process/spool") {
  TEST_CASE("given solid wire, 15 kg and 250 kg hold the metres of the diameter") {
    // computed by hand calculator from pi/4 d2 x 7.85 g/cm3.
    struct Row {
      double g_m, spool_m, drum_m;
    };
    for (const Row& row : {Row{4.994, 3004.0, 50061.0},
                           Row{6.165, 2433.0, 40549.0},
                           Row{8.878, 1690.0, 28159.0},
                           Row{12.084, 1241.0, 20688.0},
                           Row{15.783, 950.0, 15839.0}}) {
      SpoolUse made;
      made.linear_mass_kg_m = row.g_m / 1000.0;
      const char* why = "mass per metre rounded to 4 digits";
      check_expected("15 kg",
                     plan_spools(made)->spool_m,
                     {row.spool_m, 0.6, Origin::computed, "15 kg / mass of a metre", why});
      made.spool_kg = process::usual_drum_kg;
      check_expected("250 kg",
                     plan_spools(made)->spool_m,
                     {row.drum_m, 6.0, Origin::computed, "250 kg / mass of a metre", why});
    }
  }

  TEST_CASE("given 1490 usable metres, the change comes after them and not with them") {
    CHECK(plan_spools(use(0.0))->changes == 0);
    CHECK(plan_spools(use(1490.0))->changes == 0);
    CHECK(plan_spools(use(1490.0))->rest_m == doctest::Approx(10.0));
    CHECK(plan_spools(use(1490.1))->changes == 1);
    CHECK(plan_spools(use(1490.1))->rest_m == doctest::Approx(1499.9));
    CHECK(plan_spools(use(1490.1))->thrown_m == doctest::Approx(10.0));
    CHECK(plan_spools(use(2980.0))->changes == 1);
    CHECK(plan_spools(use(2980.1))->changes == 2);
    // Nothing left over: 3000 m are two spools, one change.
    CHECK(plan_spools(use(3000.0, 0.0))->changes == 1);
    CHECK(plan_spools(use(3000.1, 0.0))->changes == 2);
  }

  TEST_CASE("given a spool begun, the first change comes sooner") {
    CHECK(plan_spools(use(100.0, 10.0, 110.0))->changes == 0);
    CHECK(plan_spools(use(100.1, 10.0, 110.0))->changes == 1);
    // A rest below the left-over is changed at once and thrown away whole.
    const auto at_once = plan_spools(use(1.0, 10.0, 8.0));
    CHECK(at_once->changes == 1);
    CHECK(at_once->thrown_m == doctest::Approx(8.0));
    CHECK(at_once->rest_m == doctest::Approx(1499.0));
  }

  TEST_CASE("for any job, law: wire put on is wire used, thrown away and left") {
    base::Random random(base::named_seed(20261125, "spool/balance"));
    for (int i = 0; i < 300; ++i) {
      SpoolUse made = use(random.between(0.0, 20000.0), random.between(0.0, 200.0));
      if (random.between(0.0, 1.0) < 0.5) made.started_m = random.between(1.0, 1500.0);
      const auto plan = plan_spools(made);
      REQUIRE(plan.has_value());
      const double first_m = made.started_m > 0.0 ? made.started_m : plan->spool_m;
      const double put_on_m = first_m + static_cast<double>(plan->changes) * plan->spool_m;
      INFO("case ", i, " needed ", plan->needed_m, " left-over ", made.leftover_m);
      CHECK(put_on_m == doctest::Approx(plan->needed_m + plan->thrown_m + plan->rest_m));
      CHECK(plan->rest_m >= -1e-6);
      if (plan->changes > 0) CHECK(plan->rest_m >= made.leftover_m - 1e-6);
    }
  }

  TEST_CASE("refuses spools that cannot be because no count follows") {
    CHECK(code(use(100.0)) == "none");
    CHECK(code(use(-1.0)) == "process.spool.value");
    CHECK(code(use(100.0, -1.0)) == "process.spool.value");
    CHECK(code(use(100.0, 10.0, 1501.0)) == "process.spool.value");
    CHECK(code(use(100.0, 10.0, 1500.0)) == "none");
    CHECK(code(use(100.0, 1500.0)) == "process.spool.leftover");
    CHECK(code(use(100.0, 1499.0)) == "none");
    CHECK(code(use(1e10)) == "process.spool.count");
    SpoolUse nothing = use(1.0);
    nothing.linear_mass_kg_m = 0.0;
    CHECK(code(nothing) == "process.spool.value");
    nothing.linear_mass_kg_m = std::nan("");
    CHECK_THROWS_AS((void)plan_spools(nothing), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
