// SPDX-License-Identifier: MIT
// What a number must be before it is computed with.
#pragma once

#include <cmath>

namespace seamturn::base {

/// A size, speed, mass: finite and above zero.
[[nodiscard]] inline bool is_positive(double value) {
  return std::isfinite(value) && value > 0.0;
}

/// What may also be nothing: finite and not below zero.
[[nodiscard]] inline bool is_amount(double value) {
  return std::isfinite(value) && value >= 0.0;
}

}  // namespace seamturn::base
