// SPDX-License-Identifier: MIT
// Runs a sequence on the clock.
#pragma once

#include "seamturn/base/outcome.hpp"
#include "seamturn/order/job.hpp"
#include "seamturn/timeline/clock.hpp"

namespace seamturn::order {

/// Checks a job: options present, indices in range, no cycle in `after`.
/// Outside: refuses order.block.no_option, order.block.no_pass, order.index, order.value,
/// order.cycle (naming the blocks, and the rule of each link that has one). The text holds every
/// doubt, a line each; the code is that of the first. Source: none - rules of this model. Tests:
/// order/check.
[[nodiscard]] base::Outcome<bool> check_job(const Job& job);

/// True when every block stands once and after all it must follow.
[[nodiscard]] bool is_valid(const Job& job, const Sequence& sequence);

/// The cycle of a sequence, from the first move to the return home. Rules in docs/methods/order.md:
/// turn with the robot home; touch once per zone and stance visit; clean when due between passes;
/// wait before a pass until the gap to the zone's previous pass is kept at both its ends.
/// Pre: is_valid. Tests: order/simulate - closed-form, law (seconds of each kind add up).
[[nodiscard]] timeline::Clock simulate(const Job& job, const Sequence& sequence);
/// Only the total; same value as simulate(...).now_s(), faster.
[[nodiscard]] double cycle_time_s(const Job& job, const Sequence& sequence);

/// What a shop counts beside seconds.
struct Tally {
  int entries = 0;  ///< of people; work in a row, the robot at home all the while, is one
  int turns = 0;    ///< to another stance, the last one to where the part is left included
};
/// Pre: is_valid. Tests: order/objective - closed-form, law.
[[nodiscard]] Tally tally(const Job& job, const Sequence& sequence);
/// Cycle, and what its entries and turns are worth by Job::worth: what a search is to make small.
/// Pre: is_valid. Source: docs/methods/order.md. Tests: order/objective - closed-form, law.
[[nodiscard]] double objective_s(const Job& job, const Sequence& sequence);

}  // namespace seamturn::order
