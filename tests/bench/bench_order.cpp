// SPDX-License-Identifier: MIT
// Growth of the order search and of one simulated cycle with the number of blocks.
#include <benchmark/benchmark.h>

#include "seamturn/base/random.hpp"
#include "seamturn/order/search.hpp"
#include "seamturn/order/simulate.hpp"

namespace {

using namespace seamturn;  // NOLINT: a benchmark of ours

/// A made-up job: seams of three layers, each block with two stances to choose from.
order::Job made_job(int seams) {
  base::Random random(base::named_seed(7, "bench_order"));
  order::Job job;
  const int stances = 8;
  job.turn_s.assign(stances, std::vector<double>(stances, 12.0));
  for (int i = 0; i < stances; ++i)
    job.turn_s[static_cast<std::size_t>(i)][static_cast<std::size_t>(i)] = 0.0;
  job.air_speed_mm_s = 800.0;
  job.air_acceleration_mm_s2 = 2500.0;
  job.retract_mm = 80.0;
  for (int seam = 0; seam < seams; ++seam) {
    const geom::Vec3 from(random.between(-500, 500), random.between(-500, 500), 900.0);
    const geom::Vec3 to = from + geom::Vec3(300.0, 0.0, 0.0);
    for (int layer = 0; layer < 3; ++layer) {
      order::Block block;
      block.zone = seam;
      block.passes = {order::BlockPass{45.0, layer == 0 ? 0.0 : 120.0, 1.5, 0.0}};
      block.touch_s = 9.0;
      for (int k = 0; k < 2; ++k) {
        order::Option option;
        option.stance = static_cast<int>(random.below(stances));
        option.start_W = from;
        option.end_W = to;
        option.tag = k;
        block.options.push_back(option);
      }
      if (layer > 0) block.after.push_back(static_cast<int>(job.blocks.size()) - 1);
      job.blocks.push_back(block);
    }
  }
  return job;
}

void one_cycle(benchmark::State& state) {
  const order::Job job = made_job(static_cast<int>(state.range(0)));
  const order::Sequence sequence = order::greedy_sequence(job);
  for (auto _ : state) benchmark::DoNotOptimize(order::cycle_time_s(job, sequence));
  state.SetComplexityN(state.range(0));
}
BENCHMARK(one_cycle)->RangeMultiplier(2)->Range(10, 160)->Complexity()->Unit(
    benchmark::kMicrosecond);

void greedy(benchmark::State& state) {
  const order::Job job = made_job(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(order::greedy_sequence(job).size());
  state.SetComplexityN(state.range(0));
}
BENCHMARK(greedy)->RangeMultiplier(2)->Range(10, 160)->Complexity()->Unit(benchmark::kMicrosecond);

void lower_bound(benchmark::State& state) {
  const order::Job job = made_job(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(order::lower_bound_s(job));
  state.SetComplexityN(state.range(0));
}
BENCHMARK(lower_bound)
    ->RangeMultiplier(2)
    ->Range(10, 160)
    ->Complexity()
    ->Unit(benchmark::kMicrosecond);

void search(benchmark::State& state) {
  const order::Job job = made_job(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(order::find_order(job, {}).cycle_s);
}
BENCHMARK(search)->Arg(10)->Arg(40)->Arg(160)->Unit(benchmark::kMillisecond);

}  // namespace
