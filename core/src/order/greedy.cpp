// SPDX-License-Identifier: MIT
#include <algorithm>
#include <limits>

#include "detail_precedence.hpp"
#include "detail_run.hpp"
#include "detail_work.hpp"
#include "seamturn/order/search.hpp"

namespace seamturn::order {

Sequence greedy_sequence(const Job& job) {
  const Precedence precedence(job);
  const Zones zones = number_zones(job);
  const auto run = quiet_run(job);
  std::vector<ZoneState> zone_states(static_cast<std::size_t>(zones.count));
  std::vector<std::size_t> missing;
  std::vector<int> ready;
  std::vector<double> works_s;
  for (std::size_t b = 0; b < job.blocks.size(); ++b) {
    missing.push_back(precedence.leaders(static_cast<int>(b)).size());
    works_s.push_back(least_work_s(job, job.blocks[b]));
    if (missing.back() == 0) {
      ready.push_back(static_cast<int>(b));
    }
  }
  RobotState now = state_at_start(job);
  Sequence sequence;
  while (!ready.empty()) {
    double least_s = std::numeric_limits<double>::infinity();
    Step best;
    for (const int block : ready) {
      const auto b = static_cast<std::size_t>(block);
      for (std::size_t o = 0; o < job.blocks[b].options.size(); ++o) {
        RobotState state = now;
        ZoneState zone = zone_states[static_cast<std::size_t>(zones.of_block[b])];
        const Step step{block, static_cast<int>(o)};
        run.weld(state, zone, step);
        const double added_s =
            state.objective_s(job.worth) - now.objective_s(job.worth) - works_s[b];
        if (added_s < least_s || (added_s == least_s && block < best.block)) {
          least_s = added_s;
          best = step;
        }
      }
    }
    run.weld(
        now,
        zone_states[static_cast<std::size_t>(zones.of_block[static_cast<std::size_t>(best.block)])],
        best);
    sequence.push_back(best);
    ready.erase(std::find(ready.begin(), ready.end(), best.block));
    for (const int next : precedence.followers(best.block)) {
      if (--missing[static_cast<std::size_t>(next)] == 0) {
        ready.push_back(next);
      }
    }
  }
  return sequence;
}

}  // namespace seamturn::order
