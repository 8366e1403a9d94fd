// SPDX-License-Identifier: MIT
#include "seamturn/base/listed.hpp"

#include <doctest/doctest.h>

#include <vector>

namespace seamturn::tests {

TEST_SUITE("base/listed") {
  TEST_CASE("given words, they stand one after another, empty ones too") {
    CHECK(base::listed({}).empty());
    const std::vector<std::string> one = {"R1"};
    CHECK(base::listed(one) == "R1");
    const std::vector<std::string> three = {"R1", "", "R3"};
    CHECK(base::listed(three) == "R1, , R3");
    CHECK(base::listed(three, "/") == "R1//R3");
  }

  TEST_CASE("given a count, one is one and none are many") {
    CHECK(base::counted(1, "joint") == "1 joint");
    CHECK(base::counted(0, "joint") == "0 joints");
    CHECK(base::counted(21, "joint") == "21 joints");
    CHECK(base::counted(1, "pass", "passes") == "1 pass");
    CHECK(base::counted(2, "pass", "passes") == "2 passes");
  }

  TEST_CASE("given numbers, neighbours are told as runs") {
    // closed-form: as people write page numbers.
    CHECK(base::listed_runs({}) == "");
    CHECK(base::listed_runs(std::vector<int>{7}) == "7");
    CHECK(base::listed_runs(std::vector<int>{1, 2}) == "1-2");
    CHECK(base::listed_runs(std::vector<int>{1, 3, 4, 5, 9}) == "1, 3-5, 9");
    CHECK(base::listed_runs(std::vector<int>{1, 2, 4, 5}) == "1-2, 4-5");
  }
}

}  // namespace seamturn::tests
