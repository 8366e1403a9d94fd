// SPDX-License-Identifier: MIT
#include "seamturn/material/steel.hpp"

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

namespace {

material::SteelBand band(double up_to_mm, double yield_mpa) {
  material::SteelBand made;
  made.up_to_mm = up_to_mm;
  made.yield_mpa = yield_mpa;
  return made;
}

/// EN 10025-2:2019 table 7 (unchanged from 2004), S355: least yield by thickness.
material::Steel s355() {
  material::Steel steel;
  steel.designation = "S355J2";
  steel.bands = {band(16, 355),
                 band(40, 345),
                 band(63, 335),
                 band(80, 325),
                 band(100, 315),
                 band(150, 295),
                 band(200, 285),
                 band(250, 275)};
  return steel;
}

}  // namespace

TEST_SUITE("material/steel") {
  TEST_CASE(
      "given EN 10025-2 S355 by thickness, the yield is that of the band up to and including") {
    struct Row {
      double thickness_mm;
      double yield_mpa;
    };
    const material::Steel steel = s355();
    for (const Row& row : {Row{3, 355},
                           Row{16, 355},
                           Row{16.1, 345},
                           Row{40, 345},
                           Row{40.1, 335},
                           Row{63, 335},
                           Row{80, 325},
                           Row{80.1, 315},
                           Row{250, 275}}) {
      const material::SteelBand* found = find_band(steel, row.thickness_mm);
      REQUIRE(found != nullptr);
      check_expected("S355",
                     found->yield_mpa.value_or(0.0),
                     {row.yield_mpa, 0.0, Origin::published, "EN 10025-2 table 7"});
    }
  }

  TEST_CASE("for limits that leave C or Mn open, law: they bound no carbon equivalent") {
    material::SteelBand limits = band(16, 355);
    CHECK(bounds_carbon_equivalent(limits));
    limits.mn_is_open = true;
    CHECK_FALSE(bounds_carbon_equivalent(limits));
    limits.mn_is_open = false;
    limits.c_is_open = true;
    CHECK_FALSE(bounds_carbon_equivalent(limits));
  }

  // remembered: EN 10020, stainless from 10.5 % Cr; ISO/TR 15608, 8 austenitic, 10 duplex, from 21
  // on aluminium and other metals; 9 nickel steels and 11 carbon steels are ferritic.
  TEST_CASE("for metals of other kinds, law: each side of a limit is told, and why") {
    const auto why = [](const char* group, double cr) {
      material::Steel steel;
      steel.group = group;
      material::Composition composition;
      composition.cr = cr;
      return material::why_out_of_scope(steel, composition);
    };
    for (const char* group : {"", "1.2", "3.1", "6.4", "9.1", "11", "11.1"}) {
      INFO(group);
      CHECK(why(group, 0.3).empty());
    }
    for (const char* group : {"7.1", "8", "8.1", "10.1", "21", "22.4", "43", "71"}) {
      INFO(group);
      CHECK(why(group, 0.3).find("no unalloyed or low-alloy steel") != std::string::npos);
    }
    CHECK(why("", 10.4).empty());
    CHECK(why("", 10.5).find("stainless") != std::string::npos);
  }

  // remembered: EN 10027-1, high-alloy from 5 % of an element; ISO/TR 15608 group 9 to 10 % Ni.
  // Analyses common practice: a nitriding steel, 9 % nickel; casting and wrought aluminium, brass,
  // a manganese steel, a nickel alloy, with the carbon a file must state.
  TEST_CASE("for metals without a group, law: the main alloying element tells what is no steel") {
    struct Row {
      const char* symbol;
      double material::Composition::*content;
      double within, beyond;
    };
    using C = material::Composition;
    const Row rows[] = {{"Al ", &C::al, 1.2, 49.0},
                        {"Al ", &C::al, 4.99, 5.0},
                        {"Cu ", &C::cu, 0.5, 5.5},
                        {"Si ", &C::si, 0.8, 12.0},
                        {"Mn ", &C::mn, 1.7, 12.0},
                        {"Mo ", &C::mo, 1.2, 9.0},
                        {"Nb ", &C::nb, 0.1, 5.0},
                        {"Ti ", &C::ti, 0.1, 49.0},
                        {"V ", &C::v, 0.6, 5.0},
                        {"Ni ", &C::ni, 9.0, 36.0},
                        {"Ni ", &C::ni, 10.0, 10.01}};
    for (const Row& row : rows) {
      INFO(row.symbol, row.beyond);
      material::Composition composition;
      composition.c = 0.05;
      composition.*row.content = row.within;
      CHECK(material::why_out_of_scope(material::Steel{}, composition).empty());
      composition.*row.content = row.beyond;
      CHECK(material::why_out_of_scope(material::Steel{}, composition).find(row.symbol) == 0);
    }
  }

  TEST_CASE("refuses a thickness the steel is not made in because no limit applies to it") {
    CHECK(find_band(s355(), 250.1) == nullptr);
    CHECK(find_band(material::Steel{}, 10.0) == nullptr);
    CHECK_THROWS_AS((void)find_band(s355(), 0.0), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
