// SPDX-License-Identifier: MIT
// The chain of a number: its values are the plan's, its origins places of the file.
#include "seamturn/figures/explain.hpp"

#include <algorithm>

#include "oracle.hpp"
#include "repository.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/planner/planner.hpp"

namespace seamturn::tests {

using figures::explain;
using figures::ExplainStep;
using figures::Given;

namespace {

struct Explained {
  planner::Inputs inputs;
  plan::Plan plan;
};

const Explained& bracket() {
  static const Explained made = [] {
    Explained one;
    one.inputs = io::read_inputs(repository() / "joints/bracket.xml");
    one.plan = planner::make_plan(one.inputs);
    return one;
  }();
  return made;
}

std::vector<ExplainStep> steps_of(const std::string& joint, const std::string& figure = "") {
  const auto steps = explain(bracket().inputs, bracket().plan, joint, figure);
  REQUIRE(steps.has_value());
  return *steps;
}

const Given& given(const std::vector<Given>& list, const std::string& name) {
  const auto found =
      std::find_if(list.begin(), list.end(), [&](const Given& one) { return one.name == name; });
  REQUIRE(found != list.end());
  return *found;
}

double number_of(const std::vector<Given>& list, const std::string& name) {
  return std::get<double>(given(list, name).value);
}

/// What stands around a place of a file: its line up to it, and from it on.
struct Around {
  std::string before, after;
};
Around around(const std::string& origin) {
  const std::size_t column = origin.rfind(':');
  const std::size_t line = origin.rfind(':', column - 1);
  const auto lines = lines_of(origin.substr(0, line));
  const std::string text = lines.at(std::stoul(origin.substr(line + 1, column - line - 1)) - 1);
  const std::size_t at = std::stoul(origin.substr(column + 1)) - 1;
  return {text.substr(0, at), text.substr(at)};
}

/// The value of that attribute, and nothing else, stands at the place.
bool is_value_of(const std::string& origin, const char* attribute, const char* value) {
  const Around found = around(origin);
  return found.before.ends_with(std::string(attribute) + "=\"") && found.after.starts_with(value);
}

}  // namespace

TEST_SUITE("figures/explain") {
  TEST_CASE("given the whole chain of a groove, its steps run from section to cooling time") {
    std::vector<std::string> figures;
    for (const ExplainStep& step : steps_of("J2")) {
      if (figures.empty() || figures.back() != step.figure) figures.push_back(step.figure);
      CHECK_FALSE(step.formula.empty());
      CHECK_FALSE(step.range.empty());
      CHECK_FALSE(step.results.empty());
    }
    CHECK(figures == std::vector<std::string>{"section",
                                              "metal",
                                              "passes",
                                              "position",
                                              "heat-input",
                                              "carbon-equivalent",
                                              "combined-thickness",
                                              "preheat",
                                              "preheat-methods",
                                              "interpass",
                                              "waits",
                                              "cooling-time",
                                              "heat-band",
                                              "hardness",
                                              "hold-time",
                                              "lamellar-tearing"});
  }

  TEST_CASE(
      "given a seam held level, its position is told once, with the tolerance it is held to") {
    const std::vector<ExplainStep> steps = steps_of("J2", "position");
    REQUIRE(steps.size() == 1);
    CHECK(steps.front().subject == "seam J2, passes 1-5, in S02");
    CHECK(number_of(steps.front().inputs, "tilt") == doctest::Approx(45.0));
    CHECK(number_of(steps.front().results, "slope") == doctest::Approx(0.0));
    CHECK(number_of(steps.front().results, "bank") == doctest::Approx(0.0));
    REQUIRE(steps.front().how_close.size() == 2);
    CHECK(steps.front().how_close[0].origin.find("standards.xml:") != std::string::npos);
    CHECK(steps.front().how_close[1].largest == doctest::Approx(8.0));
  }

  TEST_CASE("given the section, gap and angle lead to the line of the file that states them") {
    const ExplainStep step = steps_of("J2", "section").front();
    CHECK(number_of(step.inputs, "gap") == 3.0);
    CHECK(number_of(step.inputs, "angle") == doctest::Approx(45.0));
    CHECK(around(given(step.inputs, "gap").origin).before.find("single-bevel") !=
          std::string::npos);
    // The place is the value itself, not its neighbour on the same line.
    CHECK(is_value_of(given(step.inputs, "gap").origin, "gap", "3 mm\""));
    CHECK(is_value_of(given(step.inputs, "root-face").origin, "root-face", "0 mm\""));
    CHECK(is_value_of(given(step.inputs, "angle").origin, "angle", "45 deg\""));
    CHECK(given(step.inputs, "thickness").origin.find("member web") != std::string::npos);
    CHECK(std::any_of(step.sources.begin(), step.sources.end(), [](const std::string& source) {
      return source.find("(verified)") != std::string::npos;
    }));
  }

  TEST_CASE("given a fillet over a gap, each of its sizes leads to its own value in the file") {
    const planner::Inputs inputs = io::read_inputs(repository() / "tests/good/preparations.xml");
    const auto steps = explain(inputs, planner::make_plan(inputs), "convex", "section");
    REQUIRE(steps.has_value());
    const std::vector<Given>& sizes = steps->front().inputs;
    CHECK(is_value_of(given(sizes, "gap").origin, "gap", "1 mm\""));
    CHECK(is_value_of(given(sizes, "bulge").origin, "bulge", "1 mm\""));
    CHECK(is_value_of(given(sizes, "leg-1").origin, "leg", "8 mm\""));
    CHECK(is_value_of(given(sizes, "leg-2").origin, "leg", "8 mm\""));
  }

  TEST_CASE("for any joint, law: the values explained are those of the plan") {
    for (const plan::PlannedJoint& joint : bracket().plan.joints) {
      INFO(joint.id);
      for (const ExplainStep& step : steps_of(joint.id, "metal")) {
        const auto seam = std::find_if(joint.seams.begin(), joint.seams.end(), [&](const auto& s) {
          return step.subject == "seam " + s.id;
        });
        REQUIRE(seam != joint.seams.end());
        CHECK(number_of(step.results, "metal") == seam->metal_kg);
        CHECK(number_of(step.inputs, "section") == seam->section.area_mm2);
      }
      CHECK(number_of(steps_of(joint.id, "preheat").front().results, "preheat") ==
            joint.heat.preheat_c);
      const std::vector<ExplainStep> cooling = steps_of(joint.id, "cooling-time");
      CHECK(cooling.size() == joint.seams.size());
      CHECK(number_of(cooling.front().results, "shortest t8/5") > 0.0);
    }
  }

  TEST_CASE("given heat input, k x U x I / v of what is shown is what is shown") {
    for (const ExplainStep& step : steps_of("J1", "heat-input")) {
      const double travel_mm_s = number_of(step.inputs, "travel") / 6.0;
      const double shown = number_of(step.inputs, "k") * number_of(step.inputs, "voltage") *
                           number_of(step.inputs, "current") / travel_mm_s / 1000.0;
      CHECK(number_of(step.results, "heat input") == doctest::Approx(shown).epsilon(1e-9));
      CHECK(given(step.inputs, "voltage").origin.find("shop.xml") != std::string::npos);
    }
  }

  TEST_CASE("given a fillet, its size is held against each rule and a verdict closes the step") {
    const ExplainStep step = steps_of("J3", "weld-size").front();
    CHECK(step.results.size() >= 3);
    CHECK(step.results.back().name == "together");
    CHECK(std::get<std::string>(given(step.results, "together").value) != "");
  }

  TEST_CASE("given a partial bevel of 45 deg in PA, its whole depth counts as throat") {
    const planner::Inputs inputs = io::read_inputs(repository() / "joints/grab_hub.xml");
    const plan::Plan plan = planner::make_plan(inputs);
    const auto steps = explain(inputs, plan, "R1", "weld-size");
    REQUIRE(steps.has_value());
    check_expected("R1, depth 15 mm",
                   number_of(steps->front().results, "throat counted of R1"),
                   {15.0, 1e-9, Origin::published, "AWS D1.1 BTC-P4-GF: E = S in F and H"});
  }

  TEST_CASE("given the id of a seam or a segment, its joint is explained") {
    const plan::Plan& plan = bracket().plan;
    CHECK(figures::joint_named(plan, "J5") == "J5");
    CHECK(figures::joint_named(plan, "J5.b") == "J5");
    CHECK(figures::joint_named(plan, "J5.c") == "J5.c");
    CHECK(steps_of("J5.a", "section").size() == steps_of("J5", "section").size());
    // A segment stands for its seam, and a joint's own id goes before a seam's.
    plan::Plan split = plan;
    split.joints[0].seams.front().id = "J1/1";
    split.joints[0].seams.front().drawn = "J2";
    CHECK(figures::joint_named(split, "J1/1") == "J1");
    CHECK(figures::joint_named(split, "J2") == "J2");
  }

  TEST_CASE("refuses an unknown joint and an unknown figure, naming what there is") {
    const auto joint = explain(bracket().inputs, bracket().plan, "J9", "");
    REQUIRE_FALSE(joint.has_value());
    CHECK(joint.error().code == "explain.joint.unknown");
    CHECK(joint.error().text.find("J1, J2") != std::string::npos);
    // A name near to none ends the sentence; one near to a known one asks.
    const auto far = explain(bracket().inputs, bracket().plan, "NOPE", "");
    REQUIRE_FALSE(far.has_value());
    CHECK(far.error().text.starts_with("there is no joint \"NOPE\". There are: J1, J2"));
    const auto near = explain(bracket().inputs, bracket().plan, "J1x", "");
    REQUIRE_FALSE(near.has_value());
    CHECK(near.error().text.find("\"J1x\"; did you mean J1? There are: ") != std::string::npos);
    const auto figure = explain(bracket().inputs, bracket().plan, "J1", "preheet");
    REQUIRE_FALSE(figure.has_value());
    CHECK(figure.error().code == "explain.figure.unknown");
    CHECK(figure.error().text.find("did you mean preheat?") != std::string::npos);
  }
}

}  // namespace seamturn::tests
