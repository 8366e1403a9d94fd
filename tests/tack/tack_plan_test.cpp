// SPDX-License-Identifier: MIT
#include "seamturn/tack/tack_plan.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Random;
using geom::Vec3;
using tack::TackFate;
using tack::TackRules;
using tack::TackSeam;

namespace {

TackSeam seam_on(geom::Path path) {
  TackSeam seam;
  seam.path = std::move(path);
  seam.thicker_mm = 20.0;
  seam.yield_mpa = 355.0;
  seam.weld_throat_mm = 6.0;
  seam.root_run_mm = 4.0;
  return seam;
}
TackSeam line_seam(double length_mm) {
  return seam_on(geom::LinePath{Vec3::Zero(), Vec3(length_mm, 0.0, 0.0)});
}
TackSeam ring_seam(double diameter_mm) {
  geom::CirclePath circle;
  circle.radius_mm = 0.5 * diameter_mm;
  return seam_on(circle);
}

std::vector<double> centres_of(const tack::TackPlan& plan) {
  std::vector<double> centres;
  for (const tack::Tack& one : plan.tacks) centres.push_back(0.5 * (one.from_mm + one.to_mm));
  return centres;
}
std::vector<double> centres_of(const TackSeam& seam, const TackRules& rules = {}) {
  const auto plan = tack::plan_tacks(seam, rules);
  REQUIRE(plan);
  return centres_of(*plan);
}
bool says(const tack::TackPlan& plan, const std::string& code) {
  return std::any_of(plan.findings.begin(), plan.findings.end(), [&](const base::Finding& f) {
    return f.code == code && f.severity == base::Severity::warning;
  });
}
std::string refusal_of(const TackSeam& seam, const TackRules& rules = {}) {
  const auto plan = tack::plan_tacks(seam, rules);
  return plan ? "" : plan.error().code;
}
void check_stations(const std::vector<double>& got, const std::vector<double>& expected) {
  REQUIRE(got.size() == expected.size());
  for (std::size_t i = 0; i < got.size(); ++i) CHECK(got[i] == doctest::Approx(expected[i]));
}

}  // namespace

TEST_SUITE("tack/tack_plan") {
  TEST_CASE("given a line of 1000 mm, closed-form: first and last 20 mm clear, the rest between") {
    // closed-form: centres from 45 to 955; 910 / 250 -> 4 steps of 227.5.
    const auto plan = tack::plan_tacks(line_seam(1000.0), {});
    REQUIRE(plan);
    check_stations(centres_of(*plan), {45.0, 272.5, 500.0, 727.5, 955.0});
    CHECK(plan->tacks.front().from_mm == doctest::Approx(20.0));
    CHECK(plan->tacks.back().to_mm == doctest::Approx(980.0));
    CHECK(plan->widest_pitch_mm == doctest::Approx(227.5));
    CHECK((plan->tacks[2].centre - Vec3(500.0, 0.0, 0.0)).norm() < 1e-9);
    CHECK((plan->tacks[2].direction - Vec3::UnitX()).norm() < 1e-12);
    CHECK(plan->findings.empty());
    CHECK(plan->throat_mm == 4.0);
    CHECK(plan->fate == TackFate::remelted);
    CHECK(plan->fate_status == base::Status::common_practice);
  }

  TEST_CASE("given the second side of a tee, closed-form: it lies half a pitch off the first") {
    TackSeam second = line_seam(1000.0);
    second.second_side = true;
    check_stations(centres_of(second), {158.75, 386.25, 613.75, 841.25});
    // Two on the first side, at 45 and 255: a quarter and three quarters between.
    check_stations(centres_of(line_seam(300.0)), {45.0, 255.0});
    TackSeam shorter = line_seam(300.0);
    shorter.second_side = true;
    check_stations(centres_of(shorter), {97.5, 202.5});
  }

  TEST_CASE("given a short seam, two while they fit, then one in the middle, then a refusal") {
    // closed-form: two of 50 and three clear spaces of 20 need 160 mm; one needs 90.
    check_stations(centres_of(line_seam(160.0)), {45.0, 115.0});
    const auto one = tack::plan_tacks(line_seam(159.9), {});
    REQUIRE(one);
    check_stations(centres_of(*one), {79.95});
    CHECK(one->widest_pitch_mm == 0.0);
    CHECK(says(*one, "tack.count.few"));
    check_stations(centres_of(line_seam(90.0)), {45.0});
    CHECK(refusal_of(line_seam(89.9)) == "tack.seam.too_short");
  }

  TEST_CASE("given a ring, closed-form: evenly spaced, four at least") {
    const double around_mm = 200.0 * std::numbers::pi;  // 628.3 / 250 -> 3, so four
    std::vector<double> quarters, between;
    for (int i = 0; i < 4; ++i) {
      quarters.push_back(around_mm * (i + 0.5) / 4.0);
      between.push_back(around_mm * i / 4.0);
    }
    check_stations(centres_of(ring_seam(200.0)), quarters);
    TackSeam second = ring_seam(200.0);
    second.second_side = true;
    check_stations(centres_of(second), between);
    // closed-form: 1500 pi / 250 = 18.85 -> 19.
    const auto big = tack::plan_tacks(ring_seam(1500.0), {});
    REQUIRE(big);
    CHECK(big->tacks.size() == 19);
    CHECK(big->widest_pitch_mm == doctest::Approx(1500.0 * std::numbers::pi / 19.0));
    // At 45 deg of the small ring: on the circle, along it.
    const auto small = tack::plan_tacks(ring_seam(200.0), {});
    const double c = std::sqrt(0.5);
    CHECK((small->tacks[0].centre - Vec3(100.0 * c, 100.0 * c, 0.0)).norm() < 1e-9);
    CHECK((small->tacks[0].direction - Vec3(-c, c, 0.0)).norm() < 1e-12);
    // Four of 50 and as many spaces of 20: 280 mm around.
    CHECK(refusal_of(ring_seam(280.1 / std::numbers::pi)).empty());
    CHECK(refusal_of(ring_seam(279.9 / std::numbers::pi)) == "tack.seam.too_short");
  }

  TEST_CASE("given corners, closed-form: every leg is laid on its own, clear of them") {
    const geom::PolylinePath bent{{Vec3(0, 0, 0), Vec3(600, 0, 0), Vec3(600, 200, 0)}, false};
    // closed-form: first leg 45 to 555 in three steps of 170; the second, shorter than the pitch,
    // one in its middle.
    check_stations(centres_of(seam_on(bent)), {45.0, 215.0, 385.0, 555.0, 700.0});
    geom::PolylinePath frame{{Vec3(0, 0, 0), Vec3(400, 0, 0), Vec3(400, 200, 0), Vec3(0, 200, 0)},
                             true};
    check_stations(centres_of(seam_on(frame)),
                   {45.0, 200.0, 355.0, 500.0, 645.0, 800.0, 955.0, 1100.0});
  }

  TEST_CASE(
      "given a frame that starts in the middle of a leg, closed-form: that leg is laid whole") {
    // closed-form: corners at 200, 400, 800, 1000; the last leg runs from 1000 round to 1400, past
    // the start at 1200, where stations begin anew.
    const geom::PolylinePath frame{
        {Vec3(200, 0, 0), Vec3(400, 0, 0), Vec3(400, 200, 0), Vec3(0, 200, 0), Vec3(0, 0, 0)},
        true};
    check_stations(centres_of(seam_on(frame)),
                   {0.0, 155.0, 300.0, 445.0, 600.0, 755.0, 900.0, 1045.0});
  }

  TEST_CASE("for random seams, law: clear of ends and corners, apart, within the pitch") {
    Random random(base::named_seed(7, "tack plans"));
    for (int k = 0; k < 400; ++k) {
      INFO("seed 7, case " << k);
      geom::PolylinePath path{{Vec3::Zero()}, k % 3 == 0};
      double angle = 0.0;
      const int legs = 3 + k % 3;
      for (int i = 0; i < legs; ++i) {
        angle += 0.5 * std::numbers::pi;
        path.points.push_back(path.points.back() + random.between(170.0, 900.0) * (i + 1) *
                                                       Vec3(std::cos(angle), std::sin(angle), 0.0));
      }
      if (path.closed) path.points = {Vec3::Zero(), path.points[1], path.points[2]};
      TackSeam seam = seam_on(path);
      seam.second_side = k % 2 == 0;
      const auto plan = tack::plan_tacks(seam, {});
      REQUIRE(plan);
      const double length_mm = geom::path_length_mm(seam.path);
      CHECK(plan->findings.empty());
      // Round a corner the second side may miss the pitch by a tack and two clear spaces.
      CHECK(plan->widest_pitch_mm <= (seam.second_side ? 340.0 : 250.0) + 1e-9);
      for (std::size_t i = 0; i + 1 < plan->tacks.size(); ++i) {
        const tack::Tack &a = plan->tacks[i], &b = plan->tacks[i + 1];
        const bool one_leg = a.direction.dot(b.direction) > 1.0 - 1e-9;
        if (one_leg) CHECK(b.from_mm - a.from_mm <= 250.0 + 1e-9);
      }
      const std::vector<double> corners = geom::corner_stations_mm(seam.path);
      double last_to_mm = -1e9;
      for (const tack::Tack& one : plan->tacks) {
        if (!path.closed) CHECK(one.from_mm >= 20.0 - 1e-9);
        if (!path.closed) CHECK(one.to_mm <= length_mm - 20.0 + 1e-9);
        CHECK(one.from_mm >= last_to_mm + 20.0 - 1e-9);
        last_to_mm = one.to_mm;
        for (const double corner : corners) {
          for (const double round : {0.0, length_mm}) {
            const double at = corner + (path.closed ? round : 0.0);
            CHECK((one.to_mm <= at - 20.0 + 1e-9 || one.from_mm >= at + 20.0 - 1e-9));
          }
        }
      }
    }
  }

  TEST_CASE("given what is stated, number, length and pitch override the rule") {
    TackSeam seam = line_seam(1000.0);
    seam.count = 3;
    const auto few = tack::plan_tacks(seam, {});
    REQUIRE(few);
    check_stations(centres_of(*few), {45.0, 500.0, 955.0});
    CHECK(says(*few, "tack.pitch.wide"));
    seam.count.reset();
    seam.pitch_mm = 500.0;
    const auto wide = tack::plan_tacks(seam, {});
    REQUIRE(wide);
    CHECK(wide->tacks.size() == 3);
    CHECK(wide->findings.empty());
    seam.length_mm = 100.0;
    check_stations(centres_of(seam), {70.0, 500.0, 930.0});
    seam.length_mm = 49.9;
    const auto brief = tack::plan_tacks(seam, {});
    REQUIRE(brief);
    CHECK(says(*brief, "tack.length.short"));
    seam.length_mm = 50.0;
    CHECK_FALSE(says(*tack::plan_tacks(seam, {}), "tack.length.short"));
    seam.thicker_mm = 60.0;  // there 50 mm is not longer
    CHECK(says(*tack::plan_tacks(seam, {}), "tack.length.short"));
    TackSeam second = line_seam(1000.0);  // no corner excuses 910 / 3 between two
    second.second_side = true;
    second.count = 3;
    CHECK(says(*tack::plan_tacks(second, {}), "tack.pitch.wide"));
    TackSeam ring = ring_seam(300.0);
    ring.count = 3;
    CHECK(says(*tack::plan_tacks(ring, {}), "tack.count.few"));
    // 14 of 50 mm with 15 spaces of 20 fill 1000 mm.
    seam = line_seam(1000.0);
    seam.count = 14;
    CHECK(centres_of(seam).size() == 14);
    seam.count = 15;
    CHECK(refusal_of(seam) == "tack.count.no_room");
    ring.count = 14;  // 942 / 70 = 13.5
    CHECK(refusal_of(ring) == "tack.count.no_room");
  }

  TEST_CASE("given a gap at the limit, tacks are laid, and above it refused") {
    TackSeam seam = line_seam(500.0);
    seam.gap_mm = 2.0;
    CHECK(refusal_of(seam).empty());
    seam.gap_mm = 2.01;
    const auto wide = tack::plan_tacks(seam, {});
    REQUIRE_FALSE(wide);
    CHECK(wide.error().code == "tack.gap.too_wide");
    CHECK(wide.error().text.find("2.01 mm") != std::string::npos);
    seam.drawn_gap_mm = 2.0;  // of a groove
    CHECK(refusal_of(seam).empty());
  }

  TEST_CASE("given a throat, it is never above the weld, thinner ones are told, and their fate") {
    TackSeam seam = line_seam(500.0);  // weld 6, root run 4
    TackRules rules;
    rules.throat_mm = tack::RuleValue{5.0, base::Status::proposed, "test"};
    const auto thick = tack::plan_tacks(seam, rules);
    REQUIRE(thick);
    CHECK(thick->throat_mm == 5.0);
    CHECK(thick->fate == TackFate::ground_back);
    CHECK(thick->findings.empty());
    rules.throat_mm->value = 7.0;
    const auto proud = tack::plan_tacks(seam, rules);
    CHECK(proud->throat_mm == 6.0);
    CHECK(says(*proud, "tack.throat.above_weld"));
    rules.throat_mm->value = 3.9;
    const auto thin = tack::plan_tacks(seam, rules);
    CHECK(thin->throat_mm == 3.9);
    CHECK(says(*thin, "tack.throat.thin"));
    CHECK(thin->fate == TackFate::remelted);
    seam.gouged_from_it = true;
    CHECK(tack::plan_tacks(seam, rules)->fate == TackFate::gouged_out);
    CHECK(tack::tack_fate_name(TackFate::gouged_out) == "gouged out");
    CHECK(tack::tack_fate_name(TackFate::ground_back) == "ground back");
    CHECK(tack::tack_fate_name(TackFate::remelted) == "remelted");
    seam.weld_throat_mm = 3.0;  // a single run: the root run is the weld
    const auto single = tack::plan_tacks(seam, {});
    CHECK(single->throat_mm == 3.0);
    CHECK(single->findings.empty());
  }

  TEST_CASE("given a leg too short for a tack, it stays bare, and a wide stretch is told") {
    const geom::PolylinePath notched{{Vec3(0, 0, 0),
                                      Vec3(200, 0, 0),
                                      Vec3(200, 80, 0),
                                      Vec3(260, 80, 0),
                                      Vec3(260, 160, 0),
                                      Vec3(500, 160, 0)},
                                     false};
    const auto plan = tack::plan_tacks(seam_on(notched), {});
    REQUIRE(plan);
    check_stations(centres_of(*plan), {100.0, 540.0});
    CHECK(says(*plan, "tack.pitch.wide"));
  }

  TEST_CASE("refuses what is no quantity because it is a caller's bug") {
    const auto broken = [](auto change) {
      TackSeam seam = line_seam(500.0);
      change(seam);
      CHECK_THROWS_AS((void)tack::plan_tacks(seam, {}), base::ContractViolation);
    };
    broken([](TackSeam& s) { s.thicker_mm = 0.0; });
    broken([](TackSeam& s) { s.yield_mpa = -1.0; });
    broken([](TackSeam& s) { s.weld_throat_mm = std::nan(""); });
    broken([](TackSeam& s) { s.root_run_mm = 0.0; });
    broken([](TackSeam& s) { s.gap_mm = -0.1; });
    broken([](TackSeam& s) { s.drawn_gap_mm = std::numeric_limits<double>::infinity(); });
    broken([](TackSeam& s) { s.count = 0; });
    broken([](TackSeam& s) { s.length_mm = 0.0; });
    broken([](TackSeam& s) { s.pitch_mm = 0.0; });
    TackRules bad;
    bad.pitch_mm.value = 0.0;
    CHECK_THROWS_AS((void)tack::plan_tacks(line_seam(500.0), bad), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
