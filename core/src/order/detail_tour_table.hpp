// SPDX-License-Identifier: MIT
// The tour problem laid out for search: alternatives of a group side by side, a price instead of
// every step that is not permitted, and for every vertex the groups that may come next, near first.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "detail_tour.hpp"

namespace seamturn::order {

/// A group that may come next.
struct NextGroup {
  double least = 0.0;  ///< over its alternatives
  int group = 0;
};

class TourTable {
 public:
  TourTable(const TourProblem& problem, const TourOrder& order);

  [[nodiscard]] int groups() const { return static_cast<int>(first_.size()) - 1; }
  [[nodiscard]] int vertices() const { return static_cast<int>(group_of_.size()); }
  [[nodiscard]] int first(int group) const { return first_[static_cast<std::size_t>(group)]; }
  [[nodiscard]] int end(int group) const { return first_[static_cast<std::size_t>(group) + 1]; }
  [[nodiscard]] int group_of(int vertex) const {
    return group_of_[static_cast<std::size_t>(vertex)];
  }
  [[nodiscard]] bool has_alternatives() const { return groups() < vertices(); }
  /// Costs from a vertex to all others.
  [[nodiscard]] const double* row(int from) const {
    return &cost_[static_cast<std::size_t>(from) * group_of_.size()];
  }
  [[nodiscard]] double cost(int from, int to) const { return row(from)[to]; }
  /// More than all permitted steps of any tour together.
  [[nodiscard]] double penalty() const { return penalty_; }
  /// Less is rounding.
  [[nodiscard]] double least_gain() const { return penalty_ * 1e-13; }
  [[nodiscard]] std::span<const NextGroup> next(int vertex) const {
    const auto v = static_cast<std::size_t>(vertex);
    return {&next_[next_begin_[v]], next_begin_[v + 1] - next_begin_[v]};
  }
  [[nodiscard]] const TourOrder& order() const { return order_; }

  [[nodiscard]] std::vector<int> from_outside(const Tour& tour) const;
  [[nodiscard]] Tour to_outside(const std::vector<int>& tour) const;

 private:
  void set_costs(const TourProblem& problem);
  void set_next();

  const TourOrder& order_;
  std::vector<int> first_;
  std::vector<int> group_of_;
  std::vector<int> outside_;  ///< the problem's vertex
  std::vector<double> cost_;
  double penalty_ = 0.0;
  std::vector<std::size_t> next_begin_;
  std::vector<NextGroup> next_;
};

}  // namespace seamturn::order
