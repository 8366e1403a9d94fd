// SPDX-License-Identifier: MIT
// Finds a good order, exactly where the job is small, and always a bound beside it.
#pragma once

#include <cstdint>
#include <functional>

#include "seamturn/order/job.hpp"

namespace seamturn::order {

struct SearchParams {
  std::uint64_t seed = 1;
  std::int64_t effort = 200000;        ///< simulated block visits, not seconds; more is never worse
  std::int64_t exact_states = 200000;  ///< partial orders the exact search may keep; 0: none
  std::function<void(double best_s)> progress;  ///< may be empty
};

struct Found {
  Sequence sequence;
  double cycle_s = 0.0;
  double lower_bound_s = 0.0;  ///< no order of this job can be shorter
  bool proved_best = false;    ///< none is shorter in this model at these times
};

/// Pre: check_job passed. Same job and params, same result.
/// Source: docs/methods/order.md. Tests: order/search - brute force on random small jobs, bound
/// law.
[[nodiscard]] Found find_order(const Job& job, const SearchParams& params);

/// A valid lower bound of the cycle: the longest chain with its waits, or the sum of arcs,
/// overheads, touches, cleanings, turns and air moves that no order avoids. Pre: check_job passed.
/// Source: docs/methods/order.md. Tests: order/search - law, brute force.
[[nodiscard]] double lower_bound_s(const Job& job);

/// Always the block that adds the least avoidable time: the order a person would start from.
/// Pre: check_job passed. Source: docs/methods/order.md. Tests: order/search - law.
[[nodiscard]] Sequence greedy_sequence(const Job& job);

}  // namespace seamturn::order
