// SPDX-License-Identifier: MIT
#include "seamturn/order/search.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "detail_exact.hpp"
#include "detail_rounds.hpp"
#include "detail_tour_proof.hpp"
#include "detail_work.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::order {

namespace {

constexpr std::size_t most_tour_vertices = 3000;  // its table has the square of it

/// A bound by the order without a clock: what it costs at least, and what every order costs
/// besides. A shorter one it finds on the way is tried on the clock.
double tour_bound_s(const JobTour& tour, const SearchParams& params, Rounds& rounds) {
  Tour known = tour_of(tour, rounds.best());
  const Tour& seen = rounds.best_tour();
  const bool seen_is_shorter =
      !seen.empty() && tour_cost(tour.problem, seen) < tour_cost(tour.problem, known);
  if (seen_is_shorter) known = seen;
  TourProofParams proof;
  proof.bound_work = params.bound_work;
  proof.states = params.tour_states;
  const TourProof found = prove_tour(tour.problem, TourOrder(tour.problem), known, proof);
  if (!found.better.empty()) rounds.offer(sequence_of(tour, found.better));
  return tour.always_s + found.lower_bound;
}

/// No order has less seconds and worth of turns together: waits only shrink when turns take longer.
double least_objective_s(const Job& job, double least_cycle_s) {
  if (!(job.worth.stance_s > 0.0)) return least_cycle_s;
  Job dearer = job;
  for (auto& row : dearer.turn_s) {
    for (double& turn_s : row) turn_s += turn_s > 0.0 ? job.worth.stance_s : 0.0;
  }
  return std::max(least_cycle_s, lower_bound_s(dearer));
}

/// The shortest cycle of a job whose best order by price is known: how much the price costs.
double shortest_cycle_s(const Job& job,
                        const Precedence& precedence,
                        const Found& found,
                        std::int64_t states) {
  Job plain = job;
  plain.worth = Worth{};
  const Exact exact = search_exactly(plain, precedence, found.cycle_s, states);
  if (!exact.complete) return found.lower_bound_s;
  return exact.better.empty() ? found.cycle_s : cycle_time_s(job, exact.better);
}

}  // namespace

std::span<const std::string_view> effort_names() {
  static constexpr std::array<std::string_view, 3> names = {"quick", "normal", "long"};
  return names;
}

SearchParams search_params(Effort effort) {
  SearchParams params;
  switch (effort) {
    case Effort::quick:
      params.effort = 100'000;
      params.exact_states = 20'000;
      break;
    case Effort::normal:
      params.effort = 1'500'000;
      params.exact_states = 60'000;
      params.bound_work = 2'000'000;
      break;
    case Effort::lengthy:
      params.effort = 10'000'000;
      params.exact_states = 200'000;
      params.bound_work = 12'000'000;
      params.tour_states = 150'000;
      params.two_cores = true;
      break;
  }
  return params;
}

Found find_order(const Job& job, const SearchParams& params) {
  const auto checked = check_job(job);
  SEAMTURN_REQUIRE(checked.has_value(), checked.error().text);
  SEAMTURN_REQUIRE(params.start.empty() || is_valid(job, params.start), params.start.size());
  const Precedence precedence(job);
  Found found;
  found.lower_bound_s = lower_bound_s(job);
  // A cycle as short as the bound is the best; the bound is lowered by its rounding.
  const double enough_s = least_objective_s(job, found.lower_bound_s) * (1.0 + 1e-9);
  std::optional<JobTour> tour;
  const bool small = job_tour_size(job) <= most_tour_vertices;
  if (small && !job.blocks.empty()) tour = job_tour(job, precedence, number_zones(job));
  Rounds rounds(job, precedence, tour ? &*tour : nullptr, params, enough_s);
  rounds.offer(greedy_sequence(job));
  if (!params.start.empty()) rounds.offer(params.start);
  rounds.run_first();
  found.proved_best = job.blocks.empty() || rounds.is_enough();
  if (!found.proved_best && !may_cool_down(job)) {
    const Exact exact = search_exactly(job, precedence, rounds.best_s(), params.exact_states);
    if (!exact.better.empty()) rounds.offer(exact.better);
    found.proved_best = exact.complete;
  }
  if (!found.proved_best) rounds.run_rest();
  // Where waits rule, an order without them says nothing new.
  const bool may_raise =
      tour && tour->always_s + tour_cost(tour->problem, tour_of(*tour, rounds.best())) >
                  found.lower_bound_s * (1.0 + 1e-9);
  if (!found.proved_best && may_raise && params.bound_work > 0) {
    const double bound_s = tour_bound_s(*tour, params, rounds) * (1.0 - 1e-11);
    found.lower_bound_s = std::max(found.lower_bound_s, bound_s);
  }
  found.sequence = rounds.best();
  found.cycle_s = cycle_time_s(job, found.sequence);
  found.proved_best = found.proved_best || found.cycle_s <= found.lower_bound_s * (1.0 + 1e-9);
  const bool by_seconds = !(job.worth.stance_s > 0.0) && !(job.worth.entry_s > 0.0);
  if (found.proved_best && by_seconds) {
    found.lower_bound_s = found.cycle_s;
  } else if (found.proved_best && found.lower_bound_s < found.cycle_s && !may_cool_down(job)) {
    found.lower_bound_s = shortest_cycle_s(job, precedence, found, params.exact_states);
  }
  found.lower_bound_s = std::min(found.lower_bound_s, found.cycle_s);
  if (params.progress) params.progress(found.cycle_s);
  return found;
}

}  // namespace seamturn::order
