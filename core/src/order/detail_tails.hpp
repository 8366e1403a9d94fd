// SPDX-License-Identifier: MIT
// What lies within a block and what must still follow it, whatever the order.
#pragma once

#include <vector>

#include "detail_precedence.hpp"
#include "detail_run.hpp"
#include "seamturn/order/job.hpp"

namespace seamturn::order {

/// Of a block welded with one option, from its first arc (an operation's beginning): its last pass,
/// and when the torch is free to move.
struct Within {
  ZoneState last;
  double leave_s = 0.0;
};
[[nodiscard]] Within laid_within(const Job& job, const Block& block, const Option& option);

/// Seconds of a block that lie before its first arc, from the moment the torch leaves for it.
[[nodiscard]] double before_first_arc_s(const Job& job, const Block& block);

/// Per block, from its first arc (an operation's beginning) to the end of the cycle at least: its
/// work, and the longest chain of what must follow it, with the waits of one place.
/// Cost: links times pairs of options. Pre: check_job passed. Source: docs/methods/order.md.
/// Tests: order/tails - law against all orders.
[[nodiscard]] std::vector<double> tails_s(const Job& job,
                                          const Precedence& precedence,
                                          const Zones& zones);

}  // namespace seamturn::order
