// SPDX-License-Identifier: MIT
// Sides that pull against each other grow layer by layer, unless the file says otherwise.
#include "ordered_part.hpp"

namespace seamturn::tests {

namespace {

/// One plan of the part as drawn, for all that look at it.
const Plan& ordered() {
  static const Plan plan = quick_plan(ordered_part());
  return plan;
}

/// Start of a seam's layer.
double layer_start_s(const Plan& plan, const std::string& seam, int layer) {
  for (const plan::PlannedPass& pass : seam_of(plan, seam).passes) {
    if (pass.pass.layer == layer) return *pass.start_s;
  }
  FAIL(seam, " has no layer ", layer);
  return 0.0;
}

/// All of the first lies before all of the second.
bool is_before(const Plan& plan, const std::string& first, const std::string& second) {
  return span_of(plan, first).to_s <= span_of(plan, second).from_s;
}

}  // namespace

TEST_SUITE("planner/balance_plan") {
  TEST_CASE("for every plan, law: at no time is a twin more than one layer ahead of the other") {
    std::vector<const Plan*> all = {&ordered()};
    for (const Planned& planned : plans()) all.push_back(&planned.plan);
    int several_layers = 0;
    for (const Plan* plan : all) {
      for (const plan::PlannedTwins& twins : plan->twins) {
        INFO(plan->weldment.title, " ", twins.first, " ", twins.second);
        if (twins.kind == plan::TwinKind::groove) continue;
        CHECK(keep_step(*plan, twins.first, twins.second) == twins.keeps_step);
        const int layers = std::min(seam_of(*plan, twins.first).stack.layers,
                                    seam_of(*plan, twins.second).stack.layers);
        several_layers += layers > 1 ? 1 : 0;
      }
    }
    CHECK(several_layers >= 3);
  }

  TEST_CASE("the ring in arcs is welded root by root first, and every layer 1 3 2 4") {
    const int layers = seam_of(ordered(), "A1").stack.layers;
    REQUIRE(layers > 1);
    double last_root_s = 0.0;
    double first_fill_s = 1e12;
    for (const char* arc : {"A1", "A2", "A3", "A4"}) {
      last_root_s = std::max(last_root_s, layer_start_s(ordered(), arc, 1));
      first_fill_s = std::min(first_fill_s, layer_start_s(ordered(), arc, 2));
    }
    CHECK(last_root_s < first_fill_s);
    for (int layer = 1; layer <= layers; ++layer) {
      CHECK(layer_start_s(ordered(), "A1", layer) < layer_start_s(ordered(), "A3", layer));
      CHECK(layer_start_s(ordered(), "A3", layer) < layer_start_s(ordered(), "A2", layer));
      CHECK(layer_start_s(ordered(), "A2", layer) < layer_start_s(ordered(), "A4", layer));
    }
  }

  TEST_CASE("given balance off, other orders are open and the reason stands in the plan") {
    planner::Inputs inputs = ordered_part();
    inputs.weldment.balance_off = "a trial";
    inputs.weldment.hand_orders = {hand_order({"J1", "J2", "J3.b", "J3.a", "R2", "R1"}),
                                   hand_order({"A1", "A2", "A3", "A4"})};
    const Plan plan = quick_plan(inputs);
    CHECK(is_before(plan, "J1", "J2"));
    CHECK(is_before(plan, "A1", "A2"));
    CHECK(texts_of(plan, "order.balance.yields").empty());
    REQUIRE(plan.twins.size() == 3);
    for (const plan::PlannedTwins& twins : plan.twins) {
      CHECK_FALSE(twins.keeps_step);
      CHECK(twins.why_not == "a trial");
      // law: with one side full and the other empty, the first is ahead by all its metal
      CHECK(twins.ahead_mm2 >= std::min(twins.metal_1_mm2, twins.metal_2_mm2));
    }
  }

  TEST_CASE("given balance off for one joint, its own pair is free and no other") {
    planner::Inputs inputs = ordered_part();
    joint_in(inputs, "R2").balance_off = "bore is machined after";
    inputs.weldment.hand_orders = {hand_order({"R1", "R2"})};
    const Plan plan = quick_plan(inputs);
    CHECK(texts_of(plan, "order.balance.yields").empty());
    CHECK_FALSE(find_twins_of(plan, "R1")->keeps_step);
    CHECK(find_twins_of(plan, "R1")->why_not == "bore is machined after");
    CHECK(is_before(plan, "R1", "R2"));
    CHECK(keep_step(plan, "J1", "J2"));
    CHECK(keep_step(plan, "J3.a", "J3.b"));
  }

  TEST_CASE("given after in the file, it goes before balance, and a note names pair and rule") {
    planner::Inputs inputs = ordered_part();
    joint_in(inputs, "R2").after = {"R1"};
    const Plan plan = quick_plan(inputs);
    CHECK(is_before(plan, "R1", "R2"));
    const auto notes = texts_of(plan, "order.balance.yields");
    REQUIRE(notes.size() == 1);
    CHECK(notes.front().find("R1 and R2") != std::string::npos);
    CHECK(notes.front().find("joint R2 after joint R1") != std::string::npos);
    CHECK_FALSE(find_twins_of(plan, "R1")->keeps_step);
    CHECK(find_twins_of(plan, "R1")->why_not == "joint R2 after joint R1");
    CHECK(keep_step(plan, "J1", "J2"));
  }

  TEST_CASE("given the file apart through a third joint, the note names both rules of the way") {
    planner::Inputs inputs = ordered_part();
    joint_in(inputs, "J3").after = {"R1"};
    joint_in(inputs, "R2").after = {"J3"};
    const auto notes = texts_of(quick_plan(inputs), "order.balance.yields");
    REQUIRE(notes.size() == 1);
    CHECK(notes.front().find("joint R2 after joint J3") != std::string::npos);
    CHECK(notes.front().find("joint J3 after joint R1") != std::string::npos);
  }

  TEST_CASE("given twins the file states, they keep step, and a contradiction is an error") {
    planner::Inputs inputs = ordered_part();
    joint_in(inputs, "J3").balance_with = "R1";
    inputs.weldment.balance_off = "only where stated";
    const Plan plan = quick_plan(inputs);
    CHECK(keep_step(plan, "J3.a", "R1"));
    CHECK(keep_step(plan, "J3.b", "R1"));
    joint_in(inputs, "J3").after = {"R1"};
    const std::string errors = errors_of(inputs);
    CHECK(errors.find("order.balance.contradicts: the file states that J3.a and R1") !=
          std::string::npos);
    CHECK(errors.find("joint J3 after joint R1") != std::string::npos);
    CHECK(errors.find("order.cycle") == std::string::npos);
  }

  TEST_CASE("given twins stated across stages, the finding names joints and stages") {
    planner::Inputs inputs = staged_part();
    joint_in(inputs, "J1").balance_with = "J3";
    const std::string errors = errors_of(inputs);
    CHECK(errors.find("stage.balance.elsewhere: joint J1 of stage tee") != std::string::npos);
    CHECK(errors.find("joint J3, which is welded in stage ribs") != std::string::npos);
  }

  TEST_CASE("given joints that wait in a circle through an operation, every link names its rule") {
    planner::Inputs inputs = staged_part();
    joint_in(inputs, "J1").after = {"J2"};  // VT_back stands after J1 and before J2
    const std::string errors = errors_of(inputs);
    CHECK(errors.find("order.cycle") != std::string::npos);
    CHECK(errors.find("(joint J1 after joint J2)") != std::string::npos);
    CHECK(errors.find("(operation VT_back after joint J1)") != std::string::npos);
    CHECK(errors.find("(operation VT_back before joint J2)") != std::string::npos);
  }
}

}  // namespace seamturn::tests
