// SPDX-License-Identifier: MIT
#include "seamturn/base/number_text.hpp"

#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/base/units.hpp"

namespace seamturn::tests {

using base::fixed_text;
using base::shortest_text;

TEST_SUITE("base/number_text") {
  TEST_CASE("given plain numbers, the shortest text carries no more digits than needed") {
    CHECK(shortest_text(0.1) == "0.1");
    CHECK(shortest_text(-2.5) == "-2.5");
    CHECK(shortest_text(0.0) == "0");
    CHECK(shortest_text(-0.0) == "0");
    CHECK(shortest_text(1e5) == "100000");
    CHECK(shortest_text(0.00001) == "0.00001");
    CHECK(shortest_text(1.0 / 3.0) == "0.3333333333333333");
  }

  TEST_CASE("for any finite double, law: the shortest text reads back to the same double") {
    base::Random random(base::named_seed(29, "read back"));
    int finite = 0;
    for (int i = 0; i < 20000; ++i) {
      const auto value = std::bit_cast<double>(random.next());
      if (!std::isfinite(value)) continue;
      ++finite;
      const auto read = base::parse_number(shortest_text(value));
      INFO("seed 29, case " << i << ": " << value);
      REQUIRE(read.has_value());
      CHECK(read.value() == value);
    }
    CHECK(finite > 19000);
  }

  TEST_CASE("given decimals, numbers are rounded to them and zero has no sign") {
    CHECK(fixed_text(12.345678, 2) == "12.35");
    CHECK(fixed_text(-0.004, 2) == "0.00");
    CHECK(fixed_text(-0.006, 2) == "-0.01");
    CHECK(fixed_text(1234567.0, 0) == "1234567");
    CHECK(fixed_text(-0.0, 1) == "0.0");
  }

  TEST_CASE("given two numbers that differ, as many decimals as tell them apart") {
    const auto texts = [](double a, double b, int decimals) {
      const base::TwoTexts two = base::told_apart(a, b, decimals);
      return two.first + " " + two.second;
    };
    CHECK(texts(74.0, 60.0, 0) == "74 60");
    CHECK(texts(60.3, 60.0, 0) == "60.3 60.0");
    CHECK(texts(60.0004, 60.0, 0) == "60.0004 60.0000");
    CHECK(texts(60.0, 60.0, 0) == "60.000000 60.000000");
    CHECK(texts(12.34, 12.31, 1) == "12.34 12.31");
    CHECK_THROWS_AS((void)base::told_apart(1.0, 2.0, 7), base::ContractViolation);
  }

  TEST_CASE("refuses what is not finite because no document may print it") {
    CHECK_THROWS_AS((void)shortest_text(std::numeric_limits<double>::infinity()),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)fixed_text(std::nan(""), 2), base::ContractViolation);
    CHECK_THROWS_AS((void)fixed_text(1.0, 13), base::ContractViolation);
  }

  TEST_CASE("given computed values, digits_text writes what a person would, closed-form") {
    CHECK(base::digits_text(0.4735557604979903) == "0.4736");
    CHECK(base::digits_text(12.0) == "12");
    CHECK(base::digits_text(12.5) == "12.5");
    CHECK(base::digits_text(-0.25) == "-0.25");
    CHECK(base::digits_text(272.61) == "272.6");
    CHECK(base::digits_text(123456.7) == "123457");
    CHECK(base::digits_text(0.0) == "0");
    CHECK(base::digits_text(0.00012346) == "0.0001235");
    CHECK_THROWS_AS((void)base::digits_text(std::nan("")), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
