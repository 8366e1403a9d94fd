// SPDX-License-Identifier: MIT
// What the sheets of tests/good/tack_places.xml and box_stages.xml say of tacks, tabs, end returns
// and sizes in inches.
#include <doctest/doctest.h>

#include <map>
#include <string>

#include "planner/planned_demos.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"
#include "xml_check.hpp"

namespace seamturn::plugin_host {

namespace {

struct Sheets {
  tests::Plan plan;
  std::map<std::string, std::string> of_seam;  ///< text of the sheet, by seam
};

Sheets sheets_of(const char* file) {
  static const PluginHost host({}, {installed_plugin_folder()});
  Sheets sheets;
  sheets.plan = tests::quick_plan(io::read_inputs(tests::repository() / "tests/good" / file));
  const std::string plan_xml = io::plan_xml(sheets.plan);
  CHECK(tests::schema_verdict("plan.xsd", plan_xml, "tack_plan_xml") == "");
  for (const procedure::Procedure& procedure : sheets.plan.procedures) {
    const std::string xml =
        host.write_document("procedure-sheet", plan_xml, "sheets/" + procedure.id + ".xml");
    CHECK(tests::schema_verdict("sheet.xsd", xml, "tack_sheet") == "");
    for (const std::string& seam : procedure.seams) sheets.of_seam[seam] = xml;
  }
  return sheets;
}

const Sheets& places() {
  static const Sheets sheets = sheets_of("tack_places.xml");
  return sheets;
}

/// The text between a start and the end of its tag.
std::string tag_of(const std::string& xml, const std::string& start, std::size_t from = 0) {
  const std::size_t at = xml.find(start, from);
  return at == std::string::npos ? "" : xml.substr(at, xml.find('>', at) - at);
}
/// In the scope; in the tacks.
std::string scope_of(const std::string& seam) {
  return tag_of(places().of_seam.at(seam), "<seam id=\"" + seam + "\"");
}
std::string tacks_of(const std::string& seam) {
  const std::string& xml = places().of_seam.at(seam);
  return tag_of(xml, "<seam id=\"" + seam + "\"", xml.find("<tacks "));
}
bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_SUITE("plugins/tack_sheet") {
  TEST_CASE("given seams tacked in two stages on one sheet, each says its own") {
    CHECK(places().of_seam.at("D.a") == places().of_seam.at("E.a"));
    CHECK_FALSE(holds(tag_of(places().of_seam.at("D.a"), "<tacks "), " stage="));
    for (const char* seam : {"D.a", "D.b"}) CHECK(holds(tacks_of(seam), " stage=\"one\""));
    for (const char* seam : {"E.a", "E.b"}) CHECK(holds(tacks_of(seam), " stage=\"two\""));
    // One stage: it stands once.
    CHECK(holds(tag_of(places().of_seam.at("A.a"), "<tacks "), " stage=\"one\""));
    CHECK_FALSE(holds(tacks_of("A.a"), " stage="));
  }

  TEST_CASE("given tacks, their stations rise along the seam drawn") {
    // computed: tests/planner/tack_places_test.cpp; the second segment begins at 80 mm.
    CHECK(holds(tacks_of("C"), "centres_mm=\"105 200 295 505 600 695\""));
    CHECK(holds(tacks_of("B/2"), "centres_mm=\"150\""));
  }

  TEST_CASE("given tabs, end returns and overlaps, the sheet gives them for each seam") {
    // computed: 500 + 20 + 25, 500 + 2 x 10, 800 + 10, 5 x 50; 100 + 15 and half of 10 or of 30 mm.
    CHECK(holds(scope_of("D.a"), " welded_mm=\"545\" run_on_mm=\"20\" run_off_mm=\"25\""));
    CHECK_FALSE(holds(scope_of("D.a"), "end_return_mm"));
    CHECK(holds(scope_of("E.b"), " welded_mm=\"520\" end_return_mm=\"10\""));
    CHECK_FALSE(holds(scope_of("E.b"), "run_on_mm"));
    CHECK(holds(scope_of("C"), " welded_mm=\"810\" overlap_mm=\"10\""));
    CHECK(holds(scope_of("A.b"), " welded_mm=\"250\""));
    CHECK(holds(scope_of("B/1"), " end_return_mm=\"15\""));
    CHECK(holds(places().of_seam.at("D.a"), "ground flush"));
    CHECK_FALSE(holds(places().of_seam.at("A.a"), "ground flush"));
  }

  TEST_CASE("given 3/8 in and a leg of 8 mm, the sheet rounds to 0.01 mm and asks for the leg") {
    CHECK(holds(places().of_seam.at("C"), "thickness_mm=\"9.52\""));
    CHECK(holds(places().of_seam.at("C"), "least_mm=\"9.52\""));
    CHECK_FALSE(holds(places().of_seam.at("C"), "9.5249"));
    CHECK(holds(places().of_seam.at("C"), "both legs at least 8.0 mm"));
    // Over-weld is laid, the drawing asks for 4.
    CHECK(holds(places().of_seam.at("A.a"), "throat at least 4.0 mm"));
  }

  TEST_CASE(
      "given a box on its head, the sheet says what is welded together and what counts twice") {
    const Sheets box = sheets_of("box_stages.xml");
    const std::string& xml = box.of_seam.at("H1");
    CHECK(holds(tag_of(xml, "<carried stage=\"ends\" member=\"bot\""),
                "with web_1, web_2, lid welded to it before"));
    CHECK(holds(tag_of(xml, "<carried stage=\"box\" member=\"head\""), "on the safe side"));
  }
}

}  // namespace seamturn::plugin_host
