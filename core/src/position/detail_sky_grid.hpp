// SPDX-License-Identifier: MIT
// Finds directions near a direction: boxes about the unit sphere. Private to the room.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "seamturn/geom/vector.hpp"

namespace seamturn::position {

class SkyGrid {
 public:
  SkyGrid() = default;
  /// Boxes as wide as the widest look, so that a look visits few.
  explicit SkyGrid(double widest_rad)
      : widest_rad_(widest_rad), size_(std::clamp(widest_rad, 0.05, 2.0)) {
    per_side_ = static_cast<int>(std::ceil(2.0 / size_)) + 1;
    boxes_.resize(static_cast<std::size_t>(per_side_ * per_side_ * per_side_));
  }

  [[nodiscard]] double widest_rad() const { return widest_rad_; }

  void add(int number, const geom::Vec3& u) {
    boxes_[index(box(u.x()), box(u.y()), box(u.z()))].push_back(number);
  }

  /// All that may lie within an angle of u, and some beyond. The chord is shorter than the arc.
  [[nodiscard]] std::vector<int> near(const geom::Vec3& u, double within_rad) const {
    std::vector<int> found;
    const auto range = [&](double at) {
      return std::pair{box(at - within_rad), box(at + within_rad)};
    };
    const std::pair<int, int> x = range(u.x());
    const std::pair<int, int> y = range(u.y());
    const std::pair<int, int> z = range(u.z());
    for (int i = x.first; i <= x.second; ++i) {
      for (int j = y.first; j <= y.second; ++j) {
        for (int k = z.first; k <= z.second; ++k) {
          const std::vector<int>& in_box = boxes_[index(i, j, k)];
          found.insert(found.end(), in_box.begin(), in_box.end());
        }
      }
    }
    return found;
  }

 private:
  [[nodiscard]] int box(double at) const {
    return std::clamp(static_cast<int>(std::floor((at + 1.0) / size_)), 0, per_side_ - 1);
  }
  [[nodiscard]] std::size_t index(int i, int j, int k) const {
    return static_cast<std::size_t>((i * per_side_ + j) * per_side_ + k);
  }

  double widest_rad_ = 0.0;
  double size_ = 1.0;
  int per_side_ = 0;
  std::vector<std::vector<int>> boxes_;
};

}  // namespace seamturn::position
