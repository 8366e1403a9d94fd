// SPDX-License-Identifier: MIT
#include "seamturn/process/wire_strength.hpp"

#include "oracle.hpp"

namespace seamturn::tests {

TEST_SUITE("process/wire_strength") {
  TEST_CASE("given ISO 14341-A table 1A, each symbol promises its least yield") {
    struct Row {
      const char* designation;
      double yield_mpa;
    };
    // ISO 14341:2020 table 1A as a guide quotes it (docs/sources.md).
    const Row rows[] = {{"ISO 14341-A G 35 2 C1 2Si", 355.0},
                        {"ISO 14341-A G 38 3 M21 2Si", 380.0},
                        {"G 42 4 M21 3Si1", 420.0},
                        {"ISO 14341-A G 46 4 M21 3Si1", 460.0},
                        {"EN ISO 14341-A  G  50 6 M21 Z", 500.0}};
    for (const Row& row : rows) {
      const auto found = process::designated_yield_mpa(row.designation);
      REQUIRE(found);
      check_expected(row.designation,
                     *found,
                     {row.yield_mpa, 1e-9, Origin::published, "ISO 14341-A table 1A"});
    }
    // remembered: cored and stronger wires take symbols alike
    CHECK(process::designated_yield_mpa("ISO 16834-A G 69 5 M21 Mn4Ni1,5CrMo") == 690.0);
    CHECK(process::designated_yield_mpa("ISO 17632-A T 46 4 M M21 1 H5") == 460.0);
  }

  TEST_CASE("given a designation without such a symbol, nothing is promised") {
    for (const char* text :
         {"", "ER70S-6", "G", "ISO 14341-B G 49A 3 M21 S6", "46 G", "G46 4 M21"}) {
      INFO(text);
      CHECK_FALSE(process::designated_yield_mpa(text));
    }
  }
}

}  // namespace seamturn::tests
