// SPDX-License-Identifier: MIT
#include "detail_exact.hpp"

#include <algorithm>
#include <limits>
#include <unordered_map>

#include "detail_run.hpp"
#include "detail_tails.hpp"
#include "detail_work.hpp"

namespace seamturn::order {

namespace {

constexpr std::size_t most_blocks = 64;      // one bit each
constexpr std::int64_t looks_per_state = 6;  // bounds the time of a hopeless attempt

/// A partial order: which blocks are done, where robot and zones stand, how it came about.
struct Partial {
  std::uint64_t done = 0;
  RobotState state;
  std::vector<ZoneState> zones;
  double least_left_s = 0.0;  ///< of the blocks not done
  double arcs_left_s = 0.0;   ///< slightly too much, never too little
  std::size_t trace = 0;      ///< index of its last step in the traces
  bool alive = true;
};

/// Steps taken, linked backwards; index 0 is the empty beginning.
struct ExactTrace {
  Step step;
  std::size_t before = 0;
};

/// Partial orders with the same key have the same blocks before them and end in the same place.
struct Key {
  std::uint64_t done = 0;
  int block = 0;
  int option = 0;
  bool operator==(const Key&) const = default;
};
struct KeyHash {
  std::size_t operator()(const Key& key) const {
    std::uint64_t mixed = key.done * 0x9e3779b97f4a7c15ULL;
    mixed ^= (mixed >> 29) + static_cast<std::uint64_t>(key.block * 64 + key.option);
    return static_cast<std::size_t>(mixed * 0xbf58476d1ce4e5b9ULL);
  }
};

class ExactSearch {
 public:
  ExactSearch(const Job& job, const Precedence& precedence, double known_s, std::int64_t states)
      : job_(job),
        zones_(number_zones(job)),
        run_(quiet_run(job)),
        best_s_(known_s),
        states_(states),
        needs_(job.blocks.size(), 0),
        zone_blocks_(static_cast<std::size_t>(zones_.count), 0),
        zone_touching_(zone_blocks_),
        zone_touch_s_(zone_blocks_.size(), never_s),
        zone_touch_most_s_(zone_blocks_.size(), 0.0),
        zone_gap_s_(zone_blocks_.size(), 0.0),
        tail_s_(tails_s(job, precedence, zones_)) {
    for (std::size_t b = 0; b < job.blocks.size(); ++b) {
      for (const int before : precedence.leaders(static_cast<int>(b))) {
        needs_[b] |= bit(static_cast<std::size_t>(before));
      }
      least_s_.push_back(work_s(job, job.blocks[b]) + least_entry_s(b));
      double home_s = never_s;
      for (const Option& option : job.blocks[b].options) {
        home_s = std::min(home_s, air_s(job, option.end_W, job.home_W));
      }
      home_from_s_.push_back(home_s);
      arcs_s_.push_back(0.0);
      for (const BlockPass& pass : job.blocks[b].passes) arcs_s_.back() += pass.arc_s;
      const auto zone = static_cast<std::size_t>(zones_.of_block[b]);
      zone_blocks_[zone] |= bit(b);
      if (!job.blocks[b].work_s) {
        zone_gap_s_[zone] = std::max(zone_gap_s_[zone], job.blocks[b].passes.front().gap_s);
      }
      zone_touch_most_s_[zone] = std::max(zone_touch_most_s_[zone], job.blocks[b].touch_s);
      if (job.blocks[b].touch_s > 0.0) {
        zone_touching_[zone] |= bit(b);
        zone_touch_s_[zone] = std::min(zone_touch_s_[zone], job.blocks[b].touch_s);
      }
    }
    find_ways_in();
  }

  Exact run() {
    Exact result;
    std::vector<Partial> layer(1);
    layer[0].state = state_at_start(job_);
    layer[0].zones.resize(static_cast<std::size_t>(zones_.count));
    for (std::size_t b = 0; b < job_.blocks.size(); ++b) {
      layer[0].least_left_s += least_s_[b];
      layer[0].arcs_left_s += arcs_s_[b] * (1.0 + 1e-9);
    }
    traces_.resize(1);
    for (std::size_t size = 0; size < job_.blocks.size(); ++size) {
      // Most partial orders have half of the blocks: what is wide early will not fit.
      const bool hopeless = 2 * size < job_.blocks.size() && kept_ > states_ / 4;
      if (hopeless || !grow(layer)) {
        return result;
      }
    }
    result.complete = true;
    for (const Partial& all : layer) {
      RobotState state = all.state;
      run_.finish(state);
      if (state.objective_s(job_.worth) < best_s_) {
        best_s_ = state.objective_s(job_.worth);
        result.better = sequence_of(all.trace);
      }
    }
    return result;
  }

 private:
  static std::uint64_t bit(std::size_t block) { return std::uint64_t{1} << block; }

  /// All partial orders one block longer; false when the limit is passed.
  bool grow(std::vector<Partial>& layer) {
    std::vector<Partial> next;
    std::unordered_map<Key, std::vector<std::size_t>, KeyHash> known;
    for (const Partial& from : layer) {
      for (std::size_t b = 0; from.alive && b < job_.blocks.size(); ++b) {
        if ((from.done & bit(b)) != 0 || (needs_[b] & ~from.done) != 0) continue;
        for (std::size_t o = 0; o < job_.blocks[b].options.size(); ++o) {
          const Step step{static_cast<int>(b), static_cast<int>(o)};
          extend(from, step, next, known[Key{from.done | bit(b), step.block, step.option}]);
        }
      }
      if (kept_ > states_ || looks_ > looks_per_state * states_) return false;
    }
    layer = std::move(next);
    return true;
  }

  void extend(const Partial& from,
              const Step& step,
              std::vector<Partial>& next,
              std::vector<std::size_t>& rivals) {
    looks_ += 1 + static_cast<std::int64_t>(rivals.size()) / 4;
    const auto block = static_cast<std::size_t>(step.block);
    const auto zone = static_cast<std::size_t>(zones_.of_block[block]);
    Partial& to = trial_;
    to = from;
    run_.weld(to.state, to.zones[zone], step);
    to.done |= bit(block);
    to.least_left_s -= least_s_[block];
    to.arcs_left_s -= arcs_s_[block];
    if (to.state.objective_s(job_.worth) + rest_s(to) >= best_s_) return;
    for (const std::size_t rival : rivals) {
      if (next[rival].alive && is_no_worse(next[rival], to)) return;
    }
    for (const std::size_t rival : rivals) {
      if (next[rival].alive && is_no_worse(to, next[rival])) {
        next[rival].alive = false;
        --kept_;
      }
    }
    traces_.push_back(ExactTrace{step, from.trace});
    to.trace = traces_.size() - 1;
    rivals.push_back(next.size());
    next.push_back(to);
    ++kept_;
  }

  /// True when whatever may follow b may follow a and ends no later. Every time of the rules rises
  /// with the times before it, so earlier is never worse; the arc since cleaning is the exception
  /// (cleaning later may fall on a worse moment) and must be equal unless a never cleans again.
  /// A zone that only b has touched costs a one touch at most: after the next turn both are equal.
  bool is_no_worse(const Partial& a, const Partial& b) const {
    double later_s = b.state.now_s - a.state.now_s;  // what b is behind pays for touches of a
    if (later_s < 0.0) return false;
    // Whether people are in hangs on the last step, which both share.
    if (a.state.avoided_s(job_.worth) > b.state.avoided_s(job_.worth)) return false;
    const bool same_nozzle = a.state.arc_since_clean_s == b.state.arc_since_clean_s;
    if (job_.clean_every_s > 0.0 && !same_nozzle &&
        a.state.arc_since_clean_s + a.arcs_left_s > job_.clean_every_s) {
      return false;
    }
    for (std::size_t z = 0; z < a.zones.size(); ++z) {
      if ((zone_blocks_[z] & ~a.done) == 0) continue;
      const ZoneState& mine = a.zones[z];
      const ZoneState& other = b.zones[z];
      const bool touched = mine.touched_in_visit == a.state.visit;
      if (other.touched_in_visit == b.state.visit && !touched) {
        later_s -= zone_touch_most_s_[z];
        if (later_s < 0.0) return false;
      }
      const bool cool = mine.last_end_s + zone_gap_s_[z] <= a.state.now_s;  // no wait any more
      if (mine.laid && !cool &&
          (mine.course != other.course || mine.last_start_s > other.last_start_s ||
           mine.last_end_s > other.last_end_s)) {
        return false;
      }
    }
    return true;
  }

  /// Least seconds after a partial order: all that is left once and the dearest turn into a block
  /// that the present stance cannot serve, or the longest chain left with its wait.
  double rest_s(const Partial& partial) const {
    const double torch_home_s =
        partial.state.home ? 0.0 : air_s(job_, partial.state.torch_W, job_.home_W);
    double turn_s = 0.0;
    double chain_s = 0.0;
    double home_s = never_s;
    const auto stance = static_cast<std::size_t>(partial.state.stance);
    for (std::size_t b = 0; b < job_.blocks.size(); ++b) {
      if ((partial.done & bit(b)) != 0) continue;
      turn_s = std::max(turn_s, turn_into_s_[b * job_.turn_s.size() + stance]);
      home_s = std::min(home_s, home_from_s_[b]);
      chain_s = std::max(chain_s, chain_left_s(partial, b));
    }
    const double sum_s = std::max(0.0, partial.least_left_s) + turn_s + touches_left_s(partial) +
                         (home_s == never_s ? torch_home_s : home_s);
    // The tolerances keep rounding from ruling out an order that is as short as it looks.
    return std::max(sum_s, chain_s) * (1.0 - 1e-12) - 1e-12 * partial.state.now_s;
  }

  /// A zone not touched in this stance visit is touched once more if a touching block is left.
  double touches_left_s(const Partial& partial) const {
    double total_s = 0.0;
    for (std::size_t z = 0; z < zone_blocks_.size(); ++z) {
      const bool touched = partial.zones[z].touched_in_visit == partial.state.visit;
      if (!touched && (zone_touching_[z] & ~partial.done) != 0) {
        total_s += zone_touch_s_[z];
      }
    }
    return total_s;
  }

  double chain_left_s(const Partial& partial, std::size_t b) const {
    const ZoneState& zone = partial.zones[static_cast<std::size_t>(zones_.of_block[b])];
    if (!zone.laid) return tail_s_[b];
    const BlockPass& first = job_.blocks[b].passes.front();
    // The rule that waits less: another pass laid meanwhile only delays.
    const double ready =
        std::min(ready_s(zone, first, zone.course), ready_s(zone, first, zone.course + 1));
    return std::max(0.0, ready - partial.state.now_s) + tail_s_[b];
  }

  double least_entry_s(std::size_t to) const {
    double least_s = never_s;
    for (const Option& entered : job_.blocks[to].options) {
      double way_s = air_s(job_, job_.home_W, entered.start_W);
      for (std::size_t from = 0; from < job_.blocks.size(); ++from) {
        for (const Option& left : job_.blocks[from].options) {
          if (from != to && left.stance == entered.stance) {
            way_s = std::min(way_s, air_s(job_, left.end_W, entered.start_W));
          }
        }
      }
      least_s = std::min(least_s, way_s + inside_s(job_, job_.blocks[to], entered));
    }
    return least_s;
  }

  /// Least turn before each block from each stance: none, or the cheapest into one of its own.
  void find_ways_in() {
    const auto& turn_s = job_.turn_s;
    std::vector<double> into_s(turn_s.size(), never_s);
    for (std::size_t to = 0; to < turn_s.size(); ++to) {
      for (std::size_t from = 0; from < turn_s.size(); ++from) {
        if (from != to) into_s[to] = std::min(into_s[to], turn_s[from][to]);
      }
    }
    for (const Block& block : job_.blocks) {
      for (std::size_t stance = 0; stance < turn_s.size(); ++stance) {
        double least_s = never_s;
        for (const Option& option : block.options) {
          const auto own = static_cast<std::size_t>(option.stance);
          least_s = std::min(least_s, own == stance ? 0.0 : into_s[own]);
        }
        turn_into_s_.push_back(least_s);
      }
    }
  }

  Sequence sequence_of(std::size_t trace) const {
    Sequence sequence;
    for (; trace != 0; trace = traces_[trace].before) {
      sequence.push_back(traces_[trace].step);
    }
    std::reverse(sequence.begin(), sequence.end());
    return sequence;
  }

  const Job& job_;
  Zones zones_;
  Run<NoRecord> run_;
  double best_s_;
  std::int64_t states_;
  std::int64_t kept_ = 0;
  std::int64_t looks_ = 0;
  Partial trial_;
  std::vector<std::uint64_t> needs_;
  std::vector<std::uint64_t> zone_blocks_;
  std::vector<std::uint64_t> zone_touching_;
  std::vector<double> zone_touch_s_;  ///< least touch in the zone
  std::vector<double> zone_touch_most_s_;
  std::vector<double> zone_gap_s_;  ///< largest gap before a block of the zone
  std::vector<double> least_s_;
  std::vector<double> tail_s_;
  std::vector<double> home_from_s_;
  std::vector<double> turn_into_s_;  ///< [block][stance]
  std::vector<double> arcs_s_;
  std::vector<ExactTrace> traces_;
};

}  // namespace

Exact search_exactly(const Job& job,
                     const Precedence& precedence,
                     double known_s,
                     std::int64_t states) {
  if (job.blocks.size() > most_blocks || job.blocks.empty() || states <= 0) {
    return Exact{};
  }
  return ExactSearch(job, precedence, known_s, states).run();
}

}  // namespace seamturn::order
