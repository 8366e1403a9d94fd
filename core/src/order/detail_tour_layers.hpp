// SPDX-License-Identifier: MIT
// The best alternatives for an order of groups, layer by layer. What the last order has left is
// kept: only layers that follow a change are done again.
#pragma once

#include <cstdint>
#include <vector>

#include "detail_tour_table.hpp"

namespace seamturn::order {

class TourLayers {
 public:
  explicit TourLayers(const TourTable& table);

  /// The least cost of a tour through the groups of these vertices, in this order.
  double least(const std::vector<int>& tour);
  /// Puts the alternatives of the least cost in place of the vertices. Pre: least() of this order.
  void choose(std::vector<int>& tour) const;
  [[nodiscard]] std::int64_t work() const { return work_; }

 private:
  bool redo(int from, int to);

  const TourTable& table_;
  std::vector<double> over_;   ///< per vertex: least cost to it, over that of its group's best
  std::vector<int> came_;      ///< per vertex: the best vertex of the group before
  std::vector<double> least_;  ///< per group: what its layer adds
  std::vector<int> before_;    ///< per group: the group before, when its layer was done
  std::vector<double> fresh_;
  std::int64_t work_ = 0;
};

}  // namespace seamturn::order
