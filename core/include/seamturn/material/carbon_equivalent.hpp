// SPDX-License-Identifier: MIT
// Carbon equivalents: one number for how easily a steel hardens beside a weld.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/material/composition.hpp"

namespace seamturn::material {

enum class CarbonFormula { iiw, cet, pcm, cen, jis };

/// "iiw", "cet", "pcm", "cen", "jis" (as written on the command line).
[[nodiscard]] std::string_view formula_name(CarbonFormula formula);

struct CarbonEquivalent {
  double value = 0.0;  ///< mass-%
  std::vector<base::Finding>
      findings;  ///< warnings where an element or the result leaves the range
};

/// The carbon equivalent of a composition by one named formula.
/// Units: mass-% -> mass-%.      Frame: none.
/// Pre: every content finite, 0..100; otherwise ContractViolation.
/// Outside: refuses (material.carbon.out_of_range) when carbon lies above the formula's range, for
///   then the number would mislead; other elements outside: material.composition.out_of_range.
/// Source: see carbon_equivalent_card(); docs/methods/carbon-equivalent.md.
/// Accuracy: exact evaluation of the formula.
/// Tests: material/carbon_equivalent - published heats and examples.
[[nodiscard]] base::Outcome<CarbonEquivalent> carbon_equivalent(CarbonFormula formula,
                                                                const Composition& composition);

/// The highest a carbon equivalent can be when no element is above its limit and CE(IIW) not above
/// the standard's cap on it.
/// Units: mass-% -> mass-%.      Frame: none.
/// Pre: as carbon_equivalent; cap > 0.
/// Outside: as carbon_equivalent, of the limits' carbon.
/// Source: none - a linear programme with one constraint: first what adds most to the formula for
///   what it takes of the cap. In CEN carbon comes first, for its factor rises with it and is below
///   1. Findings speak of the composition found.
/// Accuracy: exact.
/// Tests: material/grade_limits - closed-form, law against random compositions.
[[nodiscard]] base::Outcome<CarbonEquivalent> highest_carbon_equivalent(
    CarbonFormula formula, const Composition& limits, std::optional<double> cev_cap);

/// Yurioka's accommodation factor A(C) of CEN: how far alloying counts at a given carbon content.
/// Units: mass-% -> ratio.      Frame: none.
/// Pre: carbon finite, 0..100; otherwise ContractViolation.
/// Outside: n/a.
/// Source: tanh expression FROM MEMORY; docs/methods/carbon-equivalent.md.
/// Accuracy: exact evaluation of the expression.
/// Tests: material/carbon_equivalent - remembered table.
[[nodiscard]] double accommodation_factor_ratio(double carbon_percent);

[[nodiscard]] const base::FigureCard& carbon_equivalent_card();

}  // namespace seamturn::material
