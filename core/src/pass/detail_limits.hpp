// SPDX-License-Identifier: MIT
// Which of the bounds of a pass it would break.
#pragma once

#include <algorithm>
#include <string_view>

#include "seamturn/base/rounding.hpp"
#include "seamturn/pass/caps.hpp"

namespace seamturn::pass {

/// The bound exceeded most, relative to its value. `id` stays empty while all hold.
class Excess {
 public:
  void compare(double value, const Bound& bound) {
    if (value > ratio_ * (1.0 + base::rounding_ratio) * bound.value) {
      ratio_ = value / bound.value;
      id_ = bound.id;
    }
  }
  [[nodiscard]] bool any() const { return ratio_ > 1.0; }
  [[nodiscard]] std::string_view id() const { return id_; }

 private:
  double ratio_ = 1.0;
  std::string_view id_;
};

/// The next whole number, but the one just below when rounding alone lifts a ratio above it. Capped
/// where beads are not a weld any more, so that a nonsense limit overflows nothing.
[[nodiscard]] inline int ceil_count(double ratio) {
  const double wanted = std::min(1e6, ratio - base::rounding_ratio);
  const int count = static_cast<int>(wanted);
  return wanted > count ? count + 1 : count;
}

/// Beads side by side that a layer of a width needs: one up to the split width; beyond it as many
/// as keep a bead, 1.5 pitches wide, within the split width, and never fewer than two.
[[nodiscard]] inline int split_beads(double width_mm, const Bound& split_mm) {
  return width_mm <= split_mm.value * (1.0 + base::rounding_ratio)
             ? 1
             : std::max(2, ceil_count(1.5 * width_mm / split_mm.value));
}
/// Beads of a layer's area that keep each within the bound.
[[nodiscard]] inline int area_beads(double area_mm2, const Bound& bound_mm2) {
  return area_mm2 <= bound_mm2.value ? 1 : std::max(1, ceil_count(area_mm2 / bound_mm2.value));
}

}  // namespace seamturn::pass
