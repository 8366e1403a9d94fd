// SPDX-License-Identifier: MIT
// One mistake at a time in a good weldment, library or cell: one finding, in the file and at the
// place of the mistake.
#include <doctest/doctest.h>

#include <algorithm>

#include "io/mistakes.hpp"
#include "io/temporary_folder.hpp"
#include "process.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::tests {

namespace {

const char* const weldment = "tee.xml";
const char* const library = "library/standards.xml";
const char* const cell = "cells/table.xml";

/// "line:column" of an offset, counted here and not by the code under test; the files are ASCII.
std::string place_of(const std::string& text, std::size_t offset) {
  const auto from = text.begin();
  const auto at = from + static_cast<std::ptrdiff_t>(offset);
  const auto line = std::count(from, at, '\n') + 1;
  const std::size_t start = offset == 0 ? std::string::npos : text.rfind('\n', offset - 1);
  const std::size_t column = start == std::string::npos ? offset + 1 : offset - start;
  return std::to_string(line) + ":" + std::to_string(column);
}

void copy_good_files(const std::filesystem::path& folder) {
  for (const char* file : {weldment, library, cell}) {
    put(folder / file, text_of(repository() / "tests/good" / file));
  }
}

std::vector<base::Finding> findings_in(const std::filesystem::path& folder) {
  try {
    return io::read_inputs(folder / weldment).findings;
  } catch (const base::InputError& error) {
    return error.findings();
  }
}

void check_mistake(const Mistake& mistake, const char* file) {
  CAPTURE(std::string(mistake.to));
  const TemporaryFolder folder;
  copy_good_files(folder.path());
  std::string text = got(folder.path() / file);
  const std::size_t where = text.find(mistake.from);
  REQUIRE(where != std::string::npos);
  text.replace(where, std::string(mistake.from).size(), mistake.to);
  put(folder.path() / file, text);

  std::string codes;
  const std::vector<base::Finding> findings = findings_in(folder.path());
  for (const base::Finding& finding : findings) {
    CAPTURE(base::finding_text(finding));
    CHECK(finding.text.find("expected") != std::string::npos);
    CHECK(finding.place.file == (folder.path() / file).string());
  }
  for (const base::Finding& finding : findings) {
    codes += (codes.empty() ? "" : " ") + finding.code;
  }
  CHECK(base::has_errors(findings));
  CHECK(codes == mistake.code);
  if (mistake.at == nullptr) return;
  REQUIRE(text.find(mistake.at) != std::string::npos);
  REQUIRE(!findings.empty());
  const base::Place& place = findings.front().place;
  CHECK(std::to_string(place.line) + ":" + std::to_string(place.column) ==
        place_of(text, text.find(mistake.at)));
}

}  // namespace

TEST_SUITE("io/mistakes") {
  TEST_CASE("for any single mistake in a weldment, law: one finding at its place") {
    for (const Mistake& mistake : weldment_mistakes) check_mistake(mistake, weldment);
  }

  TEST_CASE("for any single mistake in a library, law: one finding at its place in the library") {
    for (const Mistake& mistake : library_mistakes) check_mistake(mistake, library);
  }

  TEST_CASE("for any single mistake in a cell, law: one finding at its place in the cell") {
    for (const Mistake& mistake : cell_mistakes) check_mistake(mistake, cell);
  }

  TEST_CASE("given a kind of positioner nobody knows, its axes are not asked for") {
    const TemporaryFolder folder;
    copy_good_files(folder.path());
    std::string text = got(folder.path() / cell);
    const std::string kind = "kind=\"tilt-rotate\"";
    text.replace(text.find(kind), kind.size(), "kind=\"gantry\"");
    text.replace(text.find("name=\"tilt\""), 11, "name=\"lift\"");
    put(folder.path() / cell, text);
    const std::vector<base::Finding> told = findings_in(folder.path());
    REQUIRE(told.size() == 1);
    CHECK(told[0].code == "read.word.unknown");
    CHECK(told[0].text.find("headstock") != std::string::npos);
  }

  TEST_CASE("given mistakes in all three files, all are told at once, file by file") {
    const TemporaryFolder folder;
    copy_good_files(folder.path());
    const auto replace = [&](const char* file, const std::string& from, const std::string& to) {
      std::string text = got(folder.path() / file);
      text.replace(text.find(from), from.size(), to);
      put(folder.path() / file, text);
    };
    replace(weldment, "throat=\"6 mm\"", "throat=\"6\"");
    replace(library, "efficiency=\"0.95\"", "efficiency=\"1.05\"");
    replace(cell, "load-max=\"2000 kg\"", "load-max=\"2000\"");
    std::string text;
    for (const base::Finding& finding : findings_in(folder.path())) {
      text +=
          std::filesystem::path(finding.place.file).filename().string() + " " + finding.code + ", ";
    }
    CHECK(text ==
          "tee.xml read.unit.missing, standards.xml read.value.out_of_range, "
          "table.xml read.unit.missing, ");
  }

  TEST_CASE("given a mistyped name, the finding suggests the nearest that is known") {
    const TemporaryFolder folder;
    copy_good_files(folder.path());
    std::string text = got(folder.path() / weldment);
    text.replace(text.find("members=\"base web\""), 18, "members=\"base wep\"");
    text.replace(text.find("throat"), 6, "throta");
    put(folder.path() / weldment, text);
    std::string told;
    for (const base::Finding& finding : findings_in(folder.path())) told += finding.text + "\n";
    CHECK(told.find("did you mean \"web\"?") != std::string::npos);
    CHECK(told.find("did you mean \"throat\"?") != std::string::npos);
  }

  TEST_CASE("refuses a value of 1 MB quickly because no value of ours is so long") {
    const TemporaryFolder folder;
    copy_good_files(folder.path());
    std::string text = got(folder.path() / weldment);
    text.replace(text.find("Test tee"), 8, std::string(std::size_t{1} << 20U, '7'));
    put(folder.path() / weldment, text);
    const auto findings = findings_in(folder.path());
    REQUIRE(findings.size() == 1);
    CHECK(findings.front().code == "read.attribute.too_long");
    CHECK(findings.front().excerpt.size() < 400);
  }

  TEST_CASE("for any damage to the three files, law: findings or a reading, never anything else") {
    base::Random random(base::named_seed(20261125, "io/mistakes damage"));
    const TemporaryFolder folder;
    const std::string pieces = "<>&\"'/!-?=; a0x.\n\xC3";
    int refused = 0;
    for (int round = 0; round < 600; ++round) {
      copy_good_files(folder.path());
      const char* files[] = {weldment, weldment, library, cell};
      const char* file = files[random.below(4)];
      std::string text = got(folder.path() / file);
      const std::size_t changes = 1 + random.below(3);
      for (std::size_t i = 0; i < changes; ++i) {
        const std::size_t place = random.below(text.size());
        switch (random.below(4)) {
          case 0:
            text[place] = pieces[random.below(pieces.size())];
            break;
          case 1:
            text.erase(place, 1 + random.below(30));
            break;
          case 2:
            text.insert(place, text.substr(random.below(text.size()), random.below(60)));
            break;
          default:
            text[place] = static_cast<char>('0' + random.below(10));
        }
      }
      put(folder.path() / file, text);
      CAPTURE(text);
      const auto findings = findings_in(folder.path());  // anything else thrown fails the test
      if (base::has_errors(findings)) ++refused;
    }
    CHECK(refused > 300);
    CHECK(refused < 600);
  }
}

}  // namespace seamturn::tests
