// SPDX-License-Identifier: MIT
// An order planned with times that turn out otherwise: it must still be a good one.
#include "planned_demos.hpp"
#include "planner/detail_joints.hpp"
#include "planner/detail_order_job.hpp"
#include "planner/detail_stances.hpp"
#include "seamturn/order/search.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::tests {

namespace {

namespace detail = planner::detail;

/// The ordering job of every stage that hangs in the cell.
std::vector<order::Job> jobs_of(const planner::Inputs& inputs) {
  std::vector<base::Finding> findings;
  const auto joints = detail::work_joints(inputs, findings);
  const auto seams = detail::all_seams(joints);
  std::vector<order::Job> jobs;
  const auto stages = detail::work_stages(inputs, findings);
  for (const detail::StageWork& stage : stages) {
    if (stage.setup == nullptr) continue;
    const auto pool = detail::find_stance_pool(inputs, stage, seams, findings);
    const auto placements = detail::choose_placements(inputs, seams, pool);
    jobs.push_back(
        detail::make_order_job(inputs, stage, seams, pool, placements, &stage == &stages.back())
            .job);
  }
  return jobs;
}

order::Job with_other_times(order::Job job, double factor) {
  for (auto& row : job.turn_s) {
    for (double& turn_s : row) turn_s *= factor;
  }
  for (order::Block& block : job.blocks) {
    for (order::BlockPass& pass : block.passes) {
      pass.gap_s *= factor;
      pass.wind_s *= factor;
      pass.unwind_s *= factor;
    }
  }
  return job;
}

}  // namespace

TEST_SUITE("planner/steady_order") {
  TEST_CASE(
      "given waits and turns half or half as long again, the order of the hub stays within 5 "
      "percent of one searched for those times") {
    order::SearchParams params = order::search_params(order::Effort::quick);
    params.exact_states = 0;
    double as_planned_s = 0.0;
    for (const double factor : {0.5, 1.5}) {
      double kept_s = 0.0;
      double anew_s = 0.0;
      for (const order::Job& job : jobs_of(hub().inputs)) {
        if (job.blocks.empty()) continue;
        const order::Found planned = order::find_order(job, params);
        const order::Job other = with_other_times(job, factor);
        kept_s += order::cycle_time_s(other, planned.sequence);
        order::SearchParams again = params;
        again.start = planned.sequence;
        anew_s += order::find_order(other, again).cycle_s;
        as_planned_s += planned.cycle_s;
      }
      INFO("factor " << factor << ": kept " << kept_s << " s, searched anew " << anew_s << " s");
      CHECK(kept_s <= 1.05 * anew_s);
      CHECK(std::abs(kept_s - as_planned_s) > 100.0);  // the times do matter
      as_planned_s = 0.0;
    }
  }
}

}  // namespace seamturn::tests
