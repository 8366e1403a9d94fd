// SPDX-License-Identifier: MIT
// A tour under exchange: two neighbouring parts change places, each in its own order.
#pragma once

#include <cstdint>
#include <vector>

#include "detail_tour_layers.hpp"

namespace seamturn::order {

/// The parts [begin, middle) and [middle, end) change places. Pre: 0 < begin < middle < end < size.
struct Exchange {
  int begin = 0;
  int middle = 0;
  int end = 0;
};

/// A tour and where to find what in it.
struct TourPath {
  struct Here {
    int vertex = 0;
    int place = 0;
  };
  std::vector<int> tour;     ///< vertex by place
  std::vector<Here> here;    ///< by group
  std::vector<double> step;  ///< cost from a place to the next

  [[nodiscard]] double cost() const;
};

class TourState {
 public:
  /// Pre: all precedence kept.
  TourState(const TourTable& table, const std::vector<int>& tour);

  [[nodiscard]] const TourPath& path() const { return path_; }
  /// Back to a path kept before.
  void take(const TourPath& path) { path_ = path; }

  /// Precedence allows it.
  [[nodiscard]] bool may(const Exchange& exchange);
  /// Marks the groups beside the cuts.
  void apply(const Exchange& exchange);
  /// Takes the best exchange of every marked group until no mark is left.
  void descend();
  /// The best alternatives for this order of groups; marks what that changes. True when it gains.
  bool choose_alternatives();
  void mark_all();

  /// Exchanges looked at, and what else takes as long.
  [[nodiscard]] std::int64_t work() const { return work_ + layers_.work(); }
  void count(std::int64_t work) { work_ += work; }

 private:
  struct Gap;

  [[nodiscard]] bool find_best(int place, Exchange& best);
  void find_third(const Gap& gap, Exchange& best, double& best_gain);
  void refresh(int begin, int end);
  void mark(int place);

  const TourTable& table_;
  TourPath path_;
  TourLayers layers_;
  std::vector<int> marks_;
  std::vector<char> marked_;        ///< by group
  std::vector<std::uint64_t> set_;  ///< groups of a part
  std::vector<int> chosen_;
  std::int64_t work_ = 0;
};

}  // namespace seamturn::order
