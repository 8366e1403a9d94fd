// SPDX-License-Identifier: MIT
// One good file in other dresses: line ends, newer schema, stated faces.
#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>

#include "io/temporary_folder.hpp"
#include "oracle.hpp"
#include "process.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::tests {

namespace {

using geom::Vec3;

void check_point(const char* what, const Vec3& got_point, const Vec3& expected) {
  CAPTURE(what);
  CAPTURE(got_point.transpose());
  CHECK((got_point - expected).norm() < 1e-9);
}

void check_number(const char* what, double got_value, double expected) {
  check_expected(what, got_value, {expected, 1e-9, Origin::closed_form, "definition of the unit"});
}

/// Reads the good tee with one text replaced and its bytes changed; returns what is found.
struct Variant {
  planner::Inputs inputs;
  std::vector<base::Finding> findings;
};
Variant variant(std::string text) {
  const TemporaryFolder folder;
  for (const char* file : {"library/standards.xml", "cells/table.xml"}) {
    put(folder.path() / file, text_of(repository() / "tests/good" / file));
  }
  put(folder.path() / "tee.xml", text);
  Variant read;
  try {
    read.inputs = io::read_inputs(folder.path() / "tee.xml");
    read.findings = read.inputs.findings;
  } catch (const base::InputError& error) {
    read.findings = error.findings();
  }
  return read;
}

std::string good_tee() {
  return text_of(repository() / "tests/good/tee.xml");
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  std::size_t at = 0;
  while ((at = text.find(from, at)) != std::string::npos) {
    text.replace(at, from.size(), to);
    at += to.size();
  }
  return text;
}

}  // namespace

TEST_SUITE("io/read_variants") {
  TEST_CASE("given Windows line ends, a byte order mark and tabs, the reading is the same") {
    const std::string mark = "\xEF\xBB\xBF";
    const Variant windows = variant(mark + replaced(good_tee(), "\n", "\r\n"));
    CHECK(windows.findings.empty());
    CHECK(windows.inputs.weldment.joints.size() == 2);
    const std::string broken =
        replaced(good_tee(), "<fillet throat=\"6 mm\"/>", "<fillet throat=\"6\"/>");
    // A tab is one column, as every other character.
    const Variant plain = variant(replaced(broken, "    <fillet", "\t<fillet"));
    const Variant dressed =
        variant(mark + replaced(replaced(broken, "    <fillet", "\t<fillet"), "\n", "\r\n"));
    REQUIRE(plain.findings.size() == 2);
    REQUIRE(dressed.findings.size() == 2);
    CHECK(plain.findings[0].place.line == 11);
    CHECK(plain.findings[0].place.column == 18);
    CHECK(dressed.findings[0].place.line == 11);
    CHECK(dressed.findings[0].place.column == 18);
    CHECK(dressed.findings[0].excerpt == "\t<fillet throat=\"6\"/>");
  }

  TEST_CASE("given a newer minor schema, what is unknown is a warning and the rest is read") {
    std::string text = replaced(good_tee(), "schema=\"1.0\"", "schema=\"1.7\" colour=\"red\"");
    text = replaced(text, "<batch", "<jig id=\"x\"/><batch");
    const Variant newer = variant(text);
    REQUIRE(newer.findings.size() == 3);
    CHECK_FALSE(base::has_errors(newer.findings));
    CHECK(newer.findings[0].code == "read.schema.newer_minor");
    CHECK(newer.findings[1].code == "read.attribute.unknown");
    CHECK(newer.findings[2].code == "read.element.unknown");
    CHECK(newer.inputs.weldment.joints.size() == 2);
    // A wrong value stays an error.
    CHECK(base::has_errors(variant(replaced(text, "6 mm", "6")).findings));
  }

  TEST_CASE("given a stated face where the members show none, the walls lie evenly beside it") {
    const std::string line = "<line from=\"10 157.5 25 mm\" to=\"390 157.5 25 mm\"/>";
    // Off the members stays off, whatever face= says.
    const Variant off = variant(replaced(
        good_tee(), line, "<line from=\"10 150 35 mm\" to=\"390 150 35 mm\" face=\"0 1 1\"/>"));
    REQUIRE(off.findings.size() == 1);
    CHECK(off.findings[0].code == "joint.seam.not_on_member");
    // Under the middle of the web no corner is open: face= decides.
    const Variant hidden = variant(replaced(
        good_tee(), line, "<line from=\"10 150 25 mm\" to=\"390 150 25 mm\" face=\"0 1 1\"/>"));
    REQUIRE(hidden.findings.empty());
    const joint::Seam& first = hidden.inputs.weldment.joints[0].seams[0];
    check_point("face", first.face, Vec3(0, std::sqrt(0.5), std::sqrt(0.5)));
    check_point("the base is the first member", first.wall_1, Vec3(0, 0, 1));
    check_point("the web is the second", first.wall_2, Vec3(0, 1, 0));
    std::string text = replaced(
        good_tee(), "to=\"390 157.5 25 mm\"/>", "to=\"390 157.5 25 mm\" face=\"0 1 0.8\"/>");
    const Variant near = variant(text);  // within 30 deg of what the members show: those govern
    REQUIRE(near.findings.empty());
    check_point("face",
                near.inputs.weldment.joints[0].seams[0].face,
                Vec3(0, std::sqrt(0.5), std::sqrt(0.5)));
    text =
        replaced(good_tee(), "to=\"390 157.5 25 mm\"/>", "to=\"390 157.5 25 mm\" face=\"0 0 1\"/>");
    const Variant stated = variant(text);
    REQUIRE(stated.findings.empty());
    const joint::Seam& seam = stated.inputs.weldment.joints[0].seams[0];
    check_point("face", seam.face, Vec3(0, 0, 1));
    check_point("walls", (seam.wall_1 + seam.wall_2).normalized(), Vec3(0, 0, 1));
    check_number("between", geom::angle_between(seam.wall_1, seam.wall_2).deg(), 90.0);
  }

  TEST_CASE("given steel beyond its bands but with an analysis, it is a warning") {
    std::string text =
        replaced(good_tee(),
                 "thickness=\"25 mm\" size=\"400 x 300 mm\" at=\"0 0 0 mm\"/>",
                 "thickness=\"41 mm\" size=\"400 x 300 mm\" at=\"0 0 -16 mm\"><analysis "
                 "c=\"0.15\" mn=\"1.4\"/></plate>");
    const Variant thick = variant(text);
    REQUIRE(thick.findings.size() == 1);
    CHECK(thick.findings[0].code == "read.steel.thickness");
    CHECK(thick.findings[0].severity == base::Severity::warning);
  }

  TEST_CASE("for any file in tests/good, law: xmllint finds it valid by its schema") {
    for (const std::filesystem::path& file : files_below("tests/good", {".xml"})) {
      CAPTURE(file.string());
      const std::string kind = file.parent_path().filename() == "library" ? "library"
                               : file.parent_path().filename() == "cells" ? "cell"
                                                                          : "weldment";
      const std::string command = "xmllint --noout --nonet --schema '" +
                                  (repository() / "docs/schemas" / (kind + ".xsd")).string() +
                                  "' '" + (repository() / file).string() + "' 2>/dev/null";
      CHECK(std::system(command.c_str()) == 0);
    }
  }

  TEST_CASE("given the demo shop, its heating row is read in the units of the core") {
    // law: 36 kW are 36000 W, 60 % are 0.6, 900 s stay 900 s.
    const auto heating = io::read_inputs(repository() / "joints/bracket.xml").library.heating;
    REQUIRE(heating.has_value());
    CHECK(heating->id == "mats");
    CHECK(heating->power_w == 36000.0);
    CHECK(heating->useful_ratio == doctest::Approx(0.6));
    CHECK(heating->entry_s == 900.0);
    CHECK(heating->holds);
    CHECK(heating->status == base::Status::proposed);
  }
}

}  // namespace seamturn::tests
