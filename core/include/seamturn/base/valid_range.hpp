// SPDX-License-Identifier: MIT
// Between which values a number is valid, in one place for those who check it and those who say how
// close it is.
#pragma once

namespace seamturn::base {

/// Both ends are inside. The unit stands in the name of the constant.
struct ValidRange {
  double least = 0.0;
  double largest = 0.0;
  [[nodiscard]] constexpr bool holds(double value) const {
    return value >= least && value <= largest;
  }
};

}  // namespace seamturn::base
