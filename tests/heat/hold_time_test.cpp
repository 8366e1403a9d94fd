// SPDX-License-Identifier: MIT
#include "seamturn/heat/hold_time.hpp"

#include <cmath>

#include "oracles/heat_tables.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using heat::hold_time;

TEST_SUITE("heat/hold_time") {
  TEST_CASE("given table 23, all cells are those printed") {
    constexpr const char* source = "EN 1090-2:2008 table 23";
    for (const HoldRow& row : hold_rows) {
      const heat::HoldTime low = hold_time({row.size_mm, row.heat_input_kj_mm, 355.0});
      const heat::HoldTime high = hold_time({row.size_mm, row.heat_input_kj_mm, 460.0});
      check_expected(low.row, low.hours, {row.s235_to_s420_h, 0.0, Origin::published, source});
      check_expected(high.row, high.hours, {row.s460_and_above_h, 0.0, Origin::published, source});
      CHECK(low.cooling_only == (row.s235_to_s420_h == 0.0));
      CHECK_FALSE(high.cooling_only);
      CHECK(low.column == "S235 to S420");
      CHECK(high.column == "S460 and above");
    }
  }

  TEST_CASE("given the edges 6 and 12 mm, 3 kJ/mm and 420 MPa, the cell ends with them") {
    CHECK(hold_time({6.0, 9.0, 420.0}).hours == 0.0);
    CHECK(hold_time({6.01, 3.0, 420.0}).hours == 8.0);
    CHECK(hold_time({12.0, 3.0, 420.0}).hours == 8.0);
    CHECK(hold_time({12.01, 3.0, 420.0}).hours == 16.0);
    CHECK(hold_time({12.0, 3.01, 420.0}).hours == 16.0);
    CHECK(hold_time({12.01, 3.01, 420.0}).hours == 40.0);
    CHECK(hold_time({12.0, 3.0, 420.1}).hours == 24.0);
  }

  TEST_CASE("for any weld, law: bigger, hotter or stronger never waits less") {
    const double sizes[] = {4.0, 6.0, 7.0, 12.0, 13.0, 60.0};
    const double heats[] = {0.5, 3.0, 3.5};
    const double yields[] = {235.0, 420.0, 460.0, 960.0};
    for (std::size_t i = 0; i + 1 < std::size(sizes); ++i) {
      for (std::size_t k = 0; k + 1 < std::size(heats); ++k) {
        for (std::size_t n = 0; n + 1 < std::size(yields); ++n) {
          const double here = hold_time({sizes[i], heats[k], yields[n]}).hours;
          CHECK(hold_time({sizes[i + 1], heats[k], yields[n]}).hours >= here);
          CHECK(hold_time({sizes[i], heats[k + 1], yields[n]}).hours >= here);
          CHECK(hold_time({sizes[i], heats[k], yields[n + 1]}).hours >= here);
        }
      }
    }
  }

  TEST_CASE("given less than 16 h, over 50 mm or over 500 MPa, the general advice stands beside") {
    const auto noted = [](double size, double heat, double yield) {
      const heat::HoldTime hold = hold_time({size, heat, yield});
      if (hold.findings.empty()) return false;
      CHECK(hold.findings.front().code == "heat.hold.general_advice");
      CHECK(hold.findings.front().severity == base::Severity::note);
      return true;
    };
    CHECK(noted(9.0, 2.0, 355.0));         // 8 h
    CHECK_FALSE(noted(20.0, 2.0, 355.0));  // 16 h
    CHECK(noted(50.1, 2.0, 355.0));
    CHECK_FALSE(noted(50.0, 2.0, 500.0));
    CHECK(noted(20.0, 2.0, 690.0));
  }

  TEST_CASE("refuses inputs that are no quantities because they are a caller's bug") {
    CHECK_THROWS_AS((void)hold_time({0.0, 1.0, 355.0}), base::ContractViolation);
    CHECK_THROWS_AS((void)hold_time({6.0, -1.0, 355.0}), base::ContractViolation);
    CHECK_THROWS_AS((void)hold_time({6.0, 1.0, std::nan("")}), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
