// SPDX-License-Identifier: MIT
// Weld sizes, throat and misalignment on the sheets of the demo bracket, through the real border.
#include <doctest/doctest.h>

#include "repository.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/planner/planner.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"
#include "xml_check.hpp"

namespace seamturn::tests {

namespace {

const std::vector<std::string>& sheets() {
  static const std::vector<std::string> all = [] {
    const plugin_host::PluginHost host({}, {plugin_host::installed_plugin_folder()});
    const std::string plan =
        io::plan_xml(planner::make_plan(io::read_inputs(repository() / "joints/bracket.xml")));
    std::vector<std::string> made;
    for (const std::string& name : host.document_names("procedure-sheet", plan)) {
      made.push_back(host.write_document("procedure-sheet", plan, name));
    }
    return made;
  }();
  return all;
}

bool is_fillet(const std::string& sheet) {
  return sheet.find("kind=\"fillet\"") != std::string::npos;
}

}  // namespace

TEST_SUITE("plugins/size_sheet") {
  TEST_CASE("for any sheet of a fillet, law: sizes with source and status and the throat counted") {
    int fillets = 0;
    for (const std::string& sheet : sheets()) {
      INFO(sheet);
      CHECK(schema_verdict("sheet.xsd", sheet, "size_sheet") == "");
      CHECK(sheet.find("over_weld_area_ratio=\"1\"") != std::string::npos);
      if (!is_fillet(sheet)) {
        CHECK(count_of(sheet, "<weld-size ") == 0);
        CHECK(count_of(sheet, "<throat ") == 0);
        continue;
      }
      ++fillets;
      CHECK(count_of(sheet, "<weld-size ") >= 1);
      // remembered: EN 1993-1-8 4.5.2 asks for 3 mm; the drawing for 4 mm.
      CHECK(sheet.find("rule=\"least-throat-en\" text=\"throat 4 mm, at least 3 mm: holds\"") !=
            std::string::npos);
      CHECK(sheet.find("<throat counted_mm=\"4\" deduction_mm=\"0\"") != std::string::npos);
      CHECK(count_of(sheet, "<check ") == count_of(sheet, "<check rule="));
    }
    CHECK(fillets >= 1);
  }

  TEST_CASE("given a joint that names a record, its sheet tells so and leaves the verdict open") {
    const plugin_host::PluginHost host({}, {plugin_host::installed_plugin_folder()});
    const std::string plan = io::plan_xml(
        planner::make_plan(io::read_inputs(repository() / "tests/good/heat_stated.xml")));
    CHECK(schema_verdict("plan.xsd", plan, "record_plan") == "");
    int named = 0;
    for (const std::string& name : host.document_names("procedure-sheet", plan)) {
      const std::string sheet = host.write_document("procedure-sheet", plan, name);
      if (sheet.find("<joint id=\"J1\"") == std::string::npos) continue;
      ++named;
      CHECK(schema_verdict("sheet.xsd", sheet, "record_sheet") == "");
      CHECK(sheet.find("<item name=\"supporting qualification record\" open=\"the file names R7 of "
                       "joint J1; whether it covers") != std::string::npos);
    }
    CHECK(named >= 1);
  }

  TEST_CASE("for any joint of a sheet with sizes, law: it is named in one of them") {
    for (const std::string& sheet : sheets()) {
      if (!is_fillet(sheet)) continue;
      std::size_t named = 0;
      for (std::size_t at = sheet.find("<weld-size joints=\""); at != std::string::npos;
           at = sheet.find("<weld-size joints=\"", at + 1)) {
        const std::size_t from = at + 19;
        const std::string joints = sheet.substr(from, sheet.find('"', from) - from);
        named += 1 + count_of(joints, " ");
      }
      const std::size_t scope = sheet.find("<scope>");
      const std::string head = sheet.substr(scope, sheet.find("</scope>") - scope);
      CHECK(named == count_of(head, "<joint "));
    }
  }

  TEST_CASE("given the butt, its sheet states the misalignment with source and status") {
    int butts = 0;
    for (const std::string& sheet : sheets()) {
      if (sheet.find("misalignment_max_mm=") == std::string::npos) continue;
      ++butts;
      CHECK(sheet.find("misalignment_source=\"") != std::string::npos);
      CHECK(sheet.find("misalignment_status=\"") != std::string::npos);
      CHECK(sheet.find("joint_type=\"butt\"") != std::string::npos);
    }
    CHECK(butts == 1);
  }
}

}  // namespace seamturn::tests
