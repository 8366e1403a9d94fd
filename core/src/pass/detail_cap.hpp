// SPDX-License-Identifier: MIT
// The cap above a groove's face, cut across at shares of its width.
#pragma once

#include "seamturn/section/weld_section.hpp"

namespace seamturn::pass {

using section::CapShape;

struct CapSize {
  CapShape shape = CapShape::parabola;
  double area_mm2 = 0.0;  ///< 0: no cap
  double height_mm = 0.0;
  double left_mm = 0.0;  ///< x of the left toe
  double width_mm = 0.0;
  /// Height of a plate as wide as the cap that holds as much metal.
  [[nodiscard]] double mean_height_mm() const {
    return area_mm2 > 0.0 && width_mm > 0.0 ? area_mm2 / width_mm : 0.0;
  }
};
[[nodiscard]] CapSize cap_size(const section::WeldSection& section);

/// Integrals over the cap left of a share of its width, 0 to 1.
struct CapPart {
  double area_mm2 = 0.0;
  double moment_x_mm3 = 0.0;  ///< of x, from the left toe
  double moment_y_mm3 = 0.0;  ///< of y, from the face
};
[[nodiscard]] CapPart cap_part(const CapSize& cap, double share);

/// The share of the width left of which lies a share of a strip of this area and the cap on it; the
/// strip is shared as its width is. Pre: 0 <= area_share <= 1. Accuracy: closed form.
[[nodiscard]] double width_share(const CapSize& cap, double strip_mm2, double area_share);

}  // namespace seamturn::pass
