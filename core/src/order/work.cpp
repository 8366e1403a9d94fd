// SPDX-License-Identifier: MIT
// Seconds that no order can avoid.
#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>

#include "detail_work.hpp"

namespace seamturn::order {

namespace {

/// Wait before pass `next` of a block that nothing between it and the pass before can fill but a
/// cleaning: both are known relative to the start of the pass before, in every order.
double wait_inside_s(const Job& job, const Block& block, const Option& option, std::size_t next) {
  const BlockPass& before = block.passes[next - 1];
  const BlockPass& pass = block.passes[next];
  ZoneState zone;
  zone.last_end_s = before.arc_s;
  const double earliest_s = before.arc_s + 2.0 * air_s(job, job.retract_mm) + before.unwind_s +
                            air_s(job, option.end_W, option.start_W) + before_arc_s(pass);
  return std::max(0.0, ready_s(zone, pass, zone.course) - earliest_s);
}

}  // namespace

double work_s(const Job& job, const Block& block) {
  const double retract_s = air_s(job, job.retract_mm);
  double total_s = block.gouge_s + block.work_s.value_or(0.0);
  for (const BlockPass& pass : block.passes) {
    total_s += before_arc_s(pass) + pass.arc_s + pass.unwind_s + 2.0 * retract_s;
  }
  return total_s;
}

double inside_s(const Job& job, const Block& block, const Option& option) {
  if (block.passes.size() < 2) {
    return 0.0;
  }
  const double back_s = air_s(job, option.end_W, option.start_W);
  double total_s = 0.0;
  for (std::size_t next = 1; next < block.passes.size(); ++next) {
    total_s += back_s + wait_inside_s(job, block, option, next);
  }
  return total_s;
}

double least_work_s(const Job& job, const Block& block) {
  double least_s = std::numeric_limits<double>::infinity();
  for (const Option& option : block.options) {
    least_s = std::min(least_s, inside_s(job, block, option));
  }
  return work_s(job, block) + least_s;
}

bool arcs_are_slow(const Job& job) {
  return std::all_of(job.blocks.begin(), job.blocks.end(), [&job](const Block& block) {
    return std::all_of(block.options.begin(), block.options.end(), [&](const Option& option) {
      return work_s(job, block) >= air_s(job, option.start_W, option.end_W);
    });
  });
}

// A zone is touched in every stance visit that welds one of its touching blocks. Blocks without a
// common stance are welded in different visits, and every touch costs at least the cheapest left.
double least_touch_s(const Job& job, const Zones& zones) {
  std::vector<std::vector<std::size_t>> members(static_cast<std::size_t>(zones.count));
  for (std::size_t b = 0; b < job.blocks.size(); ++b) {
    if (job.blocks[b].touch_s > 0.0) {
      members[static_cast<std::size_t>(zones.of_block[b])].push_back(b);
    }
  }
  double total_s = 0.0;
  for (auto& blocks : members) {
    std::vector<double> touches_s;
    std::vector<int> used;
    for (const std::size_t b : blocks) touches_s.push_back(job.blocks[b].touch_s);
    std::sort(touches_s.begin(), touches_s.end());
    std::stable_sort(blocks.begin(), blocks.end(), [&job](std::size_t x, std::size_t y) {
      return job.blocks[x].options.size() < job.blocks[y].options.size();
    });
    std::size_t visits = 0;
    for (const std::size_t b : blocks) {
      const auto& options = job.blocks[b].options;
      const bool meets = std::any_of(options.begin(), options.end(), [&used](const Option& o) {
        return std::find(used.begin(), used.end(), o.stance) != used.end();
      });
      if (!meets) {
        total_s += touches_s[visits++];
        for (const Option& option : options) used.push_back(option.stance);
      }
    }
  }
  return total_s;
}

double least_heat_s(const Job& job, const Zones& zones) {
  if (job.heat_once_s > 0.0) {
    const bool any = std::any_of(job.blocks.begin(), job.blocks.end(), [](const Block& block) {
      return block.heat_s > 0.0;
    });
    return any ? job.heat_once_s : 0.0;
  }
  std::vector<double> zone_s(static_cast<std::size_t>(zones.count), never_s);
  for (std::size_t b = 0; b < job.blocks.size(); ++b) {
    double& least_s = zone_s[static_cast<std::size_t>(zones.of_block[b])];
    least_s = std::min(least_s, job.blocks[b].heat_s);
  }
  double total_s = 0.0;
  for (const double least_s : zone_s) total_s += least_s;
  return total_s;
}

bool may_cool_down(const Job& job) {
  return !(job.heat_once_s > 0.0) &&
         std::any_of(job.blocks.begin(), job.blocks.end(), [](const Block& block) {
           const bool pass_cools =
               std::any_of(block.passes.begin(), block.passes.end(), [](const BlockPass& pass) {
                 return pass.keep_s < never_s;
               });
           return block.heat_s > 0.0 && (pass_cools || block.heat_keep_s < never_s);
         });
}

// Between two cleanings lies at most `clean_every_s` of arc, or one pass longer than that with
// passes of no arc. So a long pass has a stretch of its own, passes above half the interval never
// share one, and the arcs of the others fill at least total / interval stretches.
int least_cleanings(const Job& job) {
  if (!(job.clean_every_s > 0.0)) {
    return 0;
  }
  double short_arcs_s = 0.0;
  int long_passes = 0;
  int halves = 0;
  for (const Block& block : job.blocks) {
    for (const BlockPass& pass : block.passes) {
      const bool is_long = pass.arc_s > job.clean_every_s;
      long_passes += is_long ? 1 : 0;
      halves += !is_long && pass.arc_s > 0.5 * job.clean_every_s * (1.0 + 1e-9) ? 1 : 0;
      short_arcs_s += is_long ? 0.0 : pass.arc_s;
    }
  }
  const double filled = std::ceil(short_arcs_s / job.clean_every_s * (1.0 - 1e-9));
  const int stretches = long_passes + std::max(halves, static_cast<int>(std::min(filled, 1e8)));
  return std::max(0, stretches - 1);
}

// A cleaning inside a block may lie in a wait that is counted already; at most `cleanings` waits
// can hide one, each at most the cleaning itself.
double least_clean_s(const Job& job, int cleanings) {
  if (cleanings == 0) {
    return 0.0;
  }
  std::vector<double> hidden_s;
  for (const Block& block : job.blocks) {
    for (std::size_t next = 1; next < block.passes.size(); ++next) {
      double most_s = 0.0;
      for (const Option& option : block.options) {
        most_s = std::max(most_s, wait_inside_s(job, block, option, next));
      }
      hidden_s.push_back(std::min(most_s, job.clean_s));
    }
  }
  std::sort(hidden_s.begin(), hidden_s.end(), std::greater<>());
  double total_s = cleanings * job.clean_s;
  const auto hiding = std::min(hidden_s.size(), static_cast<std::size_t>(cleanings));
  for (std::size_t i = 0; i < hiding; ++i) {
    total_s -= hidden_s[i];
  }
  return total_s;
}

}  // namespace seamturn::order
