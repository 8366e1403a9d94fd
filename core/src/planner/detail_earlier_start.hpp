// SPDX-License-Identifier: MIT
// A build that begins with the order of an earlier plan.
#pragma once

#include "detail_start_sequence.hpp"
#include "seamturn/order/search.hpp"

namespace seamturn::planner::detail {

/// Sequences of stages one after another: the nozzle comes out of one as it goes into the next.
class ChainClock {
 public:
  /// Pre: the sequence is valid.
  void run(order::Job job, const order::Sequence& sequence);
  [[nodiscard]] double objective_s() const { return objective_s_; }

 private:
  double objective_s_ = 0.0;
  double arc_since_clean_s_ = 0.0;
};

/// The sequence a search would have begun with, as its answer. Nothing is proved.
[[nodiscard]] order::Found as_begun(const order::Job& job, const order::Sequence& sequence);

/// Note plan.start.used, or warning plan.start.unused where no block was known.
[[nodiscard]] base::Finding told(const EarlierOrder& earlier, const StartCounts& counts);

}  // namespace seamturn::planner::detail
