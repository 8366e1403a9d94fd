// SPDX-License-Identifier: MIT
// The window of t8/5 that a joint is to keep, the heat input it permits, and settings inside it.
#include <algorithm>

#include "oracle.hpp"
#include "planner/joint_work.hpp"
#include "repository.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/heat/cooling_time.hpp"
#include "seamturn/heat/heat_input_band.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/planner/planner.hpp"

namespace seamturn::tests {

namespace {

using base::Status;
using heat::CoolingCase;

constexpr double thicker_mm = 25.0;  // of tests/good/tee.xml
constexpr double thinner_mm = 15.0;

/// The tee with two rows: the usual one, and one of more wire for the same power, so of less heat
/// input. `preferred`: which of the two the pass stack takes when nothing binds.
planner::Inputs two_rows(const std::string& preferred) {
  planner::Inputs inputs = io::read_inputs(repository() / "tests/good/tee.xml");
  process::LinkedSettings cool = inputs.library.settings.front();
  cool.id = "cool";
  cool.feed_mm_s *= 11.0 / 9.0;
  inputs.library.settings.push_back(cool);
  for (process::LinkedSettings& row : inputs.library.settings) {
    if (row.id != preferred) row.travel_preferred_mm_s = row.travel_max_mm_s;
  }
  return inputs;
}

void state_window(planner::Inputs& inputs, double least_s, double most_s) {
  inputs.weldment.joints[0].heat.t85_min_s = least_s;
  inputs.weldment.joints[0].heat.t85_max_s = most_s;
}

double brief_s(const procedure::HeatLimits& limits, double q) {
  return heat::cooling_time({CoolingCase::fillet_tee, q, thicker_mm, limits.preheat_c})->t85_s;
}
double slow_s(const procedure::HeatLimits& limits, double q) {
  const auto time =
      heat::cooling_time({CoolingCase::fillet_tee, q, thinner_mm, limits.interpass_max_c});
  return std::max(time->t85_s, time->t85_2d_long_s);
}

struct LaidUnderLimits {
  procedure::HeatLimits limits;
  plan::PlannedSeam seam;
  std::vector<base::Finding> findings;
};
LaidUnderLimits lay(const planner::Inputs& inputs) {
  plan::Plan plan = planner::make_plan(inputs);
  return LaidUnderLimits{plan.joints[0].heat, plan.joints[0].seams[0], plan.findings};
}

/// What is told of joint J1.
std::string text_of_finding(const std::vector<base::Finding>& findings) {
  for (const base::Finding& finding : findings) {
    const bool is_first = finding.text.find("joint J1: ") == 0;
    if (is_first && finding.code == "heat.window.not_closed") return finding.text;
  }
  return "";
}

}  // namespace

TEST_SUITE("planner/heat_window") {
  TEST_CASE("given only a steel's window from memory, it is shown and changes no pass") {
    planner::Inputs inputs = two_rows("single");
    const LaidUnderLimits shown = lay(inputs);
    REQUIRE(shown.limits.window);
    CHECK_FALSE(shown.limits.window->binds);
    CHECK_FALSE(shown.limits.window->kept);
    CHECK(shown.limits.window->t85_least_s == 10.0);
    CHECK(shown.limits.window->t85_most_s == 25.0);
    CHECK(shown.limits.window->stated_by == "steel S355J2 (test)");
    CHECK(text_of_finding(shown.findings).empty());
    inputs.library.steels[0].t85.reset();
    const LaidUnderLimits without = lay(inputs);
    CHECK_FALSE(without.limits.window);
    CHECK(without.seam.passes[0].pass.settings == shown.seam.passes[0].pass.settings);
    CHECK(without.seam.passes[0].t85_s == shown.seam.passes[0].t85_s);
  }

  TEST_CASE("given the same window verified, it binds and is told not to close") {
    planner::Inputs inputs = two_rows("single");
    inputs.library.steels[0].t85->status = Status::verified;
    const LaidUnderLimits laid = lay(inputs);
    REQUIRE(laid.limits.window);
    CHECK(laid.limits.window->binds);
    CHECK_FALSE(laid.limits.window->kept);
    CHECK_FALSE(laid.limits.window->heat_input_least_kj_mm);
    CHECK(text_of_finding(laid.findings).find("10 to 25 s (steel S355J2 (test))") !=
          std::string::npos);
    CHECK(text_of_finding(laid.findings).find("does not close") != std::string::npos);
    CHECK_FALSE(laid.seam.passes.empty());
  }

  TEST_CASE("given a window in the file, it binds before any steel's") {
    planner::Inputs inputs = two_rows("single");
    inputs.library.steels[0].t85->status = Status::verified;
    state_window(inputs, 4.0, 40.0);
    const LaidUnderLimits laid = lay(inputs);
    CHECK(laid.limits.window->stated_by == "weldment file");
    CHECK(laid.limits.window->binds);
    CHECK(laid.limits.window->kept);
    CHECK(text_of_finding(laid.findings).empty());
  }

  TEST_CASE("for its band, law: each end is the careful one of both parts") {
    planner::Inputs inputs = two_rows("single");
    state_window(inputs, 4.0, 40.0);
    const procedure::HeatLimits limits = lay(inputs).limits;
    check_expected("least",
                   brief_s(limits, *limits.window->heat_input_least_kj_mm),
                   {4.0, 1e-9, Origin::law, "cooling_time of the thicker part at the preheat"});
    check_expected("most",
                   slow_s(limits, *limits.window->heat_input_most_kj_mm),
                   {40.0, 1e-9, Origin::law, "cooling_time of the thinner part, hottest start"});
  }

  TEST_CASE(
      "given a window that only the other settings keep, they are taken, law: t8/5 keeps it") {
    for (const bool wants_cool : {true, false}) {
      INFO("wants cool ", wants_cool);
      planner::Inputs inputs = two_rows(wants_cool ? "single" : "cool");
      const LaidUnderLimits free = lay(inputs);
      const std::string taken = free.seam.passes[0].pass.settings;
      CHECK(taken == (wants_cool ? "single" : "cool"));
      const double q = free.seam.passes[0].pass.heat_input_kj_mm;
      const double other_q = wants_cool ? q * 9.0 / 11.0 : q * 11.0 / 9.0;
      state_window(
          inputs, brief_s(free.limits, other_q * 0.95), slow_s(free.limits, other_q * 1.05));
      const LaidUnderLimits bound = lay(inputs);
      REQUIRE(bound.limits.window);
      CHECK(bound.limits.window->kept);
      REQUIRE(bound.seam.passes.size() == 1);
      CHECK(bound.seam.passes[0].pass.settings == (wants_cool ? "cool" : "single"));
      for (const plan::PlannedPass& pass : bound.seam.passes) {
        CHECK(pass.t85_s >= bound.limits.window->t85_least_s - 1e-9);
        CHECK(pass.t85_long_s <= bound.limits.window->t85_most_s + 1e-9);
        CHECK(pass.t85_s == doctest::Approx(brief_s(bound.limits, pass.pass.heat_input_kj_mm)));
        CHECK(pass.t85_long_s == doctest::Approx(slow_s(bound.limits, pass.pass.heat_input_kj_mm)));
      }
      // Less heat than the preheat was found with is told, more is on the careful side.
      const bool is_told =
          text_of_finding(bound.findings).find("the preheat was found with") != std::string::npos;
      CHECK(is_told == wants_cool);
      CHECK(bound.limits.preheat_c == free.limits.preheat_c);
    }
  }

  TEST_CASE("given a window between both rows, no settings keep it and the passes stay") {
    planner::Inputs inputs = two_rows("single");
    const LaidUnderLimits free = lay(inputs);
    const double q = free.seam.passes[0].pass.heat_input_kj_mm;
    state_window(inputs, brief_s(free.limits, q * 0.90), slow_s(free.limits, q * 0.92));
    const LaidUnderLimits open = lay(inputs);
    CHECK_FALSE(open.limits.window->kept);
    CHECK(open.limits.window->heat_input_least_kj_mm);
    const std::string said = text_of_finding(open.findings);
    CHECK(said.find("no settings of the library lie within") != std::string::npos);
    CHECK(said.find("kJ/mm are permitted") != std::string::npos);
    CHECK(open.seam.passes[0].pass.heat_input_kj_mm == q);
  }

  TEST_CASE("given two steels, their windows' common part counts, the verified before the rest") {
    HandJoint hand;
    hand.first.shape = joint::Plate{400, 300, 25};
    hand.second.shape = joint::Plate{400, 120, 15};
    hand.work.cooling_case = CoolingCase::fillet_tee;
    hand.work.heat.preheat_c = 100.0;
    hand.work.heat.interpass_max_c = 200.0;
    const auto window = [&](Status first, Status second, double second_least_s) {
      hand.steel_1.t85 = material::CoolingWindow{5.0, 30.0, "a", first};
      hand.steel_2.t85 = material::CoolingWindow{second_least_s, 60.0, "b", second};
      planner::detail::set_window(hand.work);
      return *hand.work.heat.window;
    };
    const auto both = window(Status::verified, Status::common_practice, 8.0);
    CHECK(both.t85_least_s == 8.0);
    CHECK(both.t85_most_s == 30.0);
    CHECK(both.binds);
    CHECK(both.stated_by == "steel STEEL1 (a), steel STEEL2 (b)");
    const auto one = window(Status::from_memory, Status::verified, 8.0);
    CHECK(one.t85_most_s == 60.0);  // the remembered row binds nobody
    CHECK(one.stated_by == "steel STEEL2 (b)");
    CHECK(one.binds);
    const auto none = window(Status::from_memory, Status::from_memory, 8.0);
    CHECK(none.t85_most_s == 30.0);
    CHECK_FALSE(none.binds);
    const auto apart = window(Status::verified, Status::verified, 30.0);
    CHECK(apart.refused.find("nothing in common") != std::string::npos);
    CHECK_FALSE(apart.heat_input_least_kj_mm);
    hand.steel_2.t85.reset();
    hand.steel_1.t85.reset();
    planner::detail::set_window(hand.work);
    CHECK_FALSE(hand.work.heat.window);
  }

  TEST_CASE("given parts too unlike for one heat input, the window says which asks for what") {
    HandJoint hand;
    hand.first.shape = joint::Plate{400, 300, 40};
    hand.second.shape = joint::Plate{400, 120, 6};
    hand.joint.heat.t85_min_s = 5.0;
    hand.joint.heat.t85_max_s = 25.0;
    hand.work.cooling_case = CoolingCase::butt;
    hand.work.heat.preheat_c = 20.0;
    hand.work.heat.interpass_max_c = 100.0;
    planner::detail::set_window(hand.work);
    REQUIRE(hand.work.heat.window);
    CHECK(hand.work.heat.window->refused.find("the thicker part needs at least") == 0);
    // Each of the two alone has its band.
    CHECK(heat::heat_input_band({CoolingCase::butt, 40, 20, 100, 5, 25}));
    CHECK(heat::heat_input_band({CoolingCase::butt, 6, 20, 100, 5, 25}));
  }

  TEST_CASE("given the reduction of one run and a window that takes several, it is refused") {
    planner::Inputs inputs = two_rows("single");
    for (const process::PassRole role :
         {process::PassRole::root, process::PassRole::fill, process::PassRole::cap}) {
      process::LinkedSettings row = inputs.library.settings.front();
      row.id = "run" + std::to_string(static_cast<int>(role));
      row.role = role;
      inputs.library.settings.push_back(row);
    }
    joint::StatedHeat& stated = inputs.weldment.joints[0].heat;
    stated.single_run_reduction = true;
    stated.preheat_reason = "test";
    const LaidUnderLimits free = lay(inputs);
    REQUIRE(free.seam.passes.size() == 1);
    const double q = free.seam.passes[0].pass.heat_input_kj_mm;
    state_window(inputs, brief_s(free.limits, q * 0.2), slow_s(free.limits, q * 0.6));
    std::vector<base::Finding> findings;
    try {
      findings = planner::make_plan(inputs).findings;
    } catch (const base::InputError& error) {
      findings = error.findings();
    }
    CHECK(base::has_errors(findings));
    CHECK(has_code(findings, "heat.preheat.reduction"));
    stated.single_run_reduction = false;
    stated.preheat_reason.clear();
    const LaidUnderLimits bound = lay(inputs);
    CHECK(bound.limits.window->kept);
    CHECK(bound.seam.passes.size() > 1);
    for (const plan::PlannedPass& pass : bound.seam.passes) {
      CHECK(pass.t85_s >= bound.limits.window->t85_least_s - 1e-9);
      CHECK(pass.t85_long_s <= bound.limits.window->t85_most_s + 1e-9);
    }
  }
}

}  // namespace seamturn::tests
