// SPDX-License-Identifier: MIT
#include "seamturn/turn/way.hpp"

#include <algorithm>
#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/turn/move_time.hpp"

namespace seamturn::turn {

Way::Way(const cell::Positioner& positioner,
         const std::vector<base::Angle>& from,
         const std::vector<base::Angle>& to)
    : from_(from) {
  const std::size_t count = positioner.axes.size();
  SEAMTURN_REQUIRE(from.size() == count && to.size() == count, from.size(), to.size(), count);
  for (std::size_t i = 0; i < count; ++i) {
    travel_.push_back(axis_travel(positioner.axes[i], from[i], to[i]));
  }
}

std::vector<base::Angle> Way::at(double ratio) const {
  std::vector<base::Angle> axes = from_;
  for (std::size_t i = 0; i < axes.size(); ++i) axes[i] = axes[i] + ratio * travel_[i];
  return axes;
}

int Way::steps(base::Angle widest) const {
  SEAMTURN_REQUIRE(widest > base::Angle(), widest.deg());
  double widest_deg = 0.0;
  for (const base::Angle travel : travel_) {
    widest_deg = std::max(widest_deg, std::abs(travel.deg()));
  }
  return std::max(1, static_cast<int>(std::ceil(widest_deg / widest.deg())));
}

}  // namespace seamturn::turn
