// SPDX-License-Identifier: MIT
#include "seamturn/cooling/warm_strip.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using cooling::CoolingPlate;
using cooling::Keep;
using cooling::WarmStrip;

namespace {

WarmStrip strip_of(double thickness_mm, double half_width_mm, double preheat_c) {
  WarmStrip strip;
  strip.thickness_mm = thickness_mm;
  strip.half_width_mm = half_width_mm;
  strip.preheat_c = preheat_c;
  return strip;
}

CoolingPlate plate_under(const WarmStrip& strip) {
  CoolingPlate plate;
  plate.thickness_mm = strip.thickness_mm;
  plate.width_mm = 600.0;
  plate.ambient_c = strip.ambient_c;
  plate.start_c = strip.preheat_c;
  plate.face_loss_w_m2_k = strip.face_loss_w_m2_k;
  return plate;
}

WarmStrip random_strip(base::Random& random) {
  WarmStrip strip = strip_of(
      random.between(5.0, 100.0), random.between(30.0, 300.0), random.between(45.0, 220.0));
  strip.ambient_c = random.between(-10.0, 35.0);
  strip.face_loss_w_m2_k = random.between(5.0, 40.0);
  return strip;
}

/// Half a wide plate on a grid: explicit steps of conduction and of loss through both faces. The
/// weld line is the mirror at cell 0. Shares no formula with the code under test.
class Grid {
 public:
  Grid(const WarmStrip& strip, double cell_mm, double plate_half_width_mm)
      : cell_mm_(cell_mm),
        step_s_(0.25 * cell_mm * cell_mm / cooling::diffusivity_mm2_s),
        loss_per_s_(2.0 * strip.face_loss_w_m2_k * 1e-6 /
                    (cooling::heat_capacity_j_mm3_k * strip.thickness_mm)),
        rise_(static_cast<std::size_t>(plate_half_width_mm / cell_mm), 0.0) {
    const auto warm = static_cast<std::size_t>(std::lround(strip.half_width_mm / cell_mm));
    std::fill(rise_.begin(), rise_.begin() + static_cast<std::ptrdiff_t>(warm), 1.0);
  }
  /// Rise at the weld line once the time has come; steps forward only.
  double at_line(double time_s) {
    double last = line();
    while (now_s_ < time_s) {
      last = line();
      step();
    }
    const double part = (now_s_ - time_s) / step_s_;
    return line() + part * (last - line());
  }

 private:
  double line() const { return (9.0 * rise_[0] - rise_[1]) / 8.0; }  // parabola to the mirror
  void step() {
    const std::vector<double> old = rise_;
    for (std::size_t i = 0; i < old.size(); ++i) {
      const double left = i > 0 ? old[i - 1] : old[0];
      const double right = i + 1 < old.size() ? old[i + 1] : 0.0;
      rise_[i] = old[i] + 0.25 * (left - 2.0 * old[i] + right) - step_s_ * loss_per_s_ * old[i];
    }
    now_s_ += step_s_;
  }
  double cell_mm_;
  double step_s_;
  double loss_per_s_;
  double now_s_ = 0.0;
  std::vector<double> rise_;
};

}  // namespace

TEST_SUITE("cooling/warm_strip") {
  TEST_CASE("given hardly any face loss, the strip keeps erf(1/2) once a t is its half width^2") {
    WarmStrip strip = strip_of(20.0, 75.0, 120.0);
    strip.face_loss_w_m2_k = 1e-9;
    const double time_s = 75.0 * 75.0 / cooling::diffusivity_mm2_s;
    check_expected("erf",
                   cooling::strip_left_ratio(strip, time_s),
                   {0.5204998778130465, 1e-9, Origin::closed_form, "DLMF 7.2, table of erf"});
  }

  TEST_CASE("given a part heated through, a rise falls to 1/e in rho c d / 2 h") {
    // 0.003925 J/mm3K x 20 mm / (2 x 15e-6 W/mm2K) = 2616.67 s.
    const WarmStrip strip = strip_of(20.0, 75.0, 120.0);
    check_expected("1/e",
                   cooling::heated_through_left_ratio(strip, 0.003925 * 20.0 / 30e-6),
                   {1.0 / std::numbers::e, 1e-12, Origin::closed_form, "lumped cooling"});
    // From 145 to 120 degC over 20 degC: 2616.67 ln 1.25.
    check_expected("keep",
                   cooling::keep_after_heating(strip).heated_through_s,
                   {2616.6666667 * std::log(1.25), 1e-4, Origin::closed_form, "lumped cooling"});
  }

  TEST_CASE("given an explicit grid across the plate, the strip agrees within half a percent") {
    for (const double half_width_mm : {40.0, 80.0, 120.0}) {
      const WarmStrip strip = strip_of(12.0, half_width_mm, 120.0);
      Grid grid(strip, 2.0, 900.0);
      for (const double time_s : {20.0, 60.0, 150.0, 400.0, 900.0, 2000.0}) {
        const double expected = grid.at_line(time_s);
        check_expected(
            "half width " + std::to_string(half_width_mm) + " at " + std::to_string(time_s) + " s",
            cooling::strip_left_ratio(strip, time_s),
            {expected, 0.005 * expected, Origin::cross, "explicit finite differences"});
      }
    }
  }

  TEST_CASE("given the same grid, the time after heating ends agrees within half a percent") {
    const WarmStrip strip = strip_of(12.0, 76.0, 120.0);
    Grid grid(strip, 2.0, 900.0);
    double time_s = 0.0;
    while ((100.0 + cooling::heated_above_preheat_k) * grid.at_line(time_s) > 100.0) time_s += 0.1;
    check_expected("keep",
                   cooling::keep_after_heating(strip).strip_s,
                   {time_s, 0.005 * time_s, Origin::cross, "explicit finite differences"});
  }

  TEST_CASE("for any strip, law: at its time the place is at the preheat, by each model") {
    base::Random random(base::named_seed(20261126, "warm strip"));
    INFO("seed 20261126");
    for (int i = 0; i < 300; ++i) {
      const WarmStrip strip = random_strip(random);
      const double needed_k = strip.preheat_c - strip.ambient_c;
      const Keep heated = cooling::keep_after_heating(strip);
      const double from_k = needed_k + cooling::heated_above_preheat_k;
      CHECK(from_k * cooling::strip_left_ratio(strip, heated.strip_s) ==
            doctest::Approx(needed_k).epsilon(1e-8));
      CHECK(from_k * cooling::heated_through_left_ratio(strip, heated.heated_through_s) ==
            doctest::Approx(needed_k).epsilon(1e-8));
      const CoolingPlate plate = plate_under(strip);
      const double heat = random.between(0.5, 3.0);
      const Keep pass = cooling::keep_after_pass(strip, plate, heat);
      const auto place_k = [&](double left, double time_s, bool warmer) {
        const double tail_k = cooling::tail_rise_k(plate, heat, time_s);
        const double lump_k = cooling::lump_rise_k(plate, heat, time_s);
        return needed_k * left + (warmer ? std::max(tail_k, lump_k) : std::min(tail_k, lump_k));
      };
      CHECK(place_k(cooling::strip_left_ratio(strip, pass.strip_s), pass.strip_s, false) ==
            doctest::Approx(needed_k).epsilon(1e-8));
      const double through_s = pass.heated_through_s;
      CHECK(place_k(cooling::heated_through_left_ratio(strip, through_s), through_s, true) ==
            doctest::Approx(needed_k).epsilon(1e-8));
    }
  }

  TEST_CASE("for any strip, law: its own model is the shorter, and a wider one keeps no shorter") {
    base::Random random(base::named_seed(20261126, "wider strip"));
    INFO("seed 20261126");
    for (int i = 0; i < 300; ++i) {
      const WarmStrip strip = random_strip(random);
      WarmStrip wider = strip;
      wider.half_width_mm *= random.between(1.05, 3.0);
      const CoolingPlate plate = plate_under(strip);
      const double heat = random.between(0.5, 3.0);
      for (const bool heated : {true, false}) {
        const Keep here = heated ? cooling::keep_after_heating(strip)
                                 : cooling::keep_after_pass(strip, plate, heat);
        const Keep wide = heated ? cooling::keep_after_heating(wider)
                                 : cooling::keep_after_pass(wider, plate, heat);
        CHECK(here.strip_s <= here.heated_through_s);
        CHECK(here.shorter_s() == here.strip_s);
        CHECK(wide.strip_s > here.strip_s);
        CHECK(wide.heated_through_s == doctest::Approx(here.heated_through_s).epsilon(1e-9));
      }
    }
  }

  TEST_CASE("for any strip, law: a higher preheat is kept shorter, more heat in a pass longer") {
    base::Random random(base::named_seed(20261126, "higher preheat"));
    INFO("seed 20261126");
    for (int i = 0; i < 300; ++i) {
      const WarmStrip strip = random_strip(random);
      WarmStrip hotter = strip;
      hotter.preheat_c += random.between(5.0, 80.0);
      CHECK(cooling::keep_after_heating(hotter).strip_s <
            cooling::keep_after_heating(strip).strip_s);
      CHECK(cooling::keep_after_heating(hotter).heated_through_s <
            cooling::keep_after_heating(strip).heated_through_s);
      const CoolingPlate plate = plate_under(strip);
      const double heat = random.between(0.5, 3.0);
      const Keep here = cooling::keep_after_pass(strip, plate, heat);
      const Keep hot = cooling::keep_after_pass(hotter, plate, heat);
      const Keep more = cooling::keep_after_pass(strip, plate, heat * random.between(1.05, 2.0));
      CHECK(hot.strip_s < here.strip_s);
      CHECK(hot.heated_through_s < here.heated_through_s);
      CHECK(more.strip_s > here.strip_s);
      CHECK(more.heated_through_s > here.heated_through_s);
    }
  }

  TEST_CASE(
      "for any strip, law: what counts the strip as fresh at a pass is at most 8 % too warm") {
    // The strip has aged since it was heated. Ratio of what is left: aged against fresh.
    base::Random random(base::named_seed(20261126, "aged strip"));
    INFO("seed 20261126");
    double largest = 0.0;
    for (int i = 0; i < 300; ++i) {
      const WarmStrip strip = random_strip(random);
      const double aged_s = cooling::keep_after_heating(strip).strip_s;
      const double at_pass = cooling::strip_left_ratio(strip, aged_s);
      for (double time_s = 1.0; time_s < 1e4; time_s *= 1.2) {
        const double fresh = cooling::strip_left_ratio(strip, time_s);
        const double aged = cooling::strip_left_ratio(strip, aged_s + time_s) / at_pass;
        largest = std::max(largest, fresh - aged);
      }
    }
    CAPTURE(largest);
    CHECK(largest < 0.08);
    CHECK(largest > 0.01);
  }

  TEST_CASE("refuses strips that are none and preheats that are none: a caller's bug") {
    const WarmStrip good = strip_of(20.0, 75.0, 120.0);
    CHECK_THROWS_AS((void)cooling::keep_after_heating(strip_of(0.0, 75.0, 120.0)),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)cooling::keep_after_heating(strip_of(20.0, 0.0, 120.0)),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)cooling::keep_after_heating(strip_of(20.0, 75.0, 20.0)),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)cooling::keep_after_heating(strip_of(20.0, 75.0, INFINITY)),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)cooling::keep_after_pass(good, plate_under(good), 0.0),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)cooling::strip_left_ratio(good, 0.0), base::ContractViolation);
    CHECK_THROWS_AS((void)cooling::heated_through_left_ratio(good, -1.0), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
