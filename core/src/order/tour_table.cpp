// SPDX-License-Identifier: MIT
#include "detail_tour_table.hpp"

#include <algorithm>

namespace seamturn::order {

TourTable::TourTable(const TourProblem& problem, const TourOrder& order) : order_(order) {
  first_.push_back(0);
  for (std::size_t group = 0; group < problem.group_count(); ++group) {
    for (const int vertex : problem.vertices[group]) {
      outside_.push_back(vertex);
      group_of_.push_back(static_cast<int>(group));
    }
    first_.push_back(static_cast<int>(outside_.size()));
  }
  set_costs(problem);
  set_next();
}

void TourTable::set_costs(const TourProblem& problem) {
  double sum = 0.0;
  for (std::size_t group = 0; group < problem.group_count(); ++group) {
    double most = 0.0;
    for (const int from : problem.vertices[group]) {
      for (const int to : outside_) {
        const double cost = problem.from_to(from, to);
        if (cost < never_s) most = std::max(most, cost);
      }
    }
    sum += most;
  }
  penalty_ = 1.0 + 2.0 * sum;
  for (const int from : outside_) {
    for (const int to : outside_) {
      const double cost = problem.from_to(from, to);
      cost_.push_back(cost < never_s ? cost : penalty_);
    }
  }
}

void TourTable::set_next() {
  next_begin_.push_back(0);
  for (int from = 0; from < vertices(); ++from) {
    for (int group = 0; group < groups(); ++group) {
      if (!may_follow(order_, group_of(from), group)) continue;
      const double* begin = row(from) + first(group);
      next_.push_back({*std::min_element(begin, row(from) + end(group)), group});
    }
    const auto begin = next_.begin() + static_cast<std::ptrdiff_t>(next_begin_.back());
    std::stable_sort(begin, next_.end(), [](const NextGroup& a, const NextGroup& b) {
      return a.least < b.least;
    });
    next_begin_.push_back(next_.size());
  }
}

std::vector<int> TourTable::from_outside(const Tour& tour) const {
  std::vector<int> inside(outside_.size());
  for (std::size_t i = 0; i < outside_.size(); ++i) {
    inside[static_cast<std::size_t>(outside_[i])] = static_cast<int>(i);
  }
  std::vector<int> ours;
  for (const int vertex : tour) ours.push_back(inside[static_cast<std::size_t>(vertex)]);
  return ours;
}

Tour TourTable::to_outside(const std::vector<int>& tour) const {
  Tour theirs;
  for (const int vertex : tour) theirs.push_back(outside_[static_cast<std::size_t>(vertex)]);
  return theirs;
}

}  // namespace seamturn::order
