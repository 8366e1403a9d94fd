// SPDX-License-Identifier: MIT
// Made-up orders without a clock for the tests of search, bound and proof, and their best tour by
// trying all.
#pragma once

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

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

/// The cheapest tour by trying all, or none.
class AllTours {
 public:
  explicit AllTours(const order::TourProblem& problem) : problem_(problem), order_(problem) {
    done_.assign(problem.group_count(), false);
    extend(problem.vertices.front().front(), 0.0);
  }

  [[nodiscard]] double cost() const { return cost_; }
  [[nodiscard]] const order::Tour& tour() const { return tour_; }
  /// The one found first; any tour is one to start from.
  [[nodiscard]] const order::Tour& first() const { return first_; }

 private:
  void extend(int vertex, double cost) {
    const int group = problem_.group_of[static_cast<std::size_t>(vertex)];
    done_[static_cast<std::size_t>(group)] = true;
    now_.push_back(vertex);
    if (now_.size() == problem_.group_count()) {
      if (first_.empty()) first_ = now_;
      if (cost < cost_) {
        cost_ = cost;
        tour_ = now_;
      }
    }
    for (int next = 0; next < static_cast<int>(problem_.group_count()); ++next) {
      if (!may_come(next)) continue;
      for (const int to : problem_.vertices[static_cast<std::size_t>(next)]) {
        const double step = problem_.from_to(vertex, to);
        if (step < order::never_s) extend(to, cost + step);
      }
    }
    now_.pop_back();
    done_[static_cast<std::size_t>(group)] = false;
  }

  [[nodiscard]] bool may_come(int group) const {
    if (done_[static_cast<std::size_t>(group)]) return false;
    for (int other = 0; other < static_cast<int>(problem_.group_count()); ++other) {
      if (order_.before(other, group) && !done_[static_cast<std::size_t>(other)]) return false;
    }
    return true;
  }

  const order::TourProblem& problem_;
  order::TourOrder order_;
  std::vector<bool> done_;
  order::Tour now_;
  order::Tour tour_;
  order::Tour first_;
  double cost_ = order::never_s;
};

/// Chains of passes, each with so many alternatives; all steps cost the same but the last one.
inline order::TourProblem chain_problem(int chains, int passes, int alternatives) {
  order::TourProblem problem;
  const auto group = [&](int vertices) {
    problem.vertices.emplace_back();
    problem.before.emplace_back();
    for (int v = 0; v < vertices; ++v) {
      problem.vertices.back().push_back(static_cast<int>(problem.group_of.size()));
      problem.group_of.push_back(static_cast<int>(problem.vertices.size()) - 1);
    }
  };
  group(1);
  for (int chain = 0; chain < chains; ++chain) {
    for (int pass = 0; pass < passes; ++pass) {
      group(alternatives);
      const int own = static_cast<int>(problem.vertices.size()) - 1;
      if (pass > 0) problem.before.back().push_back(own - 1);
    }
  }
  group(1);
  const int last = static_cast<int>(problem.vertices.size()) - 1;
  for (const int from : problem.group_of) {
    for (const int to : problem.group_of) {
      problem.cost.push_back(from == to ? order::never_s : to == last ? 1.0 : 0.0);
    }
  }
  return problem;
}

}  // namespace seamturn::tests
