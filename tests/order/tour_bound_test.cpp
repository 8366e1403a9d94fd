// SPDX-License-Identifier: MIT
// Expected values: cross (all tours of small problems tried), laws, and the published best known
// values of the open instances.
#include <doctest/doctest.h>

#include "open_instances.hpp"
#include "order/detail_tour_bound.hpp"
#include "tour_problems.hpp"

namespace seamturn::tests {

using order::TourOrder;
using order::TourProblem;

namespace {

TourMix mix_of(int n) {
  TourMix mix;
  mix.groups = 4 + n % 4;
  mix.alternatives_most = 3;
  mix.precedence_share = 0.15 * (n % 5);
  mix.forbidden_share = n % 3 == 0 ? 0.3 : 0.05;
  mix.whole_costs = n % 2 == 0;
  return mix;
}

/// The least sum over all ways to give each group a successor of its own, by trying all.
double best_successors(const TourProblem& problem, const TourOrder& order) {
  std::vector<int> to;
  const int last = static_cast<int>(problem.group_count()) - 1;
  for (int g = 1; g <= last; ++g) to.push_back(g);
  double best = order::never_s;
  do {
    double sum = 0.0;
    for (int g = 0; g < last; ++g) {
      double least = order::never_s;
      const int next = to[static_cast<std::size_t>(g)];
      for (const int a : problem.vertices[static_cast<std::size_t>(g)]) {
        for (const int b : problem.vertices[static_cast<std::size_t>(next)]) {
          if (order::may_follow(order, g, next)) least = std::min(least, problem.from_to(a, b));
        }
      }
      sum += least;
    }
    best = std::min(best, sum);
  } while (std::next_permutation(to.begin(), to.end()));
  return best;
}

}  // namespace

TEST_SUITE("order/tour_bound") {
  TEST_CASE("for any of 300 random problems, the assignment is the best of all assignments") {
    base::Random random(base::named_seed(1, "assignment"));
    int possible = 0;
    for (int n = 0; n < 300; ++n) {
      INFO("problem " << n);
      const TourProblem problem = random_tour_problem(mix_of(n), random);
      const TourOrder order(problem);
      const double best = best_successors(problem, order);
      const double bound = order::assignment_bound(problem, order);
      if (best == order::never_s) {
        CHECK(bound == order::never_s);
        continue;
      }
      ++possible;
      CHECK(bound <= best * (1.0 + 1e-15));
      CHECK(bound >= best * (1.0 - 1e-9));
      CHECK(order::one_sided_bound(problem, order) <= bound * (1.0 + 1e-9));
    }
    CHECK(possible > 150);
  }

  TEST_CASE("for any of 200 random problems, no bound is above the best of all tours") {
    base::Random random(base::named_seed(2, "assignment"));
    for (int n = 0; n < 200; ++n) {
      INFO("problem " << n);
      const TourProblem problem = random_tour_problem(mix_of(n), random);
      const TourOrder order(problem);
      const double best = AllTours(problem).cost();
      CHECK(order::assignment_bound(problem, order) <= best * (1.0 + 1e-15));
      CHECK(order::one_sided_bound(problem, order) <= best * (1.0 + 1e-15));
    }
  }

  TEST_CASE("for any random problem, costs k times as high make the assignment k times as high") {
    base::Random random(base::named_seed(3, "assignment"));
    for (int n = 0; n < 60; ++n) {
      INFO("problem " << n);
      TourProblem problem = random_tour_problem(mix_of(n), random);
      const TourOrder order(problem);
      const double bound = order::assignment_bound(problem, order);
      for (double& cost : problem.cost) cost *= 1.7;
      if (bound == order::never_s) continue;
      CHECK(order::assignment_bound(problem, order) == doctest::Approx(1.7 * bound).epsilon(1e-9));
    }
  }

  TEST_CASE("for any random problem, one more precedence never lowers the assignment") {
    base::Random random(base::named_seed(4, "assignment"));
    int raised = 0;
    for (int n = 0; n < 60; ++n) {
      INFO("problem " << n);
      TourProblem problem = random_tour_problem(mix_of(n), random);
      const double bound = order::assignment_bound(problem, TourOrder(problem));
      const auto last = static_cast<int>(problem.group_count()) - 2;
      const int leader = 1 + n % (last - 1);
      if (TourOrder(problem).before(last, leader)) continue;  // would close a circle
      problem.before[static_cast<std::size_t>(last)].push_back(leader);
      const double more = order::assignment_bound(problem, TourOrder(problem));
      CHECK(more >= bound * (1.0 - 1e-9));
      if (more > bound * (1.0 + 1e-9)) ++raised;
    }
    CHECK(raised > 5);
  }

  TEST_CASE("given costs of 5 and 10, whole grains round a bound up to the next multiple of 5") {
    TourProblem problem = chain_problem(2, 2, 1);
    for (double& cost : problem.cost) cost = cost == 1.0 ? 10.0 : cost == 0.0 ? 5.0 : cost;
    const order::GrainCosts costs = order::grain_costs(problem, 30.0);
    REQUIRE(costs.whole > 0);
    CHECK(order::cost_of(costs, 5 * costs.whole) == 25.0);
    CHECK(order::cost_of(costs, 4 * costs.whole + 1) == 25.0);
    CHECK(order::cost_of(costs, 4 * costs.whole) == 20.0);
    CHECK(costs.cut == 5 * costs.whole + 1);  // 25 is below, 30 is not
    problem.cost[1] = 5.5;
    CHECK(order::grain_costs(problem, 30.0).whole == 0);
  }
}

}  // namespace seamturn::tests
