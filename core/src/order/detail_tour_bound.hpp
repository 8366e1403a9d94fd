// SPDX-License-Identifier: MIT
// Costs in whole grains, so that sums of bounds carry no rounding, and the bound of the cheapest
// way to give every group one step in and one step out.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "detail_tour.hpp"

namespace seamturn::order {

using Grain = std::int64_t;
/// Of a step that is not permitted; sums of a few of them do not overflow.
inline constexpr Grain never_grain = Grain{1} << 60;

/// The costs of a problem rounded down to grains. No tour has more grains than its cost says.
struct GrainCosts {
  std::vector<Grain> steps;  ///< [from * vertex count + to]; never_grain: not permitted, too dear
  double grains = 1.0;       ///< per unit of cost
  Grain whole = 0;           ///< tours are multiples of it, when all costs are whole numbers; or 0
  Grain cut = 0;             ///< tours cheaper than the known cost have fewer grains
};

/// Pre: costs not negative, 0 < known, finite. "Cheaper" means by more than 5e-10 of the known
/// cost, or, when all costs are multiples of a whole number, by that number.
[[nodiscard]] GrainCosts grain_costs(const TourProblem& problem, double known);

/// Grains as a cost, never above it; whole costs are rounded up to the next possible one.
[[nodiscard]] double cost_of(const GrainCosts& costs, Grain grains);

/// A sum over groups that no tour undercuts, and what each group contributes: the cost of a step
/// from a to b is never below out[a] + in[b].
struct Assignment {
  Grain sum = 0;  ///< never_grain or more: there is no tour
  std::vector<Grain> out;
  std::vector<Grain> in;
};

/// Pre: two groups at least. Cost: groups^3 at worst.
[[nodiscard]] Assignment assign_groups(const TourProblem& problem,
                                       const TourOrder& order,
                                       const std::vector<Grain>& steps);

/// The least cost of a step out of every group but the last and into every group but the first, by
/// the dearest of its alternatives' cheapest steps. never_s: there is no tour.
/// Pre: costs not negative. Cost: groups^3 at worst.
[[nodiscard]] double assignment_bound(const TourProblem& problem, const TourOrder& order);

/// Weaker and sooner: only the steps out, or only the steps in. Cost: vertices^2.
[[nodiscard]] double one_sided_bound(const TourProblem& problem, const TourOrder& order);

}  // namespace seamturn::order
