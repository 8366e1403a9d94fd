// SPDX-License-Identifier: MIT
// Hardness of the heat-affected zone as three fitted formulas guess it. An estimate, no proof.
#pragma once

#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/base/valid_range.hpp"
#include "seamturn/material/composition.hpp"

namespace seamturn::heat {

/// Two standard deviations of the best of twelve methods tested. Source: [TWI-HV].
inline constexpr double hardness_scatter_hv = 56.0;
/// Where the guess is offered without a warning. Source: project choice, no range was recalled.
inline constexpr base::ValidRange hardness_carbon_percent{0.04, 0.30};
inline constexpr base::ValidRange hardness_t85_s{2.0, 100.0};
/// Above it the formulas are refused. Source: from memory (Yurioka 1987 reaches 0.8 %).
inline constexpr double hardness_carbon_limit_percent = 0.8;

struct HardnessParams {
  material::Composition composition;
  double t85_s = 0.0;
};

struct Hardness {
  double dueren_hv = 0.0;
  double yurioka_hv = 0.0;
  double suzuki_hv = 0.0;
  double lowest_hv = 0.0;   ///< of the three; there is no mean
  double highest_hv = 0.0;  ///< of the three
  std::vector<base::Finding> findings;
};

/// Estimated hardness after cooling with t8/5.
/// Units: mass-%, s -> HV.
/// Pre: contents finite, 0..100; t85 finite, > 0.
/// Outside: heat.hardness.out_of_range warnings (C 0.04..0.30 %, t8/5 2..100 s); refuses
///   heat.hardness.carbon above 0.8 %, heat.hardness.no_fit where a formula has no value.
/// Source: [HAZ-HARDNESS] three formulas FROM MEMORY; scatter [TWI-HV].
/// Accuracy: +-56 HV (two standard deviations) at best.
/// Tests: heat/hardness - computed, laws.
[[nodiscard]] base::Outcome<Hardness> hardness(const HardnessParams& params);
[[nodiscard]] const base::FigureCard& hardness_card();

}  // namespace seamturn::heat
