// SPDX-License-Identifier: MIT
#include "seamturn/order/search.hpp"

#include <algorithm>

#include "detail_exact.hpp"
#include "detail_improve.hpp"
#include "detail_work.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::order {

namespace {

constexpr std::int64_t first_share = 8;  // part of the effort spent before the exact search

}  // namespace

Found find_order(const Job& job, const SearchParams& params) {
  const auto checked = check_job(job);
  SEAMTURN_REQUIRE(checked.has_value(), checked.error().text);
  const Precedence precedence(job);
  Found found;
  found.lower_bound_s = lower_bound_s(job);
  // A cycle as short as the bound is the best; the bound is lowered by its rounding.
  const double enough_s = found.lower_bound_s * (1.0 + 1e-9);
  SearchParams first = params;  // enough for a small job, and for the exact search to rule out much
  first.effort = params.effort / first_share;
  found.sequence = improve(job, precedence, greedy_sequence(job), first, enough_s);
  found.cycle_s = cycle_time_s(job, found.sequence);
  found.proved_best = job.blocks.empty() || found.cycle_s <= enough_s;
  if (!found.proved_best && !may_cool_down(job)) {
    const Exact exact = search_exactly(job, precedence, found.cycle_s, params.exact_states);
    if (!exact.better.empty()) {
      found.sequence = exact.better;
      found.cycle_s = cycle_time_s(job, found.sequence);
    }
    found.proved_best = exact.complete;
  }
  if (!found.proved_best) {
    found.sequence = improve(job, precedence, greedy_sequence(job), params, enough_s);
    found.cycle_s = cycle_time_s(job, found.sequence);
    found.proved_best = found.cycle_s <= enough_s;
  }
  found.lower_bound_s =
      found.proved_best ? found.cycle_s : std::min(found.lower_bound_s, found.cycle_s);
  if (params.progress) {
    params.progress(found.cycle_s);
  }
  return found;
}

}  // namespace seamturn::order
