// SPDX-License-Identifier: MIT
#include "seamturn/process/gouging.hpp"

#include <doctest/doctest.h>

#include "seamturn/base/error.hpp"

namespace seamturn::tests {

TEST_SUITE("process/gouging") {
  // closed-form: 2 min to enter and leave, 900 mm at 300 mm/min are 3 min
  TEST_CASE("a root is gouged in the time of its length, and people come in once") {
    process::Gouging row;
    row.speed_mm_s = 5.0;
    row.entry_s = 120.0;
    CHECK(process::gouging_time_s(row, 900.0) == 300.0);
    CHECK(process::gouging_time_s(row, 0.0) == 120.0);
  }

  // law: twice the length takes twice as long, entry aside
  TEST_CASE("time grows with the length alone") {
    process::Gouging row;
    row.speed_mm_s = 4.0;
    row.entry_s = 90.0;
    const double once_s = process::gouging_time_s(row, 500.0) - row.entry_s;
    CHECK(process::gouging_time_s(row, 1000.0) - row.entry_s == doctest::Approx(2.0 * once_s));
  }

  TEST_CASE("a rate of nothing is a broken contract") {
    CHECK_THROWS_AS(static_cast<void>(process::gouging_time_s({}, 100.0)), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
