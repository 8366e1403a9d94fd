// SPDX-License-Identifier: MIT
// Local search on the clock.
#pragma once

#include "detail_precedence.hpp"
#include "seamturn/order/search.hpp"

namespace seamturn::order {

/// Improves a sequence until the effort is spent or `enough_s` is reached. The way it goes does not
/// depend on the effort, which only cuts it off: more effort is never worse.
[[nodiscard]] Sequence improve(const Job& job,
                               const Precedence& precedence,
                               const Sequence& start,
                               const SearchParams& params,
                               double enough_s);

}  // namespace seamturn::order
