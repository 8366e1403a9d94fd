// SPDX-License-Identifier: MIT
#include "seamturn/process/wire_kind.hpp"

#include <algorithm>
#include <string>

#include "oracles/consumables.hpp"
#include "oracles/deposit.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/process/deposit.hpp"

namespace seamturn::tests {

using process::check_wire;
using process::find_wire_kind;
using process::Wire;
using process::WireKind;

namespace {

Wire wire(const char* number, double diameter_mm, double efficiency_ratio) {
  Wire made;
  made.id = "W";
  made.process = number;
  made.diameter_mm = diameter_mm;
  made.efficiency_ratio = efficiency_ratio;
  return made;
}

std::vector<std::string> codes(const Wire& made) {
  std::vector<std::string> out;
  for (const base::Finding& finding : check_wire(made)) out.push_back(finding.code);
  return out;
}

using Codes = std::vector<std::string>;

}  // namespace

TEST_SUITE("process/wire_kind") {
  TEST_CASE("given ISO 4063 numbers as remembered, the kind of wire follows") {
    CHECK(find_wire_kind("135") == WireKind::solid);
    CHECK(find_wire_kind("131") == WireKind::solid);
    CHECK(find_wire_kind("138") == WireKind::metal_cored);
    CHECK(find_wire_kind("133") == WireKind::metal_cored);
    CHECK(find_wire_kind("136") == WireKind::flux_cored);
    CHECK(find_wire_kind("132") == WireKind::flux_cored);
    CHECK(find_wire_kind("114") == WireKind::self_shielded);
    CHECK_FALSE(find_wire_kind("111").has_value());
    CHECK_FALSE(process::is_cored(WireKind::solid));
    CHECK(process::is_cored(WireKind::flux_cored));
    CHECK(process::kind_name(WireKind::metal_cored) == "metal-cored wire");
  }

  TEST_CASE("given published efficiencies, the table of typical values holds each of them") {
    const auto rows = process::typical_efficiencies();
    for (const TypicalEfficiencyRow& row : typical_efficiency_rows) {
      const auto found = std::find_if(rows.begin(), rows.end(), [&](const auto& one) {
        return one.what == row.what && one.citation.key == row.key;
      });
      REQUIRE_MESSAGE(found != rows.end(), row.what);
      check_expected(row.what, 100.0 * found->least_ratio, row.least_percent);
      check_expected(row.what, 100.0 * found->most_ratio, row.most_percent);
    }
  }

  TEST_CASE("given MCW metal-cored wire, each printed efficiency lies in the range of its kind") {
    const process::EfficiencyRange range = process::efficiency_range(WireKind::metal_cored);
    for (const CoredWireRow& row : cored_wire_rows) {
      INFO(row.feed_in_min);
      CHECK(row.efficiency_percent / 100.0 >= range.least_ratio);
      CHECK(row.efficiency_percent / 100.0 <= range.most_ratio);
      Wire cored = wire("138", row.diameter_mm, row.efficiency_percent / 100.0);
      cored.linear_mass_kg_m = row.linear_mass_g_m / 1000.0;
      CHECK(check_wire(cored).empty());
    }
  }

  TEST_CASE("refuses a cored wire without its mass because its diameter alone overstates it") {
    const Wire cored = wire("136", 1.2, 0.87);
    CHECK(process::find_linear_mass_kg_m(cored).error().code == "process.wire.mass_unknown");
    CHECK(codes(cored) == Codes{"process.wire.mass_unknown"});
    Wire stated = cored;
    stated.linear_mass_kg_m = 0.0078;
    CHECK(*process::find_linear_mass_kg_m(stated) == 0.0078);
    CHECK(codes(stated).empty());
    // Solid wire follows from its diameter.
    CHECK(process::find_linear_mass_kg_m(wire("135", 1.2, 0.95)).has_value());
    CHECK(codes(wire("135", 1.2, 0.95)).empty());
    CHECK(codes(wire("111", 1.2, 0.10)).empty());
  }

  TEST_CASE("given a mass or efficiency that no such wire has, a warning says so") {
    Wire solid = wire("135", 1.2, 0.95);
    solid.linear_mass_kg_m = 0.0088;
    CHECK(codes(solid).empty());
    solid.linear_mass_kg_m = 0.0085;
    CHECK(codes(solid) == Codes{"process.wire.mass_unusual"});
    Wire cored = wire("138", 1.2, 0.90);
    cored.linear_mass_kg_m = 0.0091;
    CHECK(codes(cored) == Codes{"process.wire.mass_unusual"});
    cored.linear_mass_kg_m = 0.0066;
    CHECK(codes(cored) == Codes{"process.wire.mass_unusual"});
    cored.linear_mass_kg_m = 0.0067;
    CHECK(codes(cored).empty());
    CHECK(codes(wire("135", 1.2, 0.92)) == Codes{"process.wire.efficiency"});
    CHECK(codes(wire("135", 1.2, 0.93)).empty());
    CHECK(codes(wire("135", 1.2, 0.99)) == Codes{"process.wire.efficiency"});
  }

  TEST_CASE("given a fill of 15 percent packed to 4.5 g/cm3, a metre of 1.2 mm weighs 7.986 g") {
    // computed by hand: 1.13097 mm2 x 1 m / (0.85/7.85 + 0.15/4.5 cm3/g).
    const auto mass = process::cored_linear_mass_kg_m(1.2, {0.15, 4.5e-6});
    REQUIRE(mass.has_value());
    check_expected("fill 15 %",
                   *mass * 1000.0,
                   {7.986, 0.0005, Origin::closed_form, "section / sum of volumes of a gram"});
  }

  TEST_CASE("for any fill, law: sheath and fill weigh what they take of the section") {
    base::Random random(base::named_seed(20261125, "wire_kind/fill"));
    for (int i = 0; i < 200; ++i) {
      const double share = random.between(0.01, 0.59);
      const double density = random.between(1.0e-6, 7.85e-6);
      const double diameter_mm = random.between(0.8, 3.2);
      const auto mass = process::cored_linear_mass_kg_m(diameter_mm, {share, density});
      REQUIRE(mass.has_value());
      INFO("case ", i, " share ", share, " density ", density);
      const double section_mm2 = 0.25 * 3.14159265358979 * diameter_mm * diameter_mm;
      const double sheath_mm2 = (1.0 - share) * *mass / 1000.0 / 7.85e-6;
      const double fill_mm2 = share * *mass / 1000.0 / density;
      CHECK(sheath_mm2 + fill_mm2 == doctest::Approx(section_mm2).epsilon(1e-12));
    }
    // A fill as dense as steel is solid wire.
    const auto dense = process::cored_linear_mass_kg_m(1.2, {0.3, 7.85e-6});
    CHECK(*dense ==
          doctest::Approx(process::wire_linear_mass_kg_m(wire("135", 1.2, 0.95))).epsilon(1e-12));
  }

  TEST_CASE("refuses a fill that is none because no wire is made of it") {
    const auto code = [](double diameter_mm, double share, double density) {
      const auto mass = process::cored_linear_mass_kg_m(diameter_mm, {share, density});
      return mass ? std::string("none") : mass.error().code;
    };
    CHECK(code(1.2, 0.0, 4.5e-6) == "process.wire.fill");
    CHECK(code(1.2, 0.6, 4.5e-6) == "process.wire.fill");
    CHECK(code(1.2, 0.59, 4.5e-6) == "none");
    CHECK(code(1.2, 0.15, 0.0) == "process.wire.fill");
    CHECK(code(1.2, 0.15, 7.9e-6) == "process.wire.fill");
    CHECK(code(0.0, 0.15, 4.5e-6) == "process.wire.fill");
  }
}

}  // namespace seamturn::tests
