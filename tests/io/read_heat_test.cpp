// SPDX-License-Identifier: MIT
// What a weldment file states of heat arrives as written, and what it leaves out is nothing.
// closed-form: the values expected are those written in the file; no outside check.
#include <doctest/doctest.h>

#include <cstdlib>

#include "repository.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/planner/planner.hpp"

namespace seamturn::tests {

namespace {

const std::filesystem::path stated_file = repository() / "tests/good/heat_stated.xml";

}  // namespace

TEST_SUITE("io/read_heat") {
  TEST_CASE("given a file that states all it can of heat, every value arrives") {
    const planner::Inputs inputs = io::read_inputs(stated_file);
    CHECK(inputs.findings.empty());
    const joint::StatedHeat& first = inputs.weldment.joints.at(0).heat;
    CHECK(first.preheat_by == "cet");
    CHECK(first.preheat_reason == "the contract names it");
    CHECK_FALSE(first.preheat_c);
    CHECK_FALSE(first.single_run_reduction);
    CHECK(first.combined_thickness_mm == 70.0);
    CHECK(first.record == "R7");
    CHECK(inputs.library.records.at(0).interpass_max_c == 210.0);
    CHECK(first.restraint == joint::Restraint::high);
    CHECK(first.restraint_stated);
    CHECK_FALSE(first.sides_together);
    CHECK(first.t85_min_s == 4.0);
    CHECK(first.t85_max_s == 30.0);
    CHECK_FALSE(first.interpass_max_c);
    const joint::StatedHeat& second = inputs.weldment.joints.at(1).heat;
    CHECK(second.preheat_by.empty());
    CHECK(second.single_run_reduction);
    CHECK(second.sides_together);
    CHECK(second.restraint == joint::Restraint::low);
    CHECK(second.interpass_max_c == 220.0);
    CHECK_FALSE(second.t85_min_s);
    CHECK(joint::find_member(inputs.weldment, "base")->z_quality == "Z25");
    CHECK(joint::find_member(inputs.weldment, "eye")->z_quality == "Z15");
    CHECK(joint::find_member(inputs.weldment, "web")->z_quality.empty());
  }

  TEST_CASE("given a file that states nothing of heat, nothing is stated and restraint is medium") {
    const planner::Inputs inputs = io::read_inputs(repository() / "tests/good/tee.xml");
    const joint::StatedHeat& heat = inputs.weldment.joints.at(0).heat;
    CHECK_FALSE(heat.preheat_c);
    CHECK(heat.preheat_by.empty());
    CHECK(heat.preheat_reason.empty());
    CHECK(heat.record.empty());
    CHECK_FALSE(heat.single_run_reduction);
    CHECK_FALSE(heat.combined_thickness_mm);
    CHECK_FALSE(heat.sides_together);
    CHECK(heat.restraint == joint::Restraint::medium);
    CHECK_FALSE(heat.restraint_stated);
    CHECK_FALSE(heat.t85_max_s);
  }

  TEST_CASE("given every word of restraint and method, each is read as its own") {
    CHECK(joint::restraint_name(joint::Restraint::low) == "low");
    CHECK(joint::restraint_name(joint::Restraint::medium) == "medium");
    CHECK(joint::restraint_name(joint::Restraint::high) == "high");
  }

  TEST_CASE("given that file, xmllint finds it valid by weldment.xsd, and a false class not") {
    const auto verdict = [](const std::filesystem::path& file) {
      const std::string schema = (repository() / "docs/schemas/weldment.xsd").string();
      const std::string command = "xmllint --noout --nonet --schema '" + schema + "' '" +
                                  file.string() + "' >/dev/null 2>&1";
      return std::system(command.c_str());
    };
    CHECK(verdict(stated_file) == 0);
    for (const char* bad : {"z_quality_unknown.xml", "restraint_unknown.xml"}) {
      INFO(bad);
      CHECK(verdict(repository() / "tests/bad" / bad) != 0);
    }
  }

  TEST_CASE("given that file, the plan follows what it states") {
    const plan::Plan plan = planner::make_plan(io::read_inputs(stated_file));
    const procedure::HeatLimits& first = plan.joints.at(0).heat;
    CHECK(first.combined_thickness_mm == 70.0);
    CHECK(first.preheat_basis.find("the contract names it") != std::string::npos);
    REQUIRE(first.window);
    CHECK(first.window->binds);
    // the record's 210 lies below the steel's 250, the file's 220 below the steel's too
    CHECK(first.interpass_max_c == 210.0);
    CHECK(first.interpass_basis.find("record R7 (made up)") == 0);
    CHECK(plan.joints.at(1).heat.interpass_max_c == 220.0);
    // J2 lies in the heated zone of J1, which takes no reduction.
    CHECK(plan.joints.at(1).heat.own_preheat_c < plan.joints.at(1).heat.preheat_c);
    CHECK(plan.joints.at(1).heat.preheat_c == first.preheat_c);
    CHECK(plan.joints.at(1).heat.neighbour == "J1");
  }
}

}  // namespace seamturn::tests
