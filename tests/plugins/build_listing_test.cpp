// SPDX-License-Identifier: MIT
// The path listing of a part built in stages: visits, work of people, re-hangs, and every turn.
#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <string>

#include "planner/staged_part.hpp"
#include "sample_plan.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"
#include "xml_check.hpp"

namespace seamturn::plugin_host {

namespace {

using tests::Plan;

std::string listing(const Plan& plan) {
  static const PluginHost host({}, {installed_plugin_folder()});
  return host.write_document("path-listing", io::plan_xml(plan), "paths/listing.xml");
}

std::string value_of(const std::string& element, const std::string& attribute) {
  const std::size_t from = element.find(" " + attribute + "=\"");
  if (from == std::string::npos) return "";
  const std::size_t start = from + attribute.size() + 3;
  return element.substr(start, element.find('"', start) - start);
}

double seconds(const std::string& element, const std::string& attribute) {
  return std::strtod(value_of(element, attribute).c_str(), nullptr);
}

/// The opening tags of one name, in the order of the text.
std::vector<std::string> tags(const std::string& xml, const std::string& name) {
  std::vector<std::string> found;
  for (std::size_t at = xml.find("<" + name + " "); at != std::string::npos;
       at = xml.find("<" + name + " ", at + 1)) {
    found.push_back(xml.substr(at, xml.find('>', at) - at));
  }
  return found;
}

/// The text of the visit that a place of the listing lies in; empty outside of visits.
std::string visit_around(const std::string& xml, std::size_t at) {
  const std::size_t from = xml.rfind("<visit ", at);
  if (from == std::string::npos) return "";
  const std::size_t to = xml.find("</visit>", from);
  return to > at ? xml.substr(from, to - from) : "";
}

std::vector<const Plan*> all_plans() {
  static const Plan staged = planner::make_plan(tests::staged_part());
  std::vector<const Plan*> all = {&staged};
  for (const tests::Planned& planned : tests::plans()) all.push_back(&planned.plan);
  return all;
}

}  // namespace

TEST_SUITE("plugins/build_listing") {
  TEST_CASE("for every plan, law: every turn of the clock stands in its listing, once") {
    for (const Plan* plan : all_plans()) {
      const std::string xml = listing(*plan);
      CHECK(tests::schema_verdict("paths.xsd", xml, "build_listing") == "");
      double total_s = 0.0;
      std::size_t count = 0;
      for (const char* name : {"turn", "unwind"}) {
        for (const std::string& tag : tags(xml, name)) {
          total_s += seconds(tag, "end_s") - seconds(tag, "start_s");
          ++count;
        }
      }
      INFO(plan->weldment.title);
      const auto kind = static_cast<std::size_t>(timeline::SecondKind::turn);
      // times are rounded to 0.01 s
      CHECK(std::abs(total_s - plan->seconds[kind]) <= 0.0101 * static_cast<double>(count));
      CHECK(total_s > 0.0);
    }
  }

  TEST_CASE("for every plan, law: times in its listing never run back") {
    for (const Plan* plan : all_plans()) {
      const std::string xml = listing(*plan);
      double last_s = 0.0;
      for (std::size_t at = xml.find(" start_s=\""); at != std::string::npos;
           at = xml.find(" start_s=\"", at + 1)) {
        const double start_s = std::strtod(xml.c_str() + at + 10, nullptr);
        INFO(plan->weldment.title);
        CHECK(start_s >= last_s);
        last_s = start_s;
      }
      CHECK(last_s > 100.0);
    }
  }

  TEST_CASE("for every plan, law: work stands in the visit of its stance, at rest outside visits") {
    for (const Plan* plan : all_plans()) {
      const std::string xml = listing(*plan);
      std::size_t in_cell = 0;
      for (const plan::PlannedOperation& operation : plan->operations) {
        const std::size_t at = xml.find("<operation id=\"" + operation.id + "\" ");
        INFO(plan->weldment.title, " ", operation.id);
        REQUIRE((at != std::string::npos) == operation.start_s.has_value());
        if (!operation.start_s) continue;
        ++in_cell;
        CHECK(value_of(visit_around(xml, at), "stance") == operation.stance);
        const std::string tag = xml.substr(at, xml.find('>', at) - at);
        CHECK(value_of(tag, "kind") == joint::operation_name(operation.kind));
        CHECK(value_of(tag, "stage") == operation.stage);
        CHECK(value_of(tag, "people") == std::to_string(operation.people));
        CHECK(std::abs(seconds(tag, "start_s") - *operation.start_s) < 0.0051);
      }
      CHECK(tags(xml, "operation").size() == in_cell);
      std::size_t hangs = 0;
      for (const plan::PlannedStage& stage : plan->stages) hangs += stage.rehang_s > 0.0 ? 1 : 0;
      CHECK(tags(xml, "hang").size() == hangs);
      CHECK(tags(xml, "setup").size() == plan->weldment.setups.size());
    }
  }

  TEST_CASE("for every plan, law: as many visits as its stances count, each in its set-up") {
    for (const Plan* plan : all_plans()) {
      const std::string xml = listing(*plan);
      std::size_t visits = 0;
      for (const plan::PlannedStance& stance : plan->stances) {
        visits += static_cast<std::size_t>(stance.visits);
      }
      CHECK(tags(xml, "visit").size() == visits);
      for (const std::string& tag : tags(xml, "visit")) {
        for (const plan::PlannedStance& stance : plan->stances) {
          if (stance.id == value_of(tag, "stance")) CHECK(stance.setup == value_of(tag, "setup"));
        }
      }
    }
  }

  TEST_CASE("given an axis wound before anything else in a visit, the way there is listed too") {
    // law: where nothing is touched first, two turns follow one another, both in the new stance
    Plan plan = tests::sample_plan();
    using Kind = timeline::SecondKind;
    plan.timeline = {{Kind::turn, 0.0, 5.0, "S02", "", "", 0},
                     {Kind::turn, 5.0, 9.0, "S02", "J2", "", 0},
                     {Kind::arc, 9.0, 60.0, "S02", "J2", "", 1}};
    const std::string xml = listing(plan);
    const std::string visit = visit_around(xml, xml.find("<pass "));
    CHECK(value_of(visit, "stance") == "S02");
    REQUIRE(tags(visit, "turn").size() == 1);
    CHECK(seconds(tags(visit, "turn").front(), "end_s") == 5.0);
    REQUIRE(tags(visit, "unwind").size() == 1);
    CHECK(seconds(tags(visit, "unwind").front(), "end_s") == 9.0);
  }

  TEST_CASE("given mats that stay on, heating lists every joint of its stage and its limits") {
    std::size_t seen = 0;
    for (const Plan* plan : all_plans()) {
      if (!plan->heating || !plan->heating->holds) continue;
      const std::string xml = listing(*plan);
      for (std::size_t at = xml.find("<heat "); at != std::string::npos;
           at = xml.find("<heat ", at + 1)) {
        const std::string heat = xml.substr(at, xml.find("</heat>", at) - at);
        CHECK(value_of(heat.substr(0, heat.find('>')), "seam").empty());
        for (const std::string& joint : tags(heat, "joint")) {
          INFO(joint);
          const auto& joints = plan->joints;
          const auto planned =
              std::find_if(joints.begin(), joints.end(), [&](const plan::PlannedJoint& one) {
                return one.id == value_of(joint, "id");
              });
          REQUIRE(planned != joints.end());
          CHECK(planned->heat.needs_heating);
          CHECK(seconds(joint, "at_least_c") >= planned->heat.preheat_c - 1e-6);
          CHECK(seconds(joint, "at_least_c") < planned->heat.preheat_c + 1.0);
          ++seen;
        }
      }
    }
    CHECK(seen > 5);
  }

  TEST_CASE(
      "given a cell that touches nothing, the turn to a rolled ring is listed, and its winding") {
    planner::Inputs inputs = io::read_inputs(tests::repository() / "joints/grab_hub.xml");
    inputs.cell->times.touches_per_seam = 0;
    tests::joint_in(inputs, "R1").seams.front().asked.stop_stagger_mm = 60.0;
    inputs.library.heating.reset();
    const Plan plan = planner::make_plan(inputs);
    double total_s = 0.0;
    std::size_t count = 0;
    const std::string xml = listing(plan);
    for (const char* name : {"turn", "unwind"}) {
      for (const std::string& tag : tags(xml, name)) {
        total_s += seconds(tag, "end_s") - seconds(tag, "start_s");
        ++count;
      }
    }
    const auto kind = static_cast<std::size_t>(timeline::SecondKind::turn);
    CHECK(std::abs(total_s - plan.seconds[kind]) <= 0.0101 * static_cast<double>(count));
  }

  TEST_CASE(
      "for every plan, law: each turn of the listing tells what the plan judged of that way") {
    for (const Plan* plan : all_plans()) {
      // Heights in the order of the clock, each looked up by stage and both ends.
      std::vector<double> expected_mm, expected_nm;
      std::string held;
      for (const plan::PlannedEvent& event : plan->timeline) {
        const bool turns = event.kind == timeline::SecondKind::turn && event.stance != held;
        for (const plan::PlannedTurn& turn : plan->turns) {
          const bool is_way = turn.stage == event.stage && turn.from == held &&
                              turn.to == event.stance && turn.from != turn.to;
          if (!turns || !is_way) continue;
          expected_mm.push_back(turn.lowest_mm);
          expected_nm.push_back(turn.moving_nm.front());
        }
        held = event.kind == timeline::SecondKind::hang ? "" : event.stance;
      }
      const std::string xml = listing(*plan);
      const std::vector<std::string> told = tags(xml, "turn");
      REQUIRE(told.size() == expected_mm.size());
      std::size_t at = 0;
      for (std::size_t i = 0; i < told.size(); ++i) {
        at = xml.find("<axis ", xml.find("<turn ", at));  // its first
        const std::string axis = xml.substr(at, xml.find('>', at) - at);
        CHECK(std::abs(seconds(axis, "moving_nm") - expected_nm[i]) <= 0.0501);
        CHECK(std::abs(seconds(told[i], "lowest_mm") - expected_mm[i]) <= 0.0501);
        CHECK(value_of(told[i], "lowest_of") != "");
      }
    }
  }
}

}  // namespace seamturn::plugin_host
