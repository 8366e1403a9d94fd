// SPDX-License-Identifier: MIT
// The plugin shown in docs/plugins.md is the one that is built outside the tree.
#include <doctest/doctest.h>

#include "scratch.hpp"

namespace seamturn {

TEST_SUITE("plugins/docs") {
  TEST_CASE("given the smallest plugin in the document, it is the one of tests/consumer") {
    const std::filesystem::path root = SEAMTURN_SOURCE_DIR;
    const std::string page = tests::file_bytes(root / "docs" / "plugins.md");
    const std::string fence = "```cpp\n";
    const std::size_t start = page.find(fence);
    REQUIRE(start != std::string::npos);
    const std::size_t first = start + fence.size();
    const std::string shown = page.substr(first, page.find("```", first) - first);
    const std::string built = tests::file_bytes(root / "tests" / "consumer" / "joint_list.cpp");
    const std::size_t code = built.find("#include");
    REQUIRE(code != std::string::npos);
    CHECK(shown == built.substr(code));
  }
}

}  // namespace seamturn
