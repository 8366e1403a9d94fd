// SPDX-License-Identifier: MIT
#include "seamturn/heat/heat_input_band.hpp"

#include <algorithm>
#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using heat::BandParams;
using heat::cooling_time;
using heat::CoolingCase;
using heat::heat_input_band;
using heat::HeatFlow;

TEST_SUITE("heat/heat_input_band") {
  TEST_CASE("given a target of 10 s at 100 degC, closed-form: the printed formulas turned round") {
    // closed-form: 3-D, factor 0.9: Q = t / (6200 (1/400 - 1/700) 0.9); 2-D, 8 mm, factor 0.9.
    const double thick_q = 10.0 / (6200.0 * (1.0 / 400.0 - 1.0 / 700.0) * 0.9);
    const auto thick = heat_input_band({CoolingCase::butt, 100.0, 100.0, 100.0, 10.0, 10.001});
    REQUIRE(thick.has_value());
    check_expected("thick", thick->least_kj_mm, {thick_q, 1e-9, Origin::closed_form, "SSAB-17"});
    check_expected("thick", thick->least_kj_mm, {1.6726, 5e-5, Origin::computed, "by a script"});
    CHECK(thick->least_flow == HeatFlow::three_dimensional);
    const double per_q2 =
        (4300.0 - 430.0) * 1e5 / 64.0 * (1.0 / (400.0 * 400.0) - 1.0 / (700.0 * 700.0)) * 0.9;
    const auto thin = heat_input_band({CoolingCase::butt, 8.0, 100.0, 100.0, 10.0, 10.001});
    REQUIRE(thin.has_value());
    check_expected("thin",
                   thin->least_kj_mm,
                   {std::sqrt(10.0 / per_q2), 1e-9, Origin::closed_form, "SSAB-17"});
    check_expected("thin", thin->least_kj_mm, {0.6607, 5e-5, Origin::computed, "by a script"});
    CHECK(thin->least_flow == HeatFlow::two_dimensional);
  }

  TEST_CASE("for any window that closes, law: cooling_time of the edges gives the window back") {
    base::Random random(base::named_seed(20261126, "heat band"));
    INFO("seed 20261126");
    const CoolingCase cases[] = {CoolingCase::run_on_plate,
                                 CoolingCase::butt,
                                 CoolingCase::fillet_tee,
                                 CoolingCase::fillet_corner};
    int closed = 0;
    for (int i = 0; i < 500; ++i) {
      const double preheat = random.between(0.0, 200.0);
      const double least_s = random.between(3.0, 20.0);
      const BandParams p = {cases[i % 4],
                            random.between(4.0, 60.0),
                            preheat,
                            preheat + random.between(0.0, 100.0),
                            least_s,
                            least_s * random.between(1.05, 4.0)};
      const auto band = heat_input_band(p);
      if (!band) {
        CHECK(band.error().code == "heat.band.empty");
        continue;
      }
      ++closed;
      CHECK(band->least_kj_mm <= band->most_kj_mm);
      const auto cool =
          cooling_time({p.weld, band->least_kj_mm, p.thickness_mm, p.coolest_start_c});
      const auto hot = cooling_time({p.weld, band->most_kj_mm, p.thickness_mm, p.hottest_start_c});
      CHECK(cool->t85_s == doctest::Approx(p.t85_least_s).epsilon(1e-9));
      CHECK(cool->flow == band->least_flow);
      // The upper end of the tee's factor range: never longer than the window.
      CHECK(std::max(hot->t85_3d_s, hot->t85_2d_long_s) ==
            doctest::Approx(p.t85_most_s).epsilon(1e-9));
    }
    CHECK(closed > 200);
    CHECK(closed < 500);
  }

  TEST_CASE("refuses a window that does not close, saying by how much, and a start of 500 degC") {
    const BandParams narrow = {CoolingCase::butt, 20.0, 20.0, 250.0, 10.0, 12.0};
    const auto empty = heat_input_band(narrow);
    REQUIRE_FALSE(empty.has_value());
    CHECK(empty.error().code == "heat.band.empty");
    CHECK(empty.error().text.find("does not close") != std::string::npos);
    BandParams wide = narrow;
    wide.t85_most_s = 60.0;
    CHECK(heat_input_band(wide).has_value());
    BandParams hot = wide;
    hot.hottest_start_c = 500.0;
    CHECK(heat_input_band(hot).error().code == "heat.t85.start_too_hot");
    hot.coolest_start_c = 500.0;
    CHECK(heat_input_band(hot).error().code == "heat.t85.start_too_hot");
  }

  TEST_CASE("given an interpass maximum above 350 degC, the warning of the cooling time stands") {
    const BandParams p = {CoolingCase::butt, 20.0, 340.0, 351.0, 10.0, 60.0};
    const auto band = heat_input_band(p);
    REQUIRE(band.has_value());
    REQUIRE(band->findings.size() == 1);
    CHECK(band->findings.front().code == "heat.t85.out_of_range");
  }

  TEST_CASE("refuses windows the wrong way round because they are a caller's bug") {
    BandParams p = {CoolingCase::butt, 20.0, 100.0, 200.0, 10.0, 10.0};
    CHECK_THROWS_AS((void)heat_input_band(p), base::ContractViolation);
    p.t85_most_s = 30.0, p.coolest_start_c = 201.0;
    CHECK_THROWS_AS((void)heat_input_band(p), base::ContractViolation);
    p.coolest_start_c = 100.0, p.thickness_mm = 0.0;
    CHECK_THROWS_AS((void)heat_input_band(p), base::ContractViolation);
  }

  TEST_CASE("given the end of a bead, half the time is a share and no second formula") {
    // published: JWS-45: the rate at a bead end is twice that of its middle; half the time is ours.
    CHECK(heat::bead_end_ratio == 0.5);
  }
}

}  // namespace seamturn::tests
