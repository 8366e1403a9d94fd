// SPDX-License-Identifier: MIT
#include "seamturn/process/heating.hpp"

#include <doctest/doctest.h>

#include <limits>

#include "seamturn/base/error.hpp"

namespace seamturn::tests {

namespace {

process::Heating torch() {
  process::Heating row;
  row.power_w = 40000.0;
  row.useful_ratio = 0.25;
  row.entry_s = 120.0;
  return row;
}

}  // namespace

TEST_SUITE("process/heating") {
  // closed-form: 3 MJ at 40 kW x 0.25 are 300 s; entry 120 s, soak 60 s
  TEST_CASE("given 3 MJ at 10 kW that reach the steel, it takes 300 s beside entry and soak") {
    CHECK(process::heating_time_s(torch(), 3e6, 60.0) == 480.0);
    CHECK(process::heating_time_s(torch(), 0.0, 0.0) == 120.0);
  }

  // law: twice the heat takes twice as long, twice the power half as long, entry and soak aside
  TEST_CASE("for any heat, law: time grows with heat and falls with power and the useful part") {
    process::Heating row = torch();
    const double once_s = process::heating_time_s(row, 5e5, 30.0) - 150.0;
    CHECK(process::heating_time_s(row, 1e6, 30.0) - 150.0 == doctest::Approx(2.0 * once_s));
    row.power_w *= 2.0;
    CHECK(process::heating_time_s(row, 5e5, 30.0) - 150.0 == doctest::Approx(0.5 * once_s));
    row.useful_ratio *= 2.0;
    CHECK(process::heating_time_s(row, 5e5, 30.0) - 150.0 == doctest::Approx(0.25 * once_s));
  }

  TEST_CASE("no power, no useful part, negative heat or time are a broken contract") {
    const auto throws = [](const process::Heating& row, double heat_j, double soak_s) {
      CHECK_THROWS_AS((void)process::heating_time_s(row, heat_j, soak_s), base::ContractViolation);
    };
    throws({}, 1e6, 0.0);
    process::Heating row = torch();
    row.useful_ratio = 0.0;
    throws(row, 1e6, 0.0);
    row = torch();
    row.power_w = -1.0;
    throws(row, 1e6, 0.0);
    row.useful_ratio = -0.5;  // and not saved by two signs
    throws(row, 1e6, 0.0);
    row = torch();
    row.entry_s = -1.0;
    throws(row, 1e6, 0.0);
    throws(torch(), -1.0, 0.0);
    throws(torch(), 1e6, -1.0);
    throws(torch(), std::numeric_limits<double>::infinity(), 0.0);
  }
}

}  // namespace seamturn::tests
