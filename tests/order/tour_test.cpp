// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "open_instances.hpp"
#include "seamturn/base/error.hpp"
#include "tour_problems.hpp"

namespace seamturn::tests {

using order::Tour;
using order::TourOrder;
using order::TourProblem;

namespace {

/// Four groups; the second has two vertices, 1 and 2; the third must come before it.
TourProblem small_problem() {
  TourProblem problem;
  problem.group_of = {0, 1, 1, 2, 3};
  problem.vertices = {{0}, {1, 2}, {3}, {4}};
  problem.before = {{}, {2}, {}, {}};
  problem.cost.assign(25, 1.0);
  problem.cost[0 * 5 + 3] = 4.0;
  problem.cost[3 * 5 + 2] = 2.5;
  problem.cost[3 * 5 + 1] = order::never_s;
  return problem;
}

using Reach = std::vector<std::vector<bool>>;

/// What comes before what by Warshall's closure.
Reach closure(const TourProblem& problem) {
  const std::size_t count = problem.group_count();
  Reach reach(count, std::vector<bool>(count, false));
  for (std::size_t group = 0; group < count; ++group) {
    for (const int before : problem.before[group]) {
      reach[static_cast<std::size_t>(before)][group] = true;
    }
    if (group > 0) reach[0][group] = true;
    if (group + 1 < count) reach[group][count - 1] = true;
  }
  for (std::size_t k = 0; k < count; ++k) {
    for (std::size_t i = 0; i < count; ++i) {
      for (std::size_t j = 0; j < count; ++j) {
        if (reach[i][k] && reach[k][j]) reach[i][j] = true;
      }
    }
  }
  return reach;
}

bool has(const std::uint64_t* set, std::size_t group) {
  return (set[group / 64] >> (group % 64) & 1) != 0;
}

/// A row of the folder's table.
struct Counted {
  const char* name;
  std::size_t vertices;
  std::size_t groups;
};

}  // namespace

TEST_SUITE("order/tour") {
  TEST_CASE(
      "for any precedence, who stands before whom, and right before whom, is Warshall's closure") {
    const std::uint64_t seed = base::named_seed(1, "order closure");
    INFO("seed " << seed);
    base::Random random(seed);
    for (const int groups : {2, 3, 5, 20, 63, 64, 65, 66, 130}) {
      TourMix mix;
      mix.groups = groups;
      mix.precedence_share = groups < 30 ? 0.2 : 0.02;
      const TourProblem problem = random_tour_problem(mix, random);
      const TourOrder order(problem);
      const Reach reach = closure(problem);
      std::size_t wrong = 0;
      for (std::size_t a = 0; a < problem.group_count(); ++a) {
        for (std::size_t b = 0; b < problem.group_count(); ++b) {
          const bool is = reach[a][b];
          wrong += order.before(static_cast<int>(a), static_cast<int>(b)) == is ? 0 : 1;
          wrong += has(order.leaders(static_cast<int>(b)), a) == is ? 0 : 1;
          wrong += has(order.followers(static_cast<int>(a)), b) == is ? 0 : 1;
          bool between = false;
          for (std::size_t c = 0; c < problem.group_count(); ++c) {
            between = between || (reach[a][c] && reach[c][b]);
          }
          const bool may = a != b && !reach[b][a] && !between;
          wrong +=
              order::may_follow(order, static_cast<int>(a), static_cast<int>(b)) == may ? 0 : 1;
        }
      }
      CAPTURE(groups);
      CHECK(wrong == 0);
    }
  }

  TEST_CASE("for any precedence, the sorted groups keep it, first and last in place") {
    base::Random random(base::named_seed(1, "order sorted"));
    for (int n = 0; n < 50; ++n) {
      TourMix mix;
      mix.groups = 2 + n;
      const TourProblem problem = random_tour_problem(mix, random);
      const TourOrder order(problem);
      Tour tour;
      for (const int group : order.sorted()) {
        tour.push_back(problem.vertices[static_cast<std::size_t>(group)].front());
      }
      CHECK(order::is_tour(problem, order, tour));
      CHECK(tour.front() == 0);
      CHECK(order.sorted().back() == mix.groups - 1);
    }
  }

  TEST_CASE("refuses a precedence in a circle because no order keeps it") {
    TourProblem problem = small_problem();
    problem.before[2].push_back(1);
    CHECK_THROWS_AS((TourOrder{problem}), base::ContractViolation);
  }

  TEST_CASE("given four groups, the cost is the sum of the steps") {
    const TourProblem problem = small_problem();
    CHECK(order::tour_cost(problem, {0, 3, 2, 4}) == 4.0 + 2.5 + 1.0);
    CHECK(order::tour_cost(problem, {0, 3, 1, 4}) == order::never_s);
    CHECK(order::tour_cost(problem, {}) == 0.0);
  }

  TEST_CASE("a tour has one vertex of every group, in order, by permitted steps") {
    const TourProblem problem = small_problem();
    const TourOrder order(problem);
    CHECK(order::is_tour(problem, order, {0, 3, 2, 4}));
    CHECK_FALSE(order::is_tour(problem, order, {}));
    CHECK_FALSE(order::is_tour(problem, order, {0, 3, 4}));        // a group is missing
    CHECK_FALSE(order::is_tour(problem, order, {0, 3, 2, 1, 4}));  // and one is there twice
    CHECK_FALSE(order::is_tour(problem, order, {0, 3, 3, 4}));
    CHECK_FALSE(order::is_tour(problem, order, {0, 2, 3, 4}));  // against the precedence
    CHECK_FALSE(order::is_tour(problem, order, {3, 0, 2, 4}));  // the first not first
    CHECK_FALSE(order::is_tour(problem, order, {0, 3, 4, 2}));  // the last not last
    CHECK_FALSE(order::is_tour(problem, order, {0, 3, 1, 4}));  // a step that is not permitted
  }

  TEST_CASE("given the open instances, the readers find their vertices and groups") {
    // published: the tables of ../shared/data/order/README.md; the end of the closed tour is ours
    for (const Counted& row : {Counted{"ESC07", 39, 8},
                               Counted{"br17.12", 92, 17},
                               Counted{"p43.4", 204, 43},
                               Counted{"kro124p.1", 514, 100}}) {
      const auto problem = read_groups(row.name);
      if (!problem) {
        MESSAGE("no open instances here: " << open_instances().string());
        return;
      }
      CAPTURE(row.name);
      CHECK(problem->vertex_count() == row.vertices + 1);
      CHECK(problem->group_count() == row.groups + 1);
      CHECK(problem->cost.size() == problem->vertex_count() * problem->vertex_count());
      CHECK(problem->vertices.front().size() == 1);
    }
    for (const Counted& row : {Counted{"ESC07", 9, 9}, Counted{"rbg378a", 380, 380}}) {
      const auto problem = read_sop(row.name);
      REQUIRE(problem.has_value());
      CHECK(problem->vertex_count() == row.vertices);
      CHECK(problem->group_count() == row.groups);
      CHECK(problem->from_to(0, static_cast<int>(row.vertices) - 1) == order::never_s);
    }
  }
}

}  // namespace seamturn::tests
