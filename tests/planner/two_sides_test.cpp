// SPDX-License-Identifier: MIT
// Grooves closed from both sides: the sides take turns, the root is gouged out in between, and both
// heat the same place.
#include <algorithm>

#include "planned_demos.hpp"
#include "planner/detail_two_sides.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

namespace {

using planner::detail::SidePass;
using timeline::SecondKind;

planner::Inputs read_double_grooves() {
  return io::read_inputs(repository() / "tests/good/double_grooves.xml");
}

/// Side and pass of the arcs of a joint as they come in the plan; {0, 0} where it is gouged.
std::vector<std::pair<int, int>> work_on(const Plan& plan, const std::string& joint) {
  std::vector<std::pair<int, int>> work;
  for (const plan::PlannedEvent& event : plan.timeline) {
    if (event.seam != joint + ".a" && event.seam != joint + ".b") continue;
    if (event.kind == SecondKind::gouge) work.push_back({0, 0});
    if (event.kind == SecondKind::arc) {
      work.push_back({described_seam(plan, event.seam).side, event.pass});
    }
  }
  return work;
}

pass::PassStack stack_of_layers(const std::vector<double>& areas_mm2) {
  pass::PassStack stack;
  for (const double area_mm2 : areas_mm2) {
    pass::Pass pass;
    pass.layer = ++stack.layers;
    pass.area_mm2 = area_mm2;
    stack.passes.push_back(pass);
  }
  return stack;
}

joint::Joint double_v(std::optional<double> first_share) {
  joint::Joint joint;
  joint::Groove groove;
  groove.is_double = true;
  joint.preparation = groove;
  joint.root = joint::RootDecision::gouge;
  joint.first_share = first_share;
  return joint;
}

/// Starts of a joint's passes, in the order of both sides, against what the cooling room asks.
void check_waits(const Plan& plan, const std::string& id, cooling::CoolingPlate plate) {
  INFO(id);
  const joint::Joint& joint = *joint::find_joint(plan.weldment, id);
  const auto planned = std::find_if(
      plan.joints.begin(), plan.joints.end(), [&](const auto& one) { return one.id == id; });
  REQUIRE(planned != plan.joints.end());
  plate.ambient_c = plan.weldment.ambient_c;
  plate.start_c = planned->heat.preheat_c;
  std::vector<double> heat_inputs;
  std::vector<double> starts_s;
  for (const SidePass& step :
       planner::detail::weld_order(joint, planned->seams[0].stack, planned->seams[1].stack)) {
    const plan::PlannedSeam& seam = planned->seams[static_cast<std::size_t>(step.side) - 1];
    const plan::PlannedPass& pass = seam.passes[static_cast<std::size_t>(step.pass)];
    heat_inputs.push_back(pass.pass.heat_input_kj_mm);
    starts_s.push_back(pass.start_s.value());
  }
  const auto waits =
      cooling::waits_between_passes(plate, heat_inputs, planned->heat.interpass_max_c);
  REQUIRE(waits);
  double longest_s = 0.0;
  for (std::size_t k = 1; k < starts_s.size(); ++k) {
    const double wait_s = waits.value()[k - 1].longer_s();
    CHECK(starts_s[k] - starts_s[k - 1] >= wait_s * (1.0 - 1e-9));
    longest_s = std::max(longest_s, wait_s);
  }
  CHECK(longest_s > 600.0);
}

}  // namespace

TEST_SUITE("planner/two_sides") {
  TEST_CASE("given a double groove, side 2 is begun after a third of side 1 and gouged first") {
    // law: docs/methods/pass-stack.md, "Two sides"; six equal layers a side: 1a 1b gouge 2a 2b 2c
    // 1c ...
    const pass::PassStack six = stack_of_layers(std::vector<double>(6, 10.0));
    const std::vector<SidePass> order =
        planner::detail::weld_order(double_v(std::nullopt), six, six);
    std::string text;
    for (const SidePass& pass : order) {
      if (pass.after_gouging) text += "gouge ";
      text += std::to_string(pass.side) + static_cast<char>('a' + pass.pass) + " ";
    }
    CHECK(text == "1a 1b gouge 2a 2b 2c 1c 1d 2d 2e 1e 1f 2f ");
  }

  TEST_CASE("given first-share 1, side 1 is full before the root is gouged") {
    const pass::PassStack six = stack_of_layers(std::vector<double>(6, 10.0));
    const std::vector<SidePass> order = planner::detail::weld_order(double_v(1.0), six, six);
    for (std::size_t k = 0; k < order.size(); ++k) {
      CHECK(order[k].side == (k < 6 ? 1 : 2));
      CHECK(order[k].after_gouging == (k == 6));
    }
  }

  TEST_CASE("given no balance, side 2 is filled in one go, then what is left of side 1") {
    // law: docs/methods/pass-stack.md, "Two sides"; the first third and the gouging stay.
    const pass::PassStack six = stack_of_layers(std::vector<double>(6, 10.0));
    std::string text;
    for (const SidePass& pass :
         planner::detail::weld_order(double_v(std::nullopt), six, six, false)) {
      if (pass.after_gouging) text += "gouge ";
      text += std::to_string(pass.side) + static_cast<char>('a' + pass.pass) + " ";
    }
    CHECK(text == "1a 1b gouge 2a 2b 2c 2d 2e 2f 1c 1d 1e 1f ");
  }

  TEST_CASE("given balance off in joint or weldment, the plan fills side 2 in one go") {
    // law: the plan keeps the order of both sides, whichever the file asks for
    planner::Inputs inputs = read_double_grooves();
    joint::Joint& k = inputs.weldment.joints.back();
    REQUIRE(k.id == "K");
    k.first_share = 0.2;
    const auto follows = [&](bool is_balanced) {
      const Plan plan = quick_plan(inputs);
      const auto& seams = plan.joints.back().seams;
      std::vector<std::pair<int, int>> expected;
      for (const SidePass& pass :
           planner::detail::weld_order(k, seams[0].stack, seams[1].stack, is_balanced)) {
        expected.push_back({pass.side, pass.pass + 1});
      }
      const bool told = plan.twins.back().keeps_step == is_balanced;
      return work_on(plan, "K") == expected && told;
    };
    CHECK(follows(true));
    CHECK_FALSE(follows(false));
    k.balance_off = "a test";
    CHECK(follows(false));
    CHECK_FALSE(follows(true));
    k.balance_off.clear();
    inputs.weldment.balance_off = "a test";
    CHECK(follows(false));
    // What is filled first by the file takes no turns, balance or not.
    inputs.weldment.balance_off.clear();
    k.first_share = 1.0;
    const Plan plan = quick_plan(inputs);
    CHECK_FALSE(plan.twins.back().keeps_step);
    CHECK(plan.twins.back().why_not == "side 1 of joint K is filled first");
  }

  TEST_CASE("given a single groove gouged from behind, all of it is laid before") {
    joint::Joint joint = double_v(std::nullopt);
    std::get<joint::Groove>(joint.preparation).is_double = false;
    CHECK(joint::first_share_of(joint) == 1.0);
    joint.root = joint::RootDecision::open;
    CHECK_THROWS_AS(static_cast<void>(joint::first_share_of(joint)), base::ContractViolation);
  }

  TEST_CASE("given a double V and a K in a cell, law: the plan keeps the order of both sides") {
    const Plan plan = planner::make_plan(read_double_grooves());
    REQUIRE(plan.not_turned.empty());
    for (const joint::Joint& joint : plan.weldment.joints) {
      INFO(joint.id);
      const auto planned = std::find_if(
          plan.joints.begin(), plan.joints.end(), [&](const auto& j) { return j.id == joint.id; });
      REQUIRE(planned->seams.size() == 2);
      std::vector<std::pair<int, int>> expected;
      for (const SidePass& pass :
           planner::detail::weld_order(joint, planned->seams[0].stack, planned->seams[1].stack)) {
        if (pass.after_gouging) expected.push_back({0, 0});
        expected.push_back({pass.side, pass.pass + 1});
      }
      CHECK(work_on(plan, joint.id) == expected);
    }
    // "X" goes back to side 1, "K" states first-share="1" and does not.
    const auto on_x = work_on(plan, "X");
    CHECK(on_x.back().first == 1);
    CHECK(work_on(plan, "K").back().first == 2);
  }

  TEST_CASE("gouging takes its time on the clock, once, in side 2's stance") {
    const planner::Inputs inputs = read_double_grooves();
    const Plan plan = planner::make_plan(inputs);
    double gouge_s = 0.0;
    for (const plan::PlannedEvent& event : plan.timeline) {
      if (event.kind != SecondKind::gouge) continue;
      gouge_s += event.end_s - event.start_s;
      CHECK(event.seam == "X.b");
      const auto& visits = plan.stances;
      const auto held = std::find_if(
          visits.begin(), visits.end(), [&](const auto& s) { return s.id == event.stance; });
      REQUIRE(held != visits.end());
      CHECK(std::find(held->seams.begin(), held->seams.end(), "X.b") != held->seams.end());
    }
    // closed-form: the demo row has 180 s and 25 cm/min; 400 mm take 96 s
    CHECK(gouge_s == doctest::Approx(276.0));
    CHECK(plan.seconds[static_cast<std::size_t>(SecondKind::gouge)] == doctest::Approx(276.0));
  }

  TEST_CASE("given no gouging row, the plan says that the time is missing") {
    planner::Inputs inputs = read_double_grooves();
    inputs.library.gouging.reset();
    const Plan plan = planner::make_plan(inputs);
    const auto told = std::count_if(plan.findings.begin(), plan.findings.end(), [](const auto& f) {
      return f.code == "plan.gouging.no_rate" && f.text.find("joints X are") != std::string::npos;
    });
    CHECK(told == 1);
    CHECK(plan.seconds[static_cast<std::size_t>(SecondKind::gouge)] == 0.0);
  }

  TEST_CASE("law: every pass waits for the heat of all before it, on whichever side they lie") {
    // Narrow plates, so that their width decides: 60 mm and 40 mm across both seams.
    planner::Inputs inputs = read_double_grooves();
    for (joint::Member& member : inputs.weldment.members) {
      auto& shape = std::get<joint::Plate>(member.shape);
      if (member.id == "web") {
        shape.width_mm = 40.0;
      } else {
        shape = joint::Plate{60.0, 60.0, shape.thickness_mm};
      }
    }
    const Plan plan = planner::make_plan(inputs);
    cooling::CoolingPlate butt;
    butt.thickness_mm = 40.0;
    butt.width_mm = 60.0 + 60.0;
    butt.heat_paths = 2;
    cooling::CoolingPlate tee;
    tee.thickness_mm = 30.0;  // the web's, the thinner
    tee.width_mm = (60.0 + 40.0) * 2.0 / 3.0;
    tee.heat_paths = 3;
    check_waits(plan, "X", butt);
    check_waits(plan, "K", tee);
  }
}

}  // namespace seamturn::tests
