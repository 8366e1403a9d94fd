// SPDX-License-Identifier: MIT
// The sheet of a seam in segments: stations are measured on the part, from where the seam drawn
// begins.
#include <doctest/doctest.h>

#include <sstream>
#include <string>

#include "planner/split_part.hpp"
#include "sample_plan.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"
#include "xml_check.hpp"

namespace seamturn::plugin_host {

namespace {

/// J1 of tests/good/ordered.xml, x 40 to 320 mm, in two: they meet at station 140 mm.
const tests::Plan& split_plan() {
  static const tests::Plan plan = [] {
    planner::Inputs inputs = tests::part_of({"J1"});
    tests::ask(inputs, "J1", 2, 10.0);
    return tests::quick_plan(inputs);
  }();
  return plan;
}

std::string sheet() {
  static const PluginHost host({}, {installed_plugin_folder()});
  return host.write_document("procedure-sheet", io::plan_xml(split_plan()), "sheets/P01.xml");
}

std::string value_in(const std::string& xml, const std::string& from, const std::string& name) {
  const std::size_t at = xml.find(from);
  if (at == std::string::npos) return "";
  const std::string tag = xml.substr(at, xml.find('>', at) - at);
  const std::size_t start = tag.find(' ' + name + "=\"");
  if (start == std::string::npos) return "";
  const std::size_t value = start + name.size() + 3;
  return tag.substr(value, tag.find('"', value) - value);
}

}  // namespace

TEST_SUITE("plugins/segments_sheet") {
  // closed-form: 30 mm of stagger and 10 mm of overlap about station 140 mm
  TEST_CASE(
      "given a seam in two, its sheet says which segment, in which rank, from where to where") {
    const std::string xml = sheet();
    CHECK(value_in(xml, "<seam id=\"J1/2\"", "segment") == "2");
    CHECK(value_in(xml, "<seam id=\"J1/2\"", "segments") == "2");
    CHECK(value_in(xml, "<seam id=\"J1/2\"", "rank") == "1");
    CHECK(value_in(xml, "<seam id=\"J1/2\"", "overlap_mm") == "10");
    const auto stations = [&](const std::string& seam, int layer) {
      const std::string own = xml.substr(xml.find("<seam id=\"" + seam + "\""));
      const std::string start = "<layer-start layer=\"" + std::to_string(layer) + "\"";
      return value_in(own, start, "start_mm") + " to " + value_in(own, start, "stop_mm");
    };
    CHECK(stations("J1/1", 1) == "130 to 0");
    CHECK(stations("J1/1", 2) == "160 to 0");
    CHECK(stations("J1/2", 1) == "120 to 280");
    CHECK(stations("J1/2", 2) == "150 to 280");
  }

  TEST_CASE("law: tacks of a segment stand on the sheet where they lie on the seam drawn") {
    const std::string xml = sheet();
    const std::string tacks = xml.substr(xml.find("<tacks "));
    REQUIRE(split_plan().tacks.size() == 2);
    for (const plan::PlannedTacks& planned : split_plan().tacks) {
      REQUIRE_FALSE(planned.plan.tacks.empty());
      std::istringstream centres(
          value_in(tacks, "<seam id=\"" + planned.seam + "\"", "centres_mm"));
      for (const tack::Tack& tack : planned.plan.tacks) {
        double centre_mm = -1.0;
        centres >> centre_mm;
        CHECK(std::abs(centre_mm - (tack.centre.x() - 40.0)) <= 0.5 + 1e-9);
      }
    }
  }

  TEST_CASE("law: stations of a ring's arcs stay on the ring") {
    planner::Inputs inputs = tests::part_of({"R1"});
    tests::ask(inputs, "R1", 4, 10.0);
    const PluginHost host({}, {installed_plugin_folder()});
    const std::string xml = host.write_document(
        "procedure-sheet", io::plan_xml(tests::quick_plan(inputs)), "sheets/P01.xml");
    // 754 mm round: the first arc begins 20 mm before its start, in layer 1 (computed).
    const std::string start = "<layer-start layer=\"1\"";
    CHECK(value_in(xml.substr(xml.find("<seam id=\"R1/1\"")), start, "start_mm") == "734");
    CHECK(value_in(xml.substr(xml.find("<seam id=\"R1/4\"")), start, "stop_mm") == "744");
    const std::string tacks = xml.substr(xml.find("<tacks "));
    for (const char* id : {"R1/1", "R1/2", "R1/3", "R1/4"}) {
      std::istringstream centres(
          value_in(tacks, "<seam id=\"" + std::string(id) + "\"", "centres_mm"));
      std::size_t count = 0;
      for (double centre_mm = 0.0; centres >> centre_mm; ++count) {
        CHECK(centre_mm >= 0.0);
        CHECK(centre_mm < 754.0);
      }
      CHECK(count > 0);
    }
  }

  TEST_CASE("its plan, sheet and listing are valid against their schemas") {
    const std::string plan_xml = io::plan_xml(split_plan());
    CHECK(tests::schema_verdict("plan.xsd", plan_xml, "segments_plan_xml") == "");
    CHECK(tests::schema_verdict("sheet.xsd", sheet(), "segments_sheet") == "");
    static const PluginHost host({}, {installed_plugin_folder()});
    const std::string listing = host.write_document("path-listing", plan_xml, "paths/listing.xml");
    CHECK(tests::schema_verdict("paths.xsd", listing, "segments_listing") == "");
  }
}

}  // namespace seamturn::plugin_host
