// SPDX-License-Identifier: MIT
// Area of a closed polygon from its corners alone.
#pragma once

#include <vector>

#include "seamturn/section/weld_section.hpp"

namespace seamturn::tests {

/// Above 0 when the corners run anticlockwise.
inline double shoelace_mm2(const std::vector<section::Point>& outline) {
  double twice = 0.0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const section::Point& a = outline[i];
    const section::Point& b = outline[(i + 1) % outline.size()];
    twice += a.x_mm * b.y_mm - b.x_mm * a.y_mm;
  }
  return 0.5 * twice;
}

}  // namespace seamturn::tests
