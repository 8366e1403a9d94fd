// SPDX-License-Identifier: MIT
#include "detail_rounds.hpp"

#include <algorithm>
#include <future>

#include "detail_beam.hpp"
#include "detail_improve.hpp"
#include "detail_tour_search.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::order {

namespace {

constexpr std::int64_t first_length = 20000;
constexpr std::int64_t tour_work_per_visit = 40;  // both take about as long

}  // namespace

Rounds::Rounds(const Job& job,
               const Precedence& precedence,
               const JobTour* tour,
               const SearchParams& params,
               double enough_s)
    : job_(job), precedence_(precedence), tour_(tour), params_(params), enough_s_(enough_s) {}

void Rounds::offer(const Sequence& sequence) {
  const double total_s = objective_s(job_, sequence);
  if (best_.empty() || total_s < best_s_) {
    best_ = sequence;
    best_s_ = total_s;
  }
}

Sequence Rounds::improved(const Sequence& start, int run, std::int64_t length, bool tell) const {
  SearchParams params = params_;
  params.seed = params_.seed + static_cast<std::uint64_t>(run);
  params.effort = length;
  if (!tell) params.progress = nullptr;
  return improve(job_, precedence_, start, params, enough_s_);
}

void Rounds::run_first() {
  const std::int64_t length = std::min(params_.effort, first_length);
  spent_ += length;
  offer(improved(best_, 0, length, true));
}

/// Not the best: an order from the beam, or one that is short without a clock.
Sequence Rounds::other_start(int round, std::int64_t length) {
  const std::size_t width = round < 4 ? 10 : 50;
  const bool beam_fits = beam_work(job_, width) <= 40 * length;
  if ((round % 2 == 1 && beam_fits) || tour_ == nullptr) {
    return beam_fits ? beam_sequence(job_, precedence_, width) : greedy_sequence(job_);
  }
  const TourOrder order(tour_->problem);
  TourSearchParams search;
  search.seed = params_.seed + static_cast<std::uint64_t>(round);
  search.effort = tour_work_per_visit * length;
  const TourFound found = search_tour(tour_->problem, order, tour_of(*tour_, best_), search);
  if (found.tour.empty()) return best_;
  if (found.cost < best_tour_cost_) {
    best_tour_cost_ = found.cost;
    best_tour_ = found.tour;
  }
  return sequence_of(*tour_, found.tour);
}

void Rounds::run_two(int round, std::int64_t length) {
  const auto from_other = [this, round, length] {
    return improved(other_start(round, length), 2 * round + 1, length, false);
  };
  const auto how = params_.two_cores ? std::launch::async : std::launch::deferred;
  std::future<Sequence> other = std::async(how, from_other);
  const Sequence own = improved(best_, 2 * round, length, true);
  const Sequence others = other.get();
  offer(own);
  offer(others);
}

void Rounds::run_rest() {
  std::int64_t length = first_length;
  for (int round = 1; spent_ < params_.effort && !is_enough(); ++round) {
    const std::int64_t left = params_.effort - spent_;
    if (left < 2 * length) {
      offer(improved(best_, 2 * round, std::min(left, length), true));
      return;
    }
    run_two(round, length);
    spent_ += 2 * length;
    length *= 2;
  }
}

}  // namespace seamturn::order
