// SPDX-License-Identifier: MIT
// Whole plans of generated weldments: processor seconds by stage of the planner and the most memory
// held. Memory is that of the process so far: run these alone (--benchmark_filter=plan_generated),
// they come in rising order.
#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include <ctime>
#include <map>

#include "bench/generated_weldment.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/planner/planner.hpp"

namespace {

using namespace seamturn;  // NOLINT: a benchmark of ours

double peak_mib() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024.0;
}

planner::Inputs generated(int seams) {
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / "seamturn_bench_generated";
  return io::read_inputs(
      tests::write_generated_weldment(seams, SEAMTURN_SOURCE_DIR "/joints", folder));
}

void plan_generated(benchmark::State& state) {
  const planner::Inputs inputs = generated(static_cast<int>(state.range(0)));
  std::map<std::string, double> stages_s;
  double above_ratio = 0.0;
  for (auto _ : state) {
    std::string stage;
    std::clock_t since = std::clock();
    const auto end_stage = [&] {
      const std::clock_t now = std::clock();
      if (!stage.empty()) stages_s[stage] += static_cast<double>(now - since) / CLOCKS_PER_SEC;
      since = now;
    };
    planner::PlanParams params;
    params.progress = [&](std::string_view next) {
      end_stage();
      stage = next;
    };
    const plan::Plan plan = planner::make_plan(inputs, params);
    end_stage();
    above_ratio = (plan.cycle_s - plan.lower_bound_s) / plan.cycle_s;
  }
  for (const auto& [stage, seconds] : stages_s) {
    state.counters[stage + "_s"] = benchmark::Counter(seconds, benchmark::Counter::kAvgIterations);
  }
  state.counters["peak_mib"] = peak_mib();
  state.counters["above_bound_%"] = 100.0 * above_ratio;
  state.SetComplexityN(state.range(0));
}
BENCHMARK(plan_generated)->Arg(50)->Arg(200)->Arg(1000)->Complexity()->Unit(benchmark::kSecond);

}  // namespace
