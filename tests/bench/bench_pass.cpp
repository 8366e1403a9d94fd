// SPDX-License-Identifier: MIT
// Sections and pass stacks of a mix of fillets and grooves by the demo shop's settings, with the
// rules prepared once and with them made anew for each; growth over 10 to 10,000 joints.
#include <benchmark/benchmark.h>

#include <map>
#include <utility>

#include "seamturn/base/random.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/pass/pass_stack.hpp"

namespace {

using namespace seamturn;  // NOLINT: a benchmark of ours
using process::WeldFamily;
using process::WeldPosition;

const planner::Library& library() {
  static const planner::Inputs inputs = io::read_inputs(SEAMTURN_SOURCE_DIR "/joints/grab_hub.xml");
  return inputs.library;
}

const process::Wire& wire() {
  for (const process::Wire& each : library().wires) {
    if (each.id == "G3Si1-1.2") return each;
  }
  return library().wires.front();
}

struct Work {
  section::SectionParams params;
  WeldFamily family = WeldFamily::fillet;
  WeldPosition position = WeldPosition::pa;
};

/// Six fillets of 5 to 15 mm to four grooves in plate of 8 to 40 mm, as heavy plate work has them.
Work made_work(base::Random& random, int index) {
  Work work;
  if (index % 10 < 6) {
    const double leg_mm = 5.0 + 0.5 * static_cast<double>(random.below(21));
    work.params.preparation = joint::Fillet{leg_mm, leg_mm, 0.0, 0.0, 0.0};
    work.position = index % 3 == 0 ? WeldPosition::pa : WeldPosition::pb;
    return work;
  }
  work.family = WeldFamily::groove;
  work.position = index % 10 == 6 ? WeldPosition::pf : WeldPosition::pa;
  work.params.thickness_mm = 8.0 + static_cast<double>(random.below(33));
  work.params.cap.height_mm = 2.0;
  work.params.cap.toe_lap_mm = 1.0;
  const base::Angle angle = base::Angle::deg(random.between(45.0, 60.0));
  if (index % 2 == 0) {
    work.params.preparation = joint::single_v({3.0, 1.0}, angle);
  } else {
    work.params.preparation = joint::single_bevel({3.0, 1.0}, angle);
  }
  return work;
}

std::vector<Work> made_mix(int count) {
  base::Random random(base::named_seed(7, "bench_pass"));
  std::vector<Work> mix;
  for (int i = 0; i < count; ++i) mix.push_back(made_work(random, i));
  return mix;
}

pass::StackRequest request_for(const Work& work) {
  pass::StackRequest request;
  request.family = work.family;
  request.position = work.position;
  request.wire = &wire();
  request.settings = library().settings;
  request.limits = library().bead_limits;
  request.length_mm = 500.0;
  return request;
}

void count_up(benchmark::State& state, std::size_t passes) {
  state.SetItemsProcessed(state.iterations() * state.range(0));
  state.SetComplexityN(state.range(0));
  state.counters["passes"] = static_cast<double>(passes) / static_cast<double>(state.range(0));
}

void sections_only(benchmark::State& state) {
  const std::vector<Work> mix = made_mix(static_cast<int>(state.range(0)));
  for (auto _ : state) {
    for (const Work& work : mix) {
      benchmark::DoNotOptimize(section::weld_section(work.params)->area_mm2);
    }
  }
  count_up(state, 0);
}
BENCHMARK(sections_only)->Arg(1000)->Unit(benchmark::kMicrosecond);

void section_and_stack_rules_anew(benchmark::State& state) {
  const std::vector<Work> mix = made_mix(static_cast<int>(state.range(0)));
  std::size_t passes = 0;
  for (auto _ : state) {
    passes = 0;
    for (const Work& work : mix) {
      const auto section = section::weld_section(work.params).value();
      pass::StackRequest request = request_for(work);
      request.section = &section;
      passes += pass::make_pass_stack(request)->passes.size();
    }
  }
  count_up(state, passes);
}
BENCHMARK(section_and_stack_rules_anew)->Arg(1000)->Unit(benchmark::kMicrosecond);

/// One set of rules for every family and position in the mix.
using RulesOf = std::map<std::pair<WeldFamily, WeldPosition>, pass::StackRules>;

RulesOf rules_for(const std::vector<Work>& mix, pass::StackAim aim) {
  RulesOf rules;
  for (const Work& work : mix) {
    pass::StackRequest request = request_for(work);
    request.aim = aim;
    request.margin_ratio = aim == pass::StackAim::least_arc_time ? 0.02 : 0.0;
    rules.try_emplace({work.family, work.position}, pass::StackRules::make(request).value());
  }
  return rules;
}

std::size_t lay_all(const std::vector<Work>& mix, const RulesOf& rules) {
  std::size_t passes = 0;
  for (const Work& work : mix) {
    const auto section = section::weld_section(work.params);
    const auto stack =
        pass::make_pass_stack(rules.at({work.family, work.position}), *section, 500.0);
    if (stack) passes += stack->passes.size();
  }
  return passes;
}

void section_and_stack(benchmark::State& state) {
  const std::vector<Work> mix = made_mix(static_cast<int>(state.range(0)));
  const RulesOf rules = rules_for(mix, pass::StackAim::preferred_point);
  std::size_t passes = 0;
  for (auto _ : state) benchmark::DoNotOptimize(passes = lay_all(mix, rules));
  count_up(state, passes);
}
BENCHMARK(section_and_stack)
    ->RangeMultiplier(10)
    ->Range(10, 10000)
    ->Complexity(benchmark::oN)
    ->Unit(benchmark::kMicrosecond);

void section_and_stack_least_arc_time(benchmark::State& state) {
  const std::vector<Work> mix = made_mix(static_cast<int>(state.range(0)));
  const RulesOf rules = rules_for(mix, pass::StackAim::least_arc_time);
  std::size_t passes = 0;
  for (auto _ : state) benchmark::DoNotOptimize(passes = lay_all(mix, rules));
  count_up(state, passes);
}
BENCHMARK(section_and_stack_least_arc_time)->Arg(1000)->Unit(benchmark::kMicrosecond);

/// Growth with the passes of one joint: thicker and thicker plate.
void one_thick_groove(benchmark::State& state) {
  Work work;
  work.family = WeldFamily::groove;
  work.params.thickness_mm = static_cast<double>(state.range(0));
  work.params.preparation = joint::single_v({3.0, 1.0}, base::Angle::deg(50.0));
  work.params.cap.height_mm = 2.0;
  work.params.cap.toe_lap_mm = 1.0;
  const std::vector<Work> mix = {work};
  const RulesOf rules = rules_for(mix, pass::StackAim::preferred_point);
  std::size_t passes = 0;
  for (auto _ : state) benchmark::DoNotOptimize(passes = lay_all(mix, rules));
  state.counters["passes"] = static_cast<double>(passes);
  state.SetComplexityN(static_cast<benchmark::IterationCount>(passes));
}
BENCHMARK(one_thick_groove)
    ->RangeMultiplier(2)
    ->Range(10, 320)
    ->Complexity()
    ->Unit(benchmark::kMicrosecond);

}  // namespace
