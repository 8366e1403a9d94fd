// SPDX-License-Identifier: MIT
// The critical chain: what must follow what, one after another, with its waits.
#include <algorithm>
#include <limits>

#include "detail_tails.hpp"
#include "detail_work.hpp"

namespace seamturn::order {

namespace {

/// Earliest times of a block when welded with one option.
struct Earliest {
  ZoneState last;        ///< its last pass
  double leave_s = 0.0;  ///< torch free to move at the option's end
};

class Chain {
 public:
  Chain(const Job& job, const Precedence& precedence, const Zones& zones)
      : job_(job),
        precedence_(precedence),
        zones_(zones),
        closure_s_(turn_closure(job, 0.0)),
        air_counts_(arcs_are_slow(job)),
        earliest_(job.blocks.size()) {}

  // Every step below is a necessary condition of the rules, so no order can be earlier:
  // - the way from one option's end to another's start is shortest directly (air_s is concave, no
  //   arc is faster than it, else it is left out; home lies on every way to another stance;
  //   turn_closure is the cheapest chain of turns);
  // - a block starts after each of its leaders was left, and the wait rule holds towards each
  //   leader in its zone: should a later pass have been laid there meanwhile, it was later still;
  // - the option of a leader is not known: the earliest of its options counts.
  double home_s() {
    double latest_s = 0.0;
    for (const int block : precedence_.sorted()) {
      const Block& now = job_.blocks[static_cast<std::size_t>(block)];
      double back_s = never_s;
      for (const Option& option : now.options) {
        const Earliest& earliest = weld(block, option);
        back_s = std::min(back_s, earliest.leave_s + way_s(option.end_W, job_.home_W));
      }
      latest_s = std::max(latest_s, back_s);
    }
    return latest_s;
  }

 private:
  double turn_s(int from, int to) const {
    return closure_s_[static_cast<std::size_t>(from)][static_cast<std::size_t>(to)];
  }

  double way_s(const geom::Vec3& from_W, const geom::Vec3& to_W) const {
    return air_counts_ ? air_s(job_, from_W, to_W) : 0.0;
  }

  double way_s(const Option& from, const Option& to) const {
    if (from.stance == to.stance) return way_s(from.end_W, to.start_W);
    return way_s(from.end_W, job_.home_W) + turn_s(from.stance, to.stance) +
           way_s(job_.home_W, to.start_W);
  }

  double arrival_s(int block, const Option& option) const {
    double arrival_s =
        turn_s(job_.start_stance, option.stance) + way_s(job_.home_W, option.start_W);
    for (const int leader : precedence_.leaders(block)) {
      const auto& options = job_.blocks[static_cast<std::size_t>(leader)].options;
      double from_s = never_s;
      for (std::size_t o = 0; o < options.size(); ++o) {
        const Earliest& before = earliest_[static_cast<std::size_t>(leader)][o];
        from_s = std::min(from_s, before.leave_s + way_s(options[o], option));
      }
      arrival_s = std::max(arrival_s, from_s);
    }
    return arrival_s;
  }

  double cool_s(int block, const BlockPass& pass, const Option& option) const {
    double cool_s = 0.0;
    for (std::size_t b = 0; b < job_.blocks.size(); ++b) {
      const int before = static_cast<int>(b);
      const bool same_zone = zones_.of_block[b] == zones_.of_block[static_cast<std::size_t>(block)];
      if (!same_zone || !precedence_.before(before, block)) {
        continue;
      }
      double from_s = never_s;
      for (const Earliest& earliest : earliest_[b]) {
        from_s = std::min(from_s, ready_s(earliest.last, pass, option.course));
      }
      cool_s = std::max(cool_s, from_s);
    }
    return cool_s;
  }

  const Earliest& weld(int block, const Option& option) {
    const Block& now = job_.blocks[static_cast<std::size_t>(block)];
    double start_s = std::max(arrival_s(block, option), heated_s(block, option));
    start_s += before_first_arc_s(job_, now);
    if (!now.work_s) start_s = std::max(start_s, cool_s(block, now.passes.front(), option));
    const Within laid = laid_within(job_, now, option);
    Earliest result;
    result.last = laid.last;
    result.last.last_start_s += start_s;
    result.last.last_end_s += start_s;
    result.leave_s = start_s + laid.leave_s;
    auto& all = earliest_[static_cast<std::size_t>(block)];
    all.push_back(result);
    return all.back();
  }

  /// Heaters that stay on are heated up before the first block that needs them, the robot at home.
  double heated_s(int block, const Option& option) const {
    const Block& now = job_.blocks[static_cast<std::size_t>(block)];
    if (now.gouge_s > 0.0 || !(now.heat_s > 0.0)) return 0.0;
    return job_.heat_once_s + way_s(job_.home_W, option.start_W);
  }

  const Job& job_;
  const Precedence& precedence_;
  const Zones& zones_;
  std::vector<std::vector<double>> closure_s_;
  bool air_counts_;
  std::vector<std::vector<Earliest>> earliest_;
};

}  // namespace

double chain_s(const Job& job, const Precedence& precedence, const Zones& zones) {
  return Chain(job, precedence, zones).home_s();
}

}  // namespace seamturn::order
