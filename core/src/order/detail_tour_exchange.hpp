// SPDX-License-Identifier: MIT
// A tour under exchange: two neighbouring parts change places, each in its own order.
#pragma once

#include <cstdint>
#include <vector>

#include "detail_tour_table.hpp"

namespace seamturn::order {

/// Parts [begin, middle) and [middle, end) change places.
struct Exchange {
  int begin = 0;
  int middle = 0;
  int end = 0;
};

class TourState {
 public:
  TourState(const TourTable& table, const std::vector<int>& tour);

  [[nodiscard]] const std::vector<int>& tour() const { return tour_; }
  [[nodiscard]] double cost() const;
  [[nodiscard]] std::int64_t work() const { return work_; }
  void count(std::int64_t work) { work_ += work; }

  void take(const std::vector<int>& tour);
  [[nodiscard]] bool may(const Exchange& exchange);
  /// Changes places and marks the groups beside the cuts.
  void apply(const Exchange& exchange);
  /// Re-chooses all alternatives: the best for this order of groups. True when that gains.
  bool choose_alternatives();
  /// Takes the best exchange of every marked group until no mark is left.
  void descend();
  void mark(int place);
  void mark_all();

  bool find_best(int place, Exchange& best);

 private:
  void refresh(int begin, int end);

  const TourTable& table_;
  std::vector<int> tour_;     ///< vertex by place
  std::vector<int> place_;    ///< by group
  std::vector<double> step_;  ///< cost from place to the next
  std::vector<int> stack_;    ///< marked groups
  std::vector<char> marked_;
  std::vector<int> scratch_;
  std::vector<std::uint64_t> set_;
  std::vector<double> layer_, layer2_;
  std::vector<int> came_;
  std::int64_t work_ = 0;
};

}  // namespace seamturn::order
