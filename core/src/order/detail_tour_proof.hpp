// SPDX-License-Identifier: MIT
// How far from the best a tour may be, and the search through all that may still be better.
#pragma once

#include <cstddef>
#include <cstdint>

#include "detail_tour.hpp"

namespace seamturn::order {

struct TourProofParams {
  std::int64_t bound_work = 0;  ///< steps looked at for the bound; 0: no bound by walks
  std::int64_t states = 0;      ///< partial tours kept, 600 MB at about 8 million; 0: none
  std::size_t beam = 3000;      ///< partial tours kept per length when not all fit
};

struct TourProof {
  double lower_bound = 0.0;  ///< no tour costs less
  bool proved = false;       ///< none is cheaper than the known one or `better`, by 1e-9 of it
  Tour better;               ///< cheaper than the known one; empty: none found
  std::int64_t work = 0;
  std::int64_t states = 0;
};

/// Pre: costs not negative; `known` is a tour. Deterministic.
[[nodiscard]] TourProof prove_tour(const TourProblem& problem,
                                   const TourOrder& order,
                                   const Tour& known,
                                   const TourProofParams& params);

/// The same with nothing but the cost of a tour that somebody else knows.
[[nodiscard]] TourProof prove_below(const TourProblem& problem,
                                    const TourOrder& order,
                                    double known,
                                    const TourProofParams& params);

}  // namespace seamturn::order
