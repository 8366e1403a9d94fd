// SPDX-License-Identifier: MIT
#include "detail_tails.hpp"

#include <algorithm>

#include "detail_work.hpp"

namespace seamturn::order {

namespace {

/// From the first arc of a block to that of one that follows it.
double between_s(const Job& job,
                 bool air_counts,
                 const Block& block,
                 const Block& follower,
                 bool same_zone,
                 const Option& option,
                 const Within& laid) {
  double least_s = never_s;
  for (const Option& next : follower.options) {
    double way_s = laid.leave_s + before_first_arc_s(job, follower);
    if (air_counts && next.stance == option.stance) way_s += air_s(job, option.end_W, next.start_W);
    if (same_zone && !block.work_s && !follower.work_s) {
      way_s = std::max(way_s, ready_s(laid.last, follower.passes.front(), next.course));
    }
    least_s = std::min(least_s, way_s);
  }
  return least_s;
}

}  // namespace

Within laid_within(const Job& job, const Block& block, const Option& option) {
  Within out;
  out.last.course = option.course;
  if (block.work_s) {
    out.leave_s = *block.work_s;
    return out;
  }
  const double retract_s = air_s(job, job.retract_mm);
  const double back_s = air_s(job, option.end_W, option.start_W);
  double start_s = 0.0;
  for (std::size_t k = 0; k < block.passes.size(); ++k) {
    const BlockPass& pass = block.passes[k];
    if (k > 0) {
      const double there_s = out.leave_s + back_s + retract_s + before_arc_s(pass);
      start_s = std::max(there_s, ready_s(out.last, pass, option.course));
    }
    out.last.last_start_s = start_s;
    out.last.last_end_s = start_s + pass.arc_s;
    out.leave_s = out.last.last_end_s + retract_s + pass.unwind_s;
  }
  return out;
}

double before_first_arc_s(const Job& job, const Block& block) {
  if (block.work_s) return 0.0;
  return block.gouge_s + before_arc_s(block.passes.front()) + air_s(job, job.retract_mm);
}

// The option of neither block is known: the least of all pairs counts.
std::vector<double> tails_s(const Job& job, const Precedence& precedence, const Zones& zones) {
  std::vector<double> tails(job.blocks.size(), 0.0);
  const auto& sorted = precedence.sorted();
  const bool air_counts = arcs_are_slow(job);
  for (auto at = sorted.rbegin(); at != sorted.rend(); ++at) {
    const auto b = static_cast<std::size_t>(*at);
    double least_s = never_s;
    for (const Option& option : job.blocks[b].options) {
      const Within laid = laid_within(job, job.blocks[b], option);
      double after_s = laid.leave_s;
      if (air_counts) after_s += air_s(job, option.end_W, job.home_W);
      for (const int follower : precedence.followers(*at)) {
        const auto f = static_cast<std::size_t>(follower);
        const bool same_zone = zones.of_block[b] == zones.of_block[f];
        after_s = std::max(
            after_s,
            tails[f] +
                between_s(job, air_counts, job.blocks[b], job.blocks[f], same_zone, option, laid));
      }
      least_s = std::min(least_s, after_s);
    }
    tails[b] = least_s;
  }
  return tails;
}

}  // namespace seamturn::order
