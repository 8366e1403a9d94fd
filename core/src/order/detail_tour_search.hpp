// SPDX-License-Identifier: MIT
// Local search over the order without a clock.
#pragma once

#include <cstdint>

#include "detail_tour.hpp"

namespace seamturn::order {

struct TourSearchParams {
  std::uint64_t seed = 1;
  std::int64_t effort = 100'000'000;  ///< exchanges looked at and their like
  double enough = 0.0;                ///< stop at a tour of this cost or less
};

struct TourFound {
  Tour tour;  ///< empty: none found, which does not prove that there is none
  double cost = never_s;
  std::int64_t work = 0;  ///< spent; over the effort by one round of exchanges at most
};

/// Looks for a short tour from a start, or from one it builds. More effort is never worse: the way
/// does not depend on it.
[[nodiscard]] TourFound search_tour(const TourProblem& problem,
                                    const TourOrder& order,
                                    const Tour& start,
                                    const TourSearchParams& params);

/// A tour in which every group is close to the one before. Steps not permitted are avoided as far
/// as can be seen from the step before; search_tour mends what is left.
/// Post: all precedence kept.
[[nodiscard]] Tour nearest_tour(const TourProblem& problem, const TourOrder& order);

}  // namespace seamturn::order
