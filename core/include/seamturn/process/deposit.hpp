// SPDX-License-Identifier: MIT
// How much metal a wire lays: melt-off, deposit, bead section, burn-off.
#pragma once

#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/process/consumables.hpp"

namespace seamturn::process {

/// Density of structural steel. Source: EN 1991-1-1:2002 table A.4 gives 77..78.5 kN/m3; 7850 kg/m3
/// common practice, used in the wire tables checked in tests/oracles.
inline constexpr double steel_density_kg_mm3 = 7.85e-6;

/// Mass of wire per metre.
/// Units: Wire -> kg/m. Pre: diameter > 0. Outside: n/a.
/// Source: pi/4 d2 x density for solid wire; the stated linear mass for cored wire.
/// Accuracy: exact for the nominal diameter; published m/kg agree within 1.3 %.
/// Tests: process/deposit - published wire metres per kilogram.
[[nodiscard]] double wire_linear_mass_kg_m(const Wire& wire);

struct Deposit {
  double melt_off_kg_h = 0.0;
  double deposit_kg_h = 0.0;
  double wire_m_kg = 0.0;  ///< metres of wire in a kilogram
};

/// Melt-off and deposit of a wire at a feed.
/// Units: mm/s -> kg/h. Pre: feed > 0, 0 < efficiency <= 1.
/// Source: identity mass = linear mass x feed. Tests: process/deposit - published sheet rows.
[[nodiscard]] Deposit deposit_rate(const Wire& wire, double feed_mm_s);
[[nodiscard]] const base::FigureCard& deposit_card();

/// Section of the bead laid at a travel speed.
/// Units: mm/s, mm/s -> mm2 of steel. Pre: feed > 0, travel > 0.
/// Source: conservation of mass. Tests: process/deposit - computed, law.
[[nodiscard]] double bead_area_mm2(const Wire& wire, double feed_mm_s, double travel_mm_s);
/// Travel speed that lays a given section. Pre: area > 0. Inverse of bead_area_mm2.
[[nodiscard]] double travel_for_area_mm_s(const Wire& wire, double feed_mm_s, double area_mm2);
[[nodiscard]] const base::FigureCard& bead_card();

}  // namespace seamturn::process
