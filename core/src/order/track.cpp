// SPDX-License-Identifier: MIT
#include "detail_track.hpp"

#include <algorithm>
#include <limits>

#include "detail_work.hpp"

namespace seamturn::order {

Track::Track(const Job& job, const Precedence& precedence, Sequence sequence)
    : job_(job),
      precedence_(precedence),
      zones_(number_zones(job)),
      run_(quiet_run(job)),
      sequence_(std::move(sequence)),
      place_of_(job.blocks.size(), 0),
      before_(job.blocks.size() + 1, state_at_start(job)),
      zone_after_(job.blocks.size()),
      work_before_s_(job.blocks.size() + 1, 0.0),
      trial_before_(before_),
      trial_zone_after_(zone_after_),
      zone_states_(static_cast<std::size_t>(zones_.count)) {
  for (const Block& block : job.blocks) {
    works_s_.push_back(work_s(job, block));
    least_works_s_.push_back(least_work_s(job, block));
    inside_first_.push_back(inside_s_.size());
    for (const Option& option : block.options) {
      inside_s_.push_back(order::inside_s(job, block, option));
    }
  }
  least_beside_s_ = least_touch_s(job, zones_) + least_heat_s(job, zones_) +
                    least_clean_s(job, least_cleanings(job));
  undo_ = sequence_;
  (void)run_from(0, std::numeric_limits<double>::infinity());
  std::swap(before_, trial_before_);
  std::swap(zone_after_, trial_zone_after_);
  cycle_s_ = trial_cycle_s_;
  measure();
}

bool Track::may_swap(std::size_t begin, std::size_t middle, std::size_t end) const {
  // A chain of precedence from the first part into the second has a direct link that crosses.
  for (std::size_t i = begin; i < middle; ++i) {
    for (const int follower : precedence_.followers(sequence_[i].block)) {
      const std::size_t place = place_of(follower);
      if (place >= middle && place < end) {
        return false;
      }
    }
  }
  return true;
}

double Track::inside_s(const Step& step) const {
  return inside_s_[inside_first_[static_cast<std::size_t>(step.block)] +
                   static_cast<std::size_t>(step.option)];
}

double Track::leg_s(const Step* from, const Step* to) const {
  const geom::Vec3& from_W = from == nullptr ? job_.home_W : option(*from).end_W;
  const int stance = from == nullptr ? job_.start_stance : option(*from).stance;
  if (to == nullptr) {
    const auto last = static_cast<std::size_t>(stance);
    const double turn_s =
        job_.end_stance ? job_.turn_s[last][static_cast<std::size_t>(*job_.end_stance)] : 0.0;
    return turn_s + (from == nullptr ? 0.0 : air_s(job_, from_W, job_.home_W));
  }
  const Option& next = option(*to);
  if (stance == next.stance) {
    return air_s(job_, from_W, next.start_W);
  }
  const double home_s = from == nullptr ? 0.0 : air_s(job_, from_W, job_.home_W);
  return home_s +
         job_.turn_s[static_cast<std::size_t>(stance)][static_cast<std::size_t>(next.stance)] +
         air_s(job_, job_.home_W, next.start_W);
}

double Track::floor_of_swap_s(std::size_t begin, std::size_t middle, std::size_t end) const {
  const Step* before = begin == 0 ? nullptr : &sequence_[begin - 1];
  const Step* after = end == sequence_.size() ? nullptr : &sequence_[end];
  const Step* first = &sequence_[begin];
  const Step* first_end = &sequence_[middle - 1];
  const Step* second = &sequence_[middle];
  const Step* second_end = &sequence_[end - 1];
  return plain_s_ + least_beside_s_ + leg_s(before, second) + leg_s(second_end, first) +
         leg_s(first_end, after) - leg_s(before, first) - leg_s(first_end, second) -
         leg_s(second_end, after);
}

double Track::floor_of_change_s(std::size_t begin, const Sequence& changed) const {
  double change_s = 0.0;
  const Step* old_last = begin == 0 ? nullptr : &sequence_[begin - 1];
  const Step* new_last = old_last;
  for (std::size_t i = 0; i <= changed.size(); ++i) {
    const bool inside = i < changed.size();
    const Step* old_step = begin + i == sequence_.size() ? nullptr : &sequence_[begin + i];
    const Step* new_step = inside ? &changed[i] : old_step;
    change_s += leg_s(new_last, new_step) - leg_s(old_last, old_step);
    if (inside) {
      change_s += inside_s(*new_step) - inside_s(*old_step);
    }
    old_last = old_step;
    new_last = new_step;
  }
  return plain_s_ + least_beside_s_ + change_s;
}

void Track::set_zones_before(std::size_t place) {
  std::fill(zone_states_.begin(), zone_states_.end(), ZoneState{});
  for (std::size_t i = 0; i < place; ++i) {
    const auto block = static_cast<std::size_t>(sequence_[i].block);
    zone_states_[static_cast<std::size_t>(zones_.of_block[block])] = zone_after_[i];
  }
}

bool Track::run_from(std::size_t begin, double limit_s) {
  set_zones_before(begin);
  RobotState state = before_[begin];
  double rest_s = -work_before_s_[begin];
  for (const double work : least_works_s_) rest_s += work;
  for (std::size_t i = begin; i < sequence_.size(); ++i) {
    if (state.objective_s(job_.worth) + rest_s > limit_s) {
      return false;
    }
    const auto block = static_cast<std::size_t>(sequence_[i].block);
    ZoneState& zone = zone_states_[static_cast<std::size_t>(zones_.of_block[block])];
    trial_before_[i] = state;
    run_.weld(state, zone, sequence_[i]);
    trial_zone_after_[i] = zone;
    rest_s -= least_works_s_[block];
    ++visits_;
  }
  run_.finish(state);
  trial_before_[sequence_.size()] = state;
  trial_cycle_s_ = state.objective_s(job_.worth);
  return trial_cycle_s_ <= limit_s;
}

bool Track::try_change(std::size_t begin, const Sequence& changed, double limit_s) {
  const auto first = sequence_.begin() + static_cast<std::ptrdiff_t>(begin);
  const auto count = static_cast<std::ptrdiff_t>(changed.size());
  std::copy(first, first + count, undo_.begin());
  std::copy(changed.begin(), changed.end(), first);
  if (!run_from(begin, limit_s)) {
    std::copy(undo_.begin(), undo_.begin() + count, first);
    return false;
  }
  const auto from = static_cast<std::ptrdiff_t>(begin);
  std::copy(trial_before_.begin() + from, trial_before_.end(), before_.begin() + from);
  std::copy(trial_zone_after_.begin() + from, trial_zone_after_.end(), zone_after_.begin() + from);
  cycle_s_ = trial_cycle_s_;
  measure();
  return true;
}

void Track::measure() {
  plain_s_ = 0.0;
  for (std::size_t i = 0; i < sequence_.size(); ++i) {
    const auto block = static_cast<std::size_t>(sequence_[i].block);
    place_of_[block] = i;
    work_before_s_[i + 1] = work_before_s_[i] + least_works_s_[block];
    plain_s_ += leg_s(i == 0 ? nullptr : &sequence_[i - 1], &sequence_[i]) +
                inside_s(sequence_[i]) + works_s_[block];
  }
  plain_s_ += sequence_.empty() ? 0.0 : leg_s(&sequence_.back(), nullptr);
}

}  // namespace seamturn::order
