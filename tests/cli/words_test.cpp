// SPDX-License-Identifier: MIT
// What the program says to people: widths, counts, units and sentences that must be true.
#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <sstream>

#include "process.hpp"

namespace seamturn::tests {

namespace {

namespace fs = std::filesystem;

std::string demo_file(const std::string& name) {
  return "'" + (repository() / "joints" / name).string() + "'";
}

bool says(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

/// What the program prints with exit code 0.
std::string printed(const std::string& arguments) {
  const Ran ran = run_seamturn(arguments, scratch("words"));
  INFO(arguments, "\n", ran.err);
  REQUIRE(ran.exit_code == 0);
  return ran.out;
}

/// A good file of the tests with one text exchanged, beside its libraries and cells.
struct Edited {
  fs::path folder;
  std::string file;
};
Edited edited(const std::string& name, const std::string& from, const std::string& to) {
  Edited one{scratch("edited"), ""};
  const fs::path good = repository() / "tests/good";
  for (const char* beside : {"library", "cells"}) {
    fs::create_directory_symlink(good / beside, one.folder / beside);
  }
  std::string text = text_of(good / name);
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  text.replace(at, from.size(), to);
  std::ofstream(one.folder / name) << text;
  one.file = name;
  return one;
}

/// The number after a text, in the first line that holds it.
double number_after(const std::string& text, const std::string& words) {
  const std::size_t at = text.find(words);
  INFO(words, " in\n", text);
  REQUIRE(at != std::string::npos);
  return std::stod(text.substr(at + words.size()));
}

const char* const one_weld =
    R"(<weldment xmlns="urn:seamturn:weldment:1" schema="1.0" title="One" revision="A" author="test"
          date="2026-11-02" invented="yes" wire="W12" ambient="20 degC">
  <use library="library/standards.xml"/>
  <use cell="cells/table.xml"/>
  <plate id="base" steel="S355J2" thickness="12 mm" size="400 x 300 mm" at="0 0 0 mm"/>
  <plate id="web" steel="S355J2" thickness="12 mm" size="400 x 120 mm" at="0 142.5 12 mm" stand="y"/>
  <setup id="table" part-at="-200 -150 60 mm"><fixture mass="20 kg" centre="0 0 30 mm"/></setup>
  <joint id="J1" type="tee" members="base web" quality="C">
    <fillet throat="4 mm"/>
    <line from="10 154.5 12 mm" to="390 154.5 12 mm"/>
  </joint>
  <batch parts="1"/>
</weldment>
)";

}  // namespace

TEST_SUITE("cli/words") {
  TEST_CASE("for every chain explained, law: no line is wider than 100 columns") {
    const std::string bracket = demo_file("bracket.xml");
    for (const char* joint : {"J1", "J2", "J3", "J4", "J5", "J6"}) {
      std::istringstream lines(printed("explain --quiet " + bracket + " " + joint));
      for (std::string line; std::getline(lines, line);) {
        INFO(joint, ": ", line);
        CHECK(line.size() <= 100);
      }
    }
    // A long text keeps its origin, and shorter values of the step stand in their column.
    const std::string hold = printed("explain --quiet " + bracket + " J1 hold-time");
    CHECK(says(hold, "[from memory]"));
    CHECK(std::regex_search(hold, std::regex("later heating at most  \\d+ degC  steel S355J2")));
  }

  TEST_CASE("given quiet, an input with errors tells its errors and nothing else") {
    const Edited bad = edited("bracket.xml", "<weldment", "<weldment");  // no settings for J2
    const Ran loud = run_seamturn("cost " + bad.file, bad.folder);
    REQUIRE(loud.exit_code == 1);
    REQUIRE(says(loud.err, ": error: "));
    REQUIRE((says(loud.err, ": warning: ") || says(loud.err, ": note: ")));
    const Ran quiet = run_seamturn("cost --quiet " + bad.file, bad.folder);
    CHECK(quiet.exit_code == 1);
    CHECK(says(quiet.err, ": error: "));
    CHECK_FALSE(says(quiet.err, ": warning: "));
    CHECK_FALSE(says(quiet.err, ": note: "));
    // JSON keeps them all, whatever stderr shows.
    const Ran json = run_seamturn("cost --quiet --json " + bad.file, bad.folder);
    bool beside = false;
    const auto object = nlohmann::json::parse(json.out);
    for (const auto& finding : object.at("findings")) {
      beside = beside || finding.at("severity") != "error";
    }
    CHECK(beside);
  }

  TEST_CASE("given a good file, check says what it did and who answers the rest") {
    const std::string out = printed("check " + demo_file("bracket.xml"));
    CHECK(says(out, "no errors, "));
    CHECK(says(out, "Files read; whether they can be welded and held: seamturn plan\n"));
    CHECK(says(printed("--help"), "read the files"));
  }

  TEST_CASE("given one of each, it is one joint, one seam, one stance, one visit, one sheet") {
    const Edited one = edited("tee.xml", "<weldment", "<weldment");
    std::ofstream(one.folder / "one.xml") << one_weld;
    const Ran check = run_seamturn("check one.xml", one.folder);
    CHECK(says(check.out, ": 2 members, 1 joint, 1 seam; no errors, 0 warnings\n"));
    const Ran plan = run_seamturn("plan --quiet one.xml", one.folder);
    INFO(plan.err);
    REQUIRE(plan.exit_code == 0);
    CHECK(says(plan.out, "welds        1 joint, 1 seam, "));
    CHECK(says(plan.out, "procedures   1 sheet, "));
    CHECK(says(plan.out, "order        1 stance, 1 visit; "));
    CHECK(says(plan.out, " in 1 pass\n"));
  }

  TEST_CASE("given one block more than in an earlier plan, one is new and was put in") {
    const Edited one = edited("tee.xml", "<weldment", "<weldment");
    std::ofstream(one.folder / "one.xml") << one_weld;
    REQUIRE(run_seamturn("plan --quiet one.xml -o then", one.folder).exit_code == 0);
    std::string more = one_weld;
    more.insert(more.find("  <batch"),
                "  <joint id=\"J2\" type=\"tee\" members=\"base web\" quality=\"C\">\n"
                "    <fillet throat=\"4 mm\"/>\n"
                "    <line from=\"390 142.5 12 mm\" to=\"10 142.5 12 mm\"/>\n"
                "  </joint>\n");
    std::ofstream(one.folder / "two.xml") << more;
    const Ran ran = run_seamturn("plan two.xml --start-from then/plan.xml", one.folder);
    INFO(ran.err);
    REQUIRE(ran.exit_code == 0);
    CHECK(says(ran.err, "1 of 2 pass blocks and operations stand in it; 1 is new and was put in"));
  }

  TEST_CASE("given a seam in segments that cannot be laid, its fault is told once") {
    const Edited one = edited("tee.xml", "<weldment", "<weldment");
    std::string thin = one_weld;
    thin.replace(thin.find("throat=\"4 mm\"/>"), 16, "throat=\"0.8 mm\"/><welded segments=\"2\"/>");
    std::ofstream(one.folder / "thin.xml") << thin;
    const Ran ran = run_seamturn("joints --quiet thin.xml", one.folder);
    INFO(ran.err);
    CHECK(ran.exit_code == 1);
    CHECK(says(ran.err, "seam J1 in "));
    CHECK_FALSE(says(ran.err, "J1/2"));
    CHECK(ran.err.find("cannot_close") == ran.err.rfind("cannot_close"));
  }

  TEST_CASE("given a seam none of whose segments a stance holds, they are told together") {
    const Edited one = edited("tee.xml", "<weldment", "<weldment");
    const std::string cell = text_of(one.folder / "cells/table.xml");
    const std::regex torque(" torque-max=\"[^\"]*\"");
    REQUIRE(std::regex_search(cell, torque));
    std::ofstream(one.folder / "weak.xml")
        << std::regex_replace(cell, torque, " torque-max=\"1 N m\"");
    std::string text = one_weld;
    text.replace(text.find("cells/table.xml"), 15, "weak.xml");
    text.insert(text.find("<line"), "<welded segments=\"2\"/>");
    text.replace(text.find("\"-200 -150"), 5, "\"-100");  // off the axes
    std::ofstream(one.folder / "held.xml") << text;
    const Ran ran = run_seamturn("turns --quiet held.xml", one.folder);
    INFO(ran.err);
    CHECK(ran.exit_code == 1);
    CHECK(says(ran.err, "seam J1/1, J1/2: no stance "));
    CHECK(ran.err.find("turn.seam.no_stance") == ran.err.rfind("turn.seam.no_stance"));
  }

  TEST_CASE("given libraries without a wire, the message asks for the library and no name") {
    const Edited one = edited("tee.xml", "<weldment", "<weldment");
    std::string text = one_weld;
    text.replace(text.find("library/standards"), 17, "library/priorities");
    std::ofstream(one.folder / "none.xml") << text;
    const Ran ran = run_seamturn("check none.xml", one.folder);
    CHECK(ran.exit_code == 1);
    CHECK(
        says(ran.err, "wire \"W12\" is not described anywhere; no library in use holds a wire; "));
    CHECK_FALSE(says(ran.err, "none is"));
  }

  TEST_CASE("for every limit told, law: a share of it is at most all of it, beyond it none") {
    const std::regex share("(\\d+) % of (it|the range)");
    std::size_t shares = 0;
    const std::string bracket = demo_file("bracket.xml");
    for (const char* joint : {"J1", "J2", "J3", "J4"}) {
      const std::string out = printed("explain --quiet " + bracket + " " + joint);
      for (std::sregex_iterator at(out.begin(), out.end(), share), end; at != end; ++at) {
        CHECK(std::stoi((*at)[1].str()) <= 100);
        ++shares;
      }
    }
    CHECK(shares > 10);
  }

  TEST_CASE("given a plate that needs no preheat, the figure says so before the number") {
    const std::string call = "figure preheat method=cet hydrogen=3 heat-input='1.5 kJ/mm' ";
    const std::string cold = printed(call + "cet=0.2 thickness='12 mm'");
    CHECK(says(cold.substr(0, cold.find('\n')), "preheat: none needed, "));
    CHECK(says(cold, "; the formula says -76.82 degC\n"));
    CHECK(printed(call + "cet=0.45 thickness='60 mm'").rfind("preheat = ", 0) == 0);
    const auto json = nlohmann::json::parse(printed(call + "--json cet=0.2 thickness='12 mm'"));
    CHECK(json.at("value").get<double>() < 0.0);
  }

  TEST_CASE("given units us, travel, gas and what welding bends are in what a shop there reads") {
    const std::string hub = demo_file("grab_hub.xml");
    const std::string metric = printed("explain --quiet " + hub + " R1 heat-input");
    const std::string us = printed("explain --units us --quiet " + hub + " R1 heat-input");
    CHECK_FALSE(says(us, " cm/min"));
    CHECK(says(us, " in/min"));
    // 1 in = 2.54 cm, by definition
    CHECK(number_after(us, "travel") * 2.54 ==
          doctest::Approx(number_after(metric, "travel")).epsilon(1e-3));
    CHECK_FALSE(says(printed("explain --units us --quiet " + hub + " R1 passes"), " m/min"));
    // 7850 kg/m3 x 2.20462 lb/kg / 35.3147 ft3/m3
    CHECK(number_after(printed("explain --units us --quiet " + hub + " R1 metal"), "density") ==
          doctest::Approx(490.06).epsilon(1e-3));
    const std::string cost = printed("cost --units us --quiet " + hub);
    CHECK(says(cost, "ft3\n"));
    CHECK(number_after(cost, "shielding gas") ==
          doctest::Approx(35.3147 * number_after(printed("cost --quiet " + hub), "shielding gas"))
              .epsilon(0.01));
    const std::string turns = printed("turns --units us --quiet " + hub);
    REQUIRE(says(turns, "Datum bearing_face: "));
    CHECK_FALSE(says(turns, " mm"));
  }

  TEST_CASE("given arcs priced, their energy is called what is bought, from the mains") {
    const std::string cost = printed("cost --quiet " + demo_file("bracket.xml"));
    CHECK(says(cost, "mains energy of arcs"));
    CHECK_FALSE(says(cost, "energy of the arcs"));
  }

  TEST_CASE("given a window nothing is bound by, no sentence says that it is refused") {
    const std::string out =
        printed("explain --quiet " + demo_file("bracket.xml") + " J1 heat-band");
    REQUIRE(says(out, "shown only"));
    CHECK_FALSE(says(out, "refused"));
    CHECK(says(printed("figure heat-band"), "does not close is refused"));
  }

  TEST_CASE("given an over-weld, the section says that it holds it") {
    const Edited over = edited("tee.xml", "throat=\"6 mm\"", "throat=\"6 mm\" over-weld=\"1.3\"");
    const Ran ran = run_seamturn("explain --quiet " + over.file + " J1 section", over.folder);
    REQUIRE(ran.exit_code == 0);
    REQUIRE(says(ran.out, "over-weld"));
    CHECK(says(ran.out, "no over-weld but what a joint states"));
  }

  TEST_CASE("given a seam or a segment, explain is of its joint, and says which") {
    const std::string bracket = demo_file("bracket.xml");
    const std::string joint = printed("explain --quiet " + bracket + " J5");
    CHECK(joint.rfind("Joint J5, how its numbers came about\n", 0) == 0);
    CHECK(printed("explain --quiet " + bracket + " J5.b") == joint);
    const auto json =
        nlohmann::json::parse(printed("explain --json --quiet " + bracket + " J5.a metal"));
    CHECK(json.at("joint") == "J5");
  }

  TEST_CASE("given an order by hand in a stage the part is hung for, its time says without it") {
    const Edited hung = edited("stages.xml",
                               "  <joint id=\"J1\"",
                               "  <hand-order stage=\"ribs\" seams=\"J5 J6\"/>\n"
                               "  <hand-order stage=\"tee\" seams=\"J1 J2\"/>\n"
                               "  <joint id=\"J1\"");
    const Ran ran = run_seamturn("turns --quiet " + hung.file, hung.folder);
    INFO(ran.err);
    REQUIRE(ran.exit_code == 0);
    CHECK(std::regex_search(
        ran.out, std::regex("stage ribs: J5, J6\\. [0-9:]+ \\(without hanging\\) and ")));
    CHECK(std::regex_search(ran.out, std::regex("stage tee: J1, J2\\. [0-9:]+ and ")));
  }

  TEST_CASE("given a headstock, the part is turned over and no table leans") {
    const std::string file = "'" + (repository() / "tests/good/tee_headstock.xml").string() + "'";
    const std::string out = printed("plan --quiet " + file);
    CHECK(says(out, "The headstock turns the part over"));
    CHECK_FALSE(says(out, "The table leans"));
    CHECK(says(printed("plan --quiet " + demo_file("bracket.xml")), "The table leans"));
  }

  TEST_CASE("for a part hung askew, law: its pose in the listing has six decimals at most") {
    const Edited tee = edited("tee.xml", "turned=\"0 deg\"", "turned=\"45 deg\" pitch=\"-90 deg\"");
    const Ran ran = run_seamturn("write path-listing --quiet " + tee.file + " -o -", tee.folder);
    INFO(ran.err);
    REQUIRE(ran.exit_code == 0);
    const std::string& listing = ran.out;
    const std::regex axis("<[xz]-axis x=\"([^\"]*)\" y=\"([^\"]*)\" z=\"([^\"]*)\"");
    const std::regex written("-?\\d+(\\.\\d{1,6})?");
    std::size_t axes = 0;
    for (std::sregex_iterator at(listing.begin(), listing.end(), axis), end; at != end; ++at) {
      double length = 0.0;
      for (const std::size_t i : {1, 2, 3}) {
        INFO((*at)[0].str());
        CHECK(std::regex_match((*at)[i].str(), written));
        length += std::pow(std::stod((*at)[i].str()), 2);
      }
      CHECK(length == doctest::Approx(1.0).epsilon(1e-5));
      ++axes;
    }
    CHECK(axes == 2);
  }

  TEST_CASE("given a face no weld bends, it stays flat") {
    const Edited part =
        edited("stages.xml",
               "<datum id=\"spot\"",
               "<datum id=\"edge\" kind=\"face\" member=\"base\" at=\"0 150 12.5 mm\""
               " axis=\"-1 0 0\" along=\"0 1 0\" size=\"300 x 25 mm\"/>\n"
               "  <datum id=\"spot\"");
    const Ran ran = run_seamturn("turns --quiet " + part.file, part.folder);
    INFO(ran.err);
    REQUIRE(ran.exit_code == 0);
    CHECK_FALSE(says(ran.out, "bows 0.00 to 0.00 mm ("));
    CHECK(says(ran.out, "stays flat within 0.01 mm"));
  }
}

}  // namespace seamturn::tests
