// SPDX-License-Identifier: MIT
#include "detail_beam.hpp"

#include <algorithm>
#include <unordered_map>

#include "detail_run.hpp"
#include "detail_tails.hpp"
#include "detail_work.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::order {

namespace {

/// The largest of a set and the largest but one: the largest without any one of it.
struct TopTwo {
  double first = 0.0;
  double second = 0.0;
  std::size_t of = 0;

  void add(double value, std::size_t owner) {
    if (value > first) {
      second = first;
      first = value;
      of = owner;
    } else {
      second = std::max(second, value);
    }
  }
  [[nodiscard]] double without(std::size_t owner) const { return owner == of ? second : first; }
};

/// A beginning of an order.
struct Beginning {
  RobotState state;
  std::vector<ZoneState> zones;
  std::vector<int> missing;  ///< per block: leaders not done; -1: done itself
  double least_left_s = 0.0;
  std::uint64_t done_hash = 0;
  std::size_t trace = 0;
};

/// A beginning one block longer, not yet written out.
struct Candidate {
  std::size_t from = 0;
  Step step;
  RobotState state;
  ZoneState zone;
  double hope_s = 0.0;  ///< least end of the cycle, as far as it can be told quickly
  std::uint64_t key = 0;
};

struct BeamTrace {
  Step step;
  std::size_t before = 0;
};

class Beam {
 public:
  Beam(const Job& job, const Precedence& precedence, std::size_t width)
      : job_(job),
        precedence_(precedence),
        zones_(number_zones(job)),
        run_(quiet_run(job)),
        width_(width),
        tails_s_(tails_s(job, precedence, zones_)),
        zone_blocks_(static_cast<std::size_t>(zones_.count)) {
    base::Random random(base::named_seed(1, "order beam keys"));
    for (std::size_t b = 0; b < job.blocks.size(); ++b) {
      least_s_.push_back(least_work_s(job, job.blocks[b]));
      bits_.push_back(random.next());
      zone_blocks_[zone_of(b)].push_back(b);
    }
  }

  Sequence run() {
    std::vector<Beginning> layer(1, first());
    for (std::size_t size = 0; size < job_.blocks.size(); ++size) grow(layer);
    const Beginning* best = nullptr;
    double best_s = never_s;
    for (const Beginning& all : layer) {
      RobotState state = all.state;
      run_.finish(state);
      if (state.objective_s(job_.worth) < best_s) {
        best_s = state.objective_s(job_.worth);
        best = &all;
      }
    }
    SEAMTURN_REQUIRE(best != nullptr, layer.size());
    return sequence_of(best->trace);
  }

 private:
  [[nodiscard]] std::size_t zone_of(std::size_t block) const {
    return static_cast<std::size_t>(zones_.of_block[block]);
  }

  Beginning first() {
    traces_.resize(1);
    Beginning begin;
    begin.state = state_at_start(job_);
    begin.zones.resize(zone_blocks_.size());
    for (std::size_t b = 0; b < job_.blocks.size(); ++b) {
      begin.missing.push_back(static_cast<int>(precedence_.leaders(static_cast<int>(b)).size()));
      begin.least_left_s += least_s_[b];
    }
    return begin;
  }

  void grow(std::vector<Beginning>& layer) {
    candidates_.clear();
    for (std::size_t from = 0; from < layer.size(); ++from) extend(layer[from], from);
    keep_the_earliest();
    const auto by_hope = [](const Candidate& a, const Candidate& b) {
      if (a.hope_s != b.hope_s) return a.hope_s < b.hope_s;
      if (a.state.now_s != b.state.now_s) return a.state.now_s < b.state.now_s;
      if (a.from != b.from) return a.from < b.from;
      return a.step.block != b.step.block ? a.step.block < b.step.block
                                          : a.step.option < b.step.option;
    };
    if (candidates_.size() > width_) {
      const auto end = candidates_.begin() + static_cast<std::ptrdiff_t>(width_);
      std::nth_element(candidates_.begin(), end, candidates_.end(), by_hope);
      candidates_.resize(width_);
    }
    std::sort(candidates_.begin(), candidates_.end(), by_hope);
    std::vector<Beginning> next;
    next.reserve(candidates_.size());
    for (const Candidate& candidate : candidates_) next.push_back(written_out(layer, candidate));
    layer = std::move(next);
  }

  /// Of candidates with the same blocks done and the same last step, the one whose clock is least.
  void keep_the_earliest() {
    known_.clear();
    std::size_t kept = 0;
    for (const Candidate& candidate : candidates_) {
      const auto [known, is_new] = known_.emplace(candidate.key, kept);
      if (is_new) {
        candidates_[kept++] = candidate;
      } else if (candidate.state.objective_s(job_.worth) <
                 candidates_[known->second].state.objective_s(job_.worth)) {
        candidates_[known->second] = candidate;
      }
    }
    candidates_.resize(kept);
  }

  void extend(const Beginning& begin, std::size_t from) {
    TopTwo tails;  // of the zones, what must follow once it may begin
    TopTwo ends;   // the same from where it may begin
    for (std::size_t z = 0; z < zone_blocks_.size(); ++z) {
      const Left left = left_in(z, begin.zones[z], begin.missing, no_block);
      tails.add(left.tail_s, z);
      ends.add(left.end_s, z);
    }
    for (std::size_t b = 0; b < job_.blocks.size(); ++b) {
      if (begin.missing[b] != 0) continue;
      const std::size_t zone = zone_of(b);
      for (std::size_t o = 0; o < job_.blocks[b].options.size(); ++o) {
        Candidate to;
        to.from = from;
        to.step = Step{static_cast<int>(b), static_cast<int>(o)};
        to.state = begin.state;
        to.zone = begin.zones[zone];
        run_.weld(to.state, to.zone, to.step);
        const Left left = left_in(zone, to.zone, begin.missing, b);
        const double tail_s = std::max(tails.without(zone), left.tail_s);
        const double end_s = std::max(ends.without(zone), left.end_s);
        const double sum_s = to.state.now_s + begin.least_left_s - least_s_[b];
        to.hope_s =
            std::max({sum_s, to.state.now_s + tail_s, end_s}) + to.state.avoided_s(job_.worth);
        to.key = (begin.done_hash ^ bits_[b]) * 0x9e3779b97f4a7c15ULL + b * 64 + o;
        candidates_.push_back(to);
      }
    }
  }

  struct Left {
    double tail_s = 0.0;
    double end_s = 0.0;
  };
  static constexpr std::size_t no_block = static_cast<std::size_t>(-1);

  /// Of the blocks of a zone that are left, `done` apart: the longest tail, and the latest end once
  /// the place is cool, whatever the course.
  [[nodiscard]] Left left_in(std::size_t zone,
                             const ZoneState& state,
                             const std::vector<int>& missing,
                             std::size_t done) const {
    Left left;
    for (const std::size_t b : zone_blocks_[zone]) {
      if (missing[b] < 0 || b == done) continue;
      left.tail_s = std::max(left.tail_s, tails_s_[b]);
      if (!state.laid || job_.blocks[b].work_s) continue;
      const BlockPass& pass = job_.blocks[b].passes.front();
      const double ready =
          std::min(ready_s(state, pass, state.course), ready_s(state, pass, state.course + 1));
      left.end_s = std::max(left.end_s, ready + tails_s_[b]);
    }
    return left;
  }

  Beginning written_out(const std::vector<Beginning>& layer, const Candidate& candidate) {
    const auto block = static_cast<std::size_t>(candidate.step.block);
    Beginning to = layer[candidate.from];
    to.state = candidate.state;
    to.zones[zone_of(block)] = candidate.zone;
    to.missing[block] = -1;
    for (const int follower : precedence_.followers(candidate.step.block)) {
      --to.missing[static_cast<std::size_t>(follower)];
    }
    to.least_left_s -= least_s_[block];
    to.done_hash ^= bits_[block];
    traces_.push_back(BeamTrace{candidate.step, to.trace});
    to.trace = traces_.size() - 1;
    return to;
  }

  [[nodiscard]] Sequence sequence_of(std::size_t trace) const {
    Sequence sequence;
    for (; trace != 0; trace = traces_[trace].before) sequence.push_back(traces_[trace].step);
    std::reverse(sequence.begin(), sequence.end());
    return sequence;
  }

  const Job& job_;
  const Precedence& precedence_;
  Zones zones_;
  Run<NoRecord> run_;
  std::size_t width_;
  std::vector<double> tails_s_;
  std::vector<double> least_s_;
  std::vector<std::uint64_t> bits_;
  std::vector<std::vector<std::size_t>> zone_blocks_;
  std::vector<Candidate> candidates_;
  std::unordered_map<std::uint64_t, std::size_t> known_;
  std::vector<BeamTrace> traces_;
};

}  // namespace

Sequence beam_sequence(const Job& job, const Precedence& precedence, std::size_t width) {
  SEAMTURN_REQUIRE(width >= 1, width);
  if (job.blocks.empty()) return {};
  return Beam(job, precedence, width).run();
}

std::int64_t beam_work(const Job& job, std::size_t width) {
  std::int64_t options = 0;
  for (const Block& block : job.blocks) options += static_cast<std::int64_t>(block.options.size());
  return static_cast<std::int64_t>(job.blocks.size() * width) * options;
}

}  // namespace seamturn::order
