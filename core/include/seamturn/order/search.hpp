// SPDX-License-Identifier: MIT
// Finds a good order, exactly where the job is small, and always a bound beside it.
#pragma once

#include <cstdint>
#include <functional>

#include "seamturn/order/job.hpp"

namespace seamturn::order {

struct SearchParams {
  std::uint64_t seed = 1;
  std::int64_t effort = 200000;   ///< simulated block visits, not seconds
  std::int64_t exact_states = 200000;  ///< exact search only when at most so many states
  std::function<void(double best_s)> progress;  ///< may be empty
};

struct Found {
  Sequence sequence;
  double cycle_s = 0.0;
  double lower_bound_s = 0.0;   ///< no order of this job can be shorter
  bool proved_best = false;     ///< none is shorter in this model at these times
};

/// Pre: check_job passed. Same job and params, same result.
/// Source: docs/methods/order.md. Tests: order/search - brute force on random small jobs, bound law.
[[nodiscard]] Found find_order(const Job& job, const SearchParams& params);

/// A valid lower bound of the cycle: arcs, overheads, touches at least once per zone, cleanings by
/// arc time, and the cheapest way of reaching every stance that must be visited.
[[nodiscard]] double lower_bound_s(const Job& job);

/// Always the cheapest next block: the order a person would start from.
[[nodiscard]] Sequence greedy_sequence(const Job& job);

}  // namespace seamturn::order
