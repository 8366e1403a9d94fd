// SPDX-License-Identifier: MIT
// Made-up tour problems, and their best tours by looking at all.
#pragma once

#include <algorithm>
#include <cmath>
#include <utility>

#include "order/detail_tour.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

struct TourMix {
  int groups = 6;  ///< the first and the last included
  int alternatives_most = 1;
  double precedence_share = 0.2;  ///< of all pairs, before what follows from others
  double forbidden_share = 0.0;   ///< of all steps
  bool whole_costs = true;        ///< small whole numbers: many ties
};

/// Precedence goes with a hidden order of the groups, so that there is no cycle.
inline order::TourProblem random_tour_problem(const TourMix& mix, base::Random& random) {
  order::TourProblem problem;
  const auto count = static_cast<std::size_t>(mix.groups);
  std::vector<std::size_t> hidden(count);
  for (std::size_t group = 0; group < count; ++group) {
    const bool inner = group > 0 && group + 1 < count;
    const auto most = static_cast<std::size_t>(inner ? mix.alternatives_most : 1);
    const std::size_t alternatives = 1 + random.below(most);
    problem.vertices.emplace_back();
    for (std::size_t a = 0; a < alternatives; ++a) {
      problem.vertices.back().push_back(static_cast<int>(problem.group_of.size()));
      problem.group_of.push_back(static_cast<int>(group));
    }
    hidden[group] = group;
  }
  for (std::size_t i = count - 2; i > 1; --i) std::swap(hidden[i], hidden[1 + random.below(i)]);
  problem.before.resize(count);
  for (std::size_t i = 1; i + 1 < count; ++i) {
    for (std::size_t j = i + 1; j + 1 < count; ++j) {
      if (random.unit() >= mix.precedence_share) continue;
      problem.before[hidden[j]].push_back(static_cast<int>(hidden[i]));
    }
  }
  for (std::size_t i = 0; i < problem.group_of.size() * problem.group_of.size(); ++i) {
    const double cost = random.between(0.0, 10.0);
    const bool never = random.unit() < mix.forbidden_share;
    problem.cost.push_back(never ? order::never_s : mix.whole_costs ? std::floor(cost) : cost);
  }
  return problem;
}

/// Every order of the groups with every choice of vertices; shares nothing with the search.
class AllTours {
 public:
  explicit AllTours(const order::TourProblem& problem)
      : problem_(problem), used_(problem.group_count(), false) {
    used_[0] = true;
    go_on(problem.vertices.front().front(), 1, 0.0);
  }
  /// never_s: there is none.
  [[nodiscard]] double best() const { return best_; }

 private:
  void go_on(int from, std::size_t placed, double cost) {
    if (placed == problem_.group_count()) best_ = std::min(best_, cost);
    for (std::size_t group = 1; group < problem_.group_count(); ++group) {
      const bool last = group + 1 == problem_.group_count();
      if (used_[group] || (last && placed != group)) continue;
      const auto& before = problem_.before[group];
      if (!std::all_of(before.begin(), before.end(), [&](int other) {
            return used_[static_cast<std::size_t>(other)];
          })) {
        continue;
      }
      used_[group] = true;
      for (const int to : problem_.vertices[group]) {
        const double step = problem_.from_to(from, to);
        if (step < order::never_s) go_on(to, placed + 1, cost + step);
      }
      used_[group] = false;
    }
  }

  const order::TourProblem& problem_;
  std::vector<bool> used_;
  double best_ = order::never_s;
};

}  // namespace seamturn::tests
