// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include <string>

#include "open_instances.hpp"
#include "order/detail_tour_proof.hpp"
#include "seamturn/base/error.hpp"
#include "tour_problems.hpp"

namespace seamturn::tests {

using order::TourOrder;
using order::TourProblem;
using order::TourProof;
using order::TourProofParams;

namespace {

TourMix mix_of(int n) {
  TourMix mix;
  mix.groups = 5 + n % 4;
  mix.alternatives_most = mix.groups < 8 ? 3 : 2;
  mix.precedence_share = 0.1 * (n % 6);
  mix.forbidden_share = n % 3 == 0 ? 0.25 : 0.05;
  mix.whole_costs = n % 2 == 0;
  return mix;
}

TourProofParams params_of(std::int64_t work, std::int64_t states, std::size_t beam = 3000) {
  TourProofParams params;
  params.bound_work = work;
  params.states = states;
  params.beam = beam;
  return params;
}

/// Everything a proof promises, against the best of all tours.
void check_proof(const TourProblem& problem,
                 const order::Tour& known,
                 double best,
                 const TourProof& proof) {
  const TourOrder order(problem);
  const double least = best * (1.0 - 1e-9);
  double reached = order::tour_cost(problem, known);
  CHECK(proof.lower_bound <= best * (1.0 + 1e-9));
  if (!proof.better.empty()) {
    CHECK(order::is_tour(problem, order, proof.better));
    CHECK(order::tour_cost(problem, proof.better) < reached);
    reached = order::tour_cost(problem, proof.better);
  }
  CHECK(reached >= least);
  if (!proof.proved) return;
  CHECK(reached <= best * (1.0 + 1e-9));
  CHECK(proof.lower_bound >= least);
}

struct Best {
  const char* name;
  double cost;
};

/// Nothing below the published best, which is found when one more is granted.
void check_instance(const std::string& name,
                    const std::optional<TourProblem>& problem,
                    double best,
                    const TourProofParams& params) {
  if (!problem) {
    MESSAGE("no data for " << name << " in " << open_instances().string());
    return;
  }
  INFO(name);
  const TourOrder order(*problem);
  const TourProof proof = order::prove_below(*problem, order, best, params);
  CHECK(proof.proved);
  CHECK(proof.lower_bound == best);
  CHECK(proof.better.empty());
}

void check_found(const std::string& name,
                 const std::optional<TourProblem>& problem,
                 double best,
                 const TourProofParams& params) {
  if (!problem) {
    MESSAGE("no data for " << name << " in " << open_instances().string());
    return;
  }
  INFO(name);
  const TourOrder order(*problem);
  const TourProof proof = order::prove_below(*problem, order, best * 1.01 + 1.0, params);
  CHECK(proof.proved);
  CHECK(proof.lower_bound == best);
  REQUIRE(order::is_tour(*problem, order, proof.better));
  CHECK(order::tour_cost(*problem, proof.better) == best);
}

}  // namespace

TEST_SUITE("order/tour_proof") {
  TEST_CASE("for any of 240 random problems, a proof holds against trying all tours") {
    base::Random random(base::named_seed(1, "tour proof"));
    int proved = 0;
    int possible = 0;
    for (int n = 0; n < 240; ++n) {
      INFO("problem " << n);
      const TourProblem problem = random_tour_problem(mix_of(n), random);
      const AllTours all(problem);
      if (all.tour().empty()) continue;
      ++possible;
      const TourOrder order(problem);
      for (const order::Tour& known : {all.first(), all.tour()}) {
        const TourProof proof = order::prove_tour(problem, order, known, params_of(400000, 20000));
        check_proof(problem, known, all.cost(), proof);
        if (proof.proved) ++proved;
      }
    }
    CHECK(possible > 150);
    CHECK(proved == 2 * possible);
  }

  TEST_CASE("for any random problem, a starved search promises nothing that is not so") {
    base::Random random(base::named_seed(2, "tour proof"));
    int open = 0;
    int better = 0;
    for (int n = 0; n < 240; ++n) {
      INFO("problem " << n);
      const TourProblem problem = random_tour_problem(mix_of(n), random);
      const AllTours all(problem);
      if (all.tour().empty()) continue;
      const TourProofParams params =
          params_of(n % 4 == 0 ? 0 : 500 * (n % 7), 1 + n % 9, static_cast<std::size_t>(n % 3));
      const TourOrder order(problem);
      const TourProof proof = order::prove_tour(problem, order, all.first(), params);
      check_proof(problem, all.first(), all.cost(), proof);
      if (!proof.proved) ++open;
      if (!proof.proved && !proof.better.empty()) ++better;
    }
    CHECK(open > 40);
    CHECK(better > 5);
  }

  // closed form: the states of A alternatives in m chains of r are A m r (r+1)^(m-1), and the start
  TEST_CASE("given chains of passes and no bound, the partial tours number A m r (r+1)^(m-1) + 1") {
    struct Case {
      int chains, passes, alternatives;
      std::int64_t states;
    };
    for (const Case& c : {Case{2, 1, 1, 5},
                          Case{3, 2, 1, 55},
                          Case{3, 2, 3, 163},
                          Case{4, 3, 2, 1537},
                          Case{6, 3, 3, 55297},
                          Case{11, 1, 2, 22529}}) {
      INFO(c.chains << " x " << c.passes << " x " << c.alternatives);
      const TourProblem problem = chain_problem(c.chains, c.passes, c.alternatives);
      const TourOrder order(problem);
      const TourProof proof = order::prove_below(problem, order, 1.0, params_of(0, 1000000));
      CHECK(proof.states == c.states);
      CHECK(proof.proved);
      CHECK(proof.better.empty());
    }
  }

  TEST_CASE("for any random problem, scaled costs scale what is proved") {
    base::Random random(base::named_seed(3, "tour proof"));
    for (int n = 0; n < 60; ++n) {
      INFO("problem " << n);
      TourProblem problem = random_tour_problem(mix_of(n), random);
      const AllTours all(problem);
      if (all.tour().empty()) continue;
      const TourOrder order(problem);
      const TourProofParams params = params_of(400000, 20000);
      const double bound = order::prove_tour(problem, order, all.first(), params).lower_bound;
      for (double& cost : problem.cost) cost *= 0.37;
      const double scaled = order::prove_tour(problem, order, all.first(), params).lower_bound;
      CHECK(scaled == doctest::Approx(0.37 * bound).epsilon(1e-8));
    }
  }

  TEST_CASE("for any random problem, one more precedence never lowers what is proved") {
    base::Random random(base::named_seed(4, "tour proof"));
    int raised = 0;
    for (int n = 0; n < 80; ++n) {
      INFO("problem " << n);
      TourProblem problem = random_tour_problem(mix_of(n), random);
      const TourProofParams params = params_of(400000, 20000);
      const double enough = 1000.0;
      const double bound =
          order::prove_below(problem, TourOrder(problem), enough, params).lower_bound;
      const auto last = static_cast<int>(problem.group_count()) - 2;
      const int leader = 1 + n % (last - 1);
      if (TourOrder(problem).before(last, leader)) continue;  // would close a circle
      problem.before[static_cast<std::size_t>(last)].push_back(leader);
      const double more =
          order::prove_below(problem, TourOrder(problem), enough, params).lower_bound;
      CHECK(more >= bound * (1.0 - 1e-8));
      if (more > bound * (1.0 + 1e-8)) ++raised;
    }
    CHECK(raised > 10);
  }

  TEST_CASE("given the same problem twice, work, states and bound are the same") {
    base::Random random(base::named_seed(5, "tour proof"));
    TourMix mix;
    mix.groups = 16;
    mix.alternatives_most = 3;
    mix.precedence_share = 0.3;
    mix.whole_costs = false;
    mix.forbidden_share = 0.0;
    const TourProblem problem = random_tour_problem(mix, random);
    const TourOrder order(problem);
    const TourProof first = order::prove_below(problem, order, 200.0, params_of(300000, 3000, 50));
    const TourProof again = order::prove_below(problem, order, 200.0, params_of(300000, 3000, 50));
    CHECK(first.work == again.work);
    CHECK(first.states == again.states);
    CHECK(first.lower_bound == again.lower_bound);
    CHECK(first.better == again.better);
    CHECK(first.work > 10000);
  }

  TEST_CASE("refuses a known tour that is none because its cost would cut off the best") {
    const TourProblem problem = chain_problem(2, 2, 1);
    const TourOrder order(problem);
    const order::Tour backwards = {0, 2, 1, 3, 4, 5};
    CHECK_THROWS_AS(static_cast<void>(order::prove_tour(problem, order, backwards, {})),
                    base::ContractViolation);
  }

  // published: best-known table of TSPLIB95 SOP, and the PCGTSP optima of Salman, Ekstedt and
  // Damaschke's instances (../shared/data/order/README.md)
  TEST_CASE("given open SOP instances, no tour is below the published best") {
    const TourProofParams params = params_of(60000000, 400000);
    for (const Best& best : {Best{"ESC07", 2125},
                             Best{"ESC11", 2075},
                             Best{"ESC12", 1675},
                             Best{"ESC25", 1681},
                             Best{"ESC63", 62},
                             Best{"br17.10", 55},
                             Best{"br17.12", 55}}) {
      check_instance(best.name, read_sop(best.name), best.cost, params);
    }
  }

  TEST_CASE(
      "given the open SOP instances with dear tours, the published best is found and proved") {
    const TourProofParams params = params_of(60000000, 400000);
    for (const Best& best : {Best{"ESC07", 2125}, Best{"ESC11", 2075}, Best{"ESC12", 1675}}) {
      check_found(best.name, read_sop(best.name), best.cost, params);
    }
  }

  TEST_CASE("given open instances of groups, no tour is below the proved optimum, which is found") {
    const TourProofParams params = params_of(60000000, 400000);
    for (const Best& best : {Best{"ESC07", 1730}, Best{"ESC12", 1390}}) {
      check_instance(best.name, read_groups(best.name), best.cost, params);
      check_found(best.name, read_groups(best.name), best.cost, params);
    }
    check_instance("ESC25", read_groups("ESC25"), 1383, params);
  }
}

}  // namespace seamturn::tests
