// SPDX-License-Identifier: MIT
// How much heat carbon steel holds and how well it leads it, over temperature.
#pragma once

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/outcome.hpp"

namespace seamturn::cooling {

inline constexpr double steel_heat_least_c = 20.0;
inline constexpr double steel_heat_most_c = 1200.0;

struct SteelHeat {
  double specific_heat_j_kg_k = 0.0;
  double conductivity_w_m_k = 0.0;
};

/// Specific heat and conductivity of carbon steel.
/// Units: degC -> J/kg K, W/m K.      Frame: none.      Pre: finite.
/// Outside: refuses cooling.steel_heat.out_of_range below 20 or above 1200 degC.
/// Source: [EN 1993-1-2] 2005, 3.4.1.2 and 3.4.1.3 (formulas read in a restatement; clause numbers
///   from memory).
/// Accuracy: made for fire design; the formulas meet at 600 and 900 degC within 0.1 %, the
///   conductivity at 800 degC within 0.3 %.
/// Tests: cooling/steel_heat - computed by hand from the formulas, closed-form at 735 degC, laws.
[[nodiscard]] base::Outcome<SteelHeat> steel_heat(double temperature_c);
[[nodiscard]] const base::FigureCard& steel_heat_card();

}  // namespace seamturn::cooling
