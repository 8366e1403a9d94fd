// SPDX-License-Identifier: MIT
// A search that begins with the order of an earlier plan, written to plan.xml and read back.
// Expected values: law; what the links of a changed weldment ask for.
#include <algorithm>
#include <set>

#include "planned_demos.hpp"
#include "scratch.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/io/plan_xml.hpp"

namespace seamturn::tests {

namespace {

/// Where and when of every arc, in order.
struct LaidPass {
  std::string seam;
  int pass = 0;
  std::string stance;
  bool operator==(const LaidPass&) const = default;
};

std::vector<LaidPass> laid_in(const Plan& plan) {
  std::vector<LaidPass> all;
  for (const plan::PlannedEvent& event : plan.timeline) {
    if (event.kind == timeline::SecondKind::arc)
      all.push_back({event.seam, event.pass, event.stance});
  }
  return all;
}

/// Cycle, and 2 s a turn to another stance that takes time: what the search makes small where no
/// library says otherwise and people's entries cost nothing. Counted here from the events alone.
double objective_s(const Plan& plan) {
  double sum_s = plan.cycle_s;
  std::string held;
  std::size_t stage = 0;
  for (const plan::PlannedEvent& event : plan.timeline) {
    if (event.stage != stage) held.clear();
    stage = event.stage;
    const bool turns = event.kind == timeline::SecondKind::turn && event.stance != held;
    if (turns) sum_s += planner::usual_stance_worth_s;
    held = event.stance;
  }
  return sum_s;
}

planner::EarlierOrder order_of(const Plan& plan, const joint::Weldment& weldment) {
  const auto file = scratch_folder("start_from") / "plan.xml";
  write_bytes(file, io::plan_xml(plan));
  return io::read_earlier_order(file, weldment);
}

planner::PlanParams effort(order::Effort effort) {
  planner::PlanParams params;
  params.search = order::search_params(effort);
  return params;
}

/// No work at all: what the search begins with is what comes out, unless greedy is better.
planner::PlanParams no_search() {
  planner::PlanParams params;
  params.search.effort = 0;
  params.search.exact_states = 0;
  params.search.bound_work = 0;
  return params;
}

Plan plan_from(const Plan& earlier, const planner::Inputs& inputs, planner::PlanParams params) {
  params.start = order_of(earlier, inputs.weldment);
  return planner::make_plan(inputs, params);
}

/// The bracket with one of its fillets three times as large: more layers and passes.
planner::Inputs larger_weld() {
  planner::Inputs inputs = planned_demo("bracket.xml").inputs;
  for (joint::Joint& joint : inputs.weldment.joints) {
    if (joint.id != "J5") continue;
    REQUIRE(std::holds_alternative<joint::Fillet>(joint.preparation));
    joint.preparation = joint::Fillet{14.0, 14.0};
  }
  return inputs;
}

std::size_t first_of(const std::vector<LaidPass>& all, const std::string& seam) {
  return static_cast<std::size_t>(
      std::find_if(all.begin(), all.end(), [&](const LaidPass& one) { return one.seam == seam; }) -
      all.begin());
}

}  // namespace

TEST_SUITE("planner/start_from") {
  TEST_CASE("for every demo, law: begun with its own plan and not searched, it is the same order") {
    for (const Planned& planned : plans()) {
      CAPTURE(planned.file);
      const Plan again = plan_from(planned.plan, planned.inputs, no_search());
      CHECK(laid_in(again) == laid_in(planned.plan));
      CHECK(again.cycle_s == doctest::Approx(planned.plan.cycle_s).epsilon(1e-9));
      const std::string used = text_told(again, "plan.start.used");
      INFO(used);
      CHECK(used.ends_with("pass blocks and operations stand in it"));
      const std::size_t of = used.find(" of ", used.find("this plan: "));
      const std::size_t from = used.find("this plan: ") + 11;
      CHECK(used.substr(from, of - from) == used.substr(of + 4, used.find(" pass", of) - of - 4));
    }
  }

  TEST_CASE("for every demo, law: begun with its own plan, little effort is no worse than much") {
    for (const Planned& planned : plans()) {
      CAPTURE(planned.file);
      const Plan quick = planner::make_plan(planned.inputs, effort(order::Effort::quick));
      const Plan again = plan_from(planned.plan, planned.inputs, effort(order::Effort::quick));
      CHECK(objective_s(again) <= objective_s(planned.plan) * (1.0 + 1e-9));
      CHECK(objective_s(again) <= objective_s(quick) * (1.0 + 1e-9));
      CHECK(again.lower_bound_s <= again.cycle_s);
    }
  }

  TEST_CASE("for stages that share a nozzle, law: no plan is worse than the one it began with") {
    // With cleanings this long and often, shorter stages by themselves end in a longer whole.
    planner::Inputs inputs = hub().inputs;
    inputs.cell->times.clean_every_s = 240.0;
    inputs.cell->times.clean_s = 300.0;
    planner::PlanParams params = no_search();
    params.search.effort = 60000;
    Plan earlier = planner::make_plan(inputs, params);
    for (const std::uint64_t seed : {7U, 8U, 9U, 10U}) {
      params.search.seed = seed;
      Plan again = plan_from(earlier, inputs, params);
      CHECK(objective_s(again) <= objective_s(earlier) * (1.0 + 1e-9));
      CHECK(text_told(again, "plan.start.used") != "");
      earlier = std::move(again);
    }
  }

  TEST_CASE("for the hub, law: begun alike it is the same plan to the byte") {
    const Planned& planned = hub();
    const Plan rough = tests::quick_plan(planned.inputs);
    const Plan one = plan_from(rough, planned.inputs, effort(order::Effort::quick));
    const Plan two = plan_from(rough, planned.inputs, effort(order::Effort::quick));
    // The search goes on from there: so little work before it left more to be found.
    CHECK(objective_s(one) < objective_s(rough));
    // The folder of this test bears the same name both times.
    CHECK(io::plan_xml(one) == io::plan_xml(two));
  }

  TEST_CASE("given a plan of another weldment, it is told and planned as without it") {
    const Planned& bracket = planned_demo("bracket.xml");
    planner::Inputs inputs = bracket.inputs;
    const Plan plain = planner::make_plan(inputs, effort(order::Effort::quick));
    Plan other = planned_demo("boom_foot.xml").plan;
    for (plan::PlannedEvent& event : other.timeline) {
      if (!event.seam.empty()) event.seam = "Z" + event.seam;
    }
    for (joint::Joint& joint : other.weldment.joints) {
      for (joint::Seam& seam : joint.seams) seam.id = "Z" + seam.id;
    }
    for (plan::PlannedJoint& joint : other.joints) {
      for (plan::PlannedSeam& seam : joint.seams) seam.id = "Z" + seam.id;
    }
    const Plan got = plan_from(other, inputs, effort(order::Effort::quick));
    CHECK(text_told(got, "plan.start.unused").find("nothing of the order") == 0);
    CHECK(text_told(got, "read.earlier.seam_unknown").find("ZJ1") != std::string::npos);
    CHECK(text_told(got, "plan.start.used") == "");
    CHECK(laid_in(got) == laid_in(plain));
    CHECK(got.cycle_s == plain.cycle_s);
  }

  TEST_CASE("given a larger weld with more layers, the old order stands and the new are put in") {
    const Plan& earlier = planned_demo("bracket.xml").plan;
    const Plan got = plan_from(earlier, larger_weld(), no_search());
    const std::string used = text_told(got, "plan.start.used");
    INFO(used);
    CHECK(used.find(" are new and were put in") != std::string::npos);
    const std::vector<LaidPass> then = laid_in(earlier);
    std::vector<LaidPass> now = laid_in(got);
    REQUIRE(now.size() > then.size());
    // What is not of the changed joint follows one another as before, held as before.
    const auto changed = [](const LaidPass& one) { return one.seam.rfind("J5", 0) == 0; };
    std::vector<LaidPass> old = then;
    std::erase_if(old, changed);
    std::erase_if(now, changed);
    const Plan greedy = planner::make_plan(larger_weld(), no_search());
    if (objective_s(greedy) > objective_s(got)) CHECK(now == old);
    CHECK(objective_s(got) <= objective_s(greedy));
  }

  TEST_CASE("given a new rule against the old order, blocks are brought on and the rule is kept") {
    const Planned& bracket = planned_demo("bracket.xml");
    const std::vector<LaidPass> then = laid_in(bracket.plan);
    planner::Inputs inputs = bracket.inputs;
    // The joint welded first must now come after the one welded last.
    const auto joint_of = [&](const LaidPass& one) {
      return seam_of(bracket.plan, one.seam).joint;
    };
    const std::string first = joint_of(then.front()), last = joint_of(then.back());
    REQUIRE(first != last);
    for (joint::Joint& joint : inputs.weldment.joints) {
      std::erase(joint.after, first);
      if (joint.id == first) joint.after = {last};
    }
    inputs.weldment.balance_off = "test";
    const Plan got = plan_from(bracket.plan, inputs, no_search());
    INFO(text_told(got, "plan.start.used"));
    CHECK(text_told(got, "plan.start.used").find("were brought on") != std::string::npos);
    const std::vector<LaidPass> now = laid_in(got);
    REQUIRE(now.size() == then.size());
    CHECK(first_of(now, then.front().seam) > first_of(now, then.back().seam));
  }

  TEST_CASE("given a table that stands elsewhere, the nearest stances of today are begun with") {
    const Planned& bracket = planned_demo("bracket.xml");
    Plan earlier = bracket.plan;
    for (plan::PlannedStance& stance : earlier.stances) {
      for (base::Angle& axis : stance.stance.axes) axis = axis + base::Angle::deg(3.0);
    }
    const Plan got = plan_from(earlier, bracket.inputs, no_search());
    CHECK(text_told(got, "plan.start.used").find("can no longer be held") != std::string::npos);
    CHECK(laid_in(got) == laid_in(bracket.plan));  // 3 degrees off, none other is nearer
  }

  TEST_CASE("given a plan on a positioner of other axes, its order is used and not its stances") {
    const Planned& bracket = planned_demo("bracket.xml");
    Plan earlier = bracket.plan;
    for (plan::PlannedStance& stance : earlier.stances) {
      stance.stance.axes.pop_back();
      stance.axis_names.pop_back();
      stance.torque_nm.pop_back();
    }
    earlier.turns.clear();
    earlier.cell.reset();
    for (plan::PlannedJoint& joint : earlier.joints) {
      for (plan::PlannedSeam& seam : joint.seams) seam.rolling = false;
    }
    const Plan got = plan_from(earlier, bracket.inputs, effort(order::Effort::quick));
    CHECK(text_told(got, "plan.start.used").find("can no longer be held") != std::string::npos);
    CHECK(laid_in(got).size() == laid_in(bracket.plan).size());
  }

  TEST_CASE("given no cell, an earlier order changes nothing and nothing is said of it") {
    planner::Inputs inputs = planned_demo("bracket.xml").inputs;
    inputs.cell.reset();
    const Plan got = plan_from(planned_demo("bracket.xml").plan, inputs, no_search());
    CHECK(text_told(got, "plan.start.used") == "");
    CHECK(text_told(got, "plan.cell.none") != "");
  }
}

}  // namespace seamturn::tests
