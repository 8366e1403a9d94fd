// SPDX-License-Identifier: MIT
#include "seamturn/process/burn_off.hpp"

#include <cmath>
#include <string>

#include "oracles/consumables.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/process/deposit.hpp"

namespace seamturn::tests {

using process::burn_off_at_current;
using process::burn_off_at_feed;
using process::BurnOffLaw;
using process::fit_burn_off;
using process::remembered_burn_off;
using process::TrialPoint;
using process::Wire;

namespace {

constexpr double mm_s_per_m_min = 1000.0 / 60.0;
constexpr double mm_s_per_in_min = 25.4 / 60.0;

Wire solid(double diameter_mm) {
  Wire wire;
  wire.process = "135";
  wire.diameter_mm = diameter_mm;
  wire.efficiency_ratio = 0.95;
  return wire;
}

Wire cored(double diameter_mm, double linear_mass_g_m) {
  Wire wire = solid(diameter_mm);
  wire.process = "138";
  wire.linear_mass_kg_m = linear_mass_g_m / 1000.0;
  return wire;
}

/// Through the two trial rows of a diameter in the printed table.
BurnOffLaw printed_law(double diameter_mm) {
  TrialPoint points[2];
  double linear_mass_g_m = 0.0;
  int count = 0;
  for (const FeedRow& row : feed_rows) {
    if (row.diameter_mm != diameter_mm || !row.trial) continue;
    REQUIRE(count < 2);
    points[count++] = {row.current_a, row.feed_in_min * mm_s_per_in_min};
    linear_mass_g_m = row.linear_mass_g_m;
  }
  const auto law = fit_burn_off(cored(diameter_mm, linear_mass_g_m), points[0], points[1], 20.0);
  REQUIRE(law.has_value());
  return *law;
}

std::string code(const base::Outcome<process::BurnOff>& result) {
  return result ? std::string("none") : result.error().code;
}

}  // namespace

TEST_SUITE("process/burn_off") {
  TEST_CASE("given MCW feeds, a law through two of them predicts those between") {
    int predicted = 0;
    for (const FeedRow& row : feed_rows) {
      const BurnOffLaw law = printed_law(row.diameter_mm);
      const std::string item =
          std::to_string(row.diameter_mm) + " mm at " + std::to_string(row.current_a) + " A";
      const auto got = burn_off_at_current(law, 20.0, row.current_a);
      if (row.outside) {
        CHECK(code(got) == "process.burn_off.out_of_range");
        continue;
      }
      REQUIRE(got.has_value());
      CHECK(got->findings.empty());
      const double tolerance = row.trial ? 1e-9 : feed_tolerance_ratio * row.feed_in_min;
      check_expected(
          item,
          got->feed_mm_s / mm_s_per_in_min,
          {row.feed_in_min, tolerance, Origin::published, "MCW, feed at current", feed_why});
      predicted += row.trial ? 0 : 1;
    }
    CHECK(predicted == 8);
  }

  TEST_CASE("given remembered coefficients, 250 A and 15 mm burn 7.31 m/min of 1.2 mm wire") {
    const auto law = remembered_burn_off(solid(1.2));
    REQUIRE(law.has_value());
    CHECK(law->citation.status == base::Status::from_memory);
    const auto first = burn_off_at_current(*law, 15.0, 250.0);
    const auto second = burn_off_at_current(*law, 18.0, 300.0);
    check_expected("250 A, 15 mm",
                   first->feed_mm_s / mm_s_per_m_min,
                   {7.31, 0.005, Origin::remembered, "v = 0.30 I + 5e-5 L I2"});
    check_expected("250 A, 15 mm",
                   first->melt_off_kg_h,
                   {3.90, 0.005, Origin::remembered, "v = 0.30 I + 5e-5 L I2"});
    check_expected("300 A, 18 mm",
                   second->feed_mm_s / mm_s_per_m_min,
                   {10.26, 0.005, Origin::remembered, "v = 0.30 I + 5e-5 L I2"});
    check_expected(
        "a", law->a_kg_h_a, {9.59e-3, 0.005e-3, Origin::remembered, "0.30 mm/s per A in mass"});
    check_expected(
        "b", law->b_kg_h_a2_mm, {1.60e-6, 0.005e-6, Origin::remembered, "5e-5 per s A2 in mass"});
  }

  TEST_CASE("for any diameter, law: a stays in mass units and b falls with its square") {
    const auto at_12 = remembered_burn_off(solid(1.2));
    for (const double d : {1.0, 1.1, 1.4, 1.6}) {
      INFO(d);
      const auto law = remembered_burn_off(solid(d));
      CHECK(law->a_kg_h_a == doctest::Approx(at_12->a_kg_h_a).epsilon(1e-12));
      CHECK(law->b_kg_h_a2_mm * d * d ==
            doctest::Approx(at_12->b_kg_h_a2_mm * 1.44).epsilon(1e-12));
    }
  }

  TEST_CASE("for any two possible points, law: the fit meets both and the inverse comes back") {
    base::Random random(base::named_seed(20261125, "burn_off/fit"));
    for (int i = 0; i < 200; ++i) {
      const double a = random.between(4e-3, 12e-3);
      const double bl = random.between(0.0, 6e-5);
      const double extension_mm = random.between(10.0, 30.0);
      const Wire wire = solid(random.between(0.8, 2.4));
      const double mass_kg_m = process::wire_linear_mass_kg_m(wire);
      const auto point = [&](double current_a) {
        const double melted_kg_h = (a + bl * current_a) * current_a;
        return TrialPoint{current_a, melted_kg_h / 3.6 / mass_kg_m};
      };
      const TrialPoint low = point(random.between(80.0, 200.0));
      const TrialPoint high = point(random.between(240.0, 450.0));
      const auto law = fit_burn_off(wire, high, low, extension_mm);
      REQUIRE(law.has_value());
      INFO("case ", i, " a ", a, " bL ", bl, " L ", extension_mm);
      CHECK(law->a_kg_h_a == doctest::Approx(a).epsilon(1e-9));
      CHECK(law->b_kg_h_a2_mm * extension_mm == doctest::Approx(bl).epsilon(1e-9).scale(1e-5));
      const double between_a = random.between(low.current_a, high.current_a);
      const auto there = burn_off_at_current(*law, extension_mm, between_a);
      REQUIRE(there.has_value());
      const auto back = burn_off_at_feed(*law, extension_mm, there->feed_mm_s);
      REQUIRE(back.has_value());
      CHECK(back->current_a == doctest::Approx(between_a).epsilon(1e-9));
    }
  }

  TEST_CASE("refuses currents far beyond the trial and warns of those a little beyond") {
    const auto law = fit_burn_off(solid(1.2), {200.0, 100.0}, {300.0, 170.0}, 15.0);
    REQUIRE(law.has_value());
    CHECK(burn_off_at_current(*law, 15.0, 300.0)->findings.empty());
    const auto beyond = burn_off_at_current(*law, 15.0, 330.0);
    REQUIRE(beyond.has_value());
    REQUIRE(beyond->findings.size() == 1);
    CHECK(beyond->findings[0].code == "process.burn_off.extrapolated");
    CHECK(code(burn_off_at_current(*law, 15.0, 330.1)) == "process.burn_off.out_of_range");
    CHECK(code(burn_off_at_current(*law, 15.0, 180.0)) == "none");
    CHECK(code(burn_off_at_current(*law, 15.0, 179.9)) == "process.burn_off.out_of_range");
    CHECK(code(burn_off_at_current(*law, 15.0, 301.0, 0.0)) == "process.burn_off.out_of_range");
    CHECK(code(burn_off_at_feed(*law, 15.0, 250.0)) == "process.burn_off.out_of_range");
  }

  TEST_CASE("given a free length a fifth off the trial's, a warning says so") {
    const auto law = fit_burn_off(solid(1.2), {200.0, 100.0}, {300.0, 170.0}, 15.0);
    CHECK(burn_off_at_current(*law, 18.0, 250.0)->findings.empty());
    const auto off = burn_off_at_current(*law, 18.1, 250.0);
    REQUIRE(off->findings.size() == 1);
    CHECK(off->findings[0].code == "process.burn_off.extension");
    // A longer free length melts more at the same current.
    CHECK(off->feed_mm_s > burn_off_at_current(*law, 15.0, 250.0)->feed_mm_s);
  }

  TEST_CASE("refuses trial points that no wire can give because no law fits them") {
    const auto trial = [](const TrialPoint& one, const TrialPoint& other) {
      const auto law = fit_burn_off(solid(1.2), one, other, 15.0);
      return law ? std::string("none") : law.error().code;
    };
    CHECK(trial({200.0, 100.0}, {300.0, 170.0}) == "none");
    CHECK(trial({200.0, 100.0}, {300.0, 149.0}) == "process.burn_off.trial");
    CHECK(trial({200.0, 100.0}, {300.0, 226.0}) == "process.burn_off.trial");
    CHECK(trial({200.0, 100.0}, {300.0, 224.0}) == "none");
    CHECK(trial({280.0, 150.0}, {300.0, 170.0}) == "process.burn_off.trial");
    CHECK(trial({269.0, 145.0}, {300.0, 170.0}) == "none");
    CHECK(trial({0.0, 100.0}, {300.0, 170.0}) == "process.burn_off.trial");
    Wire unknown = solid(1.2);
    unknown.process = "136";
    CHECK(fit_burn_off(unknown, {200.0, 100.0}, {300.0, 170.0}, 15.0).error().code ==
          "process.wire.mass_unknown");
  }

  TEST_CASE("refuses remembered coefficients for thin, thick and cored wire") {
    const auto without_trial = [](const Wire& wire) {
      const auto law = remembered_burn_off(wire);
      return law ? std::string("none") : law.error().code;
    };
    CHECK(without_trial(solid(0.9)) == "process.burn_off.diameter");
    CHECK(without_trial(solid(1.0)) == "none");
    CHECK(without_trial(solid(1.6)) == "none");
    CHECK(without_trial(solid(1.61)) == "process.burn_off.diameter");
    CHECK(without_trial(cored(1.2, 7.8)) == "process.burn_off.cored");
    CHECK_THROWS_AS((void)remembered_burn_off(solid(0.0)), base::ContractViolation);
    const auto law = remembered_burn_off(solid(1.2));
    CHECK_THROWS_AS((void)burn_off_at_current(*law, 0.0, 250.0), base::ContractViolation);
  }

  // practice: plausibility only, not counted as outside checks (oracles/consumables.hpp says why).
  TEST_CASE("given CO2-FILLET conditions, the metal they lay is possible but for one row") {
    const Wire wire = [] {
      Wire made = solid(1.2);
      made.efficiency_ratio = co2_efficiency_ratio;
      return made;
    }();
    for (const ConditionRow& row : condition_rows) {
      for (int i = 0; i < 2; ++i) {
        const double area_mm2 = 0.5 * row.leg_mm[i] * row.leg_mm[i];
        const double travel_mm_s = row.travel_cm_min[i] / 6.0;
        const double laid_kg_h = area_mm2 * travel_mm_s * 3600.0 * process::steel_density_kg_mm3;
        const double g_a_h = 1000.0 * laid_kg_h / row.current_a[i];
        INFO(row.item, " leg ", row.leg_mm[i], ": ", laid_kg_h, " kg/h, ", g_a_h, " g/(A h)");
        CHECK((g_a_h < most_deposit_g_a_h) == row.possible);
        const double feed_mm_s = laid_kg_h / process::deposit_rate(wire, 1.0).deposit_kg_h;
        CHECK(process::bead_area_mm2(wire, feed_mm_s, travel_mm_s) ==
              doctest::Approx(area_mm2).epsilon(1e-9));
        // The remembered law, free length 20 mm, must feed at least what is laid.
        const auto law = remembered_burn_off(wire);
        const auto burnt = burn_off_at_current(*law, 20.0, row.current_a[i]);
        REQUIRE(burnt.has_value());
        CHECK((burnt->feed_mm_s > feed_mm_s) == row.possible);
      }
    }
  }
}

}  // namespace seamturn::tests
