// SPDX-License-Identifier: MIT
// Searches from several starts, each round twice as long as the one before.
#pragma once

#include <cstdint>

#include "detail_job_tour.hpp"
#include "detail_precedence.hpp"
#include "seamturn/order/search.hpp"

namespace seamturn::order {

/// The best order so far, and the rounds that make it better. What a round does hangs on its number
/// and on what the rounds before found, never on the effort, which only cuts the last one off: more
/// effort is never worse.
class Rounds {
 public:
  /// `tour` may be null: then no round starts from an order without a clock.
  Rounds(const Job& job,
         const Precedence& precedence,
         const JobTour* tour,
         const SearchParams& params,
         double enough_s);

  /// Takes it when it is shorter.
  void offer(const Sequence& sequence);
  void run_first();
  void run_rest();

  [[nodiscard]] const Sequence& best() const { return best_; }
  /// With what its entries and turns are worth.
  [[nodiscard]] double best_s() const { return best_s_; }
  [[nodiscard]] bool is_enough() const { return best_s_ <= enough_s_; }
  /// The shortest tour the rounds have seen; empty: none.
  [[nodiscard]] const Tour& best_tour() const { return best_tour_; }

 private:
  [[nodiscard]] Sequence other_start(int round, std::int64_t length);
  [[nodiscard]] Sequence improved(const Sequence& start,
                                  int run,
                                  std::int64_t length,
                                  bool tell) const;
  void run_two(int round, std::int64_t length);

  const Job& job_;
  const Precedence& precedence_;
  const JobTour* tour_;
  const SearchParams& params_;
  double enough_s_;
  std::int64_t spent_ = 0;
  Sequence best_;
  double best_s_ = never_s;
  Tour best_tour_;
  double best_tour_cost_ = never_s;
};

}  // namespace seamturn::order
