// SPDX-License-Identifier: MIT
// The settings rows of a wire and position by role, each with the bead areas it can lay.
#pragma once

#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "seamturn/base/outcome.hpp"
#include "seamturn/pass/pass_stack.hpp"

namespace seamturn::pass {

/// One row and the areas it lays: within its travel range, and within the heat-input band as well.
struct RowRange {
  const process::LinkedSettings* row = nullptr;
  double efficiency_ratio = 0.0;  ///< k of the process
  double laid_mm3_s = 0.0;        ///< weld metal
  double heat_kw = 0.0;           ///< k U I
  double slowest_mm_s = 0.0;      ///< travel, with the margin
  double fastest_mm_s = 0.0;
  double preferred_mm2 = 0.0;     ///< at the preferred travel
  double travel_least_mm2 = 0.0;  ///< at the fastest travel
  double travel_most_mm2 = 0.0;   ///< at the slowest
  double least_mm2 = 0.0;         ///< heat input kept as well; least > most: never
  double most_mm2 = 0.0;
  [[nodiscard]] double travel_mm_s(double area_mm2) const { return laid_mm3_s / area_mm2; }
  /// Of travel from preferred, relative.
  [[nodiscard]] double departure(double area_mm2) const {
    return std::abs(preferred_mm2 / area_mm2 - 1.0);
  }
};

class RowTable {
 public:
  /// Refuses heat.process.unknown. The role single takes the fill rows when it has none.
  [[nodiscard]] static base::Outcome<RowTable> make(const StackRulesRequest& request);

  [[nodiscard]] std::span<const RowRange> rows(process::PassRole role) const {
    const auto index = static_cast<std::size_t>(role);
    return {rows_.data() + first_[index], first_[index + 1] - first_[index]};
  }
  /// True when rows named single exist; else `rows(single)` are those of fill.
  [[nodiscard]] bool has_own_single() const { return own_single_; }
  /// The row that lays an area within its range and whose travel is nearest its preferred (for the
  /// least arc time: that lays most metal a second); the earlier in the file of equals; null when
  /// none can.
  [[nodiscard]] const RowRange* pick(process::PassRole role, double area_mm2) const;
  /// The area nearest to one wanted that some row lays, not above a bound.
  [[nodiscard]] std::optional<double> nearest_mm2(process::PassRole role,
                                                  double wanted_mm2,
                                                  double most_mm2) const;
  /// The smallest bead any row of the role lays; infinite without rows.
  [[nodiscard]] double least_mm2(process::PassRole role) const {
    return extremes_of(role).least_mm2;
  }
  /// The largest; 0 without rows.
  [[nodiscard]] double most_mm2(process::PassRole role) const { return extremes_of(role).most_mm2; }
  /// The most metal a second any row of the table lays.
  [[nodiscard]] double most_mm3_s() const { return most_mm3_s_; }

 private:
  struct Extremes {
    double least_mm2 = std::numeric_limits<double>::infinity();
    double most_mm2 = 0.0;
  };
  [[nodiscard]] const Extremes& extremes_of(process::PassRole role) const {
    return extremes_[static_cast<std::size_t>(role)];
  }
  void find_extremes();

  std::vector<RowRange> rows_;  // role by role
  std::array<Extremes, 5> extremes_;
  double most_mm3_s_ = 0.0;
  bool by_time_ = false;
  std::array<std::size_t, 6> first_ = {};  // of each role, and the end
  bool own_single_ = false;
};

/// What came nearest to closing, kept for the refusal.
struct Miss {
  process::PassRole role = process::PassRole::fill;
  double area_mm2 = 0.0;       ///< of the pass that does not close
  int passes = 0;              ///< of the layer or stack it belongs to
  std::string_view barred_by;  ///< limit that forbids a larger bead
};

/// A layer that stays above a limit however many layers there are.
struct Barred {
  process::PassRole role = process::PassRole::cap;
  double thickness_mm = 0.0;
  double most_mm = 0.0;
  std::string_view id;
};

/// The nearest miss of a search.
class Misses {
 public:
  explicit Misses(const RowTable& table) : table_(table) {}
  void add(const Miss& miss);
  /// Keeps the first only.
  void add_missing_role(process::PassRole role);
  void add_barred(const Barred& barred);
  /// The refusal that tells most: a missing role first, then heat input, then travel.
  [[nodiscard]] base::Refusal refusal(const StackRulesRequest& request) const;

 private:
  [[nodiscard]] base::Refusal nearest_refusal(const StackRulesRequest& request) const;

  const RowTable& table_;
  Miss nearest_;
  const RowRange* row_ = nullptr;
  double distance_ = 0.0;
  std::optional<process::PassRole> missing_;
  std::optional<Barred> barred_;
};

}  // namespace seamturn::pass
