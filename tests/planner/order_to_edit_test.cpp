// SPDX-License-Identifier: MIT
// The order of a plan, put into the weldment as an order by hand.
#include "seamturn/plan/order_to_edit.hpp"

#include <algorithm>

#include "planned_demos.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/planner/planner.hpp"

namespace seamturn::tests {

using plan::Plan;

namespace {

/// Passes in the order laid: "J1.a 2".
std::vector<std::string> passes_laid(const Plan& plan) {
  std::vector<std::string> laid;
  for (const plan::PlannedEvent& event : plan.timeline) {
    if (event.kind != timeline::SecondKind::arc) continue;
    laid.push_back(event.seam + " " + std::to_string(event.pass));
  }
  return laid;
}

/// Passes an entry names, in its order.
void name_passes(const Plan& plan, const joint::HandEntry& entry, std::vector<std::string>& out) {
  for (const plan::PlannedJoint& joint : plan.joints) {
    for (const plan::PlannedSeam& seam : joint.seams) {
      const bool is_seam = entry.text == seam.id || entry.text.starts_with(seam.id + ".") ||
                           entry.text.starts_with(seam.id + ":");
      if (!is_seam) continue;
      for (const plan::PlannedPass& pass : seam.passes) {
        const int number = entry.in_passes ? pass.pass.number : pass.pass.layer;
        if (number < entry.from || number > entry.to.value_or(number)) continue;
        out.push_back(seam.id + " " + std::to_string(pass.pass.number));
      }
    }
  }
}

std::string seams_of(const joint::HandOrder& order) {
  std::string text;
  for (const joint::HandEntry& entry : order.entries)
    text += (text.empty() ? "" : " ") + entry.text;
  return text;
}

}  // namespace

TEST_SUITE("planner/order_to_edit") {
  TEST_CASE("for every demo, law: it names every pass once, as laid") {
    for (const Planned& planned : plans()) {
      INFO(planned.file);
      std::vector<std::string> named;
      for (const joint::HandOrder& order : plan::order_to_edit(planned.plan)) {
        for (const joint::HandEntry& entry : order.entries) {
          name_passes(planned.plan, entry, named);
        }
      }
      CHECK(named == passes_laid(planned.plan));
    }
  }

  TEST_CASE("for every demo, law: planned again by its own order, every pass keeps its place") {
    for (const Planned& planned : plans()) {
      INFO(planned.file);
      planner::Inputs inputs = io::read_inputs(repository() / "joints" / planned.file);
      inputs.weldment.hand_orders = plan::order_to_edit(planned.plan);
      const Plan again = planner::make_plan(inputs);
      CHECK(passes_laid(again) == passes_laid(planned.plan));
      CHECK(again.cycle_s <= planned.plan.cycle_s + 1.0);
    }
  }

  TEST_CASE("for every demo, law: an order of each stage that welds, in turn, of its own seams") {
    int staged = 0;
    for (const Planned& planned : plans()) {
      INFO(planned.file);
      const Plan& plan = planned.plan;
      std::vector<std::string> wanted;
      for (const plan::PlannedStage& stage : plan.stages) {
        const bool welds = std::any_of(
            plan.timeline.begin(), plan.timeline.end(), [&](const plan::PlannedEvent& event) {
              return event.kind == timeline::SecondKind::arc &&
                     plan.stages.at(event.stage).id == stage.id;
            });
        if (welds) wanted.push_back(stage.id);
      }
      std::vector<std::string> told;
      for (const joint::HandOrder& order : plan::order_to_edit(plan)) {
        told.push_back(order.stage);
        staged += order.stage.empty() ? 0 : 1;
        for (const joint::HandEntry& entry : order.entries) {
          for (const plan::PlannedJoint& joint : plan.joints) {
            if (joint.id != entry.joint) continue;
            for (const plan::PlannedSeam& seam : joint.seams) CHECK(seam.stage == order.stage);
          }
        }
      }
      CHECK(told == wanted);
    }
    CHECK(staged > 2);
  }

  TEST_CASE("given one layer or pass, it is told by one number") {
    for (const Planned& planned : plans()) {
      for (const joint::HandOrder& order : plan::order_to_edit(planned.plan)) {
        for (const joint::HandEntry& entry : order.entries) {
          INFO(planned.file, " ", entry.text);
          const bool ranged = entry.text.find('-') != std::string::npos;
          CHECK(ranged == (entry.to && *entry.to > entry.from));
        }
      }
    }
  }

  TEST_CASE("given the bracket, seams in a row are told whole and stages not at all") {
    const Plan plan = planner::make_plan(io::read_inputs(repository() / "joints/bracket.xml"));
    const std::vector<joint::HandOrder> orders = plan::order_to_edit(plan);
    REQUIRE(orders.size() == 1);
    CHECK(orders.front().stage.empty());
    CHECK(seams_of(orders.front()).find("J1 J2") == 0);
  }
}

}  // namespace seamturn::tests
