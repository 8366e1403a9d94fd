// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "detail_stances.hpp"
#include "seamturn/turn/move_time.hpp"

namespace seamturn::planner::detail {

namespace {

constexpr double unserved_s = 1e9;          ///< price of a seam without a stance
constexpr double tiny_s = 1e-6;             ///< prices nearer than that are alike
constexpr std::size_t most_placements = 8;  ///< per seam, so that the order search stays quick

class Chooser {
 public:
  Chooser(const Inputs& inputs, const std::vector<SeamRef>& seams, const StancePool& pool)
      : inputs_(inputs), seams_(seams), pool_(pool) {
    for (const turn::Stance& stance : pool.stances) {
      open_price_s_.push_back(opening_time_s(inputs, stance));
    }
    open_.assign(pool.stances.size(), false);
    make_table();
    look();
  }

  std::vector<std::vector<Placement>> choose() {
    open_greedily();
    improve();
    std::vector<std::vector<Placement>> chosen;
    for (std::size_t i = 0; i < seams_.size(); ++i) chosen.push_back(placements_of(i));
    return chosen;
  }

 private:
  /// A seam in a stance: the time of the best stack it may use there.
  struct Served {
    std::size_t seam;
    double time_s;
  };

  void make_table() {
    serves_.resize(pool_.stances.size());
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      for (const Placement& placement : pool_.placements[i]) {
        const double time_s =
            stack_time_s(inputs_, *seams_[i].work, static_cast<std::size_t>(placement.stack));
        std::vector<Served>& served = serves_[static_cast<std::size_t>(placement.stance)];
        if (served.empty() || served.back().seam != i) served.push_back({i, time_s});
        served.back().time_s = std::min(served.back().time_s, time_s);
      }
    }
  }

  /// Best and second best time of every seam among the open stances.
  void look() {
    best_s_.assign(seams_.size(), unserved_s);
    next_s_.assign(seams_.size(), unserved_s);
    for (std::size_t s = 0; s < open_.size(); ++s) {
      if (!open_[s]) continue;
      for (const Served& served : serves_[s]) {
        double& best = best_s_[served.seam];
        double& next = next_s_[served.seam];
        if (served.time_s < best) {
          next = best;
          best = served.time_s;
        } else {
          next = std::min(next, served.time_s);
        }
      }
    }
  }

  /// What the total price changes by when a stance opens.
  double opening_change_s(std::size_t s) const {
    double change = open_price_s_[s];
    for (const Served& served : serves_[s]) {
      change -= std::max(0.0, best_s_[served.seam] - served.time_s);
    }
    return change;
  }

  void open_greedily() {
    for (;;) {
      std::size_t best = open_.size();
      double best_change = -tiny_s;
      for (std::size_t s = 0; s < open_.size(); ++s) {
        if (open_[s]) continue;
        const double change = opening_change_s(s);
        if (change < best_change) {
          best_change = change;
          best = s;
        }
      }
      if (best == open_.size()) return;
      open_[best] = true;
      look();
    }
  }

  /// Closing one stance, or swapping an open one for a closed one, while it helps.
  void improve() {
    for (bool better = true; better;) {
      better = false;
      for (std::size_t s = 0; s < open_.size() && !better; ++s) {
        if (!open_[s]) continue;
        const double closing_s = close(s);
        better = closing_s < -tiny_s || swap_in(s, closing_s);
        if (!better) reopen(s);
      }
    }
  }

  /// Closes a stance; the change of the total price.
  double close(std::size_t s) {
    double change = -open_price_s_[s];
    for (const Served& served : serves_[s]) {
      if (served.time_s <= best_s_[served.seam]) {
        change += next_s_[served.seam] - served.time_s;
      }
    }
    open_[s] = false;
    look();
    return change;
  }
  void reopen(std::size_t s) {
    open_[s] = true;
    look();
  }

  /// Opens another stance in place of one closed at a cost.
  bool swap_in(std::size_t closed, double closing_s) {
    for (std::size_t other = 0; other < open_.size(); ++other) {
      if (open_[other] || other == closed) continue;
      if (closing_s + opening_change_s(other) >= -tiny_s) continue;
      reopen(other);
      return true;
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

  const Inputs& inputs_;
  const std::vector<SeamRef>& seams_;
  const StancePool& pool_;
  std::vector<double> open_price_s_;
  std::vector<bool> open_;
  std::vector<std::vector<Served>> serves_;  ///< per stance
  std::vector<double> best_s_;
  std::vector<double> next_s_;
};

}  // namespace

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

double opening_time_s(const Inputs& inputs, const turn::Stance& stance) {
  const std::vector<Angle> level(inputs.cell->positioner.axes.size());
  const double turn_s =
      turn::turn_time_s(inputs.cell->positioner, level, stance.axes) + inputs.cell->times.settle_s;
  // Going home and coming back, and touching anew, are part of the price of a turn.
  return turn_s + 2.0 * turn::air_time_s(inputs.cell->robot, 1000.0);
}

void turn_beads(std::vector<JointWork>& joints,
                const std::vector<std::vector<Placement>>& placements) {
  std::size_t index = 0;
  for (JointWork& joint : joints) {
    for (SeamWork& seam : joint.seams) {
      const std::vector<Placement>& own = placements[index++];
      if (own.empty() || !own.front().second_below || !seam.section.is_fillet) continue;
      pass::PassStack& stack = seam.stacks[static_cast<std::size_t>(own.front().stack)].stack;
      stack = pass::laid_from_second(stack);
      set_layer_times(joint, seam);  // on a ring the beads changed their radii
    }
  }
}

std::vector<std::vector<Placement>> choose_placements(const Inputs& inputs,
                                                      const std::vector<SeamRef>& seams,
                                                      const StancePool& pool) {
  return Chooser(inputs, seams, pool).choose();
}

}  // namespace seamturn::planner::detail
