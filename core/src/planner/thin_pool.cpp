// SPDX-License-Identifier: MIT
// Leaves out stances that others serve as well.
#include <algorithm>
#include <cmath>
#include <cstdint>

#include "detail_stances.hpp"

namespace seamturn::planner::detail {

namespace {

class Thinning {
 public:
  Thinning(const Inputs& inputs, const std::vector<SeamRef>& seams, const StancePool& pool)
      : stances_(pool.stances.size()), by_seam_(seams.size()) {
    for (std::size_t s = 0; s < stances_.size(); ++s) {
      stances_[s].bits.assign(seams.size() / 64 + 1, 0);
      stances_[s].opening_s = opening_time_s(inputs, pool.stances[s]);
      stances_[s].exact = s < pool.exact;
    }
    for (std::size_t i = 0; i < seams.size(); ++i) {
      std::vector<double> times_s;
      for (std::size_t k = 0; k < seams[i].work->stacks.size(); ++k) {
        times_s.push_back(pool.placements[i].empty() ? 0.0
                                                     : stack_time_s(inputs, *seams[i].work, k));
      }
      for (const Placement& placement : pool.placements[i]) {
        note(i, placement, times_s[static_cast<std::size_t>(placement.stack)]);
      }
    }
    for (const int s : pool.of_operations) {
      if (s >= 0) stances_[static_cast<std::size_t>(s)].stays = true;
    }
  }

  /// Per stance whether it stays.
  [[nodiscard]] std::vector<bool> kept() const {
    std::vector<bool> keep(stances_.size());
    for (std::size_t s = 0; s < stances_.size(); ++s) {
      keep[s] = stances_[s].stays || (!stances_[s].served.empty() && !is_beaten(s));
    }
    return keep;
  }

 private:
  struct Served {
    std::size_t seam;
    double time_s;
    double strain;
  };
  struct Serving {
    std::vector<Served> served;       ///< by rising seam
    std::vector<std::uint64_t> bits;  ///< seams served
    double strain = 0.0;              ///< worst
    double opening_s = 0.0;
    bool exact = false;  ///< lays some seam as wanted: plain angles that a programmer expects
    bool stays = false;
  };

  void note(std::size_t seam, const Placement& placement, double time_s) {
    const auto s = static_cast<std::size_t>(placement.stance);
    Serving& stance = stances_[s];
    if (stance.served.empty() || stance.served.back().seam != seam) {
      stance.served.push_back({seam, time_s, placement.strain_ratio});
      stance.bits[seam / 64] |= std::uint64_t{1} << (seam % 64);
      by_seam_[seam].push_back(s);
    } else {
      Served& last = stance.served.back();
      last.time_s = std::min(last.time_s, time_s);
      last.strain = std::min(last.strain, placement.strain_ratio);
    }
    stance.strain = 0.0;
    for (const Served& one : stance.served) stance.strain = std::max(stance.strain, one.strain);
  }

  /// Some other stance serves all its seams no slower, and more seams or, if alike, better.
  bool is_beaten(std::size_t s) const {
    const Serving& own = stances_[s];
    const auto rarest = std::min_element(
        own.served.begin(), own.served.end(), [&](const Served& a, const Served& b) {
          return by_seam_[a.seam].size() < by_seam_[b.seam].size();
        });
    const std::vector<std::size_t>& others = by_seam_[rarest->seam];
    return std::any_of(others.begin(), others.end(), [&](std::size_t other) {
      return other != s && serves_all(stances_[other], own) && is_better(other, s);
    });
  }

  static bool serves_all(const Serving& other, const Serving& own) {
    if (other.served.size() < own.served.size()) return false;
    for (std::size_t k = 0; k < own.bits.size(); ++k) {
      if ((own.bits[k] & ~other.bits[k]) != 0) return false;
    }
    auto at = other.served.begin();
    for (const Served& one : own.served) {
      while (at->seam != one.seam) ++at;
      if (at->time_s > one.time_s) return false;
    }
    return true;
  }

  /// Pre: other serves all that s does.
  bool is_better(std::size_t other, std::size_t s) const {
    const Serving& a = stances_[other];
    const Serving& b = stances_[s];
    if (a.served.size() > b.served.size() || !serves_all(b, a)) return true;
    if (a.exact != b.exact) return a.exact;
    // In whole steps, so that no three can beat one another in a ring.
    const auto steps = [](double value) { return std::llround(value * 1e6); };
    if (steps(a.strain) != steps(b.strain)) return a.strain < b.strain;
    if (steps(a.opening_s) != steps(b.opening_s)) return a.opening_s < b.opening_s;
    return other < s;
  }

  std::vector<Serving> stances_;
  std::vector<std::vector<std::size_t>> by_seam_;
};

}  // namespace

StancePool thinned(const Inputs& inputs, const std::vector<SeamRef>& seams, StancePool pool) {
  const std::vector<bool> keep = Thinning(inputs, seams, pool).kept();
  std::vector<int> number(keep.size(), -1);
  StancePool thin;
  for (std::size_t s = 0; s < keep.size(); ++s) {
    if (!keep[s]) continue;
    number[s] = static_cast<int>(thin.stances.size());
    thin.stances.push_back(pool.stances[s]);
  }
  for (const int s : pool.of_operations) {
    thin.of_operations.push_back(s < 0 ? s : number[static_cast<std::size_t>(s)]);
  }
  for (const std::vector<Placement>& placements : pool.placements) {
    thin.placements.emplace_back();
    for (Placement placement : placements) {
      placement.stance = number[static_cast<std::size_t>(placement.stance)];
      if (placement.stance >= 0) thin.placements.back().push_back(placement);
    }
  }
  return thin;
}

}  // namespace seamturn::planner::detail
