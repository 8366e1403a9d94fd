// SPDX-License-Identifier: MIT
// Angles without two spellings, and the least value of a function of one number.
#pragma once

#include <functional>

#include "seamturn/base/angle.hpp"

namespace seamturn::turn::detail {

/// An angle of atan2 without the two spellings of half a turn and of zero.
[[nodiscard]] base::Angle tidy_angle(double y, double x);
/// In (-180, 180] deg, tidied alike.
[[nodiscard]] base::Angle wrapped(double rad);

/// Shorter than this, a direction in a plane is no direction.
inline constexpr double no_direction = 1e-9;

/// Between two looks along a way, before the best are refined.
inline constexpr base::Angle look_step = base::Angle::deg(2.0);

struct Minimum {
  double at = 0.0;
  double value = 0.0;
};
/// Least value between two ends: even steps, then the three best refined by golden section to
/// `fine` (in the argument). The ends count. Pre: steps above 0.
[[nodiscard]] Minimum least_of(
    const std::function<double(double)>& value, double from, double to, int steps, double fine);

}  // namespace seamturn::turn::detail
