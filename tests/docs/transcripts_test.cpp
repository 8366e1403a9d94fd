// SPDX-License-Identifier: MIT
// Replays every command shown in the documents and compares what it prints, line by line.
//
// A block starts with ```console; a line "$ seamturn ..." is run in a scratch folder that holds the
// repository's joints/; the lines after it are what must be printed. A line "..." stands for any
// number of lines left out.
#include <doctest/doctest.h>

#include <cstdio>
#include <cstdlib>
#include <sstream>

#include "build_folder.hpp"
#include "repository.hpp"

namespace seamturn::tests {

namespace {

namespace fs = std::filesystem;

struct Transcript {
  std::string document;
  int line = 0;
  std::string command;
  std::vector<std::string> expected;
};

std::vector<Transcript> transcripts_of(const fs::path& document) {
  std::vector<Transcript> all;
  bool inside = false;
  int number = 0;
  for (const std::string& line : lines_of(repository() / document)) {
    ++number;
    if (line.rfind("```", 0) == 0) {
      inside = !inside && line == "```console";
    } else if (inside && line.rfind("$ ", 0) == 0) {
      all.push_back(Transcript{document.string(), number, line.substr(2), {}});
    } else if (inside && !all.empty()) {
      all.back().expected.push_back(line);
    }
  }
  return all;
}

/// A folder with the demo data and nothing else, so that documents land nowhere else.
fs::path scratch_folder() {
  const fs::path folder = build_folder() / "transcripts";
  fs::remove_all(folder);
  fs::create_directories(folder);
  fs::create_directory_symlink(repository() / "joints", folder / "joints");
  return folder;
}

std::vector<std::string> output_of(const std::string& command, const fs::path& folder) {
  const std::string line = "cd '" + folder.string() + "' && PATH='" + build_folder().string() +
                           "/bin':\"$PATH\" " + command + " 2>&1";
  std::vector<std::string> lines;
  std::string text;
  FILE* pipe = popen(line.c_str(), "r");
  REQUIRE(pipe != nullptr);
  char buffer[4096];
  while (std::fgets(buffer, sizeof buffer, pipe) != nullptr) text += buffer;
  pclose(pipe);
  std::istringstream in(text);
  for (std::string one; std::getline(in, one);) lines.push_back(one);
  return lines;
}

bool matches(const std::vector<std::string>& shown,
             std::size_t i,
             const std::vector<std::string>& got,
             std::size_t j) {
  for (; i < shown.size(); ++i, ++j) {
    if (shown[i] == "...") {
      for (std::size_t k = j; k <= got.size(); ++k) {
        if (matches(shown, i + 1, got, k)) return true;
      }
      return false;
    }
    if (j >= got.size() || shown[i] != got[j]) return false;
  }
  return j == got.size();
}

std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + '\n';
  return text;
}

}  // namespace

TEST_SUITE("docs/transcripts") {
  TEST_CASE("for every command shown in the documents, law: it prints what the document shows") {
    std::vector<Transcript> all = transcripts_of("README.md");
    for (const fs::path& document : files_below("docs", {".md"})) {
      const std::vector<Transcript> more = transcripts_of(document);
      all.insert(all.end(), more.begin(), more.end());
    }
    REQUIRE(all.size() >= 4);
    const fs::path folder = scratch_folder();
    for (const Transcript& transcript : all) {
      const std::vector<std::string> got = output_of(transcript.command, folder);
      INFO(transcript.document, ":", transcript.line, " $ ", transcript.command, "\n", joined(got));
      CHECK(matches(transcript.expected, 0, got, 0));
    }
  }

  TEST_CASE("refuses a changed line because the comparison must be able to fail") {
    CHECK(matches({"a", "...", "c"}, 0, {"a", "b", "b", "c"}, 0));
    CHECK_FALSE(matches({"a", "...", "c"}, 0, {"a", "b", "d"}, 0));
    CHECK_FALSE(matches({"a"}, 0, {"a", "b"}, 0));
  }
}

}  // namespace seamturn::tests
