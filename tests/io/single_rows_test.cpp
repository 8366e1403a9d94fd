// SPDX-License-Identifier: MIT
// Rows that all libraries together may hold once.
#include <doctest/doctest.h>

#include <string>

#include "repository.hpp"
#include "scratch.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::tests {

namespace {

struct SingleRow {
  const char* code;
  const char* row;
};

constexpr SingleRow single_rows[] = {
    {"read.gouging.repeated",
     "<gouging id=\"g\" method=\"by hand\" speed=\"30 cm/min\" entry=\"1 min\" source=\"made up\" "
     "status=\"proposed\"/>"},
    {"read.heating.repeated",
     "<heating id=\"h\" method=\"mats\" power=\"9 kW\" useful=\"50 %\" entry=\"1 min\" "
     "source=\"made up\" status=\"proposed\"/>"},
    {"read.priorities.repeated",
     "<priorities entry=\"1 min\" stance=\"2 s\" source=\"made up\" status=\"proposed\"/>"},
    {"read.layer_stops.repeated",
     "<layer-stops stagger=\"20 mm\" source=\"made up\" status=\"proposed\"/>"},
    {"read.long_seams.repeated",
     "<long-seams over=\"1 m\" segments=\"2\" arcs=\"4\" overlap=\"5 mm\" source=\"made up\" "
     "status=\"proposed\"/>"},
    {"read.tacks.repeated",
     "<tacks pitch=\"200 mm\" clear-of-ends=\"20 mm\" gap-max=\"1 mm\" source=\"made up\" "
     "status=\"proposed\"/>"},
    {"read.rates.repeated",
     "<rates currency=\"EUR\" labour=\"40 /h\" cell=\"60 /h\" energy=\"0.2 /kWh\" "
     "power-source-efficiency=\"80 %\" gas-loss=\"1.1\" gas-pre-post-flow=\"1 s\" "
     "setup-per-batch=\"1 h\" time-band=\"10 %\" consumption-band=\"5 %\" source=\"made up\"/>"}};

/// The library of tests/good has rates already, and none of the others.
bool is_held(const SingleRow& row) {
  return std::string(row.code) == "read.rates.repeated";
}

/// Codes found in a weldment with a library of these rows beside that of tests/good.
std::string codes_with(const std::string& rows) {
  const auto folder = scratch_folder("single_rows");
  std::filesystem::copy(
      repository() / "tests/good",
      folder,
      std::filesystem::copy_options::recursive | std::filesystem::copy_options::overwrite_existing);
  std::string weldment = text_of(folder / "tee.xml");
  weldment.insert(weldment.find("<use cell="), "<use library=\"rows.xml\"/>");
  write_bytes(folder / "tee.xml", weldment);
  write_bytes(folder / "rows.xml",
              "<library xmlns=\"urn:seamturn:library:1\" schema=\"1.0\" title=\"rows\">" + rows +
                  "</library>");
  std::string codes;
  try {
    for (const base::Finding& finding : io::read_inputs(folder / "tee.xml").findings) {
      codes += finding.code + ' ';
    }
  } catch (const base::InputError& error) {
    for (const base::Finding& finding : error.findings()) {
      if (finding.severity == base::Severity::error) codes += finding.code + ' ';
    }
  }
  return codes;
}

}  // namespace

TEST_SUITE("io/single_rows") {
  TEST_CASE("refuses a second row of a kind that all libraries together may hold once") {
    for (const SingleRow& row : single_rows) {
      INFO(std::string(row.code));
      const std::string twice = is_held(row) ? row.row : std::string(row.row) + row.row;
      CHECK(codes_with(twice) == std::string(row.code) + ' ');
    }
  }

  TEST_CASE("given one row of each kind, nothing is found") {
    std::string all;
    for (const SingleRow& row : single_rows) {
      if (!is_held(row)) all += row.row;
    }
    CHECK(codes_with(all) == "");
  }
}

}  // namespace seamturn::tests
