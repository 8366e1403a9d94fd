// SPDX-License-Identifier: MIT
// Prices of groups that make the cheapest walk come to each group once, as far as prices can.
#pragma once

#include "detail_tour_walk.hpp"

namespace seamturn::order {

/// The bound by walks: net, memories and prices get better the more work is spent.
class WalkBound {
 public:
  /// Pre: net_size() is bearable. The assignment gives the first prices. How patient it
  /// is depends on the work that may be spent in all.
  WalkBound(const TourProblem& problem,
            const TourOrder& order,
            const GrainCosts& costs,
            const Assignment& assignment,
            std::int64_t whole_work);

  /// Goes on until that much work is spent in all, or no walk is below the cut.
  void improve(std::int64_t work_until);
  /// Takes out what the best prices rule out, looking from both ends.
  void cut();
  /// A cheaper tour was found.
  void lower_cut(Grain cut) { cut_ = cut; }
  /// Ways on at the best prices, for the completion of partial orders.
  [[nodiscard]] Ways ways();

  /// No tour below the cut is below this; the cut itself when none is left.
  [[nodiscard]] Grain bound() const { return done_ ? cut_ : bound_; }
  [[nodiscard]] bool done() const { return done_; }
  [[nodiscard]] std::int64_t work() const { return work_; }
  [[nodiscard]] const WalkNet& net() const { return net_; }
  [[nodiscard]] const Prices& prices() const { return best_; }
  [[nodiscard]] const Memories& memories() const { return memories_; }
  [[nodiscard]] Grain cut_grains() const { return cut_; }
  /// The cheapest walk at the best prices.
  [[nodiscard]] const std::vector<std::uint16_t>& walk() const { return walk_; }

 private:
  struct Look {
    Grain bound = 0;
    std::vector<std::uint16_t> walk;
  };
  Look look(const Prices& prices);
  void step(const Look& seen);
  void take(Look seen);
  [[nodiscard]] double shrink_for(std::int64_t look_work) const;
  void restart();
  bool remember();

  WalkNet net_;
  Memories memories_;
  Recalls recalls_;
  Grain cut_ = 0;
  std::int64_t whole_work_ = 0;
  bool done_ = false;
  bool remembering_ = false;  ///< memories are in use
  Grain bound_ = 0;
  std::int64_t work_ = 0;
  Prices best_;
  std::vector<std::uint16_t> walk_;
  Prices trial_;
  std::vector<double> direction_;
  double stride_ = 1.0;
  double shrink_ = 0.97;  ///< of the stride, when a look was in vain
  int idle_ = 0;          ///< looks since the bound rose
};

}  // namespace seamturn::order
