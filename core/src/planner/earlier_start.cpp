// SPDX-License-Identifier: MIT
#include "detail_earlier_start.hpp"

#include <algorithm>

#include "seamturn/order/simulate.hpp"

namespace seamturn::planner::detail {

void ChainClock::run(order::Job job, const order::Sequence& sequence) {
  job.arc_since_clean_s = arc_since_clean_s_;
  objective_s_ += order::objective_s(job, sequence);
  const timeline::Clock clock = order::simulate(job, sequence);
  for (const timeline::Event& event : clock.events()) {
    if (event.kind == timeline::SecondKind::arc) arc_since_clean_s_ += event.end_s - event.start_s;
    if (event.kind == timeline::SecondKind::clean) arc_since_clean_s_ = 0.0;
  }
}

order::Found as_begun(const order::Job& job, const order::Sequence& sequence) {
  order::Found found;
  found.sequence = sequence;
  found.cycle_s = order::cycle_time_s(job, sequence);
  found.lower_bound_s = std::min(order::lower_bound_s(job), found.cycle_s);
  return found;
}

base::Finding told(const EarlierOrder& earlier, const StartCounts& counts) {
  base::Finding finding;
  finding.place.file = earlier.file;
  const int known = counts.blocks - counts.new_ones;
  if (known == 0) {
    finding.severity = base::Severity::warning;
    finding.code = "plan.start.unused";
    finding.text =
        "nothing of the order in this plan belongs to this weldment; it was planned as without it; "
        "give a plan of this weldment, or of an earlier revision with the same ids";
    return finding;
  }
  finding.severity = base::Severity::note;
  finding.code = "plan.start.used";
  finding.text = "the search began with the order of this plan: " + std::to_string(known) + " of " +
                 std::to_string(counts.blocks) + " pass blocks and operations stand in it";
  const auto add = [&](int count, const char* one, const char* many) {
    if (count == 1) finding.text += std::string("; 1 ") + one;
    if (count > 1) finding.text += "; " + std::to_string(count) + ' ' + many;
  };
  add(counts.new_ones, "is new and was put in", "are new and were put in");
  add(counts.brought_on,
      "was brought on, because others may only follow it now",
      "were brought on, because others may only follow them now");
  add(counts.other_stance,
      "can no longer be held or travelled as it was, and began with what is soonest reached from "
      "there",
      "can no longer be held or travelled as they were, and began with what is soonest reached "
      "from there");
  return finding;
}

}  // namespace seamturn::planner::detail
