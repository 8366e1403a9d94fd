// SPDX-License-Identifier: MIT
// Many orders grown side by side on the clock, the least promising dropped.
#pragma once

#include <cstdint>

#include "detail_precedence.hpp"
#include "seamturn/order/job.hpp"

namespace seamturn::order {

/// Orders grow block by block; after every block the `width` with the least end to be hoped for are
/// kept, and of those with the same blocks done and the same last option the earliest. Waits are
/// on the clock, so that other blocks fill them. Never proves anything.
/// Cost: blocks x width x options of the blocks ready. Pre: check_job passed; width >= 1.
/// Source: docs/methods/order.md. Tests: order/beam - law, brute force.
[[nodiscard]] Sequence beam_sequence(const Job& job,
                                     const Precedence& precedence,
                                     std::size_t width);

/// Simulated block visits it takes at most.
[[nodiscard]] std::int64_t beam_work(const Job& job, std::size_t width);

}  // namespace seamturn::order
