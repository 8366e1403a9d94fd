// SPDX-License-Identifier: MIT
#include "seamturn/heat/heat_input.hpp"

#include <limits>
#include <string>

#include "oracles/heat.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using heat::arc_efficiency_ratio;
using heat::arc_energy_kj_mm;
using heat::heat_input_kj_mm;

TEST_SUITE("heat/heat_input") {
  TEST_CASE("given printed examples of arc energy, the value is the printed one") {
    for (const EnergyRow& row : arc_energy_rows) {
      check_expected(row.item, arc_energy_kj_mm(row.arc), row.expected);
    }
  }

  TEST_CASE("given EN 1011-1 table 1, each process has its k") {
    for (const EfficiencyRow& row : efficiency_rows) {
      const auto k = arc_efficiency_ratio(row.process);
      REQUIRE(k.has_value());
      check_expected(
          row.process, *k, {row.k, 0.0, Origin::published, "EN 1011-1 table 1, quoted by TWI-HI"});
    }
  }

  TEST_CASE("given invented settings, heat input is k times arc energy") {
    for (const HeatInputRow& row : heat_input_rows) {
      const auto heat = heat_input_kj_mm(row.process, row.arc);
      REQUIRE(heat.has_value());
      check_expected(row.process, *heat, row.expected);
    }
  }

  TEST_CASE("for any arc, law: twice the travel halves the energy, twice the current doubles it") {
    const double energy = arc_energy_kj_mm({28.0, 280.0, 7.0});
    CHECK(arc_energy_kj_mm({28.0, 280.0, 14.0}) == doctest::Approx(energy / 2).epsilon(1e-12));
    CHECK(arc_energy_kj_mm({28.0, 560.0, 7.0}) == doctest::Approx(energy * 2).epsilon(1e-12));
  }

  TEST_CASE("refuses a process without a known k because a guess would shift preheat and t8/5") {
    for (const char* process : {"52", "", "13", "135 ", "MAG"}) {
      const auto refused = heat_input_kj_mm(process, {28.0, 280.0, 7.0});
      INFO(std::string(process));
      REQUIRE_FALSE(refused.has_value());
      CHECK(refused.error().code == "heat.process.unknown");
      CHECK(refused.error().text.find("135, 136") != std::string::npos);
    }
  }

  TEST_CASE("refuses an arc without voltage, current or travel because that is a caller's bug") {
    CHECK_THROWS_AS((void)arc_energy_kj_mm({0.0, 280.0, 7.0}), base::ContractViolation);
    CHECK_THROWS_AS((void)arc_energy_kj_mm({28.0, -1.0, 7.0}), base::ContractViolation);
    CHECK_THROWS_AS((void)heat_input_kj_mm("135", {28.0, 280.0, 0.0}), base::ContractViolation);
    CHECK_THROWS_AS((void)arc_energy_kj_mm({std::numeric_limits<double>::infinity(), 280.0, 7.0}),
                    base::ContractViolation);
  }
}

}  // namespace seamturn::tests
