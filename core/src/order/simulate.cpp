// SPDX-License-Identifier: MIT
#include "seamturn/order/simulate.hpp"

#include <unordered_map>

#include "detail_run.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::order {

namespace {

struct ToClock {
  timeline::Clock* clock;
  void operator()(
      timeline::SecondKind kind, double seconds, int stance, int block, int pass = -1) const {
    clock->spend(kind, seconds, stance, block, pass);
  }
};

template <class Record>
RobotState run_all(const Job& job, const Sequence& sequence, const Run<Record>& run) {
  const Zones numbered = number_zones(job);
  std::vector<ZoneState> zones(static_cast<std::size_t>(numbered.count));
  RobotState state = state_at_start(job);
  for (const Step& step : sequence) {
    const int zone = numbered.of_block[static_cast<std::size_t>(step.block)];
    run.weld(state, zones[static_cast<std::size_t>(zone)], step);
  }
  run.finish(state);
  return state;
}

}  // namespace

Zones number_zones(const Job& job) {
  Zones zones;
  zones.of_block.reserve(job.blocks.size());
  std::unordered_map<int, int> known;
  known.reserve(job.blocks.size());
  for (const Block& block : job.blocks) {
    const auto [place, is_new] = known.try_emplace(block.zone, zones.count);
    zones.count += is_new ? 1 : 0;
    zones.of_block.push_back(place->second);
  }
  return zones;
}

timeline::Clock simulate(const Job& job, const Sequence& sequence) {
  SEAMTURN_REQUIRE(is_valid(job, sequence), sequence.size());
  timeline::Clock clock;
  static_cast<void>(
      run_all(job, sequence, Run<ToClock>(job, air_s(job, job.retract_mm), ToClock{&clock})));
  return clock;
}

double cycle_time_s(const Job& job, const Sequence& sequence) {
  SEAMTURN_REQUIRE(is_valid(job, sequence), sequence.size());
  return run_all(job, sequence, quiet_run(job)).now_s;
}

Tally tally(const Job& job, const Sequence& sequence) {
  SEAMTURN_REQUIRE(is_valid(job, sequence), sequence.size());
  const RobotState end = run_all(job, sequence, quiet_run(job));
  return {end.entries, end.turns};
}

double objective_s(const Job& job, const Sequence& sequence) {
  SEAMTURN_REQUIRE(is_valid(job, sequence), sequence.size());
  return run_all(job, sequence, quiet_run(job)).objective_s(job.worth);
}

}  // namespace seamturn::order
