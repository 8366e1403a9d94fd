// SPDX-License-Identifier: MIT
#include <algorithm>
#include <functional>
#include <queue>
#include <utility>

#include "detail_other_orders.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::planner::detail {

namespace {

/// Blocks that may come now, work of people first, then as the job lists them.
class Ready {
 public:
  explicit Ready(const order::Job& job) : job_(job), missing_(job.blocks.size()) {
    followers_.resize(job.blocks.size());
    for (std::size_t b = 0; b < job.blocks.size(); ++b) {
      missing_[b] = job.blocks[b].after.size();
      for (const int leader : job.blocks[b].after) {
        followers_[static_cast<std::size_t>(leader)].push_back(b);
      }
      if (missing_[b] == 0) push(b);
    }
  }
  [[nodiscard]] bool empty() const { return queue_.empty(); }
  std::size_t take() {
    const std::size_t block = queue_.top().second;
    queue_.pop();
    for (const std::size_t next : followers_[block]) {
      if (--missing_[next] == 0) push(next);
    }
    return block;
  }

 private:
  void push(std::size_t block) { queue_.emplace(!job_.blocks[block].work_s, block); }

  const order::Job& job_;
  std::vector<std::size_t> missing_;
  std::vector<std::vector<std::size_t>> followers_;
  using Entry = std::pair<bool, std::size_t>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> queue_;
};

/// Times the part is brought into a stance that is not the rest position, or comes back to it.
int visits_of(const OrderJob& order_job, const timeline::Clock& clock) {
  int visits = 0;
  int held = -1;
  for (const timeline::Event& event : clock.events()) {
    const int at =
        event.stance < 0 ? -1 : order_job.pool_stance[static_cast<std::size_t>(event.stance)];
    if (at != held && at >= 0) ++visits;
    held = at;
  }
  return visits;
}

void add(const OrderJob& order_job,
         const order::Found& found,
         const order::Sequence& sequence,
         plan::OtherOrder& other) {
  const timeline::Clock clock = order::simulate(order_job.job, sequence);
  other.longer_s += clock.now_s() - found.cycle_s;
  other.visits += visits_of(order_job, clock);
}

}  // namespace

int soonest_option(const order::Job& job, const order::Block& block, const Held& held) {
  const auto& turns_s = job.turn_s[static_cast<std::size_t>(held.stance)];
  const auto cost = [&](const order::Option& option) {
    const bool stays = option.stance == held.stance;
    const geom::Vec3& from_W = stays ? held.tip_W : job.home_W;
    return std::pair(turns_s[static_cast<std::size_t>(option.stance)],
                     (option.start_W - from_W).norm());
  };
  const auto best = std::min_element(
      block.options.begin(), block.options.end(), [&](const auto& a, const auto& b) {
        return cost(a) < cost(b);
      });
  return static_cast<int>(best - block.options.begin());
}

order::Sequence sequence_of_file(const order::Job& job) {
  Ready ready(job);
  Held held{job.start_stance, job.home_W};
  order::Sequence sequence;
  while (!ready.empty()) {
    const std::size_t b = ready.take();
    const order::Block& block = job.blocks[b];
    const int chosen = soonest_option(job, block, held);
    const order::Option& option = block.options[static_cast<std::size_t>(chosen)];
    held = Held{option.stance, option.end_W};
    sequence.push_back(order::Step{static_cast<int>(b), chosen});
  }
  return sequence;
}

void compare_orders(const OrderJob& order_job, const order::Found& found, plan::Plan& plan) {
  add(order_job, found, order::greedy_sequence(order_job.job), plan.greedy_order);
  add(order_job, found, sequence_of_file(order_job.job), plan.file_order);
}

}  // namespace seamturn::planner::detail
