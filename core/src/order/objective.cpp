// SPDX-License-Identifier: MIT
#include "seamturn/order/simulate.hpp"

namespace seamturn::order {

namespace {

/// People leave the cell before the robot works or the part is turned.
int entries_of(const timeline::Clock& clock) {
  int entries = 0;
  bool inside = false;
  for (const timeline::Event& event : clock.events()) {
    const bool by_people = timeline::is_by_people(event.kind);
    if (by_people && !inside) ++entries;
    inside = by_people;
  }
  return entries;
}

/// Two stances the positioner need not move between count as one.
int turns_of(const Job& job, const Sequence& sequence) {
  int turns = 0;
  int stance = job.start_stance;
  const auto go_to = [&](int next) {
    if (job.turn_s[static_cast<std::size_t>(stance)][static_cast<std::size_t>(next)] > 0.0) ++turns;
    stance = next;
  };
  for (const Step& step : sequence) {
    const Block& block = job.blocks[static_cast<std::size_t>(step.block)];
    go_to(block.options[static_cast<std::size_t>(step.option)].stance);
  }
  if (job.end_stance) go_to(*job.end_stance);
  return turns;
}

}  // namespace

Tally tally(const Job& job, const Sequence& sequence) {
  return Tally{entries_of(simulate(job, sequence)), turns_of(job, sequence)};
}

double objective_s(const Job& job, const Sequence& sequence) {
  const Tally counted = tally(job, sequence);
  return cycle_time_s(job, sequence) + counted.entries * job.worth.entry_s +
         counted.turns * job.worth.stance_s;
}

}  // namespace seamturn::order
