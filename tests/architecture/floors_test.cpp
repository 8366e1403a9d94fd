// SPDX-License-Identifier: MIT
// Walks every #include of core/ and holds it against core/floors.txt.
#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace seamturn::tests {

namespace {

namespace fs = std::filesystem;

struct RoomPlace {
  int floor = 0;
  int chain = 0;  // rooms of one floor that are joined by '>'
  int rank = 0;   // place in that chain
};

struct Fence {
  std::string include;
  std::vector<std::string> folders;
};

struct Rules {
  std::map<std::string, RoomPlace> rooms;
  std::vector<Fence> fences;
};

void read_floor(std::istringstream& words, int floor, Rules& rules) {
  int chain = 0;
  int rank = 0;
  bool joined = false;
  for (std::string word; words >> word;) {
    if (word == ">") {
      joined = true;
      continue;
    }
    if (joined) {
      ++rank;
    } else {
      ++chain;
      rank = 0;
    }
    joined = false;
    rules.rooms[word] = RoomPlace{floor, chain, rank};
  }
}

Rules read_rules(const fs::path& file) {
  Rules rules;
  std::ifstream in(file);
  for (std::string line; std::getline(in, line);) {
    std::istringstream words(line);
    std::string first;
    if (!(words >> first) || first[0] == '#') continue;
    if (first == "fence") {
      Fence fence;
      words >> fence.include;
      for (std::string folder; words >> folder;) fence.folders.push_back(folder);
      rules.fences.push_back(fence);
    } else {
      read_floor(words, std::stoi(first), rules);
    }
  }
  return rules;
}

/// The room a file belongs to: the folder behind include/seamturn, src, or the cli folder.
std::string room_of(const std::string& relative) {
  for (const std::string prefix : {"core/include/seamturn/", "core/src/"}) {
    if (relative.rfind(prefix, 0) == 0) {
      const std::string rest = relative.substr(prefix.size());
      return rest.substr(0, rest.find('/'));
    }
  }
  return relative.rfind("core/cli/", 0) == 0 ? "cli" : "";
}

bool may_include(const Rules& rules, const std::string& from, const std::string& to) {
  if (from == to) return true;
  const auto a = rules.rooms.find(from);
  const auto b = rules.rooms.find(to);
  if (a == rules.rooms.end() || b == rules.rooms.end()) return false;
  if (b->second.floor != a->second.floor) return b->second.floor < a->second.floor;
  return a->second.chain == b->second.chain && b->second.rank < a->second.rank;
}

struct Include {
  std::string file;
  int line = 0;
  std::string target;
};

std::vector<Include> includes_of(const fs::path& root) {
  std::vector<Include> all;
  for (const std::string top : {"core", "plugins"}) {
    for (const auto& entry : fs::recursive_directory_iterator(root / top)) {
      const std::string extension = entry.path().extension().string();
      if (extension != ".hpp" && extension != ".cpp" && extension != ".h") continue;
      std::ifstream in(entry.path());
      int number = 0;
      for (std::string line; std::getline(in, line);) {
        ++number;
        const std::size_t mark = line.find("#include");
        if (mark == std::string::npos) continue;
        const std::size_t start = line.find_first_of("<\"", mark);
        const std::size_t end = line.find_first_of(">\"", start + 1);
        if (start == std::string::npos || end == std::string::npos) continue;
        all.push_back(Include{fs::relative(entry.path(), root).generic_string(),
                              number,
                              line.substr(start + 1, end - start - 1)});
      }
    }
  }
  return all;
}

std::vector<std::string> broken_rules(const Rules& rules, const std::vector<Include>& includes) {
  std::vector<std::string> broken;
  for (const Include& include : includes) {
    const std::string where = include.file + ":" + std::to_string(include.line) + " ";
    const std::string from = room_of(include.file);
    const std::string prefix = "seamturn/";
    if (!from.empty() && include.target.rfind(prefix, 0) == 0) {
      const std::string rest = include.target.substr(prefix.size());
      const std::string to = rest.substr(0, rest.find('/'));
      if (!may_include(rules, from, to)) broken.push_back(where + from + " -> " + to);
    }
    for (const Fence& fence : rules.fences) {
      if (include.target.find(fence.include) == std::string::npos) continue;
      bool inside = false;
      for (const std::string& folder : fence.folders) {
        inside = inside || include.file.rfind(folder, 0) == 0;
      }
      if (!inside) broken.push_back(where + "fenced " + include.target);
    }
  }
  return broken;
}

}  // namespace

TEST_SUITE("architecture/floors") {
  TEST_CASE(
      "for every include, law: only lower floors or left in the chain, libraries inside "
      "their fence") {
    const fs::path root = SEAMTURN_SOURCE_DIR;
    const Rules rules = read_rules(root / "core/floors.txt");
    REQUIRE(rules.rooms.size() > 20);
    const std::vector<Include> includes = includes_of(root);
    REQUIRE(includes.size() > 100);
    for (const std::string& text : broken_rules(rules, includes)) FAIL_CHECK(text);
  }

  TEST_CASE("for every room of core, law: it stands on a floor and its folder exists") {
    const fs::path root = SEAMTURN_SOURCE_DIR;
    const Rules rules = read_rules(root / "core/floors.txt");
    for (const auto& entry : fs::directory_iterator(root / "core/include/seamturn")) {
      INFO(entry.path().string());
      CHECK(rules.rooms.count(entry.path().filename().string()) == 1);
    }
    for (const auto& [room, place] : rules.rooms) {
      INFO(room);
      CHECK((room == "cli" || fs::exists(root / "core/include/seamturn" / room)));
    }
  }

  TEST_CASE(
      "refuses an arrow upward, sideways or over a fence because the walk must be able to "
      "fail") {
    const Rules rules = read_rules(fs::path(SEAMTURN_SOURCE_DIR) / "core/floors.txt");
    const std::vector<Include> bad = {
        {"core/src/heat/x.cpp", 1, "seamturn/cost/estimate.hpp"},
        {"core/src/cell/x.cpp", 2, "seamturn/joint/joint.hpp"},
        {"core/src/section/x.cpp", 3, "seamturn/joint/joint.hpp"},
        {"core/src/joint/x.cpp", 4, "seamturn/section/weld_section.hpp"},
        {"core/src/plan/x.cpp", 5, "pugixml.hpp"}};
    const std::vector<std::string> broken = broken_rules(rules, bad);
    CHECK(broken == std::vector<std::string>{"core/src/heat/x.cpp:1 heat -> cost",
                                             "core/src/cell/x.cpp:2 cell -> joint",
                                             "core/src/joint/x.cpp:4 joint -> section",
                                             "core/src/plan/x.cpp:5 fenced pugixml.hpp"});
  }
}

}  // namespace seamturn::tests
