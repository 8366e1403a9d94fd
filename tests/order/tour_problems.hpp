// SPDX-License-Identifier: MIT
// Small orders without a clock for the tests of bounds and proofs, and their best tour by trying
// all.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "order/detail_tour.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

/// What a random problem is drawn from.
struct TourMix {
  int groups = 6;         ///< first and last included
  int most_vertices = 3;  ///< of a group
  double linked = 0.3;    ///< share of pairs in the order of their index that must keep it
  double never = 0.1;     ///< share of steps not permitted
  bool whole = false;     ///< costs are whole numbers
};

inline order::TourProblem random_tour_problem(const TourMix& mix, base::Random& random) {
  order::TourProblem problem;
  for (int g = 0; g < mix.groups; ++g) {
    const bool end = g == 0 || g + 1 == mix.groups;
    const std::size_t count =
        end ? 1 : 1 + random.below(static_cast<std::size_t>(mix.most_vertices));
    problem.vertices.emplace_back();
    for (std::size_t i = 0; i < count; ++i) {
      problem.vertices.back().push_back(static_cast<int>(problem.group_of.size()));
      problem.group_of.push_back(g);
    }
    problem.before.emplace_back();
    for (int b = 1; b < g && !end; ++b) {
      if (random.unit() < mix.linked) problem.before.back().push_back(b);
    }
  }
  for (const int from : problem.group_of) {
    for (const int to : problem.group_of) {
      const double cost = random.between(0.0, 20.0);
      const bool never = from == to || random.unit() < mix.never;
      problem.cost.push_back(never ? order::never_s : mix.whole ? std::floor(cost) : cost);
    }
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
