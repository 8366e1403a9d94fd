// SPDX-License-Identifier: MIT
#include "detail_tour_search.hpp"

#include <algorithm>
#include <array>

#include "detail_tour_exchange.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::order {

namespace {

constexpr std::int64_t kicks_per_group = 20;  // of the first cycle of rounds; doubled every cycle
constexpr std::array heat = {0.05, 0.015, 0.005};  // of a round: a loss taken, part of the best
constexpr std::size_t part_most = 8;               // groups of a part in a kick
constexpr std::size_t exchanges_most = 3;          // of a kick
constexpr int tries_most = 50;

/// Descents from kicked tours; a worse tour may be the next start, the less worse the later in a
/// round. Every round starts at the best.
class TourRounds {
 public:
  TourRounds(const TourTable& table, const std::vector<int>& start, const TourSearchParams& params)
      : params_(params),
        random_(base::named_seed(params.seed, "tour search")),
        least_gain_(table.least_gain()),
        state_(table, start),
        best_(state_.path()),
        best_cost_(best_.cost()) {}

  void run() {
    state_.mark_all();
    settle();
    note_best();
    if (best_.tour.size() < 4) return;  // one order only
    std::int64_t length = kicks_per_group * static_cast<std::int64_t>(best_.tour.size());
    for (std::size_t round = 0; !done(); ++round) {
      run_round(length, heat[round % heat.size()] * best_cost_);
      if ((round + 1) % heat.size() == 0) length *= 2;
    }
  }

  const std::vector<int>& best() const { return best_.tour; }
  std::int64_t work() const { return state_.work(); }

 private:
  bool done() const { return work() >= params_.effort || best_cost_ <= params_.enough; }

  void run_round(std::int64_t length, double loss_most) {
    TourPath current = best_;
    double current_cost = best_cost_;
    for (std::int64_t kicks = 0; kicks < length && !done(); ++kicks) {
      const double left = 1.0 - static_cast<double>(kicks) / static_cast<double>(length);
      state_.take(current);
      kick();
      settle();
      note_best();
      const double cost = state_.path().cost();
      if (cost - current_cost <= loss_most * left * random_.unit()) {
        current_cost = cost;
        current = state_.path();
      }
    }
  }

  /// Alternatives first: a new order with the old alternatives would be led back.
  void settle() {
    state_.choose_alternatives();
    state_.descend();
    while (state_.choose_alternatives()) state_.descend();
  }

  void note_best() {
    const double cost = state_.path().cost();
    if (cost >= best_cost_ - least_gain_) return;
    best_cost_ = cost;
    best_ = state_.path();
  }

  /// A few exchanges of short parts at random.
  void kick() {
    const int last = static_cast<int>(best_.tour.size()) - 1;
    const std::size_t wanted = 1 + random_.below(exchanges_most);
    std::size_t made = 0;
    for (int tries = 0; made < wanted && tries < tries_most; ++tries) {
      const int begin = 1 + static_cast<int>(random_.below(best_.tour.size() - 3));
      const int middle = begin + 1 + static_cast<int>(random_.below(part_most));
      const int end = middle + 1 + static_cast<int>(random_.below(part_most));
      state_.count(1);
      if (end > last || !state_.may({begin, middle, end})) continue;
      state_.apply({begin, middle, end});
      ++made;
    }
  }

  const TourSearchParams& params_;
  base::Random random_;
  double least_gain_;
  TourState state_;
  TourPath best_;
  double best_cost_;
};

}  // namespace

TourFound search_tour(const TourProblem& problem,
                      const TourOrder& order,
                      const Tour& start,
                      const TourSearchParams& params) {
  const TourTable table(problem, order);
  const Tour first = start.empty() ? nearest_tour(problem, order) : start;
  TourRounds rounds(table, table.from_outside(first), params);
  rounds.run();
  TourFound found;
  found.work = rounds.work();
  const Tour tour = table.to_outside(rounds.best());
  if (tour_cost(problem, tour) < never_s) {
    found.tour = tour;
    found.cost = tour_cost(problem, tour);
  }
  return found;
}

}  // namespace seamturn::order
