// SPDX-License-Identifier: MIT
#include "detail_improve.hpp"

#include <algorithm>
#include <vector>

#include "detail_track.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::order {

namespace {

constexpr std::int64_t visits_between_reports = 16384;
constexpr std::int64_t refused_per_visit = 4;
constexpr std::size_t memory = 24;               // costs a change may go back to: late acceptance
constexpr std::int64_t patience_per_block = 40;  // proposals without gain before a kick

/// A change of the sequence from one place on.
struct Change {
  std::size_t begin = 0;
  Sequence steps;
  double floor_s = 0.0;
  bool possible = false;
};

class Improver {
 public:
  Improver(const Job& job,
           const Precedence& precedence,
           const Sequence& start,
           const SearchParams& params)
      : job_(job),
        params_(params),
        random_(base::named_seed(params.seed, "order improve")),
        track_(job, precedence, start),
        best_(start),
        best_s_(track_.cycle_s()),
        memory_s_(memory, track_.cycle_s()) {}

  Sequence run(double enough_s) {
    const std::size_t count = track_.sequence().size();
    const auto patience = patience_per_block * static_cast<std::int64_t>(count);
    std::int64_t next_report = visits_between_reports;
    while (spent() < params_.effort && best_s_ > enough_s) {
      if (idle_ > patience) {
        kick();
      }
      step();
      if (spent() >= next_report) {
        next_report += visits_between_reports;
        if (params_.progress) params_.progress(best_s_);
      }
    }
    return best_;
  }

 private:
  // Proposals refused by their floor take time as well, so that they must count too.
  std::int64_t spent() const { return track_.visits() + refused_ / refused_per_visit; }

  void step() {
    double& remembered_s = memory_s_[static_cast<std::size_t>(proposals_++) % memory];
    const double limit_s = std::max(track_.cycle_s(), remembered_s);
    propose();
    ++idle_;
    if (!change_.possible || change_.floor_s > limit_s) {
      ++refused_;
    } else if (track_.try_change(change_.begin, change_.steps, limit_s)) {
      note_best();
    }
    remembered_s = std::min(remembered_s, track_.cycle_s());
  }

  void note_best() {
    if (track_.cycle_s() < best_s_ * (1.0 - 1e-12)) {
      best_s_ = track_.cycle_s();
      best_ = track_.sequence();
      idle_ = 0;
    }
  }

  /// Back to the best, then a few changes taken whatever they cost.
  void kick() {
    if (!track_.try_change(0, best_, 1e300)) return;
    const std::size_t kicks = 2 + random_.below(5);
    for (std::size_t taken = 0, tried = 0; taken < kicks && tried < 20 * kicks; ++tried) {
      propose();
      if (change_.possible && track_.try_change(change_.begin, change_.steps, 1e300)) ++taken;
      refused_ += change_.possible ? 0 : 1;
    }
    std::fill(memory_s_.begin(), memory_s_.end(), track_.cycle_s());
    idle_ = 0;
    note_best();
  }

  void propose() {
    change_.possible = false;
    switch (random_.below(8)) {
      case 0:
        return change_option();
      case 1:
        return change_stance_of_run();
      case 2:
      case 3:
        return join_stance();
      default:
        return swap_parts();
    }
  }

  /// A length: mostly short, sometimes up to the whole.
  std::size_t length_up_to(std::size_t most) {
    std::size_t length = 1 + random_.below(3);
    while (length < most && random_.below(3) != 0) {
      length += 1 + random_.below(length);
    }
    return std::min(length, most);
  }

  /// Two neighbouring parts change places, each in its own order; one may be a single block.
  void swap_parts() {
    const std::size_t count = track_.sequence().size();
    if (count < 2) return;
    const std::size_t middle = 1 + random_.below(count - 1);
    const std::size_t left = random_.below(2) == 0 ? 1 : length_up_to(middle);
    const std::size_t right = left > 1 && random_.below(2) == 0 ? 1 : length_up_to(count - middle);
    swap(middle - left, middle, middle + right);
  }

  void swap(std::size_t begin, std::size_t middle, std::size_t end) {
    if (!track_.may_swap(begin, middle, end)) return;
    change_.floor_s = track_.floor_of_swap_s(begin, middle, end);
    change_.begin = begin;
    const auto first = track_.sequence().begin();
    change_.steps.assign(first + static_cast<std::ptrdiff_t>(middle),
                         first + static_cast<std::ptrdiff_t>(end));
    change_.steps.insert(change_.steps.end(),
                         first + static_cast<std::ptrdiff_t>(begin),
                         first + static_cast<std::ptrdiff_t>(middle));
    change_.possible = true;
  }

  const std::vector<Option>& options(int block) const {
    return job_.blocks[static_cast<std::size_t>(block)].options;
  }
  int stance(const Step& step) const {
    return options(step.block)[static_cast<std::size_t>(step.option)].stance;
  }

  void change_option() {
    const std::size_t place = random_.below(track_.sequence().size());
    const Step old = track_.sequence()[place];
    const std::size_t count = options(old.block).size();
    if (count < 2) return;
    const auto other = static_cast<int>(
        (static_cast<std::size_t>(old.option) + 1 + random_.below(count - 1)) % count);
    change_.begin = place;
    change_.steps.assign(1, Step{old.block, other});
    finish_change();
  }

  void finish_change() {
    change_.floor_s = track_.floor_of_change_s(change_.begin, change_.steps);
    change_.possible = true;
  }

  /// An option of the block in the stance, picked at random; -1 when there is none.
  int option_in(int block, int stance) {
    int found = -1;
    std::size_t seen = 0;
    const auto& all = options(block);
    for (std::size_t o = 0; o < all.size(); ++o) {
      if (all[o].stance == stance && random_.below(++seen) == 0) {
        found = static_cast<int>(o);
      }
    }
    return found;
  }

  /// Blocks in a row that share a stance, or a part of them, go to another stance together.
  void change_stance_of_run() {
    const Sequence& now = track_.sequence();
    const std::size_t place = random_.below(now.size());
    const auto& choices = options(now[place].block);
    const int wanted = choices[random_.below(choices.size())].stance;
    const int old = stance(now[place]);
    if (wanted == old) return;
    std::size_t begin = place;
    std::size_t end = place + 1;
    const auto joins = [&](std::size_t i) {
      const auto& all = options(now[i].block);
      return stance(now[i]) == old &&
             std::any_of(
                 all.begin(), all.end(), [wanted](const Option& o) { return o.stance == wanted; });
    };
    while (begin > 0 && joins(begin - 1)) --begin;
    while (end < now.size() && joins(end)) ++end;
    change_.begin = begin;
    change_.steps.clear();
    for (std::size_t i = begin; i < end; ++i) {
      change_.steps.push_back(Step{now[i].block, option_in(now[i].block, wanted)});
    }
    finish_change();
  }

  /// A block moves beside another one and takes an option in that one's stance.
  void join_stance() {
    const Sequence& now = track_.sequence();
    const std::size_t count = now.size();
    const std::size_t from = random_.below(count);
    const std::size_t to = random_.below(count);
    if (from == to) return;
    const int option = option_in(now[from].block, stance(now[to]));
    if (option < 0) return;
    const bool forward = from < to;
    const std::size_t begin = forward ? from : to;
    const std::size_t end = (forward ? to : from) + 1;
    const std::size_t middle = forward ? from + 1 : from;
    if (!track_.may_swap(begin, middle, end)) return;
    change_.begin = begin;
    change_.steps.assign(now.begin() + static_cast<std::ptrdiff_t>(begin),
                         now.begin() + static_cast<std::ptrdiff_t>(end));
    const auto moved_to = forward ? change_.steps.begin() + 1 : change_.steps.end() - 1;
    std::rotate(change_.steps.begin(), moved_to, change_.steps.end());
    (forward ? change_.steps.back() : change_.steps.front()) = Step{now[from].block, option};
    finish_change();
  }

  const Job& job_;
  const SearchParams& params_;
  base::Random random_;
  Track track_;
  Sequence best_;
  double best_s_;
  std::vector<double> memory_s_;
  Change change_;
  std::int64_t proposals_ = 0;
  std::int64_t refused_ = 0;
  std::int64_t idle_ = 0;
};

}  // namespace

Sequence improve(const Job& job,
                 const Precedence& precedence,
                 const Sequence& start,
                 const SearchParams& params,
                 double enough_s) {
  if (start.empty() || params.effort <= 0) {
    return start;
  }
  return Improver(job, precedence, start, params).run(enough_s);
}

}  // namespace seamturn::order
