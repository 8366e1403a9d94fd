// SPDX-License-Identifier: MIT
#include "detail_tour_price.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace seamturn::order {

namespace {

constexpr int most_idle = 20;  // looks without a better bound before going back to the best
constexpr double beyond_ratio = 0.003;     // aims so far beyond the cut, or never quite reaches it
constexpr Grain dearest = Grain{1} << 45;  // prices: sums of them stay far below never_grain

constexpr double first_stride = 0.5;   // after the memories grew
constexpr double last_stride = 0.1;    // then they grow again
constexpr std::int64_t growths = 120;  // to be expected in all the work there is

/// How often the walk comes to each group.
std::vector<int> visits_of(const WalkNet& net, const std::vector<std::uint16_t>& walk) {
  std::vector<int> visits(net.groups, 0);
  for (const std::uint16_t vertex : walk) ++visits[net.group_of[vertex]];
  return visits;
}

/// Positions i < j where the walk is at j what it must not be any more after i.
struct Slip {
  std::size_t from = 0;
  std::size_t to = 0;
};

/// From every position the next slip, without those that hold another; shortest first.
std::vector<Slip> slips_of(const WalkNet& net, const std::vector<std::uint16_t>& walk) {
  std::vector<Slip> slips;
  std::size_t end = walk.size();  // no slip before this one may start before it and end behind
  for (std::size_t i = walk.size(); i-- > 0;) {
    const std::size_t group = net.group_of[walk[i]];
    for (std::size_t j = i + 1; j < end; ++j) {
      const std::size_t other = net.group_of[walk[j]];
      if (other != group && !net.before(other, group)) continue;
      slips.push_back(Slip{i, j});
      end = j;
    }
  }
  std::sort(slips.begin(), slips.end(), [](const Slip& a, const Slip& b) {
    const std::size_t length_a = a.to - a.from;
    const std::size_t length_b = b.to - b.from;
    return length_a != length_b ? length_a < length_b : a.from < b.from;
  });
  return slips;
}

}  // namespace

WalkBound::WalkBound(const TourProblem& problem,
                     const TourOrder& order,
                     const GrainCosts& costs,
                     const Assignment& assignment,
                     std::int64_t whole_work)
    : net_(make_net(problem, order, costs)),
      memories_(problem.group_count()),
      cut_(costs.cut),
      whole_work_(whole_work),
      best_(problem.group_count(), 0),
      direction_(problem.group_count(), 0.0) {
  for (std::size_t g = 1; g + 1 < net_.groups; ++g) best_[g] = assignment.out[g] + assignment.in[g];
  trial_ = best_;
  recalls_ = make_recalls(net_, memories_);
  if (!sweep(net_)) {
    done_ = true;
    return;
  }
  take(look(best_));
}

WalkBound::Look WalkBound::look(const Prices& prices) {
  Look seen;
  const Grain base = sum_of(prices);
  if (!remembering_) {
    const Rests rests = cheapest_rests(net_, prices, work_);
    const std::uint16_t first = net_.layers.front().vertices.front();
    seen.bound = base + rests.front()[first];
    if (seen.bound < cut_) seen.walk = cheapest_walk(net_, prices, rests);
    return seen;
  }
  const Rests starts = cheapest_starts(net_, prices, work_);
  const WalkLook look{prices, recalls_, starts, cut_};
  const Ways found = ways_on(net_, look, work_);
  seen.bound = cut_;
  if (net_.layers.front().vertices.empty()) return seen;
  const std::uint16_t first = net_.layers.front().vertices.front();
  seen.bound = base + found.front().begin(first)->rest;
  seen.walk = cheapest_walk(net_, look, found);
  return seen;
}

void WalkBound::take(Look seen) {
  if (seen.bound >= cut_) {
    done_ = true;
    return;
  }
  ++idle_;
  if (seen.bound > bound_ || walk_.empty()) {
    bound_ = std::max(bound_, seen.bound);
    best_ = trial_;
    walk_ = std::move(seen.walk);
    idle_ = 0;
  }
}

void WalkBound::step(const Look& seen) {
  const std::vector<int> visits = visits_of(net_, seen.walk);
  double along = 0.0;
  double before = 0.0;
  for (std::size_t g = 1; g + 1 < net_.groups; ++g) {
    along += (1 - visits[g]) * direction_[g];
    before += direction_[g] * direction_[g];
  }
  // Turning back on the last step is damped (Camerini, Fratta, Maffioli 1975).
  const double keep = along < 0.0 && before > 0.0 ? -1.5 * along / before : 0.0;
  double size = 0.0;
  for (std::size_t g = 1; g + 1 < net_.groups; ++g) {
    direction_[g] = (1 - visits[g]) + keep * direction_[g];
    size += direction_[g] * direction_[g];
  }
  if (size <= 0.0) return;
  const double length =
      stride_ *
      (static_cast<double>(cut_ - seen.bound) + beyond_ratio * static_cast<double>(cut_)) / size;
  for (std::size_t g = 1; g + 1 < net_.groups; ++g) {
    const double change = std::clamp(length * direction_[g], -1e13, 1e13);
    trial_[g] = std::clamp(trial_[g] + static_cast<Grain>(std::llround(change)), -dearest, dearest);
  }
}

/// What a stride keeps when a look was in vain: the cheaper looks are, the more of them there are.
double WalkBound::shrink_for(std::int64_t look_work) const {
  const std::int64_t looks = whole_work_ / growths / std::max<std::int64_t>(1, look_work);
  const auto patience = static_cast<double>(std::clamp<std::int64_t>(looks, 16, 100));
  return std::exp(std::log(last_stride / first_stride) / patience);
}

void WalkBound::restart() {
  idle_ = 0;
  trial_ = best_;
  std::fill(direction_.begin(), direction_.end(), 0.0);
}

bool WalkBound::remember() {
  bool grown = false;
  for (const Slip& slip : slips_of(net_, walk_)) {
    const std::size_t other = net_.group_of[walk_[slip.to]];
    bool room = true;
    for (std::size_t i = slip.from + 1; i < slip.to; ++i) {
      const std::size_t group = net_.group_of[walk_[i]];
      const bool known = group == other || memories_.place(group, other) >= 0;
      room = room && (known || memories_.remembered(group).size() < most_remembered);
    }
    for (std::size_t i = slip.from + 1; room && i < slip.to; ++i) {
      grown = memories_.add(net_.group_of[walk_[i]], other) || grown;
    }
  }
  recalls_ = make_recalls(net_, memories_);
  return grown;
}

void WalkBound::improve(std::int64_t work_until) {
  while (!done_ && work_ < work_until) {
    const std::int64_t work_before = work_;
    Look seen = look(trial_);
    const std::vector<std::uint16_t> walk = seen.walk;
    const Grain bound = seen.bound;
    take(std::move(seen));
    if (done_) return;
    if (idle_ > 0) stride_ *= shrink_;
    if (stride_ > last_stride) {
      if (idle_ >= most_idle) restart();
      step(idle_ > 0 ? Look{bound, walk} : Look{bound_, walk_});
      continue;
    }
    const std::int64_t look_work = work_ - work_before;
    restart();
    cut();
    if (done_) return;
    remembering_ = true;
    const bool grown = remember();
    stride_ = first_stride;
    shrink_ = shrink_for(grown ? look_work : 0);
    walk_.clear();  // of the memories before
  }
}

void WalkBound::cut() {
  if (done_) return;
  const Rests starts = cheapest_starts(net_, best_, work_);
  if (!remembering_) {
    const Rests rests = cheapest_rests(net_, best_, work_);
    done_ = !cut_net(net_, best_, starts, rests, cut_, work_);
    return;
  }
  Rests rests = rests_of(net_, ways_on(net_, WalkLook{best_, recalls_, starts, cut_}, work_));
  if (!sweep(net_)) {
    done_ = true;
    return;
  }
  WalkNet mirror = mirrored(net_);
  std::reverse(rests.begin(), rests.end());  // what ends a walk begins its mirror
  const Recalls back_recalls = make_recalls(mirror, memories_);
  const Ways back = ways_on(mirror, WalkLook{best_, back_recalls, rests, cut_}, work_);
  if (!sweep(mirror)) {
    done_ = true;
    return;
  }
  take_back(mirror, net_);
  Rests from_start = rests_of(mirror, back);
  std::reverse(from_start.begin(), from_start.end());
  static_cast<void>(ways_on(net_, WalkLook{best_, recalls_, from_start, cut_}, work_));
  done_ = !sweep(net_);
}

Ways WalkBound::ways() {
  const Rests starts = cheapest_starts(net_, best_, work_);
  Ways found = ways_on(net_, WalkLook{best_, recalls_, starts, cut_}, work_);
  done_ = !sweep(net_);
  return found;
}

}  // namespace seamturn::order
