// SPDX-License-Identifier: MIT
// The order of the whole build: stage after stage, re-hung by crane between set-ups.
#include <algorithm>
#include <optional>

#include "detail_assemble.hpp"
#include "detail_build.hpp"
#include "detail_earlier_start.hpp"
#include "detail_order_links.hpp"
#include "detail_stances.hpp"
#include "seamturn/order/search.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;
using Placements = std::vector<std::vector<Placement>>;

/// A stage that hangs on the positioner, with its ordering problem.
struct StageJob {
  StancePool pool;
  Placements placements;
  OrderJob order;
  order::Sequence start;  ///< by an earlier plan; empty: none
};

plan::PlannedStage planned_stage(const cell::Positioner* positioner, const StageWork& stage) {
  plan::PlannedStage planned;
  if (stage.stage != nullptr) {
    planned.id = stage.stage->id;
    planned.fitted = joint::fitted_members(*stage.stage);
  }
  if (stage.setup != nullptr) planned.setup = stage.setup->id;
  for (const joint::Member* member : stage.present) planned.present.push_back(member->id);
  planned.part = stage.part_J;
  planned.load = stage.load_D;
  if (positioner != nullptr && stage.setup != nullptr && !stage.present.empty()) {
    planned.holds = held_member(*positioner, stage).id;
  }
  if (stage.rehangs) {
    planned.rehang_s = stage.setup->hang_s.value_or(0.0);
    planned.rehang_people = stage.setup->hang_people;
  }
  return planned;
}

/// Every joint belongs to one stage: its seams are placed there or nowhere.
Placements merged(const std::vector<StageJob>& jobs, std::size_t seams) {
  Placements all(seams);
  for (const StageJob& job : jobs) {
    for (std::size_t i = 0; i < job.placements.size(); ++i) {
      if (!job.placements[i].empty()) all[i] = job.placements[i];
    }
  }
  return all;
}

/// Searches once more as if nothing were fixed by hand. What was found by hand is one of the orders
/// the free search may choose, so the free one is never worse.
plan::HandOrderPrice price_of_hand(const OrderJob& order,
                                   const order::Found& by_hand,
                                   const order::SearchParams& search) {
  plan::HandOrderPrice price;
  price.entries = order.by_hand;
  price.by_hand_s = by_hand.cycle_s;
  price.by_hand_stances = order::tally(order.job, by_hand.sequence).turns;
  const order::Job free = without_hand_order(order);
  const order::Found own = order.hand_links.empty() ? by_hand : order::find_order(free, search);
  const bool better = own.cycle_s < by_hand.cycle_s;
  price.own_s = better ? own.cycle_s : by_hand.cycle_s;
  price.own_stances = better ? order::tally(free, own.sequence).turns : price.by_hand_stances;
  price.own_proved_best = own.proved_best;
  return price;
}

/// The effort is shared out by size, so that a build in stages takes no longer.
order::SearchParams share_of(const order::SearchParams& whole,
                             const order::Job& job,
                             std::size_t all_blocks) {
  order::SearchParams share = whole;
  const auto part = [&](std::int64_t work) {
    return work * static_cast<std::int64_t>(job.blocks.size()) /
           static_cast<std::int64_t>(all_blocks);
  };
  share.effort = part(whole.effort);
  share.bound_work = part(whole.bound_work);
  share.progress = nullptr;
  return share;
}

class Build {
 public:
  Build(const Inputs& inputs, const std::vector<StageWork>& stages, plan::Plan& plan)
      : inputs_(inputs), stages_(stages), plan_(plan) {}

  /// Stances of every stage; false when some seam or stage finds none.
  bool place(const std::vector<SeamRef>& seams) {
    const std::size_t told = plan_.findings.size();
    for (const StageWork& stage : stages_) {
      StageJob job;
      if (stage.setup != nullptr) {
        job.pool = find_stance_pool(inputs_, stage, seams, plan_.findings);
      }
      jobs_.push_back(std::move(job));
    }
    const auto first = plan_.findings.begin() + static_cast<std::ptrdiff_t>(told);
    if (std::any_of(first, plan_.findings.end(), [](const Finding& finding) {
          return finding.severity == Severity::error;
        })) {
      return false;
    }
    for (std::size_t k = 0; k < stages_.size(); ++k) {
      if (stages_[k].setup == nullptr) continue;
      jobs_[k].placements = choose_placements(inputs_, seams, jobs_[k].pool);
    }
    return true;
  }

  [[nodiscard]] Placements placements(std::size_t seams) const { return merged(jobs_, seams); }

  void order(const std::vector<SeamRef>& seams, const PlanParams& params) {
    std::size_t blocks = 0;
    for (std::size_t k = 0; k < stages_.size(); ++k) {
      if (stages_[k].setup == nullptr) continue;
      const bool last = k + 1 == stages_.size();
      jobs_[k].order =
          make_order_job(inputs_, stages_[k], seams, jobs_[k].pool, jobs_[k].placements, last);
      blocks += jobs_[k].order.job.blocks.size();
      const std::vector<Finding>& told = jobs_[k].order.findings;
      plan_.findings.insert(plan_.findings.end(), told.begin(), told.end());
      check(jobs_[k].order.job);
    }
    if (base::has_errors(plan_.findings)) return;
    blocks_ = blocks;
    if (!params.start) return run(seams, params, Way::searched);
    const std::optional<double> earlier_s = begin_with(seams, *params.start);
    const plan::Plan before = plan_;
    run(seams, params, Way::searched);
    // What is won in one stage may cost a cleaning in the next.
    if (!earlier_s || objective_s_ <= *earlier_s * (1.0 + 1e-9)) return;
    plan_ = before;
    run(seams, params, Way::as_begun);
  }

  void weigh_sides(const std::vector<SeamRef>& seams) {
    for (const StageJob& job : jobs_) assemble_twins(seams, job.order.twins, plan_);
    if (!plan_.timeline.empty()) plan_.shrink_moment = find_shrink_moment(seams, plan_);
  }

 private:
  enum class Way { searched, as_begun };

  void run(const std::vector<SeamRef>& seams, const PlanParams& params, Way way) {
    plan_.proved_best = blocks_ > 0;
    objective_s_ = 0.0;
    for (std::size_t k = 0; k < stages_.size(); ++k) {
      plan_.stages.push_back(planned_stage(&inputs_.cell->positioner, stages_[k]));
      stages_[k].setup == nullptr ? away(stages_[k]) : hang(seams, params, k, way);
    }
  }

  /// Gives the stages the order of an earlier plan to begin with. Returns its objective on today's
  /// clock; nothing where it does not cover every stage.
  std::optional<double> begin_with(const std::vector<SeamRef>& seams, const EarlierOrder& earlier) {
    StartCounts counts;
    ChainClock clock;
    bool whole = true;
    for (std::size_t k = 0; k < stages_.size(); ++k) {
      StageJob& stage = jobs_[k];
      if (stages_[k].setup == nullptr || stage.order.job.blocks.empty()) continue;
      stage.start = start_sequence(
          inputs_.cell->positioner, stages_[k], seams, stage.pool, stage.order, earlier, counts);
      whole = whole && !stage.start.empty();
      if (whole) clock.run(stage.order.job, stage.start);
    }
    base::append_findings(plan_.findings, earlier.findings);
    plan_.findings.push_back(told(earlier, counts));
    return whole ? std::optional(clock.objective_s()) : std::nullopt;
  }

  void check(const order::Job& job) {
    const base::Outcome<bool> checked = order::check_job(job);
    if (checked) return;
    plan_.findings.push_back(Finding{Severity::error,
                                     checked.error().code,
                                     checked.error().text,
                                     place_of(inputs_.weldment, "weldment"),
                                     {}});
  }

  /// Work elsewhere: listed and paid for, not on the cell's clock.
  void away(const StageWork& stage) {
    for (std::size_t i = 0; i < stage.operations.size(); ++i) {
      plan_.operations.push_back(planned_operation(stage, i));
    }
  }

  void hang(const std::vector<SeamRef>& seams, const PlanParams& params, std::size_t k, Way way) {
    plan::PlannedStage& stage = plan_.stages.back();
    stage.start_s = plan_.cycle_s;
    rehang(stage);
    OrderJob& job = jobs_[k].order;
    job.job.arc_since_clean_s = arc_since_clean_s();
    if (!job.job.blocks.empty()) {
      order::SearchParams search = share_of(params.search, job.job, blocks_);
      search.start = jobs_[k].start;
      const order::Found found = way == Way::searched ? order::find_order(job.job, search)
                                                      : as_begun(job.job, jobs_[k].start);
      objective_s_ += order::objective_s(job.job, found.sequence);
      assemble_order(inputs_, stages_[k], seams, jobs_[k].pool, job, found, plan_);
      if (!job.by_hand.empty()) stage.by_hand = price_of_hand(job, found, search);
      stage.lower_bound_s = found.lower_bound_s;
      stage.proved_best = found.proved_best;
      plan_.lower_bound_s += found.lower_bound_s;
      plan_.proved_best = plan_.proved_best && found.proved_best;
    }
    stage.end_s = plan_.cycle_s;
  }

  /// The nozzle comes out of the stages before as it is.
  [[nodiscard]] double arc_since_clean_s() const {
    double arc_s = 0.0;
    for (const plan::PlannedEvent& event : plan_.timeline) {
      if (event.kind == timeline::SecondKind::arc) arc_s += event.end_s - event.start_s;
      if (event.kind == timeline::SecondKind::clean) arc_s = 0.0;
    }
    return arc_s;
  }

  void rehang(const plan::PlannedStage& stage) {
    if (stage.rehang_s <= 0.0) return;
    plan::PlannedEvent event;
    event.kind = timeline::SecondKind::hang;
    event.start_s = plan_.cycle_s;
    event.end_s = plan_.cycle_s + stage.rehang_s;
    event.operation = "hang " + stage.setup;
    event.stage = plan_.stages.size() - 1;
    plan_.timeline.push_back(event);
    plan_.cycle_s = event.end_s;
    plan_.lower_bound_s += stage.rehang_s;
    plan_.seconds[static_cast<std::size_t>(event.kind)] += stage.rehang_s;
  }

  const Inputs& inputs_;
  const std::vector<StageWork>& stages_;
  plan::Plan& plan_;
  std::vector<StageJob> jobs_;
  std::size_t blocks_ = 0;    ///< of all stages
  double objective_s_ = 0.0;  ///< of the orders taken, all stages
};

}  // namespace

void order_build(const Inputs& inputs,
                 const PlanParams& params,
                 const std::vector<StageWork>& stages,
                 std::vector<JointWork>& joints,
                 plan::Plan& plan) {
  Build build(inputs, stages, plan);
  const std::vector<SeamRef> seams = all_seams(joints);
  if (!build.place(seams)) return;
  const Placements placements = build.placements(seams.size());
  turn_beads(joints, placements);
  assemble_joints(inputs, joints, placements, plan);
  if (params.progress) params.progress("order");
  build.order(seams, params);
  build.weigh_sides(seams);
}

void list_build(const std::vector<StageWork>& stages, plan::Plan& plan) {
  for (const StageWork& stage : stages) {
    plan.stages.push_back(planned_stage(nullptr, stage));
    for (std::size_t i = 0; i < stage.operations.size(); ++i) {
      plan.operations.push_back(planned_operation(stage, i));
    }
  }
}

}  // namespace seamturn::planner::detail
