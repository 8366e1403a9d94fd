// SPDX-License-Identifier: MIT
// The way from one setting to another, all axes in proportion.
#pragma once

#include <vector>

#include "seamturn/cell/cell.hpp"

namespace seamturn::turn::detail {

class Way {
 public:
  /// Pre: settings as the positioner has axes.
  Way(const cell::Positioner& positioner,
      const std::vector<base::Angle>& from,
      const std::vector<base::Angle>& to);

  /// Setting after a share of the way, 0 to 1.
  [[nodiscard]] std::vector<base::Angle> at(double ratio) const;
  [[nodiscard]] bool moves(std::size_t axis) const { return travel_[axis].rad() != 0.0; }
  /// So many that the widest axis goes 2 deg in each; at least 1.
  [[nodiscard]] int steps() const;

 private:
  std::vector<base::Angle> from_;
  std::vector<base::Angle> travel_;
};

}  // namespace seamturn::turn::detail
