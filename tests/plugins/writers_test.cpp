// SPDX-License-Identifier: MIT
// The writers of this project, through the real border, on a plan made by hand.
#include <doctest/doctest.h>

#include <algorithm>

#include "sample_plan.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/io/output.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"
#include "xml_check.hpp"

namespace seamturn {

namespace {

using plugin_host::PluginHost;

const PluginHost& writers() {
  static const PluginHost host({}, {plugin_host::installed_plugin_folder()});
  return host;
}

std::string sample_xml() {
  return io::plan_xml(tests::sample_plan());
}

std::string sheet(const std::string& name) {
  return writers().write_document("procedure-sheet", sample_xml(), name);
}

std::string listing(const plan::Plan& plan) {
  return writers().write_document("path-listing", io::plan_xml(plan), "paths/listing.xml");
}

void check_pieces(const std::string& xml, const std::vector<std::string>& pieces) {
  for (const std::string& piece : pieces) {
    INFO(piece);
    CHECK(xml.find(piece) != std::string::npos);
  }
}

/// The pieces stand one after another.
void check_order(const std::string& xml, const std::vector<std::string>& pieces) {
  std::size_t at = 0;
  for (const std::string& piece : pieces) {
    INFO(piece);
    const std::size_t found = xml.find(piece, at);
    REQUIRE(found != std::string::npos);
    at = found + piece.size();
  }
}

}  // namespace

TEST_SUITE("plugins/writers") {
  TEST_CASE("given the build's own plugin folder, all writers are loaded") {
    CHECK(writers().writer_ids() ==
          std::vector<std::string>{
              "pass-drawing", "path-listing", "procedure-sheet", "stance-drawing", "turn-chart"});
  }

  TEST_CASE("for any document, law: valid by its schema, twice the same bytes, a safe name") {
    const std::string xml = sample_xml();
    for (const std::string id : {"path-listing", "procedure-sheet"}) {
      const std::string schema = id == "path-listing" ? "paths.xsd" : "sheet.xsd";
      for (const std::string& name : writers().document_names(id, xml)) {
        INFO(id, " ", name);
        CHECK(io::is_safe_name(name));
        const std::string bytes = writers().write_document(id, xml, name);
        CHECK(tests::schema_verdict(schema, bytes, "writers") == "");
        CHECK(bytes == writers().write_document(id, xml, name));
        CHECK(bytes.find("\t") == std::string::npos);
      }
    }
  }

  TEST_CASE("given headings of the torch, the listing names them, and what leaves none") {
    const std::string xml =
        writers().write_document("path-listing", sample_xml(), "paths/listing.xml");
    CHECK(tests::count_of(xml, "heading_from_deg=\"15\" heading_to_deg=\"-30.5\"") == 1);
    CHECK(tests::count_of(xml, "torch_meets=\"rib &amp; &quot;bar&quot;\"") == 1);
    CHECK(tests::count_of(xml, "heading_from_deg") == 1);
  }

  TEST_CASE("given three procedures, three sheets are named after them") {
    CHECK(writers().document_names("procedure-sheet", sample_xml()) ==
          std::vector<std::string>{"sheets/P01.xml", "sheets/P02.xml", "sheets/P03.xml"});
  }

  TEST_CASE("given texts with signs and umlauts, they are escaped once and kept") {
    const std::string xml = sheet("sheets/P01.xml");
    check_pieces(xml,
                 {"B\xc3\xb6"
                  "ck &lt;A> &amp; &quot;Lasche&quot; 'x' \xe2\x89\xa5 1",
                  "holds &amp; &lt;carries>",
                  "100 % &lt;VT> &amp; &quot;MT&quot;",
                  "hot &amp; bright"});
    CHECK(xml.find("&amp;amp;") == std::string::npos);
  }

  TEST_CASE("given the sample, a sheet states what the plan decides, in digits people use") {
    const std::string xml = sheet("sheets/P01.xml");
    check_pieces(xml,
                 {"word=\"preliminary\" reason=\"no record covers it\"",
                  "number=\"135\" position=\"PA\"",
                  "name=\"standard\" value=\"ZZ 1\"",
                  "least_mm=\"10\" most_mm=\"25\"",
                  "leg_1_mm=\"7.5\"",
                  "work_angle_deg=\"-7\" push_deg=\"11\"",
                  "wire_mm=\"1.2\" current_a=\"222\" voltage_v=\"22.2\" feed_mm_s=\"111\" "
                  "feed_m_min=\"6.66\" travel_mm_s=\"7.7\" travel_mm_min=\"462\"",
                  "travel_range_mm_min=\"300 to 600\"",
                  "transfer=\"spray\"",
                  "heat_input_kj_mm=\"0.611\"",
                  "at_least_c=\"77\" at_most_c=\"222\" needs_heating=\"true\"",
                  "preheat_basis=\"stated in the test\"",
                  "interpass_basis=\"stated in the test too\"",
                  "least_s=\"5.5\" most_s=\"17.6\"",
                  "<method name=\"table-c1\" says=\"no preheat\" may_govern=\"false\"",
                  "measure 50 mm away (ISO 13916)",
                  "62.5 mm)",
                  "6 to 24 s, kept by all passes, the maker",
                  "0.75 to 2.25",
                  "331 to 352, each plus or minus 56 (web, t8/5 5.5 s)",
                  "asked for Z15, ordered Z25 (20 points",
                  "2 h, then slowly cold",
                  "575 (steel S355J2, practice, from memory)",
                  "at_least_c=\"77\" at_most_c=\"222\"",
                  "invented=\"true\"",
                  "both sides, one seam each"});
    CHECK(tests::count_of(xml, "<corner ") == 3);
    CHECK(tests::count_of(xml, "<pass ") == 2);
    CHECK(tests::count_of(xml, "<gate ") == 2);
    CHECK(tests::count_of(xml, "<seam ") == 2);
  }

  TEST_CASE("for any item the plan does not decide, law: it stands in the sheet as open") {
    const std::string xml = sheet("sheets/P03.xml");
    for (const char* item : {"manufacturer",
                             "supporting qualification record",
                             "degree of mechanisation",
                             "current type and polarity",
                             "method of edge preparation",
                             "shielding gas",
                             "wire: make and trade name",
                             "heat treatment after welding",
                             "group (ISO/TR 15608)"}) {
      INFO(item);
      CHECK(xml.find("name=\"" + std::string(item) +
                     "\" open=\"to be filled in by the welding coordinator\"") !=
            std::string::npos);
    }
    CHECK(xml.find("value=\"\"") == std::string::npos);
    CHECK(tests::count_of(xml, "<gate ") == 1);
    CHECK(sheet("sheets/P02.xml").find("backing: material and dimensions") != std::string::npos);
  }

  TEST_CASE("given the clock of the sample, the listing visits the stances in its order") {
    const std::string xml = listing(tests::sample_plan());
    check_order(xml,
                {"<not-listed seam=\"J3\"",
                 "<visit number=\"1\" stance=\"S01\" setup=\"table\" rolling=\"false\"",
                 "name=\"tilt\" angle_deg=\"45\"",
                 "<turn start_s=\"0\" end_s=\"5\" lowest_mm=\"600.8\" lowest_of=\"tube\"",
                 "<axis name=\"tilt\" torque_nm=\"11.1\" moving_nm=\"12.3\"",
                 "<axis name=\"rotate\" torque_nm=\"-2.2\" moving_nm=\"-3.4\"",
                 "<touch seam=\"J1.a\"",
                 "<gate seam=\"J1.a\" pass=\"1\" at_least_c=\"77\" at_most_c=\"222\" "
                 "measure=\"measure 50 mm away\" planned_wait_s=\"0\"",
                 "<pass seam=\"J1.a\" number=\"1\"",
                 "<pass seam=\"J1.b\" number=\"1\"",
                 "<clean ",
                 "planned_wait_s=\"4\"",
                 "<pass seam=\"J1.a\" number=\"2\"",
                 "<visit number=\"2\" stance=\"S02\" setup=\"table\" rolling=\"true\"",
                 "<turn start_s=\"180\" end_s=\"200\" lowest_mm=\"500.2\"",
                 "<halt>",
                 "<axis name=\"tilt\" angle_deg=\"15\"",
                 "<axis name=\"rotate\" angle_deg=\"-30.5\"",
                 "</halt>",
                 "<axis name=\"tilt\" torque_nm=\"13.1\" moving_nm=\"14.1\" stop_nm=\"15.2\"",
                 "<pass seam=\"J2\" number=\"1\"",
                 "<unwind seam=\"J2\" start_s=\"250\" end_s=\"260\"",
                 "<pass seam=\"J2\" number=\"2\"",
                 "<visit number=\"3\" stance=\"S01\"",
                 "<pass seam=\"J1.b\" number=\"2\""});
    // The plan does not say what is asked on the way back: nothing is said here.
    CHECK(xml.find("<turn start_s=\"310\" end_s=\"330\" />") != std::string::npos);
    CHECK(tests::count_of(xml, "<visit ") == 3);
    CHECK(tests::count_of(xml, "<gate ") == tests::count_of(xml, "<pass "));
    CHECK(tests::count_of(xml, "arc=\"on\"") == 6);
    CHECK(tests::count_of(xml, "arc=\"off\"") == 6);
    CHECK(tests::count_of(xml, "arc=\"burning\"") == 22);
  }

  TEST_CASE("given a seam that is heated, the listing says so in its visit, before the pass") {
    plan::Plan plan = tests::sample_plan();
    const auto arc = std::find_if(
        plan.timeline.begin(), plan.timeline.end(), [](const plan::PlannedEvent& event) {
          return event.kind == timeline::SecondKind::arc;
        });
    REQUIRE(arc != plan.timeline.end());
    plan::PlannedEvent heat = *arc;
    heat.kind = timeline::SecondKind::heat;
    heat.end_s = heat.start_s;
    heat.pass = 0;
    plan.timeline.insert(arc, heat);
    const std::string xml = listing(plan);
    check_order(xml,
                {"<visit number=\"1\"",
                 "<heat seam=\"J1.a\"",
                 "<gate seam=\"J1.a\" pass=\"1\"",
                 "<pass seam=\"J1.a\" number=\"1\""});
    CHECK(tests::count_of(xml, "<heat ") == 1);
    CHECK(tests::schema_verdict("paths.xsd", xml, "writers") == "");
  }

  TEST_CASE("given a rolling stance, the listing says which axis turns, how far and how fast") {
    const std::string xml = listing(tests::sample_plan());
    check_pieces(xml,
                 {"<rolling axis=\"rotate\" from_deg=\"-90\" turn_deg=\"-360\" "
                  "speed_deg_s=\"-7.2\"",
                  "open=\"the plan does not say how far and which way"});
    CHECK(tests::count_of(xml, "<rolling ") == 2);
  }

  TEST_CASE("for limits between whole degrees, law: rounding never widens what is permitted") {
    plan::Plan plan = tests::sample_plan();
    for (plan::PlannedJoint& joint : plan.joints) {
      joint.heat.preheat_c = 77.2;
      joint.heat.interpass_max_c = 222.9;
    }
    const std::string limits = "at_least_c=\"78\" at_most_c=\"222\"";
    CHECK(tests::count_of(listing(plan), limits) == 6);
    CHECK(tests::count_of(
              writers().write_document("procedure-sheet", io::plan_xml(plan), "sheets/P01.xml"),
              limits) == 3);
  }

  TEST_CASE("given a plan without a positioner, no listing is named and none is written") {
    plan::Plan plan = tests::sample_plan();
    plan.timeline.clear();
    CHECK(writers().document_names("path-listing", io::plan_xml(plan)).empty());
    CHECK_THROWS_AS((void)listing(plan), base::UnavailableError);
  }

  TEST_CASE("refuses with a reason what is no plan because a sheet from guesses could hurt") {
    const std::string good = sample_xml();
    std::vector<std::string> bad = {
        "", "<plan", "<other/>", "<plan xmlns=\"urn:x\"/>", good.substr(0, good.size() / 2)};
    std::string newer = good;
    newer.replace(newer.find("schema=\"1.0\""), 12, "schema=\"2.0\"");
    bad.push_back(newer);
    for (const std::string& xml : bad) {
      INFO(xml.substr(0, 80));
      CHECK_THROWS_AS((void)writers().document_names("procedure-sheet", xml),
                      base::UnavailableError);
      CHECK_THROWS_AS((void)writers().document_names("path-listing", xml), base::UnavailableError);
    }
    for (const char* name : {"sheets/P09.xml", "P01", "../sheets/P01.xml", ""}) {
      CHECK_THROWS_AS((void)sheet(name), base::UnavailableError);
    }
  }

  TEST_CASE("refuses a number that is none because it must not be copied onto a sheet as zero") {
    for (const char* bad : {"1,5", "1.5abc", "nan", "0x10", ""}) {
      std::string xml = sample_xml();
      const std::string number = "travel_mm_s=\"7.7\"";
      xml.replace(xml.find(number), number.size(), "travel_mm_s=\"" + std::string(bad) + "\"");
      INFO(bad);
      CHECK_THROWS_AS((void)writers().write_document("procedure-sheet", xml, "sheets/P01.xml"),
                      base::UnavailableError);
    }
  }
}

}  // namespace seamturn
