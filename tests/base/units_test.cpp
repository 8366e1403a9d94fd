// SPDX-License-Identifier: MIT
#include "seamturn/base/units.hpp"

#include <cmath>
#include <cstdlib>

#include "oracle.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Dimension;
using base::parse_quantities;
using base::parse_quantity;

TEST_SUITE("base/units") {
  TEST_CASE("given the definitions of inch, pound and degree Fahrenheit, quantities convert") {
    struct Row {
      const char* text;
      Dimension dimension;
      Expected expected;
    };
    // published: NIST SP 811 (2008) appendix B.8, exact factors.
    const Row rows[] = {
        {"1 in", Dimension::length, {25.4, 0.0, Origin::published, "NIST SP 811 B.8"}},
        {"5/16 in", Dimension::length, {7.9375, 1e-12, Origin::published, "NIST SP 811 B.8"}},
        {"1 lb", Dimension::mass, {0.45359237, 0.0, Origin::published, "NIST SP 811 B.8"}},
        {"212 degF", Dimension::temperature, {100.0, 1e-12, Origin::published, "NIST SP 811 B.8"}},
        {"32degF", Dimension::temperature, {0.0, 1e-12, Origin::published, "NIST SP 811 B.8"}},
        {"25.4 kJ/in", Dimension::heat_input, {1.0, 1e-12, Origin::published, "NIST SP 811 B.8"}},
        {"95 %", Dimension::ratio, {0.95, 1e-15, Origin::closed_form, "definition"}},
        {"0.95", Dimension::ratio, {0.95, 0.0, Origin::closed_form, "definition"}},
        {"60 cm/min", Dimension::speed, {10.0, 1e-12, Origin::closed_form, "definition"}},
        {"180 deg", Dimension::angle, {3.14159265358979, 1e-14, Origin::closed_form, "definition"}},
    };
    for (const Row& row : rows) {
      const auto got = parse_quantity(row.text, row.dimension);
      INFO(row.text);
      REQUIRE(got.has_value());
      check_expected(row.text, got.value(), row.expected);
    }
  }

  TEST_CASE("refuses what is no quantity because a silent guess would become a weld") {
    const auto code = [](const char* text, Dimension dimension) {
      const auto got = parse_quantity(text, dimension);
      return got.has_value() ? std::string("accepted") : got.error().code;
    };
    CHECK(code("5", Dimension::length) == "read.unit.missing");
    CHECK(code("5 parsec", Dimension::length) == "read.unit.unknown");
    CHECK(code("5 kg", Dimension::length) == "read.unit.wrong_dimension");
    CHECK(code("12,5 mm", Dimension::length) == "read.unit.unknown");
    CHECK(code("nan mm", Dimension::length) == "read.number.malformed");
    CHECK(code("inf mm", Dimension::length) == "read.number.malformed");
    CHECK(code("-inf mm", Dimension::length) == "read.number.too_large");
    CHECK(code("1e400 mm", Dimension::length) == "read.number.too_large");
    CHECK(code("", Dimension::length) == "read.number.malformed");
    CHECK(code("mm", Dimension::length) == "read.number.malformed");
    CHECK(code("0x10 mm", Dimension::length) == "read.unit.unknown");
    CHECK(code("1/0 in", Dimension::length) == "read.number.malformed");
  }

  TEST_CASE("refuses a unit where a bare number stands, and says what to leave away") {
    const auto text = [](const char* written) { return base::parse_number(written).error().text; };
    CHECK(text("5 ml/100 g").find("leave \"ml/100 g\" away") != std::string::npos);
    CHECK(text("5%").find("leave \"%\" away") != std::string::npos);
    CHECK(text("1,2").find("is not a number") != std::string::npos);
    CHECK(text("1.2.3").find("is not a number") != std::string::npos);
    CHECK(base::parse_number(" 5 ").value() == 5.0);
  }

  TEST_CASE("given several numbers with one unit, all are read and counted") {
    const auto point = parse_quantities("10 157.5 25 mm", Dimension::length, 3);
    REQUIRE(point.has_value());
    CHECK(point.value() == std::vector<double>{10.0, 157.5, 25.0});
    const auto size = parse_quantities("40 x 12 cm", Dimension::length, 2);
    REQUIRE(size.has_value());
    CHECK(size.value() == std::vector<double>{400.0, 120.0});
    CHECK(parse_quantities("10 20 mm", Dimension::length, 3).error().code == "read.number.count");
    CHECK(parse_quantities("10 20 30 40 mm", Dimension::length, 3).error().code ==
          "read.unit.unknown");
    CHECK(parse_quantities("10 5.5.5 mm", Dimension::length, 3).error().code ==
          "read.number.malformed");
    CHECK(parse_quantities("10 20-30 mm", Dimension::length, 3).error().code ==
          "read.number.malformed");
    CHECK(parse_quantities("+-5 mm", Dimension::length, 1).error().code == "read.number.malformed");
    CHECK(parse_quantities("10 -20 +30 mm", Dimension::length, 3).value() ==
          std::vector<double>{10.0, -20.0, 30.0});
  }

  // Reference: std::strtod, correctly rounded in glibc.
  TEST_CASE("for any decimal, law: the number read is the double nearest to what is written") {
    base::Random random(base::named_seed(20261127, "base/units decimals"));
    const auto digits = [&](std::size_t most) {
      std::string text;
      for (std::size_t i = random.below(most + 1); i > 0; --i) {
        text += static_cast<char>('0' + random.below(10));
      }
      return text;
    };
    for (int round = 0; round < 20000; ++round) {
      std::string text = random.below(4) == 0 ? "-" : "";
      text += static_cast<char>('0' + random.below(10));
      text += digits(random.below(8) == 0 ? 20 : 5);
      if (random.below(3) > 0) text += "." + digits(random.below(8) == 0 ? 25 : 6);
      if (random.below(9) == 0) text += "e" + std::to_string(int(random.below(40)) - 20);
      CAPTURE(text);
      const auto read = base::parse_number(text);
      REQUIRE(read.has_value());
      const double nearest = std::strtod(text.c_str(), nullptr);
      CHECK(read.value() == nearest);
      CHECK(std::signbit(read.value()) == std::signbit(nearest));
    }
    CHECK(base::parse_number("999999999999999").value() == 999999999999999.0);
    CHECK(base::parse_number("0.000000000000001").value() == 1e-15);
    CHECK(base::parse_number("12.").value() == 12.0);
    CHECK(base::parse_number("12E3").value() == 12000.0);
    CHECK_FALSE(base::parse_number("1234567890123456.5.2").has_value());
  }

  TEST_CASE("for any unit, law: converting there and back gives the number again") {
    for (const base::Unit& unit : base::known_units()) {
      INFO(std::string(unit.symbol));
      const auto read = parse_quantity("7.25 " + std::string(unit.symbol), unit.dimension);
      REQUIRE(read.has_value());
      CHECK(base::in_unit(read.value(), unit.dimension, unit.symbol) ==
            doctest::Approx(7.25).epsilon(1e-12).scale(0.0));
    }
  }
}

}  // namespace seamturn::tests
