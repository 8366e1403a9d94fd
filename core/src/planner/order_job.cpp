// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <map>

#include "detail_joints.hpp"
#include "detail_operations.hpp"
#include "detail_order_job.hpp"
#include "detail_order_links.hpp"
#include "detail_preheating.hpp"
#include "detail_stances.hpp"
#include "detail_turns.hpp"
#include "detail_two_sides.hpp"
#include "seamturn/joint/segments.hpp"
#include "seamturn/reach/torch_pose.hpp"
#include "seamturn/turn/move_time.hpp"

namespace seamturn::planner::detail {

namespace {

class Maker {
 public:
  Maker(const Inputs& inputs,
        const StageWork& stage,
        const std::vector<SeamRef>& seams,
        const StancePool& pool)
      : inputs_(inputs),
        stage_(stage),
        setup_(*stage.setup),
        cell_(*inputs.cell),
        seams_(seams),
        pool_(pool),
        turning_(slowed(inputs.cell->positioner, stage)) {}

  OrderJob make(const std::vector<std::vector<Placement>>& placements, bool last) {
    out_.placements = placements;
    number_stances();
    set_gaps();
    pair_sides();
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      if (is_placed(i)) add_seam(i);
    }
    if (inputs_.library.heating && inputs_.library.heating->holds) {
      out_.job.heat_once_s = heating_time_at_once_s(inputs_, stage_.part_J.mass_kg, placed_seams());
    }
    add_joint_precedence();
    for (const Pair& pair : pairs_) add_side_precedence(pair);
    add_operations(
        stage_, pool_, SeamBlocks{seams_, first_block_, last_block_}, cell_.robot.home, out_);
    add_rules(inputs_, stage_, seams_, out_);
    fill_turn_table();
    if (!last) out_.job.end_stance = 0;
    out_.job.home_W = cell_.robot.home;
    out_.job.air_speed_mm_s = cell_.robot.air_speed_mm_s;
    out_.job.air_acceleration_mm_s2 = cell_.robot.air_acceleration_mm_s2;
    out_.job.retract_mm = cell_.robot.retract_mm;
    out_.job.clean_every_s = cell_.times.clean_every_s;
    out_.job.clean_s = cell_.times.clean_s;
    out_.job.worth = inputs_.library.priorities ? inputs_.library.priorities->worth
                                                : order::Worth{0.0, usual_stance_worth_s};
    return std::move(out_);
  }

 private:
  /// Stance 0 of the job is the rest position (all axes at zero, or the limit nearest to it);
  /// others in the order seams ask for them.
  void number_stances() {
    out_.pool_stance.push_back(-1);
    for (const auto& list : out_.placements) {
      for (const Placement& p : list) {
        if (job_stance_.emplace(p.stance, static_cast<int>(out_.pool_stance.size())).second) {
          out_.pool_stance.push_back(p.stance);
        }
      }
    }
    for (const int stance : pool_.of_operations) {
      if (stance < 0) continue;
      if (job_stance_.emplace(stance, static_cast<int>(out_.pool_stance.size())).second) {
        out_.pool_stance.push_back(stance);
      }
    }
  }

  std::vector<Angle> axes_of(int job_stance) const {
    const int pool_index = out_.pool_stance[static_cast<std::size_t>(job_stance)];
    if (pool_index >= 0) return pool_.stances[static_cast<std::size_t>(pool_index)].axes;
    return rest_axes(cell_.positioner);
  }

  /// Two seams that close one groove, and the order of their passes.
  struct Pair {
    std::size_t first = 0;  ///< seam of side 1
    std::size_t second = 0;
    std::vector<SidePass> order;

    [[nodiscard]] std::size_t seam_of(const SidePass& pass) const {
      return pass.side == 1 ? first : second;
    }
  };

  [[nodiscard]] bool is_placed(std::size_t seam) const { return !out_.placements[seam].empty(); }
  [[nodiscard]] std::vector<SeamRef> placed_seams() const {
    std::vector<SeamRef> placed;
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      if (is_placed(i)) placed.push_back(seams_[i]);
    }
    return placed;
  }
  [[nodiscard]] const StackChoice& choice_of(std::size_t seam) const {
    const Placement& first = out_.placements[seam].front();
    return seams_[seam].work->stacks[static_cast<std::size_t>(first.stack)];
  }

  void set_gaps() {
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      out_.gaps.push_back(is_placed(i) ? choice_of(i).gaps : Gaps{});
      zone_.push_back(static_cast<int>(i));
    }
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      out_.starts.push_back(is_placed(i) ? starts_of(i) : std::vector<LayerStart>());
    }
    opposed_.assign(seams_.size(), false);
    block_of_.resize(seams_.size());
  }

  [[nodiscard]] std::vector<LayerStart> starts_of(std::size_t seam) const {
    const joint::Seam& described = *seams_[seam].work->seam;
    const Placement& placement = out_.placements[seam].front();
    if (!placement.rolling) return planned_starts(described, choice_of(seam).stack);
    return rolled_starts(described,
                         choice_of(seam).stack,
                         room_beside_leads(seam),
                         axes_of(job_stance_.at(placement.stance)).back(),
                         rolled_turn(cell_.positioner, setup_, described));
  }

  /// The rolling axis less what the leads of passes wind before them.
  [[nodiscard]] cell::Axis room_beside_leads(std::size_t seam) const {
    cell::Axis axis = cell_.positioner.axes.back();
    Angle least;
    Angle most;
    const pass::PassStack& stack = choice_of(seam).stack;
    for (const pass::Pass& pass : stack.passes) {
      const Angle wound = lead_wind(inputs_, setup_, seams_[seam], stack, pass);
      least = std::min(least, wound);
      most = std::max(most, wound);
    }
    axis.min = axis.min - least;
    axis.max = axis.max - most;
    return axis;
  }

  /// Both sides of a groove heat the same place: one zone, and gaps from pass to pass as they are
  /// welded.
  void pair_sides() {
    for (std::size_t i = 0; i + 1 < seams_.size(); ++i) {
      const JointWork& joint = *seams_[i].joint;
      const bool is_pair = joint::lie_beside(*seams_[i].work->seam, *seams_[i + 1].work->seam) &&
                           seams_[i].work->seam->side != seams_[i + 1].work->seam->side;
      if (!is_pair || !is_placed(i) || !is_placed(i + 1)) continue;
      Pair pair{
          i,
          i + 1,
          weld_order(
              *joint.joint, choice_of(i).stack, choice_of(i + 1).stack, is_balanced(*joint.joint))};
      std::vector<double> heat_inputs;
      for (const SidePass& pass : pair.order) {
        heat_inputs.push_back(pass_of(pair.seam_of(pass), pass.pass).heat_input_kj_mm);
      }
      const base::Outcome<Gaps> gaps = find_gaps(inputs_, joint, heat_inputs);
      SEAMTURN_REQUIRE(gaps.has_value(), joint.joint->id);
      for (std::size_t k = 0; k < pair.order.size(); ++k) {
        const SidePass& pass = pair.order[k];
        Gaps& own = out_.gaps[pair.seam_of(pass)];
        own.longer_s[static_cast<std::size_t>(pass.pass)] = gaps->longer_s[k];
        own.shorter_s[static_cast<std::size_t>(pass.pass)] = gaps->shorter_s[k];
      }
      zone_[pair.second] = zone_[pair.first];
      opposed_[pair.second] = joint::runs_against(*seams_[i + 1].work->seam, *seams_[i].work->seam);
      pairs_.push_back(std::move(pair));
    }
  }

  [[nodiscard]] bool is_balanced(const joint::Joint& joint) const {
    return joint.balance_off.empty() && inputs_.weldment.balance_off.empty();
  }
  [[nodiscard]] const pass::Pass& pass_of(std::size_t seam, int pass) const {
    return choice_of(seam).stack.passes[static_cast<std::size_t>(pass)];
  }

  void add_seam(std::size_t seam) {
    const StackChoice& choice = choice_of(seam);
    const std::vector<std::vector<int>> groups = grouped(seam);
    int previous = -1;
    for (const std::vector<int>& passes : groups) {
      order::Block block;
      block.name = seams_[seam].work->seam->id + " pass " + std::to_string(passes.front() + 1);
      block.zone = zone_[seam];
      block.touch_s = cell_.times.touch_s * cell_.times.touches_per_seam;
      for (const int k : passes) block.passes.push_back(block_pass(seam, choice, k));
      set_heating(seam, choice, passes, block);
      block.options = options_of(seam, choice, passes);
      if (previous >= 0) block.after.push_back(previous);
      previous = static_cast<int>(out_.job.blocks.size());
      if (passes == groups.front()) first_block_[seam] = previous;
      block_of_[seam].insert(block_of_[seam].end(), passes.size(), previous);
      out_.job.blocks.push_back(std::move(block));
      out_.origins.push_back(BlockOrigin{static_cast<int>(seam), passes});
    }
    last_block_[seam] = previous;
  }

  /// Passes by layer; layers with a wait inside are cut apart.
  [[nodiscard]] std::vector<std::vector<int>> grouped(std::size_t seam) const {
    const StackChoice& choice = choice_of(seam);
    std::vector<std::vector<int>> groups;
    for (std::size_t k = 0; k < choice.stack.passes.size(); ++k) {
      const bool new_layer =
          k == 0 || choice.stack.passes[k].layer != choice.stack.passes[k - 1].layer;
      if (new_layer || out_.gaps[seam].longer_s[k] > 0.0) groups.emplace_back();
      groups.back().push_back(static_cast<int>(k));
    }
    return groups;
  }

  order::BlockPass block_pass(std::size_t seam, const StackChoice& choice, int k) const {
    order::BlockPass pass;
    const std::size_t index = static_cast<std::size_t>(k);
    pass.arc_s = choice.stack.passes[index].arc_time_s;
    pass.gap_s = out_.gaps[seam].longer_s[index];
    pass.overhead_s = pass_overhead_s(cell_, *seams_[seam].work->seam);
    if (out_.placements[seam].front().rolling) set_winding(seam, choice.stack.passes[index], pass);
    return pass;
  }

  /// Heaters that stay on keep everything warm; else the shorter model counts.
  void set_heating(std::size_t seam,
                   const StackChoice& choice,
                   const std::vector<int>& passes,
                   order::Block& block) const {
    const JointWork& joint = *seams_[seam].joint;
    block.heat_s = heating_time_s(inputs_, joint, *seams_[seam].work->seam);
    if (block.heat_s <= 0.0 || inputs_.library.heating->holds) return;
    block.heat_keep_s = keep_after_heating(inputs_, joint).shorter_s();
    for (std::size_t i = 0; i < passes.size(); ++i) {
      const pass::Pass& laid = choice.stack.passes[static_cast<std::size_t>(passes[i])];
      block.passes[i].keep_s = keep_after_pass(inputs_, joint, laid.heat_input_kj_mm).shorter_s();
    }
  }

  /// A rolling axis is turned to where its pass starts and, when it has limits, back again.
  void set_winding(std::size_t seam, const pass::Pass& laid, order::BlockPass& pass) const {
    const cell::Axis& last = turning_.axes.back();
    const joint::Seam& described = *seams_[seam].work->seam;
    const auto turn_s = [&](Angle by) {
      return turn::move_time_s(turn::MoveParams{
          std::abs(by.rad()), last.speed_rad_s, last.acceleration_rad_s2, last.jerk_rad_s3});
    };
    const Angle wound = start_of_layer(out_.starts[seam], laid.layer).wound +
                        lead_wind(inputs_, setup_, seams_[seam], choice_of(seam).stack, laid);
    pass.wind_s = wound == Angle() ? 0.0 : turn_s(wound);
    if (!last.endless)
      pass.unwind_s = turn_s(wound + rolled_turn(cell_.positioner, setup_, described));
  }

  /// Open seams whose stops are to lie apart are welded from alternate ends, where both ways can
  /// be.
  bool keeps_way(std::size_t seam, const Placement& placement, int layer) const {
    if (out_.starts[seam].empty() || geom::is_closed(*seams_[seam].work->seam->path)) return true;
    const bool wanted = start_of_layer(out_.starts[seam], layer).reversed;
    const auto& all = out_.placements[seam];
    const bool can = std::any_of(
        all.begin(), all.end(), [&](const Placement& p) { return p.reversed == wanted; });
    return !can || placement.reversed == wanted;
  }

  /// Of an open seam its direction, as side 1 is drawn. Closed ones may start anywhere: each side,
  /// and each layer with a start of its own, runs a course of its own.
  int course_of(std::size_t seam, const Placement& placement, int layer) const {
    const joint::Seam& described = *seams_[seam].work->seam;
    if (!geom::is_closed(*described.path)) return placement.reversed != opposed_[seam] ? 1 : 0;
    return 2 * (out_.starts[seam].empty() ? 0 : layer) + described.side - 1;
  }

  std::vector<order::Option> options_of(std::size_t seam,
                                        const StackChoice& choice,
                                        const std::vector<int>& passes) const {
    std::vector<order::Option> options;
    const SeamRef& ref = seams_[seam];
    const int layer = choice.stack.passes[static_cast<std::size_t>(passes.front())].layer;
    const double behind_mm = start_of_layer(out_.starts[seam], layer).behind_mm;
    for (std::size_t i = 0; i < out_.placements[seam].size(); ++i) {
      const Placement& p = out_.placements[seam][i];
      if (!keeps_way(seam, p, layer)) continue;
      order::Option option;
      option.stance = job_stance_.at(p.stance);
      option.tag = static_cast<int>(i);
      option.course = course_of(seam, p, layer);
      const geom::Pose X_WJ = turn::pose_WD(cell_.positioner, axes_of(option.stance)) * setup_.X_DJ;
      const auto tip = [&](int pass, double station) {
        return X_WJ.point(reach::torch_pose(*ref.joint->joint,
                                            *ref.work->seam,
                                            ref.work->section,
                                            choice.stack.passes[static_cast<std::size_t>(pass)],
                                            station,
                                            p.reversed)
                              .point);
      };
      const std::vector<joint::Stretch> stretches = joint::layer_stretches(*ref.work->seam, layer);
      const double start_mm = p.ring_start_mm + (p.rolling ? 0.0 : behind_mm);
      const double first = start_mm + stretches.front().from_mm;
      const double last = start_mm + stretches.back().to_mm;
      option.start_W = tip(passes.front(), p.reversed ? last : first);
      option.end_W = tip(passes.back(), p.reversed ? first : last);
      options.push_back(option);
    }
    return options;
  }

  /// Where the work goes over to the other side, the one begun waits for the one left. The root is
  /// gouged out when side 2 is begun.
  void add_side_precedence(const Pair& pair) {
    for (std::size_t k = 1; k < pair.order.size(); ++k) {
      const SidePass& before = pair.order[k - 1];
      const SidePass& now = pair.order[k];
      if (before.side == now.side) continue;
      const int begun = block_of(pair, now);
      add_link(out_.job,
               begun,
               block_of(pair, before),
               "sides of joint " + seams_[pair.first].joint->joint->id);
      order::Block& block = out_.job.blocks[static_cast<std::size_t>(begun)];
      if (now.after_gouging && inputs_.library.gouging) {
        const joint::Seam& seam = *seams_[pair.second].work->seam;
        const int parts = seam.segment ? seam.segment->of : 1;
        block.gouge_s =
            process::gouging_time_s(*inputs_.library.gouging, parts * seam.length_mm) / parts;
      }
    }
  }
  [[nodiscard]] int block_of(const Pair& pair, const SidePass& pass) const {
    return block_of_[pair.seam_of(pass)][static_cast<std::size_t>(pass.pass)];
  }

  void add_joint_precedence() {
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      if (first_block_.count(i) == 0) continue;
      for (const std::string& before : seams_[i].joint->joint->after) {
        for (std::size_t j = 0; j < seams_.size(); ++j) {
          const bool wanted = seams_[j].joint->joint->id == before && last_block_.count(j) > 0;
          if (!wanted) continue;
          add_link(out_.job,
                   first_block_.at(i),
                   last_block_.at(j),
                   "joint " + seams_[i].joint->joint->id + " after joint " + before);
        }
      }
    }
  }

  void fill_turn_table() {
    constexpr double barred_s = 86400.0;  // a turn nothing allows: any other order comes first
    const turn::ClearWays ways = clear_ways(turning_, stage_);
    const std::size_t n = out_.pool_stance.size();
    out_.job.turn_s.assign(n, std::vector<double>(n, 0.0));
    for (std::size_t a = 0; a < n; ++a) {
      for (std::size_t b = 0; b < n; ++b) {
        if (a == b) continue;
        const turn::LeggedWay way =
            ways.find(axes_of(static_cast<int>(a)), axes_of(static_cast<int>(b)));
        out_.job.turn_s[a][b] = way.time_s > 0.0 ? way.time_s + cell_.times.settle_s : 0.0;
        if (!way.clear) out_.job.turn_s[a][b] += barred_s;
      }
    }
  }

  const Inputs& inputs_;
  const StageWork& stage_;
  const joint::Setup& setup_;
  const cell::Cell& cell_;
  const std::vector<SeamRef>& seams_;
  const StancePool& pool_;
  const cell::Positioner turning_;  ///< no faster than the rim of this load may go
  OrderJob out_;
  std::vector<Pair> pairs_;
  std::vector<int> zone_;                   ///< per seam
  std::vector<bool> opposed_;               ///< per seam: drawn against side 1
  std::vector<std::vector<int>> block_of_;  ///< per seam and pass
  std::map<int, int> job_stance_;
  std::map<std::size_t, int> first_block_;
  std::map<std::size_t, int> last_block_;
};

}  // namespace

double pass_overhead_s(const cell::Cell& cell, const joint::Seam& seam) {
  const std::vector<joint::Stretch> stretches = joint::stretches_of(seam);
  const double crater_s = seam.asked.crater_s.value_or(cell.times.crater_fill_s);
  double overhead_s = static_cast<double>(stretches.size()) * (cell.times.arc_start_s + crater_s);
  for (std::size_t i = 1; i < stretches.size(); ++i) {
    overhead_s += 2.0 * turn::air_time_s(cell.robot, cell.robot.retract_mm) +
                  turn::air_time_s(cell.robot, stretches[i].from_mm - stretches[i - 1].to_mm);
  }
  return overhead_s;
}

OrderJob make_order_job(const Inputs& inputs,
                        const StageWork& stage,
                        const std::vector<SeamRef>& seams,
                        const StancePool& pool,
                        const std::vector<std::vector<Placement>>& placements,
                        bool last) {
  return Maker(inputs, stage, seams, pool).make(placements, last);
}

}  // namespace seamturn::planner::detail
