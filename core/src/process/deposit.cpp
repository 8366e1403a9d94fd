// SPDX-License-Identifier: MIT
#include "seamturn/process/deposit.hpp"

#include <cmath>
#include <numbers>

#include "seamturn/base/error.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::process {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

using base::mm_per_m;
using base::s_per_h;

void require_melting(const Wire& wire, double feed_mm_s) {
  SEAMTURN_REQUIRE(base::is_positive(feed_mm_s), feed_mm_s);
  SEAMTURN_REQUIRE(base::is_positive(wire.efficiency_ratio) && wire.efficiency_ratio <= 1.0,
                   wire.efficiency_ratio);
}

/// Steel that reaches the weld in a second.
double laid_mm3_s(const Wire& wire, double feed_mm_s) {
  require_melting(wire, feed_mm_s);
  const double melted_kg_s = wire_linear_mass_kg_m(wire) * feed_mm_s / mm_per_m;
  return melted_kg_s * wire.efficiency_ratio / steel_density_kg_mm3;
}

constexpr FigureKey wire_key{"wire", Dimension::length, "diameter of the wire", "> 0, e.g. 1.2 mm"};
constexpr FigureKey feed_key{"feed", Dimension::speed, "wire feed speed", "> 0"};
constexpr FigureKey efficiency_key{
    "efficiency", Dimension::ratio, "deposited mass / melted mass", "above 0, up to 1 (100 %)"};
constexpr FigureKey linear_mass_key{"linear-mass",
                                    Dimension::linear_mass,
                                    "mass of a metre of wire; needed for cored wire",
                                    "> 0; absent: solid steel wire of the diameter",
                                    false};

}  // namespace

double wire_linear_mass_kg_m(const Wire& wire) {
  if (wire.linear_mass_kg_m) {
    SEAMTURN_REQUIRE(base::is_positive(*wire.linear_mass_kg_m), *wire.linear_mass_kg_m);
    return *wire.linear_mass_kg_m;
  }
  SEAMTURN_REQUIRE(base::is_positive(wire.diameter_mm), wire.diameter_mm);
  return std::numbers::pi / 4.0 * wire.diameter_mm * wire.diameter_mm * steel_density_kg_mm3 *
         mm_per_m;
}

Deposit deposit_rate(const Wire& wire, double feed_mm_s) {
  require_melting(wire, feed_mm_s);
  const double linear_mass_kg_m = wire_linear_mass_kg_m(wire);
  Deposit deposit;
  deposit.melt_off_kg_h = linear_mass_kg_m * feed_mm_s / mm_per_m * s_per_h;
  deposit.deposit_kg_h = deposit.melt_off_kg_h * wire.efficiency_ratio;
  deposit.wire_m_kg = 1.0 / linear_mass_kg_m;
  return deposit;
}

double bead_area_mm2(const Wire& wire, double feed_mm_s, double travel_mm_s) {
  SEAMTURN_REQUIRE(base::is_positive(travel_mm_s), travel_mm_s);
  return laid_mm3_s(wire, feed_mm_s) / travel_mm_s;
}

double travel_for_area_mm_s(const Wire& wire, double feed_mm_s, double area_mm2) {
  SEAMTURN_REQUIRE(base::is_positive(area_mm2), area_mm2);
  return laid_mm3_s(wire, feed_mm_s) / area_mm2;
}

const base::FigureCard& deposit_card() {
  static const FigureKey keys[] = {wire_key, feed_key, efficiency_key, linear_mass_key};
  static const Citation sources[] = {
      {"MIGH-10", "table of wire length per mass: the linear mass", Status::verified},
      {"MCW", "deposit = melt-off x efficiency on all 13 rows", Status::verified},
      {"DDS", "definition of deposition rate and efficiency by test", Status::verified},
  };
  static const base::FigureCard card{
      "deposit",
      "mass of weld metal a wire lays in an hour of arc time",
      "mass of wire per metre x feed x efficiency; solid steel wire weighs pi/4 d2 x 7850 kg/m3",
      "kg/h",
      "an hour of burning arc, not of working time. Cored wire weighs 7 to 12 % less than solid "
      "wire of its diameter: state linear-mass. Efficiency depends on wire and gas",
      keys,
      sources};
  return card;
}

const base::FigureCard& bead_card() {
  static const FigureKey travel_key{
      "travel", Dimension::speed, "travel speed along the seam", "> 0"};
  static const FigureKey keys[] = {wire_key, feed_key, efficiency_key, travel_key, linear_mass_key};
  static const Citation sources[] = {
      {"MCW", "deposit = melt-off x efficiency", Status::verified},
      {"MASS",
       "conservation of mass: what melts, less spatter, lies in the bead",
       Status::computed},
  };
  static const base::FigureCard card{
      "bead",
      "cross-section of the metal one pass adds, melted plate not counted",
      "mass of wire per metre x feed x efficiency / (7850 kg/m3 x travel)",
      "mm2",
      "steel. A weave does not change it: travel is the speed along the seam. The area says "
      "nothing about fusion or shape",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::process
