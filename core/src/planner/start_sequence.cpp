// SPDX-License-Identifier: MIT
#include "detail_start_sequence.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "detail_other_orders.hpp"
#include "detail_stances.hpp"
#include "detail_turns.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/order/simulate.hpp"
#include "seamturn/turn/move_time.hpp"

namespace seamturn::planner::detail {

namespace {

constexpr int unknown = -1;

/// Today's blocks by what the earlier plan calls them.
class Known {
 public:
  Known(const StageWork& stage, const std::vector<SeamRef>& seams, const OrderJob& order_job)
      : stage_(stage.stage == nullptr ? "" : stage.stage->id) {
    for (std::size_t b = 0; b < order_job.origins.size(); ++b) {
      const BlockOrigin& origin = order_job.origins[b];
      if (origin.seam < 0) {
        const auto index = static_cast<std::size_t>(origin.operation);
        operations_.emplace(stage.operations[index].id, static_cast<int>(b));
        continue;
      }
      const std::string& id = seams[static_cast<std::size_t>(origin.seam)].work->seam->id;
      for (const int pass : origin.passes) passes_.emplace(std::pair(id, pass + 1), int(b));
    }
  }

  [[nodiscard]] int block_of(const EarlierStep& step) const {
    if (step.seam.empty()) {
      const auto found = operations_.find(step.operation);
      return found != operations_.end() && step.stage == stage_ ? found->second : unknown;
    }
    const auto found = passes_.find(std::pair(step.seam, step.pass));
    return found != passes_.end() ? found->second : unknown;
  }

 private:
  std::string stage_;
  std::map<std::string, int> operations_;
  std::map<std::pair<std::string, int>, int> passes_;
};

/// Which option of a block is most like what was done.
class Likeness {
 public:
  Likeness(const cell::Positioner& positioner, const StancePool& pool, const OrderJob& order_job)
      : positioner_(positioner), pool_(pool), order_job_(order_job) {}

  /// Seconds of turning from then to now, another way of rolling, another direction.
  using Apart = std::tuple<double, bool, bool>;
  struct Best {
    int option = 0;
    bool same = false;
  };
  [[nodiscard]] Best best(int block, const EarlierStep& step) const {
    const auto& options = order_job_.job.blocks[static_cast<std::size_t>(block)].options;
    Best best;
    auto least = apart(block, options.front(), step);
    for (std::size_t o = 1; o < options.size(); ++o) {
      const auto cost = apart(block, options[o], step);
      if (cost >= least) continue;
      least = cost;
      best.option = static_cast<int>(o);
    }
    best.same = least == Apart(0.0, false, false);
    return best;
  }

 private:
  [[nodiscard]] Apart apart(int block, const order::Option& option, const EarlierStep& step) const {
    const int seam = order_job_.origins[static_cast<std::size_t>(block)].seam;
    const turn::Stance now = stance_of(option);
    const turn::Stance then = step.stance.axes.empty() ? at_rest_stance() : step.stance;
    if (then.axes.size() != now.axes.size()) return {order::never_s, false, false};  // other axes
    const double turn_s =
        same_stance(then, now) ? 0.0 : turn::turn_time_s(positioner_, then.axes, now.axes);
    const bool turned_round = seam >= 0 && placement_of(seam, option).reversed != step.reversed;
    return {turn_s, now.rolling != then.rolling, turned_round};
  }

  [[nodiscard]] const Placement& placement_of(int seam, const order::Option& option) const {
    return order_job_
        .placements[static_cast<std::size_t>(seam)][static_cast<std::size_t>(option.tag)];
  }
  [[nodiscard]] turn::Stance at_rest_stance() const { return {rest_axes(positioner_), false}; }
  [[nodiscard]] turn::Stance stance_of(const order::Option& option) const {
    const int index = order_job_.pool_stance[static_cast<std::size_t>(option.stance)];
    return index < 0 ? at_rest_stance() : pool_.stances[static_cast<std::size_t>(index)];
  }

  const cell::Positioner& positioner_;
  const StancePool& pool_;
  const OrderJob& order_job_;
};

/// Puts blocks one after another as the links permit.
class Layer {
 public:
  Layer(const order::Job& job, std::vector<int> options, StartCounts& counts)
      : job_(job),
        options_(std::move(options)),
        counts_(counts),
        missing_(job.blocks.size()),
        followers_(job.blocks.size()),
        done_(job.blocks.size(), false),
        held_{job.start_stance, job.home_W} {
    for (std::size_t b = 0; b < job.blocks.size(); ++b) {
      std::vector<int> leaders = job.blocks[b].after;
      std::sort(leaders.begin(), leaders.end());
      leaders.erase(std::unique(leaders.begin(), leaders.end()), leaders.end());
      missing_[b] = leaders.size();
      for (const int leader : leaders) followers_[at(leader)].push_back(static_cast<int>(b));
      if (missing_[b] == 0 && is_new(static_cast<int>(b))) ready_.insert(static_cast<int>(b));
    }
  }

  /// `wanted`: blocks the earlier plan knows, in its order.
  order::Sequence lay(const std::vector<int>& wanted) {
    fit_in();
    for (const int block : wanted) {
      if (!done_[at(block)]) put_with_leaders(block, block);
    }
    while (!ready_.empty()) put(soonest_ready());
    return std::move(sequence_);
  }

 private:
  static std::size_t at(int block) { return static_cast<std::size_t>(block); }
  [[nodiscard]] bool is_new(int block) const { return options_[at(block)] == unknown; }
  [[nodiscard]] const order::Block& block_at(int block) const { return job_.blocks[at(block)]; }

  void put_with_leaders(int block, int asked) {
    for (const int leader : block_at(block).after) {
      if (!done_[at(leader)]) put_with_leaders(leader, asked);
    }
    if (done_[at(block)]) return;  // fitted in meanwhile
    if (block != asked && !is_new(block)) ++counts_.brought_on;
    put(block);
  }

  void put(int block) {
    put_alone(block);
    fit_in();
  }

  void put_alone(int block) {
    const int chosen =
        is_new(block) ? soonest_option(job_, block_at(block), held_) : options_[at(block)];
    const order::Option& option = block_at(block).options[static_cast<std::size_t>(chosen)];
    sequence_.push_back(order::Step{block, chosen});
    held_ = Held{option.stance, option.end_W};
    done_[at(block)] = true;
    ready_.erase(block);
    for (const int next : followers_[at(block)]) {
      if (--missing_[at(next)] == 0 && is_new(next)) ready_.insert(next);
    }
  }

  /// New blocks that may come now and need no turn.
  void fit_in() {
    for (auto it = ready_.begin(); it != ready_.end();) {
      const auto& options = block_at(*it).options;
      const bool stays = std::any_of(options.begin(), options.end(), [&](const auto& option) {
        return option.stance == held_.stance;
      });
      if (!stays) {
        ++it;
        continue;
      }
      put_alone(*it);
      it = ready_.begin();  // it may have made others ready
    }
  }

  [[nodiscard]] int soonest_ready() const {
    const auto turn_s = [&](int block) {
      const order::Block& one = block_at(block);
      const int option = soonest_option(job_, one, held_);
      return job_.turn_s[static_cast<std::size_t>(held_.stance)][static_cast<std::size_t>(
          one.options[static_cast<std::size_t>(option)].stance)];
    };
    return *std::min_element(
        ready_.begin(), ready_.end(), [&](int a, int b) { return turn_s(a) < turn_s(b); });
  }

  const order::Job& job_;
  std::vector<int> options_;  ///< per block as it was done then; unknown: new
  StartCounts& counts_;
  std::vector<std::size_t> missing_;
  std::vector<std::vector<int>> followers_;
  std::vector<bool> done_;
  std::set<int> ready_;  ///< new ones that may come now
  Held held_;
  order::Sequence sequence_;
};

}  // namespace

order::Sequence start_sequence(const cell::Positioner& positioner,
                               const StageWork& stage,
                               const std::vector<SeamRef>& seams,
                               const StancePool& pool,
                               const OrderJob& order_job,
                               const EarlierOrder& earlier,
                               StartCounts& counts) {
  const order::Job& job = order_job.job;
  const Known known(stage, seams, order_job);
  const Likeness likeness(positioner, pool, order_job);
  std::vector<int> options(job.blocks.size(), unknown);
  std::vector<int> wanted;
  for (const EarlierStep& step : earlier.steps) {
    const int block = known.block_of(step);
    if (block == unknown || options[static_cast<std::size_t>(block)] != unknown) continue;
    const Likeness::Best best = likeness.best(block, step);
    options[static_cast<std::size_t>(block)] = best.option;
    counts.other_stance += best.same ? 0 : 1;
    wanted.push_back(block);
  }
  counts.blocks += static_cast<int>(job.blocks.size());
  counts.new_ones += static_cast<int>(job.blocks.size() - wanted.size());
  if (wanted.empty()) return {};
  order::Sequence sequence = Layer(job, std::move(options), counts).lay(wanted);
  SEAMTURN_REQUIRE(order::is_valid(job, sequence), sequence.size(), job.blocks.size());
  return sequence;
}

}  // namespace seamturn::planner::detail
