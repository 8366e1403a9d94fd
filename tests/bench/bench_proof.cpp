// SPDX-License-Identifier: MIT
// How far orders without a clock are proved: the open instances of ../shared/data/order when they
// are there, and made-up chains of passes. A row's label says best known, bound, gap and states.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdio>
#include <filesystem>
#include <string>

#include "order/detail_tour_proof.hpp"
#include "order/open_instances.hpp"
#include "order/tour_problems.hpp"

namespace {

using namespace seamturn;  // NOLINT: a benchmark of ours

struct Instance {
  const char* name;
  double best;
};

// Best known costs: ../shared/data/order/README.md.
constexpr Instance single[] = {
    {"ESC07", 2125},   {"ESC11", 2075},      {"ESC12", 1675},      {"ESC25", 1681},
    {"ESC47", 1288},   {"ESC63", 62},        {"ESC78", 18230},     {"br17.10", 55},
    {"br17.12", 55},   {"ft53.1", 7531},     {"ft53.2", 8026},     {"ft53.3", 10262},
    {"ft53.4", 14425}, {"ft70.1", 39313},    {"ft70.2", 40419},    {"ft70.3", 42535},
    {"ft70.4", 53530}, {"kro124p.1", 39420}, {"kro124p.4", 76103}, {"p43.1", 28140},
    {"p43.2", 28480},  {"p43.3", 28835},     {"p43.4", 83005},     {"prob.42", 243},
    {"rbg048a", 351},  {"rbg050c", 467},     {"rbg150a", 1750},    {"rbg253a", 2950},
    {"rbg378a", 2816}, {"ry48p.1", 15805},   {"ry48p.2", 16666},   {"ry48p.3", 19894},
    {"ry48p.4", 31446}};
constexpr Instance grouped[] = {{"ESC07", 1730},
                                {"ESC12", 1390},
                                {"ESC25", 1383},
                                {"ESC47", 1063},
                                {"br17.12", 43},
                                {"ft53.1", 6194},
                                {"ft53.4", 11822},
                                {"ft70.1", 32608},
                                {"ft70.4", 44451},
                                {"kro124p.1", 32835},
                                {"p43.1", 22545},
                                {"p43.4", 66848},
                                {"prob.42", 202},
                                {"rbg048a", 282},
                                {"ry48p.1", 13135},
                                {"ry48p.4", 25977}};

order::TourProofParams effort() {
  order::TourProofParams params;
  params.bound_work = 500000000;
  params.states = 4000000;
  return params;
}

void prove(benchmark::State& state, const order::TourProblem& problem, double best) {
  const order::TourOrder order(problem);
  order::TourProof proof;
  for (auto _ : state) proof = order::prove_below(problem, order, best, effort());
  if (!proof.better.empty()) best = order::tour_cost(problem, proof.better);
  char label[160];
  std::snprintf(label,
                sizeof label,
                "best known %.10g, bound %.10g, gap %.2f %%, %s, %lld states",
                best,
                proof.lower_bound,
                100.0 * (best - proof.lower_bound) / best,
                proof.proved ? "proved" : "open",
                static_cast<long long>(proof.states));
  state.SetLabel(label);
}

/// Made up: seams on a frame, three stances; a pass may be laid in two of them and both ways round.
order::TourProblem weld_cell(int seams, int passes) {
  base::Random random(base::named_seed(static_cast<std::uint64_t>(seams * 100 + passes), "cell"));
  order::TourProblem problem = tests::chain_problem(seams, passes, 3);
  struct Stand {
    double from_mm, to_mm;
    std::size_t stance;
  };
  std::vector<Stand> stands;
  double at_mm = 0.0;
  double length_mm = 0.0;
  int seam = -1;
  for (std::size_t v = 0; v < problem.vertex_count(); ++v) {
    const int own = (problem.group_of[v] - 1) / passes;
    if (own != seam) {
      seam = own;
      at_mm = random.between(0.0, 4000.0);
      length_mm = random.between(200.0, 800.0);
    }
    const bool back = random.unit() < 0.5;
    const double end_mm = at_mm + length_mm;
    stands.push_back(Stand{back ? end_mm : at_mm, back ? at_mm : end_mm, random.below(4)});
  }
  for (std::size_t a = 0; a < stands.size(); ++a) {
    for (std::size_t b = 0; b < stands.size(); ++b) {
      double& cost_s = problem.cost[a * stands.size() + b];
      if (!(cost_s < order::never_s)) continue;
      const double turn_s = stands[a].stance == stands[b].stance ? 0.0 : 12.0;
      const double air_s = std::abs(stands[a].to_mm - stands[b].from_mm) / 400.0;
      cost_s = b + 1 == stands.size() ? 0.0 : turn_s + air_s;
    }
  }
  return problem;
}

/// A tour by beams with better and better bounds, then the proof of it.
void prove_cell(benchmark::State& state) {
  const order::TourProblem problem =
      weld_cell(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)));
  const order::TourOrder order(problem);
  double known_s = 1e5;
  for (int round = 0; round < 8; ++round) {
    order::TourProofParams params = effort();
    params.bound_work /= 20;
    params.states /= 20;
    const order::TourProof found = order::prove_below(problem, order, known_s, params);
    if (found.better.empty()) break;
    known_s = order::tour_cost(problem, found.better);
  }
  prove(state, problem, known_s);
}
BENCHMARK(prove_cell)
    ->Args({8, 3})
    ->Args({12, 3})
    ->Args({16, 3})
    ->Args({24, 3})
    ->Args({12, 8})
    ->Unit(benchmark::kMillisecond)
    ->Iterations(1);

void register_instance(const std::string& name,
                       const std::optional<order::TourProblem>& problem,
                       double best) {
  if (!problem) return;
  benchmark::RegisterBenchmark(name.c_str(),
                               [=](benchmark::State& state) { prove(state, *problem, best); })
      ->Unit(benchmark::kMillisecond)
      ->Iterations(1);
}

/// The instances that are there.
[[maybe_unused]] const bool registered = [] {
  if (!std::filesystem::exists(tests::open_instances())) {
    std::fprintf(stderr, "no open instances in %s\n", tests::open_instances().c_str());
  }
  for (const Instance& each : single) {
    register_instance(std::string("prove_sop/") + each.name, tests::read_sop(each.name), each.best);
  }
  for (const Instance& each : grouped) {
    register_instance(
        std::string("prove_groups/") + each.name, tests::read_groups(each.name), each.best);
  }
  return true;
}();

}  // namespace
