// SPDX-License-Identifier: MIT
// The order without a clock: a path through groups of alternatives, one vertex of each group, some
// groups before others, and a cost from vertex to vertex. What waits, touches and cleaning add is
// not in it, so its least cost is a bound of the clock's.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "seamturn/order/job.hpp"

namespace seamturn::order {

/// Group 0 stands first and the last group last; both have one vertex.
struct TourProblem {
  std::vector<int> group_of;               ///< per vertex
  std::vector<std::vector<int>> vertices;  ///< per group, at least one each
  std::vector<double> cost;                ///< [from * vertex count + to]; never_s: not permitted
  std::vector<std::vector<int>> before;    ///< per group: groups that must stand before it

  [[nodiscard]] std::size_t vertex_count() const { return group_of.size(); }
  [[nodiscard]] std::size_t group_count() const { return vertices.size(); }
  [[nodiscard]] double from_to(int from, int to) const {
    return cost[static_cast<std::size_t>(from) * group_of.size() + static_cast<std::size_t>(to)];
  }
};

/// One vertex of each group, in order.
using Tour = std::vector<int>;

/// Which groups stand before which, directly or through others; groups as bits of 64-bit words.
class TourOrder {
 public:
  /// Pre: no cycle. Cost: groups x direct links / 64.
  explicit TourOrder(const TourProblem& problem);

  [[nodiscard]] std::size_t words() const { return words_; }
  [[nodiscard]] bool before(int a, int b) const {
    const auto bit = static_cast<std::size_t>(a);
    return (leaders(b)[bit / 64] >> (bit % 64) & 1) != 0;
  }
  /// All groups before one, words() words.
  [[nodiscard]] const std::uint64_t* leaders(int group) const {
    return &leaders_[static_cast<std::size_t>(group) * words_];
  }
  /// All groups after one.
  [[nodiscard]] const std::uint64_t* followers(int group) const {
    return &followers_[static_cast<std::size_t>(group) * words_];
  }
  /// Every group after all it must follow; group 0 first, the last one last.
  [[nodiscard]] const std::vector<int>& sorted() const { return sorted_; }

 private:
  std::size_t words_ = 0;
  std::vector<std::uint64_t> leaders_;
  std::vector<std::uint64_t> followers_;
  std::vector<int> sorted_;
};

/// True when a tour may have b right behind a: not against the order, and nothing must stand
/// between.
[[nodiscard]] bool may_follow(const TourOrder& order, int a, int b);

/// Pre: neighbours in range. never_s when a step is not permitted.
[[nodiscard]] double tour_cost(const TourProblem& problem, const Tour& tour);

/// One vertex of every group, first and last in place, all precedence kept, every step permitted.
[[nodiscard]] bool is_tour(const TourProblem& problem, const TourOrder& order, const Tour& tour);

}  // namespace seamturn::order
