// SPDX-License-Identifier: MIT
// The way from one setting of the axes to another.
#pragma once

#include <vector>

#include "seamturn/cell/cell.hpp"

namespace seamturn::turn {

/// All axes in proportion, each its own travel: endless ones the short way round.
/// Tests: turn/turn_load, turn/swing - law (peaks against fine sampling).
class Way {
 public:
  /// Pre: settings as the positioner has axes.
  Way(const cell::Positioner& positioner,
      const std::vector<base::Angle>& from,
      const std::vector<base::Angle>& to);

  /// Setting after a share of the way, 0 to 1.
  [[nodiscard]] std::vector<base::Angle> at(double ratio) const;
  [[nodiscard]] bool moves(std::size_t axis) const { return travel_[axis].rad() != 0.0; }
  /// So many that no axis goes farther than `widest` in one; at least 1. Pre: widest above 0.
  [[nodiscard]] int steps(base::Angle widest) const;

 private:
  std::vector<base::Angle> from_;
  std::vector<base::Angle> travel_;
};

}  // namespace seamturn::turn
