// SPDX-License-Identifier: MIT
// Rules of the house that a reviewer should not have to look for.
#include <doctest/doctest.h>

#include <regex>
#include <set>

#include "repository.hpp"

namespace seamturn::tests {

namespace {

std::vector<std::filesystem::path> all_sources() {
  std::vector<std::filesystem::path> files;
  for (const std::string folder : {"core", "plugins", "tests"}) {
    for (const auto& file : files_below(folder, {".cpp", ".hpp", ".h", ".c"})) {
      files.push_back(file);
    }
  }
  return files;
}

/// Every match of a pattern's first group in all sources below core and plugins.
std::set<std::string> quoted_in_sources(const std::regex& pattern) {
  std::set<std::string> found;
  for (const std::string folder : {"core", "plugins"}) {
    for (const auto& file : files_below(folder, {".cpp", ".hpp", ".h"})) {
      const std::string text = text_of(repository() / file);
      for (std::sregex_iterator it(text.begin(), text.end(), pattern), end; it != end; ++it) {
        found.insert((*it)[1]);
      }
    }
  }
  return found;
}

/// First column of a Markdown table, backquotes taken off.
std::set<std::string> first_column(const std::filesystem::path& file) {
  std::set<std::string> found;
  for (const std::string& line : lines_of(file)) {
    if (line.rfind("| ", 0) != 0) continue;
    std::string cell = line.substr(2, line.find(" |", 2) - 2);
    cell.erase(std::remove(cell.begin(), cell.end(), '`'), cell.end());
    found.insert(cell);
  }
  return found;
}

}  // namespace

TEST_SUITE("architecture/house") {
  TEST_CASE("for every source, law: licence line first, at most 420 lines") {
    for (const auto& file : all_sources()) {
      INFO(file.string());
      const std::vector<std::string> lines = lines_of(repository() / file);
      REQUIRE_FALSE(lines.empty());
      CHECK(lines.front().find("SPDX-License-Identifier: MIT") != std::string::npos);
      CHECK(lines.size() <= 420);
    }
  }

  TEST_CASE("for every test file, law: its cases stand in a suite of its room, which CTest runs") {
    for (const auto& file : files_below("tests", {".cpp"})) {
      const std::string text = text_of(repository() / file);
      const std::size_t first = text.find("TEST_CASE(");
      if (first == std::string::npos) continue;
      INFO(file.string());
      const std::string room = file.parent_path().filename().string();
      CHECK(text.find("TEST_SUITE(\"" + room + "/") < first);
      CHECK(file.filename().string().ends_with("_test.cpp"));
    }
  }

  TEST_CASE("for every test case, law: a name CTest can run") {
    const std::regex name("TEST_CASE\\(\\s*((?:\"[^\"]*\"\\s*)+)\\)");
    std::size_t seen = 0;
    for (const auto& file : files_below("tests", {".cpp"})) {
      const std::string text = text_of(repository() / file);
      for (std::sregex_iterator it(text.begin(), text.end(), name), end; it != end; ++it) {
        ++seen;
        const std::string written = (*it)[1];
        INFO(file.string(), " ", written);
        CHECK(written.find(';') == std::string::npos);
        CHECK(written.find('\\') == std::string::npos);
      }
    }
    CHECK(seen > 50);
  }

  TEST_CASE(
      "for every finding code in the sources, law: docs/findings.md lists it, and none else") {
    const std::set<std::string> listed = first_column(repository() / "docs/findings.md");
    const std::set<std::string> used = quoted_in_sources(std::regex(
        "\"((?:read|heat|material|section|joint|pass|position|turn|cooling|fitup|tack|order|plan|"
        "plugin|figure|explain|cost|process|shrinkage|stage|setup|cell)\\.[a-z0-9_]+(?:\\.[a-z0-9_]"
        "+)*)\""));
    REQUIRE(used.size() > 30);
    for (const std::string& code : used) {
      if (code == "plan.xml") continue;  // the file, not a code
      INFO(code);
      CHECK(listed.count(code) == 1);
    }
    for (const std::string& code : listed) {
      if (code == "code" || code.find('.') == std::string::npos) continue;
      INFO(code);
      CHECK(used.count(code) == 1);
    }
  }

  TEST_CASE("for every source key cited in a doc comment, law: docs/sources.md holds it") {
    const std::string sources = text_of(repository() / "docs/sources.md");
    REQUIRE(sources.size() > 1000);
    const std::regex cited("/// Source:[^\\[\\n]*\\[([^\\]]+)\\]");
    for (const std::string& key : quoted_in_sources(cited)) {
      INFO(key);
      CHECK(sources.find(key) != std::string::npos);
    }
  }

  TEST_CASE("for every public header of a computing room, law: sources and tests are named") {
    for (const std::string room : {"material",
                                   "process",
                                   "section",
                                   "heat",
                                   "pass",
                                   "cooling",
                                   "tack",
                                   "position",
                                   "turn",
                                   "shrinkage",
                                   "cost"}) {
      for (const auto& file : files_below("core/include/seamturn/" + room, {".hpp"})) {
        const std::string text = text_of(repository() / file);
        if (text.find("[[nodiscard]] base::Outcome") == std::string::npos) continue;
        INFO(file.string());
        CHECK(text.find("Source:") != std::string::npos);
        CHECK(text.find("Tests:") != std::string::npos);
      }
    }
  }
}

}  // namespace seamturn::tests
