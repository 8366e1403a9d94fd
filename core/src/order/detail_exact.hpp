// SPDX-License-Identifier: MIT
// The best order of a small job, proved.
#pragma once

#include <cstdint>
#include <optional>

#include "detail_precedence.hpp"
#include "seamturn/order/job.hpp"

namespace seamturn::order {

/// What the exact search found out.
struct Exact {
  bool complete = false;  ///< every order was looked at or ruled out
  Sequence better;        ///< shorter than the known cycle; empty when none is
};

/// Looks for orders shorter than `known_s`. Gives up above `states` partial orders kept.
[[nodiscard]] Exact search_exactly(const Job& job,
                                   const Precedence& precedence,
                                   double known_s,
                                   std::int64_t states);

}  // namespace seamturn::order
