// SPDX-License-Identifier: MIT
// Stops of layers by the library's rule, where the file says nothing.
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "planned_demos.hpp"
#include "planner/detail_starts.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "split_part.hpp"

namespace seamturn::tests {

namespace {

std::set<std::string> words_of(const std::string& text) {
  std::set<std::string> words;
  std::string word;
  for (const char letter : text + ' ') {
    if (letter != ' ' && letter != ',') {
      word += letter;
    } else {
      words.insert(std::exchange(word, {}));
    }
  }
  return words;
}

/// Every pass above a pass of the layer below it.
std::vector<std::pair<const plan::PlannedPass*, const plan::PlannedPass*>> layers_on_layers(
    const plan::PlannedSeam& seam) {
  std::vector<std::pair<const plan::PlannedPass*, const plan::PlannedPass*>> pairs;
  for (const plan::PlannedPass& below : seam.passes) {
    for (const plan::PlannedPass& above : seam.passes) {
      if (above.pass.layer == below.pass.layer + 1) pairs.emplace_back(&below, &above);
    }
  }
  return pairs;
}

}  // namespace

TEST_SUITE("planner/stops_apart") {
  TEST_CASE("for every demo, law: no layer stops on the crater of the one below it") {
    // Where the arcs end, whatever the plan says about them. Held one way only: told, not moved;
    // on tabs: cut off.
    std::size_t closed = 0, open = 0;
    for (const Planned& planned : plans()) {
      const std::set<std::string> one_end =
          words_of(text_told(planned.plan, "plan.starts.one_end"));
      for (const plan::PlannedJoint& joint : planned.plan.joints) {
        for (const plan::PlannedSeam& seam : joint.seams) {
          if (!seam.turned) continue;
          INFO(planned.file, " ", seam.id);
          const joint::Seam& described = described_seam(planned.plan, seam.id);
          if (described.asked.run_on_mm > 0.0 && described.asked.run_off_mm > 0.0) continue;
          const bool round = geom::is_closed(*described.path);
          std::size_t above_one_another = 0;
          for (const auto& [below, above] : layers_on_layers(seam)) {
            // 30 mm along a ring are a little less across it.
            const double apart = (above->points.back().point - below->points.back().point).norm();
            above_one_another += apart > 29.0 ? 0 : 1;
            ++(round ? closed : open);
          }
          CHECK((above_one_another > 0) == one_end.contains(seam.id));
        }
      }
    }
    CHECK(closed > 5);
    CHECK(open > 20);
  }

  TEST_CASE("given segments, their outer ends are told unless tabs take the craters") {
    planner::Inputs inputs = part_of({"J1"});
    inputs.library.long_seams.reset();
    ask(inputs, "J1", 2);
    const Plan plan = quick_plan(inputs);
    REQUIRE(seam_of(plan, "J1/1").stack.layers > 1);
    const std::set<std::string> one_end = words_of(text_told(plan, "plan.starts.one_end"));
    CHECK(one_end.contains("J1/1"));
    CHECK(one_end.contains("J1/2"));
    for (joint::Seam& seam : joint_in(inputs, "J1").seams) seam.asked.run_off_mm = 30.0;
    const std::set<std::string> at_start =
        words_of(text_told(quick_plan(inputs), "plan.starts.one_end"));
    CHECK(at_start.contains("J1/1"));
    CHECK_FALSE(at_start.contains("J1/2"));
    for (joint::Seam& seam : joint_in(inputs, "J1").seams) seam.asked.run_on_mm = 30.0;
    CHECK(text_told(quick_plan(inputs), "plan.starts.one_end") == "");
  }

  TEST_CASE("for every demo, law: a plan tells how far stops lie apart only where they do") {
    for (const Planned& planned : plans()) {
      std::size_t seams = 0;
      for (const plan::PlannedJoint& joint : planned.plan.joints) {
        for (const plan::PlannedSeam& seam : joint.seams) seams += seam.starts.empty() ? 0 : 1;
      }
      const std::string xml = io::plan_xml(planned.plan);
      std::size_t told_there = 0;
      for (std::size_t at = xml.find("stop_stagger_mm"); at != std::string::npos;
           at = xml.find("stop_stagger_mm", at + 1)) {
        ++told_there;
      }
      INFO(planned.file);
      CHECK(told_there == seams);
    }
  }

  TEST_CASE("given seams that are welded uphill only, all layers stop above and the plan says so") {
    planner::Inputs inputs = io::read_inputs(repository() / "joints/bracket.xml");
    for (position::WorkingTolerance& row : inputs.library.tolerances) {
      row.position = process::WeldPosition::pf;
    }
    const Plan plan = quick_plan(inputs);
    const std::set<std::string> one_end = words_of(text_told(plan, "plan.starts.one_end"));
    std::set<std::string> in_layers;
    for (const Arc& arc : arcs_of(plan)) {
      if (arc.seam->position != process::WeldPosition::pf || arc.seam->starts.empty()) continue;
      const std::size_t layer = static_cast<std::size_t>(arc.pass->pass.layer) - 1;
      const joint::LayerStops& stops = arc.seam->starts[layer];
      INFO(arc.seam->id, " layer ", stops.layer);
      CHECK(stops.reversed == arc.pass->reversed);
      CHECK(stops.reversed == arc.seam->starts.front().reversed);
      CHECK((stops.start_mm > stops.stop_mm) == stops.reversed);
      CHECK(one_end.contains(arc.seam->id));
      in_layers.insert(arc.seam->id);
    }
    CHECK(in_layers.size() >= 2);
    CHECK(one_end.size() > 0);
    CHECK(text_told(plan, "plan.segments.travel") == "");
  }

  TEST_CASE("given seams that state it, have tabs, are short rings or unbalanced, stops differ") {
    planner::Inputs inputs = io::read_inputs(repository() / "joints/grab_hub.xml");
    joint_of(inputs, "R1").seams.front().asked.stop_stagger_mm = 45.0;
    joint_of(inputs, "R2").balance_off = "a reason";
    joint_of(inputs, "R3").seams.front().length_mm = 100.0;
    joint::WeldLength& tabbed = joint_of(inputs, "LF_0r").seams.front().asked;
    tabbed.run_on_mm = tabbed.run_off_mm = 25.0;
    const auto stagger_mm = [](planner::Inputs& all, const char* id) {
      return joint_of(all, id).seams.front().asked.stop_stagger_mm;
    };
    planner::Inputs apart = planner::detail::with_stops_apart(inputs);
    CHECK(stagger_mm(apart, "R1") == 45.0);
    CHECK(stagger_mm(apart, "R2") == 0.0);
    CHECK(stagger_mm(apart, "R3") == 25.0);
    CHECK(stagger_mm(apart, "R4") == 30.0);
    CHECK(stagger_mm(apart, "LF_0r") == 0.0);
    CHECK(stagger_mm(apart, "LF_0l") == 30.0);
    tabbed.run_off_mm = 0.0;
    apart = planner::detail::with_stops_apart(inputs);
    CHECK(stagger_mm(apart, "LF_0r") == 30.0);
    inputs.weldment.balance_off = "a reason";
    apart = planner::detail::with_stops_apart(inputs);
    CHECK(stagger_mm(apart, "R4") == 0.0);
    inputs.weldment.balance_off.clear();
    inputs.library.layer_stops.reset();
    apart = planner::detail::with_stops_apart(inputs);
    CHECK(stagger_mm(apart, "R4") == 0.0);
  }
}

}  // namespace seamturn::tests
