// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <limits>

#include "detail_stances.hpp"
#include "seamturn/turn/move_time.hpp"

namespace seamturn::planner::detail {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr std::size_t most_placements = 8;  ///< per seam, so that the order search stays quick

/// Seconds a seam takes when welded with a stack: arcs, and waits as if nothing filled them.
double stack_time_s(const Inputs& inputs, const SeamWork& seam, std::size_t stack) {
  const StackChoice& choice = seam.stacks[stack];
  const double overhead_s = pass_overhead_s(*inputs.cell, *seam.seam);
  double total = 0.0;
  double last_start = 0.0;
  for (std::size_t k = 0; k < choice.stack.passes.size(); ++k) {
    const double start = k == 0 ? 0.0 : std::max(total, last_start + choice.gaps.longer_s[k]);
    last_start = start;
    total = start + choice.stack.passes[k].arc_time_s + overhead_s;
  }
  return total;
}

class Chooser {
 public:
  Chooser(const Inputs& inputs, const std::vector<SeamRef>& seams, const StancePool& pool)
      : inputs_(inputs), seams_(seams), pool_(pool) {
    const turn::Stance level{std::vector<Angle>(inputs.cell->positioner.axes.size()), false};
    for (const turn::Stance& stance : pool.stances) {
      const double turn_s = turn::turn_time_s(inputs.cell->positioner, level.axes, stance.axes) +
                            inputs.cell->times.settle_s;
      // Going home and coming back, and touching anew, are part of the price of a turn.
      open_price_s_.push_back(turn_s + 2.0 * turn::air_time_s(inputs.cell->robot, 1000.0));
    }
    open_.assign(pool.stances.size(), false);
    make_table();
  }

  std::vector<std::vector<Placement>> choose() {
    open_greedily();
    improve();
    std::vector<std::vector<Placement>> chosen;
    for (std::size_t i = 0; i < seams_.size(); ++i) chosen.push_back(placements_of(i));
    return chosen;
  }

 private:
  /// Time of every seam in every stance: the best stack it may use there.
  void make_table() {
    time_s_.assign(seams_.size(), std::vector<double>(pool_.stances.size(), never));
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      for (const Placement& placement : pool_.placements[i]) {
        const auto stack = static_cast<std::size_t>(placement.stack);
        double& cell = time_s_[i][static_cast<std::size_t>(placement.stance)];
        cell = std::min(cell, stack_time_s(inputs_, *seams_[i].work, stack));
      }
    }
  }

  double price(const std::vector<bool>& open) const {
    double total = 0.0;
    for (std::size_t s = 0; s < open.size(); ++s) {
      if (open[s]) total += open_price_s_[s];
    }
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      if (pool_.placements[i].empty()) continue;
      double best = unserved_s;
      for (std::size_t s = 0; s < open.size(); ++s) {
        if (open[s]) best = std::min(best, time_s_[i][s]);
      }
      total += best;
    }
    return total;
  }

  void open_greedily() {
    double now = price(open_);
    for (;;) {
      int best = -1;
      double best_price = now;
      for (std::size_t s = 0; s < open_.size(); ++s) {
        if (open_[s]) continue;
        open_[s] = true;
        const double with = price(open_);
        open_[s] = false;
        if (with < best_price - tiny_s) {
          best_price = with;
          best = static_cast<int>(s);
        }
      }
      if (best < 0) return;
      open_[static_cast<std::size_t>(best)] = true;
      now = best_price;
    }
  }

  /// Closing one stance, or swapping an open one for a closed one, while it helps.
  void improve() {
    double now = price(open_);
    for (bool better = true; better;) {
      better = false;
      for (std::size_t s = 0; s < open_.size() && !better; ++s) {
        if (!open_[s]) continue;
        open_[s] = false;
        better = accept_if_better(now) || swap_in(s, now);
        if (!better) open_[s] = true;
      }
    }
  }

  bool accept_if_better(double& now) {
    const double changed = price(open_);
    if (changed >= now - tiny_s) return false;
    now = changed;
    return true;
  }

  bool swap_in(std::size_t closed, double& now) {
    for (std::size_t other = 0; other < open_.size(); ++other) {
      if (open_[other] || other == closed) continue;
      open_[other] = true;
      if (accept_if_better(now)) return true;
      open_[other] = false;
    }
    return false;
  }

  std::vector<Placement> placements_of(std::size_t seam) const {
    const std::vector<Placement>& all = pool_.placements[seam];
    if (all.empty()) return {};
    const auto rank = [&](const Placement& p) {
      const std::size_t s = static_cast<std::size_t>(p.stance);
      return (open_[s] ? 0.0 : unserved_s) +
             stack_time_s(inputs_, *seams_[seam].work, static_cast<std::size_t>(p.stack));
    };
    const Placement best = *std::min_element(
        all.begin(), all.end(), [&](const auto& a, const auto& b) { return rank(a) < rank(b); });
    std::vector<Placement> kept;
    for (const Placement& p : all) {
      // All passes of a ring start at one station: the gap between passes is kept place by place.
      const bool same_start = std::abs(p.ring_start_mm - best.ring_start_mm) < 1e-6;
      const bool open = open_[static_cast<std::size_t>(p.stance)];
      // So do the layers of a fillet: all stances have the same plate below.
      const bool same_plate = p.second_below == best.second_below;
      const bool fits = p.stack == best.stack && same_start && same_plate && open;
      if (fits && kept.size() < most_placements) kept.push_back(p);
    }
    return kept;
  }

  static constexpr double unserved_s = 1e9;
  static constexpr double tiny_s = 1e-9;
  const Inputs& inputs_;
  const std::vector<SeamRef>& seams_;
  const StancePool& pool_;
  std::vector<double> open_price_s_;
  std::vector<bool> open_;
  std::vector<std::vector<double>> time_s_;
};

}  // namespace

void turn_beads(std::vector<JointWork>& joints,
                const std::vector<std::vector<Placement>>& placements) {
  std::size_t index = 0;
  for (JointWork& joint : joints) {
    for (SeamWork& seam : joint.seams) {
      const std::vector<Placement>& own = placements[index++];
      if (own.empty() || !own.front().second_below || !seam.section.is_fillet) continue;
      pass::PassStack& stack = seam.stacks[static_cast<std::size_t>(own.front().stack)].stack;
      stack = pass::laid_from_second(stack);
    }
  }
}

std::vector<std::vector<Placement>> choose_placements(const Inputs& inputs,
                                                      const std::vector<SeamRef>& seams,
                                                      const StancePool& pool) {
  return Chooser(inputs, seams, pool).choose();
}

}  // namespace seamturn::planner::detail
