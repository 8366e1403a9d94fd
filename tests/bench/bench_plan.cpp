// SPDX-License-Identifier: MIT
// The whole plan of the hub, and of parts of it, to see how the time grows with the seams.
#include <benchmark/benchmark.h>

#include "seamturn/io/plan_xml.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/planner/planner.hpp"

namespace {

seamturn::planner::Inputs hub_with_joints(std::size_t count) {
  seamturn::planner::Inputs inputs =
      seamturn::io::read_inputs(SEAMTURN_SOURCE_DIR "/joints/grab_hub.xml");
  auto& joints = inputs.weldment.joints;
  if (count < joints.size()) joints.resize(count);
  // Joints left out may be named in the `after` of those that stay.
  for (seamturn::joint::Joint& joint : joints) {
    std::erase_if(joint.after, [&](const std::string& id) {
      return seamturn::joint::find_joint(inputs.weldment, id) == nullptr;
    });
  }
  return inputs;
}

void plan_hub(benchmark::State& state) {
  const auto inputs = hub_with_joints(static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) {
    const seamturn::plan::Plan plan = seamturn::planner::make_plan(inputs);
    benchmark::DoNotOptimize(plan.cycle_s);
  }
  state.SetComplexityN(state.range(0));
}
BENCHMARK(plan_hub)->Arg(6)->Arg(12)->Arg(24)->Arg(1000)->Unit(benchmark::kMillisecond);

void write_plan_xml(benchmark::State& state) {
  const seamturn::plan::Plan plan = seamturn::planner::make_plan(hub_with_joints(1000));
  for (auto _ : state) {
    const std::string xml = seamturn::io::plan_xml(plan);
    benchmark::DoNotOptimize(xml.size());
  }
}
BENCHMARK(write_plan_xml)->Unit(benchmark::kMillisecond);

}  // namespace
