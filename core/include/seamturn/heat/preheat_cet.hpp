// SPDX-License-Identifier: MIT
// Preheat against hydrogen cracking by the CET method.
#pragma once

#include <string_view>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/base/valid_range.hpp"

namespace seamturn::heat {

/// Range of the method; outside, its value is an extrapolation. Source: [EN 1011-2] 2001 C.3 from
/// memory.
inline constexpr base::ValidRange preheat_cet_mass_percent{0.2, 0.5};
inline constexpr base::ValidRange preheat_thickness_mm{10.0, 90.0};
inline constexpr double preheat_least_thickness_mm = 3.0;  ///< project choice: refused below
inline constexpr base::ValidRange preheat_hydrogen_ml_100g{1.0, 20.0};
inline constexpr base::ValidRange preheat_heat_input_kj_mm{0.5, 4.0};
/// The quantity of a finding that the heat input leaves it.
inline constexpr std::string_view preheat_heat_input = "heat input";

struct PreheatParams {
  double cet = 0.0;               ///< mass-%: plate, or weld metal + 0.03, whichever is higher
  double thickness_mm = 0.0;      ///< single thickness of the thickest part
  double hydrogen_ml_100g = 0.0;  ///< diffusible hydrogen of the deposited metal
  double heat_input_kj_mm = 0.0;  ///< the lowest the joint may see
};

/// Terms as they add up.
struct Preheat {
  double preheat_c = 0.0;  ///< as computed; at or below the plate's own: no heating
  double steel_term_c = 0.0;
  double thickness_term_c = 0.0;
  double hydrogen_term_c = 0.0;
  double heat_term_c = 0.0;
  std::vector<base::Finding> findings;
};

/// Preheat = 697 CET + 160 tanh(d/35) + 62 HD^0.35 + (53 CET - 32) Q - 328.
/// Units: mass-%, mm, ml/100 g, kJ/mm -> degC.
/// Pre: finite, CET >= 0, thickness, hydrogen, heat input > 0.
/// Outside: heat.preheat.out_of_range warnings beside the number (CET 0.2..0.5, d 10..90, HD 1..20,
///   Q 0.5..4); refuses heat.preheat.thickness below 3 mm.
/// Source: [EN 1011-2] 2001 C.3, FROM MEMORY; checked against teaching examples only.
/// Accuracy: not stated by the source.
/// Tests: heat/preheat_cet - published (weak), computed, laws.
[[nodiscard]] base::Outcome<Preheat> preheat_cet(const PreheatParams& params);
[[nodiscard]] const base::FigureCard& preheat_card();

/// CET that governs: the plate's, or the weld metal's + 0.03 when that is higher.
/// Source: [EN 1011-2] C.3 from memory; the 0.03 margin [SSAB-23] verified.
[[nodiscard]] double governing_cet(double plate_cet, double weld_metal_cet);

}  // namespace seamturn::heat
