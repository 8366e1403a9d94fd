// SPDX-License-Identifier: MIT
// Tacks of seams that are welded in part only: worked out by hand, and laws.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/tack/tack_plan.hpp"

namespace seamturn::tests {

using base::Random;
using geom::Vec3;
using joint::Stretch;
using tack::TackSeam;

namespace {

/// Tacks of 50 mm, 20 mm clear of ends, at most 250 mm apart.
TackSeam welded_in_part(geom::Path path, std::vector<Stretch> within) {
  TackSeam seam;
  seam.path = std::move(path);
  seam.within = std::move(within);
  seam.thicker_mm = 20.0;
  seam.yield_mpa = 355.0;
  seam.weld_throat_mm = 6.0;
  seam.root_run_mm = 4.0;
  return seam;
}
geom::Path line(double length_mm) {
  return geom::LinePath{Vec3::Zero(), Vec3(length_mm, 0.0, 0.0)};
}
/// n x l (e), from a station on.
std::vector<Stretch> elements(int count, double each_mm, double gap_mm, double from_mm) {
  std::vector<Stretch> all;
  for (int i = 0; i < count; ++i) {
    const double at_mm = from_mm + i * (each_mm + gap_mm);
    all.push_back({at_mm, at_mm + each_mm});
  }
  return all;
}

void check_centres(const TackSeam& seam, const std::vector<double>& expected) {
  const auto plan = tack::plan_tacks(seam, {});
  REQUIRE(plan);
  REQUIRE(plan->tacks.size() == expected.size());
  for (std::size_t i = 0; i < expected.size(); ++i) {
    CHECK(0.5 * (plan->tacks[i].from_mm + plan->tacks[i].to_mm) == doctest::Approx(expected[i]));
  }
}
std::string refusal_text(const TackSeam& seam, const std::string& code) {
  const auto plan = tack::plan_tacks(seam, {});
  REQUIRE_FALSE(plan);
  CHECK(plan.error().code == code);
  return plan.error().text;
}

bool holds(const Stretch& stretch, const tack::Tack& tack, double round_mm) {
  for (const double on_mm : {-round_mm, 0.0, round_mm}) {
    const bool inside = tack.from_mm + on_mm >= stretch.from_mm - 1e-9 &&
                        tack.to_mm + on_mm <= stretch.to_mm + 1e-9;
    if (inside) return true;
  }
  return false;
}

}  // namespace

TEST_SUITE("tack/layout_within") {
  TEST_CASE("given elements as long as a tack, closed-form: each that the pitch asks for has one") {
    // 5 x 50 (100): every second one would be 300 mm off.
    check_centres(welded_in_part(line(800.0), elements(5, 50.0, 100.0, 37.5)),
                  {62.5, 212.5, 362.5, 512.5, 662.5});
    // 5 x 50 (150): 200 mm apart, none can be left out either.
    check_centres(welded_in_part(line(900.0), elements(5, 50.0, 150.0, 25.0)),
                  {50.0, 250.0, 450.0, 650.0, 850.0});
    // 5 x 50 (50): every second one is 200 mm off, two of four tacks would be 300 mm apart.
    check_centres(welded_in_part(line(600.0), elements(5, 50.0, 50.0, 75.0)),
                  {100.0, 300.0, 500.0});
  }

  TEST_CASE("given long elements, closed-form: outermost tacks at the outer ends, rest between") {
    // 3 x 200 (100): centres 45 to 175, 325 to 475, 625 to 755. Of five the second is wanted at
    // 222.5 and lies at 175, the nearest; the fourth likewise.
    check_centres(welded_in_part(line(800.0), elements(3, 200.0, 100.0, 0.0)),
                  {45.0, 175.0, 400.0, 625.0, 755.0});
    // An element with room for one has it in its middle.
    check_centres(welded_in_part(line(500.0), elements(2, 100.0, 100.0, 100.0)), {150.0, 350.0});
  }

  TEST_CASE("given elements no tack fits into, it is said how long they are") {
    const std::string text = refusal_text(
        welded_in_part(line(800.0), elements(5, 40.0, 100.0, 60.0)), "tack.seam.too_short");
    CHECK(text.find("no tack of 50 mm") != std::string::npos);
    CHECK(text.find("40 mm at a time") != std::string::npos);
    // 20 mm clear of the end leave 49.9 mm of the first element.
    check_centres(welded_in_part(line(800.0), {{0.0, 69.9}, {200.0, 250.0}, {400.0, 450.0}}),
                  {225.0, 425.0});
    check_centres(welded_in_part(line(800.0), {{0.0, 70.0}, {200.0, 250.0}}), {45.0, 225.0});
  }

  TEST_CASE("given a number, so many are laid or it is said how many fit") {
    TackSeam seam = welded_in_part(line(800.0), elements(5, 50.0, 100.0, 37.5));
    seam.count = 3;
    check_centres(seam, {62.5, 362.5, 662.5});
    seam.count = 6;
    CHECK(refusal_text(seam, "tack.count.no_room").find("only 5") != std::string::npos);
    seam.within = {{100.0, 100.0}};
    CHECK_THROWS_AS((void)tack::plan_tacks(seam, {}), base::ContractViolation);
  }

  TEST_CASE("given a frame, closed-form: an element round a corner holds a tack on either leg") {
    const geom::PolylinePath frame{
        {Vec3(0, 0, 0), Vec3(400, 0, 0), Vec3(400, 200, 0), Vec3(0, 200, 0)}, true};
    // Round the start, 1110 to 1290 of 1200: 1110 to 1180 and 20 to 90 are clear of it. The other
    // from 510 to 690, round the corner at 600: 510 to 580 and 620 to 690. Middles:
    check_centres(welded_in_part(frame, {{510.0, 690.0}, {1110.0, 1290.0}}),
                  {55.0, 545.0, 655.0, 1145.0});
  }

  TEST_CASE("for random elements, law: every tack lies in one, clear of the others") {
    Random random(base::named_seed(11, "tacks within"));
    for (int k = 0; k < 600; ++k) {
      INFO("seed 11, case " << k);
      geom::CirclePath circle;
      circle.radius_mm = random.between(150.0, 600.0);
      const geom::PolylinePath bent{
          {Vec3::Zero(), Vec3(random.between(200.0, 900.0), 0, 0), Vec3(950, 400, 0)}, k % 3 == 0};
      const geom::Path path = k % 3 == 1 ? geom::Path(circle) : geom::Path(bent);
      const double length_mm = geom::path_length_mm(path);
      const double round_mm = geom::is_closed(path) ? length_mm : 0.0;
      std::vector<Stretch> within;
      double at_mm = random.between(0.0, 60.0);
      for (;;) {
        const double to_mm = at_mm + random.between(30.0, 250.0);
        if (to_mm > length_mm) break;
        within.push_back({at_mm, to_mm});
        at_mm = to_mm + random.between(10.0, 200.0);
      }
      if (within.empty()) continue;
      TackSeam seam = welded_in_part(path, within);
      seam.second_side = k % 2 == 0;
      const auto plan = tack::plan_tacks(seam, {});
      if (!plan) {
        CHECK(plan.error().code == "tack.seam.too_short");
        continue;
      }
      for (std::size_t i = 0; i < plan->tacks.size(); ++i) {
        const tack::Tack& one = plan->tacks[i];
        CHECK(std::any_of(within.begin(), within.end(), [&](const Stretch& stretch) {
          return holds(stretch, one, round_mm);
        }));
        const bool last = i + 1 == plan->tacks.size();
        if (last && round_mm == 0.0) continue;
        const tack::Tack& next = plan->tacks[last ? 0 : i + 1];
        if (plan->tacks.size() > 1) {
          CHECK(next.from_mm + (last ? round_mm : 0.0) >= one.to_mm + 20.0 - 1e-9);
        }
      }
    }
  }
}

}  // namespace seamturn::tests
