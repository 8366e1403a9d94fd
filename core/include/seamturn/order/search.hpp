// SPDX-License-Identifier: MIT
// Finds a good order, exactly where the job is small, and always a bound beside it.
#pragma once

#include <cstdint>
#include <functional>
#include <span>
#include <string_view>

#include "seamturn/order/job.hpp"

namespace seamturn::order {

/// How much work a search may spend. Counted, not timed: same job, same order, on any machine.
enum class Effort { quick, normal, lengthy };
/// In the order of Effort, as the command line writes them: "quick", "normal", "long".
[[nodiscard]] std::span<const std::string_view> effort_names();

struct SearchParams {
  std::uint64_t seed = 1;
  std::int64_t effort = 200000;        ///< simulated block visits; more is never worse
  std::int64_t exact_states = 200000;  ///< partial orders the exact search may keep; 0: none
  std::int64_t bound_work = 0;         ///< steps looked at for the bound without a clock; 0: none
  std::int64_t tour_states = 0;        ///< partial orders without a clock the proof may keep
  bool two_cores = false;              ///< two starts at a time; changes the time it takes only
  Sequence start;                      ///< of an earlier search; empty, or a valid sequence
  std::function<void(double best_s)> progress;  ///< may be empty
};
[[nodiscard]] SearchParams search_params(Effort effort);

struct Found {
  Sequence sequence;
  double cycle_s = 0.0;
  double lower_bound_s = 0.0;  ///< no order of this job can be shorter
  /// None is better in this model at these times: shorter, or with Job::worth counted where the job
  /// has one.
  bool proved_best = false;
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
