// SPDX-License-Identifier: MIT
// The programs shown in the documents are those that are built outside the tree.
#include <doctest/doctest.h>

#include "scratch.hpp"

namespace seamturn {

namespace {

void check_shown(const std::string& page_name, const std::string& source_name) {
  const std::filesystem::path root = SEAMTURN_SOURCE_DIR;
  const std::string page = tests::file_bytes(root / "docs" / page_name);
  const std::string fence = "```cpp\n";
  const std::size_t start = page.find(fence);
  REQUIRE(start != std::string::npos);
  const std::size_t first = start + fence.size();
  const std::string shown = page.substr(first, page.find("```", first) - first);
  const std::string built = tests::file_bytes(root / "tests" / "consumer" / source_name);
  const std::size_t code = built.find("#include");
  REQUIRE(code != std::string::npos);
  CHECK(shown == built.substr(code));
}

}  // namespace

TEST_SUITE("plugins/docs") {
  TEST_CASE("given the smallest plugin in the document, it is the one of tests/consumer") {
    check_shown("plugins.md", "joint_list.cpp");
  }

  TEST_CASE("given the smallest program in the document, it is the one of tests/consumer") {
    check_shown("cpp.md", "plan_it.cpp");
  }
}

}  // namespace seamturn
