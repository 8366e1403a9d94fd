// SPDX-License-Identifier: MIT
// The order without a clock on the open instances, when they are there: seconds and counted work
// until the best known is reached, or the effort is spent.
#include <benchmark/benchmark.h>

#include <functional>
#include <optional>

#include "order/detail_tour_search.hpp"
#include "order/open_instances.hpp"

namespace {

using namespace seamturn;  // NOLINT: a benchmark of ours

struct Instance {
  const char* name;
  double best_known;
};

// ../shared/data/order/README.md names the collections. Last column: a trial program's, in ten
// seconds, where the optimum is not known.
constexpr Instance sequential[] = {
    {"ESC25", 1681},      {"ESC47", 1288},    {"ESC63", 62},      {"ESC78", 18230},
    {"ft53.1", 7531},     {"ft53.2", 8026},   {"ft53.3", 10262},  {"ft53.4", 14425},
    {"ft70.1", 39313},    {"ft70.2", 40419},  {"ft70.3", 42535},  {"ft70.4", 53530},
    {"p43.1", 28140},     {"p43.4", 83005},   {"prob.42", 243},   {"ry48p.1", 15805},
    {"ry48p.2", 16666},   {"ry48p.3", 19894}, {"ry48p.4", 31446}, {"kro124p.1", 39420},
    {"kro124p.4", 76103}, {"rbg150a", 1750},  {"rbg253a", 2950},  {"rbg378a", 2816}};
constexpr Instance groups[] = {{"ESC25", 1383},
                               {"ESC47", 1063},
                               {"br17.12", 43},
                               {"ft53.1", 6194},
                               {"ft53.4", 11822},
                               {"ft70.1", 32608},
                               {"ft70.4", 44451},
                               {"p43.1", 22545},
                               {"p43.4", 66848},
                               {"prob.42", 202},
                               {"rbg048a", 282},
                               {"ry48p.1", 13135},
                               {"ry48p.4", 25977},
                               {"kro124p.1", 32835}};

using Reader = std::function<std::optional<order::TourProblem>(const std::string&)>;

void run(benchmark::State& state, const Instance& instance, const Reader& read) {
  const auto problem = read(instance.name);
  if (!problem) return state.SkipWithError("no open instances here");
  const order::TourOrder order(*problem);
  order::TourSearchParams params;
  params.effort = 500'000'000;
  params.enough = instance.best_known;
  order::TourFound found;
  for (auto _ : state) found = order::search_tour(*problem, order, {}, params);
  state.counters["groups"] = static_cast<double>(problem->group_count());
  state.counters["best_known"] = instance.best_known;
  state.counters["found"] = found.cost;
  state.counters["work"] = static_cast<double>(found.work);
}

void add_all() {
  const auto add = [](const std::string& kind, const Instance& instance, const Reader& read) {
    benchmark::RegisterBenchmark((kind + "/" + instance.name).c_str(), run, instance, read)
        ->Unit(benchmark::kSecond)
        ->Iterations(1);
  };
  for (const Instance& instance : sequential) add("tour", instance, tests::read_sop);
  for (const Instance& instance : groups) add("tour of groups", instance, tests::read_groups);
}

[[maybe_unused]] const bool added = (add_all(), true);

}  // namespace
