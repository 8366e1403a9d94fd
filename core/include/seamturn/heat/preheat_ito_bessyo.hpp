// SPDX-License-Identifier: MIT
// Preheat by the closed form of older Japanese practice: Pcm, glycerine hydrogen, thickness.
#pragma once

#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/base/valid_range.hpp"

namespace seamturn::heat {

/// Range of the tests behind it. Source: from memory.
inline constexpr base::ValidRange ito_bessyo_thickness_mm{19.0, 50.0};
inline constexpr base::ValidRange ito_bessyo_glycerine_ml_100g{1.0, 5.0};
inline constexpr base::ValidRange ito_bessyo_heat_input_kj_mm{1.7, 3.0};

struct ItoBessyoParams {
  double pcm = 0.0;                         ///< mass-%
  double hydrogen_glycerine_ml_100g = 0.0;  ///< by the GLYCERINE method, lower than ISO 3690
  double thickness_mm = 0.0;
  double heat_input_kj_mm = 0.0;  ///< not in the formula; its range is
};

struct ItoBessyo {
  double pc = 0.0;         ///< crack parameter, mass-%
  double preheat_c = 0.0;  ///< To; at or below the plate's own: no heating
  std::vector<base::Finding> findings;
};

/// Pc = Pcm + H/60 + t/600; To = 1440 Pc - 392.
/// Units: mass-%, ml/100 g (glycerine), mm -> degC.
/// Pre: finite, Pcm >= 0, hydrogen, thickness, heat input > 0.
/// Outside: heat.ito_bessyo.out_of_range warnings (t 19..50, H 1..5, Q 1.7..3); refuses
///   heat.ito_bessyo.thickness below 3 mm.
/// Source: [ITO] formula verified; ranges from memory.
/// Accuracy: not stated by the source.
/// Tests: heat/preheat_ito_bessyo - computed from the verified formula, laws.
[[nodiscard]] base::Outcome<ItoBessyo> preheat_ito_bessyo(const ItoBessyoParams& params);
[[nodiscard]] const base::FigureCard& ito_bessyo_card();

/// Glycerine hydrogen of a filler whose hydrogen was measured by ISO 3690:
/// (H_ISO - 2.19) / 1.27, the inverse of H_ISO = 1.27 H_glycerine + 2.19.
/// Units: ml/100 g -> ml/100 g.
/// Pre: finite, > 0.
/// Outside: refuses heat.ito_bessyo.conversion when the result lies below 1 ml/100 g, where the
///   regression tells nothing: take 1.
/// Source: [GLYCERINE] regression FROM MEMORY.
/// Accuracy: a regression; no scatter recalled.
/// Tests: heat/preheat_ito_bessyo - law, remembered.
[[nodiscard]] base::Outcome<double> glycerine_hydrogen_ml_100g(double iso_3690_ml_100g);

}  // namespace seamturn::heat
