// SPDX-License-Identifier: MIT
#include "seamturn/cooling/between_passes.hpp"

#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using cooling::CoolingPlate;
using cooling::lump_rise_k;
using cooling::tail_rise_k;
using cooling::Wait;
using cooling::waits_between_passes;

namespace {

constexpr double no_face_loss_w_m2_k = 1e-9;

CoolingPlate plate_of(double thickness_mm, double width_mm) {
  CoolingPlate plate;
  plate.thickness_mm = thickness_mm;
  plate.width_mm = width_mm;
  return plate;
}

std::vector<Wait> waits_of(const CoolingPlate& plate,
                           const std::vector<double>& heat_inputs,
                           double interpass_max_c) {
  const auto waits = waits_between_passes(plate, heat_inputs, interpass_max_c);
  REQUIRE(waits.has_value());
  return *waits;
}

struct Stack {
  CoolingPlate plate;
  std::vector<double> heat_inputs;
  double interpass_max_c = 250.0;
};

Stack random_stack(base::Random& random) {
  Stack stack;
  stack.plate = plate_of(random.between(4.0, 80.0), random.between(60.0, 1500.0));
  stack.plate.heat_paths = random.below(2) == 0 ? 2 : 3;
  stack.plate.start_c = random.between(-10.0, 140.0);
  stack.interpass_max_c = random.between(150.0, 300.0);
  const std::size_t passes = 2 + random.below(11);
  for (std::size_t i = 0; i < passes; ++i) {
    stack.heat_inputs.push_back(random.between(0.4, 3.0));
  }
  return stack;
}

/// How hot the place is just before pass k, by one model, when passes start at these times.
template <class Rise>
double place_c(const Stack& stack, const std::vector<double>& starts_s, std::size_t k, Rise rise) {
  double place = std::max(stack.plate.start_c, stack.plate.ambient_c);
  for (std::size_t j = 0; j < k; ++j) {
    place += rise(stack.plate, stack.heat_inputs[j], starts_s[k] - starts_s[j]);
  }
  return place;
}

}  // namespace

TEST_SUITE("cooling/between_passes") {
  TEST_CASE("given 1.5 kJ/mm on very thick plate from 20 degC, 150 degC is reached after 40.8 s") {
    const auto waits = waits_of(plate_of(400.0, 2000.0), {1.5, 1.5}, 150.0);
    check_expected("3-D tail",
                   waits.front().tail_s,
                   {40.8, 0.05, Origin::computed, "Q/(2 pi lambda dT), by a separate script"});
  }

  TEST_CASE("given 1.5 kJ/mm on 12 mm without face loss, 150 degC is reached after 416.6 s") {
    CoolingPlate plate = plate_of(12.0, 5000.0);
    plate.face_loss_w_m2_k = no_face_loss_w_m2_k;
    const auto waits = waits_of(plate, {1.5, 1.5}, 150.0);
    check_expected(
        "2-D tail",
        waits.front().tail_s,
        {416.6, 0.05, Origin::computed, "(Q/d)^2/(4 pi lambda rho c dT^2), by a separate script"});
  }

  TEST_CASE("given 1.5 kJ/mm again and again on a 300 x 20 mm strip, 198.1 degC needs 600 s") {
    CoolingPlate plate = plate_of(20.0, 300.0);
    plate.face_loss_w_m2_k = 20.0;
    const auto waits = waits_of(plate, std::vector<double>(40, 1.5), 198.1065);
    check_expected("lump",
                   waits.back().lump_s,
                   {600.0, 0.05, Origin::computed, "theta = D e/(1 - e), by a separate script"});
  }

  TEST_CASE(
      "given a pass one diffusion time old, the far face raises the line by the theta value") {
    // At a t = d^2/pi the image sum is theta_3(exp(-pi)) = pi^(1/4)/Gamma(3/4).
    const double d = 30.0;
    const double time_s = d * d / (std::numbers::pi * cooling::diffusivity_mm2_s);
    CoolingPlate plate = plate_of(d, 2000.0);
    plate.face_loss_w_m2_k = no_face_loss_w_m2_k;
    const double endless = 1000.0 / (2.0 * std::numbers::pi * 0.045 * time_s);
    check_expected(
        "theta",
        tail_rise_k(plate, 1.0, time_s) / endless,
        {1.0864348112133080, 1e-12, Origin::closed_form, "DLMF 20.4, theta at q = e^-pi"});
  }

  TEST_CASE("given an explicit grid through the thickness, the tail agrees within half a percent") {
    // Heat laid on one face of an insulated plate, spread on a grid; across the plate by Gauss.
    constexpr int cells = 60;
    const double d = 25.0;
    const double dx = d / cells;
    const double step_s = 0.4 * dx * dx / cooling::diffusivity_mm2_s;
    std::vector<double> heat(cells, 0.0);
    heat[0] = 1.0 / dx;
    CoolingPlate plate = plate_of(d, 2000.0);
    plate.face_loss_w_m2_k = no_face_loss_w_m2_k;
    double time_s = 0.0;
    for (int step = 1; step <= 6000; ++step) {
      std::vector<double> next = heat;
      for (int i = 0; i < cells; ++i) {
        const double left = i > 0 ? heat[static_cast<std::size_t>(i - 1)] : heat[0];
        const double right = heat[static_cast<std::size_t>(i + 1 < cells ? i + 1 : i)];
        const double here = heat[static_cast<std::size_t>(i)];
        next[static_cast<std::size_t>(i)] = here + 0.4 * (left - 2.0 * here + right);
      }
      heat = next;
      time_s += step_s;
      if (step % 500 != 0) continue;
      const double across =
          1.0 / std::sqrt(4.0 * std::numbers::pi * cooling::diffusivity_mm2_s * time_s);
      const double expected_k = 1000.0 / cooling::heat_capacity_j_mm3_k * across * heat[0];
      check_expected(
          "grid at " + std::to_string(time_s) + " s",
          tail_rise_k(plate, 1.0, time_s),
          {expected_k, 0.005 * expected_k, Origin::cross, "explicit finite differences"});
    }
  }

  TEST_CASE("given a grid across and through the plate with face loss, the tail agrees in 1 %") {
    // Half the plate, explicit: heat in one cell at the weld line, both faces lose to the air.
    constexpr int across = 260, through = 12;
    const double cell_mm = 1.0;
    CoolingPlate plate = plate_of(through * cell_mm, 5000.0);
    plate.face_loss_w_m2_k = 40.0;
    const double step_s = 0.2 * cell_mm * cell_mm / cooling::diffusivity_mm2_s;
    const double loss =
        step_s * plate.face_loss_w_m2_k * 1e-6 / (cooling::heat_capacity_j_mm3_k * cell_mm);
    const auto at = [](int y, int z) { return static_cast<std::size_t>(y * through + z); };
    std::vector<double> rise(static_cast<std::size_t>(across * through), 0.0);
    rise[at(0, 0)] = 0.5 * 1000.0 / (cooling::heat_capacity_j_mm3_k * cell_mm * cell_mm);
    std::vector<double> next = rise;
    int compared = 0;
    for (int step = 1; step <= 8000; ++step) {
      for (int y = 0; y < across; ++y) {
        for (int z = 0; z < through; ++z) {
          const double here = rise[at(y, z)];
          double sum = y > 0 ? rise[at(y - 1, z)] : here;
          sum += y + 1 < across ? rise[at(y + 1, z)] : 0.0;
          sum += z > 0 ? rise[at(y, z - 1)] : here;
          sum += z + 1 < through ? rise[at(y, z + 1)] : here;
          const bool face = z == 0 || z + 1 == through;
          next[at(y, z)] = here + 0.2 * (sum - 4.0 * here) - (face ? loss * here : 0.0);
        }
      }
      std::swap(rise, next);
      if (step % 1000 != 0 && step != 600) continue;
      const double time_s = step * step_s;
      const double expected_k = rise[0];
      check_expected("grid at " + std::to_string(time_s) + " s",
                     tail_rise_k(plate, 1.0, time_s),
                     {expected_k, 0.01 * expected_k, Origin::cross, "explicit finite differences"});
      ++compared;
    }
    CHECK(compared == 9);
  }

  TEST_CASE(
      "for any thickness, law: the tail is never below the thick or the thin limit, nor 9 % "
      "above") {
    for (const double d : {3.0, 10.0, 30.0, 100.0}) {
      CoolingPlate plate = plate_of(d, 1000.0);
      plate.face_loss_w_m2_k = no_face_loss_w_m2_k;
      for (double t = 0.01; t < 1e5; t *= 1.7) {
        const double thick = 1000.0 / (2.0 * std::numbers::pi * 0.045 * t);
        const double thin = 1000.0 / d / std::sqrt(4.0 * std::numbers::pi * 0.045 * 0.003925 * t);
        const double rise = tail_rise_k(plate, 1.0, t);
        const double larger = std::max(thick, thin);
        CHECK(rise >= larger * (1.0 - 1e-7));  // the face loss is not quite none
        CHECK(rise <= larger * 1.0865);
      }
    }
  }

  TEST_CASE(
      "for any place, law: the rise falls with time, and a tee takes two thirds of a butt's") {
    for (const double d : {4.0, 20.0, 80.0}) {
      const CoolingPlate butt = plate_of(d, 300.0);
      CoolingPlate tee = butt;
      tee.heat_paths = 3;
      double tail = std::numeric_limits<double>::infinity();
      double lump = tail;
      for (double t = 0.1; t < 1e4; t *= 1.3) {
        CHECK(tail_rise_k(butt, 1.0, t) < tail);
        CHECK(lump_rise_k(butt, 1.0, t) < lump);
        tail = tail_rise_k(butt, 1.0, t);
        lump = lump_rise_k(butt, 1.0, t);
        CHECK(tail_rise_k(tee, 1.0, t) == doctest::Approx(tail * 2 / 3).epsilon(1e-12));
        CHECK(lump_rise_k(tee, 1.0, t) == doctest::Approx(lump * 2 / 3).epsilon(1e-12));
      }
    }
  }

  TEST_CASE("for any stack, law: keeping the longer waits, no model finds the place too hot") {
    base::Random random(base::named_seed(20261125, "keeping waits"));
    INFO("seed 20261125");
    for (int i = 0; i < 100; ++i) {
      const Stack stack = random_stack(random);
      const auto waits = waits_of(stack.plate, stack.heat_inputs, stack.interpass_max_c);
      std::vector<double> kept = {0.0};
      std::vector<double> late = {0.0};
      for (const Wait& wait : waits) {
        kept.push_back(kept.back() + wait.longer_s());
        late.push_back(late.back() + wait.longer_s() + random.between(0.0, 500.0));
      }
      for (std::size_t k = 1; k < kept.size(); ++k) {
        const double tail_c = place_c(stack, kept, k, tail_rise_k);
        CHECK(tail_c <= stack.interpass_max_c + 1e-6);
        CHECK(place_c(stack, kept, k, lump_rise_k) <= stack.interpass_max_c + 1e-6);
        CHECK(place_c(stack, late, k, tail_rise_k) <= tail_c + 1e-9);
      }
    }
  }

  TEST_CASE(
      "for any stack, law: a wait is the least, for one second less is too hot by its model") {
    base::Random random(base::named_seed(20261125, "least waits"));
    INFO("seed 20261125");
    for (int i = 0; i < 100; ++i) {
      const Stack stack = random_stack(random);
      std::vector<double> tail = {0.0};
      std::vector<double> lump = {0.0};
      for (const Wait& wait : waits_of(stack.plate, stack.heat_inputs, stack.interpass_max_c)) {
        tail.push_back(tail.back() + wait.tail_s);
        lump.push_back(lump.back() + wait.lump_s);
      }
      for (std::size_t k = 1; k < tail.size(); ++k) {
        CHECK(place_c(stack, tail, k, tail_rise_k) ==
              doctest::Approx(stack.interpass_max_c).epsilon(1e-8));
        CHECK(place_c(stack, lump, k, lump_rise_k) ==
              doctest::Approx(stack.interpass_max_c).epsilon(1e-8));
      }
    }
  }

  TEST_CASE("for any stack, law: a higher maximum lengthens no wait") {
    base::Random random(base::named_seed(20261125, "higher maximum"));
    INFO("seed 20261125");
    for (int i = 0; i < 300; ++i) {
      const Stack stack = random_stack(random);
      const auto here = waits_of(stack.plate, stack.heat_inputs, stack.interpass_max_c);
      const auto higher = waits_of(
          stack.plate, stack.heat_inputs, stack.interpass_max_c + random.between(1.0, 100.0));
      for (std::size_t k = 0; k < here.size(); ++k) {
        CHECK(higher[k].tail_s <= here[k].tail_s * (1.0 + 1e-8));
        CHECK(higher[k].lump_s <= here[k].lump_s * (1.0 + 1e-8));
      }
    }
  }

  TEST_CASE("for any stack, law: all passes hotter by one factor shorten no wait") {
    base::Random random(base::named_seed(20261125, "all hotter"));
    INFO("seed 20261125");
    for (int i = 0; i < 300; ++i) {
      const Stack stack = random_stack(random);
      std::vector<double> hot = stack.heat_inputs;
      const double factor = random.between(1.01, 2.0);
      for (double& heat : hot) heat *= factor;
      const auto here = waits_of(stack.plate, stack.heat_inputs, stack.interpass_max_c);
      const auto hotter = waits_of(stack.plate, hot, stack.interpass_max_c);
      for (std::size_t k = 0; k < here.size(); ++k) {
        CHECK(hotter[k].tail_s >= here[k].tail_s * (1.0 - 1e-8));
        CHECK(hotter[k].lump_s >= here[k].lump_s * (1.0 - 1e-8));
      }
    }
  }

  TEST_CASE(
      "for any stack, law: one hotter pass shortens not its own wait and lets none start earlier") {
    // A later wait alone may shrink by a few percent, since the longer wait before it has let the
    // older heat sink further; the start it leads to still comes later (docs/methods/cooling.md).
    base::Random random(base::named_seed(20261125, "one hotter"));
    INFO("seed 20261125");
    for (int i = 0; i < 300; ++i) {
      const Stack stack = random_stack(random);
      std::vector<double> hot = stack.heat_inputs;
      const std::size_t hot_pass = random.below(hot.size());
      hot[hot_pass] *= random.between(1.01, 4.0);
      const auto here = waits_of(stack.plate, stack.heat_inputs, stack.interpass_max_c);
      const auto hotter = waits_of(stack.plate, hot, stack.interpass_max_c);
      Wait start;
      Wait hot_start;
      for (std::size_t k = 0; k < here.size(); ++k) {
        start.tail_s += here[k].tail_s;
        start.lump_s += here[k].lump_s;
        hot_start.tail_s += hotter[k].tail_s;
        hot_start.lump_s += hotter[k].lump_s;
        CHECK(hot_start.tail_s >= start.tail_s * (1.0 - 1e-8));
        CHECK(hot_start.lump_s >= start.lump_s * (1.0 - 1e-8));
        if (k != hot_pass) continue;
        CHECK(hotter[k].tail_s > here[k].tail_s);
        CHECK(hotter[k].lump_s > here[k].lump_s);
      }
    }
  }

  TEST_CASE("for any part, law: a narrower one waits no less, and a wide one follows the tail") {
    const std::vector<double> heat_inputs(8, 1.2);
    const auto narrow = waits_of(plate_of(15.0, 80.0), heat_inputs, 200.0);
    const auto middle = waits_of(plate_of(15.0, 250.0), heat_inputs, 200.0);
    const auto wide = waits_of(plate_of(15.0, 5000.0), heat_inputs, 200.0);
    for (std::size_t k = 0; k < wide.size(); ++k) {
      CHECK(narrow[k].lump_s >= middle[k].lump_s);
      CHECK(middle[k].lump_s >= wide[k].lump_s);
      CHECK(wide[k].longer_s() == wide[k].tail_s);
      CHECK(narrow[k].tail_s == wide[k].tail_s);
    }
    CHECK(narrow.back().longer_s() == narrow.back().lump_s);
  }

  TEST_CASE("given fewer than two passes, there is nothing to wait for") {
    CHECK(waits_of(plate_of(20.0, 300.0), {}, 200.0).empty());
    CHECK(waits_of(plate_of(20.0, 300.0), {1.0}, 200.0).empty());
    CHECK(waits_of(plate_of(20.0, 300.0), {1.0, 1.0, 1.0}, 200.0).size() == 2);
  }

  TEST_CASE("refuses a maximum at the plate's own temperature because it never cools below it") {
    CoolingPlate plate = plate_of(20.0, 300.0);
    plate.start_c = 150.0;
    const std::vector<double> heat_inputs = {1.0, 1.0};
    CHECK(waits_between_passes(plate, heat_inputs, 150.001).has_value());
    const auto refused = waits_between_passes(plate, heat_inputs, 150.0);
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().code == "cooling.interpass.below_start");
    CHECK(refused.error().text.find("150 degC") != std::string::npos);
    plate.start_c = 10.0;
    plate.ambient_c = 30.0;
    CHECK_FALSE(waits_between_passes(plate, heat_inputs, 30.0).has_value());
    CHECK(waits_between_passes(plate, heat_inputs, 31.0).has_value());
  }

  TEST_CASE("given extreme but lawful inputs, every wait is finite and positive") {
    for (const double maximum_c : {20.000001, 21.0, 1500.0, 1e6, 1e300}) {
      for (const double d : {0.1, 10.0, 1000.0}) {
        for (const Wait& wait : waits_of(plate_of(d, 50.0), {0.01, 20.0, 0.01}, maximum_c)) {
          CHECK(std::isfinite(wait.longer_s()));
          CHECK(wait.tail_s > 0.0);
          CHECK(wait.lump_s > 0.0);
        }
      }
    }
  }

  TEST_CASE("refuses plates and heat that are none because they are a caller's bug") {
    const std::vector<double> heat_inputs = {1.0, 1.0};
    const std::vector<double> no_heat = {1.0, 0.0};
    CHECK_THROWS_AS((void)waits_between_passes(plate_of(0.0, 300.0), heat_inputs, 200.0),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)waits_between_passes(plate_of(20.0, -1.0), heat_inputs, 200.0),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)waits_between_passes(plate_of(20.0, 300.0), no_heat, 200.0),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)tail_rise_k(plate_of(20.0, 300.0), 1.0, 0.0), base::ContractViolation);
    CoolingPlate plate = plate_of(20.0, 300.0);
    plate.heat_paths = 0;
    CHECK_THROWS_AS((void)lump_rise_k(plate, 1.0, 1.0), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
