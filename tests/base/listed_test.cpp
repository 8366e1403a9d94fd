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
}

}  // namespace seamturn::tests
