// SPDX-License-Identifier: MIT
// A horizontal strip of a section's profile and the pieces beads take of it.
#pragma once

#include "seamturn/section/weld_section.hpp"

namespace seamturn::pass {

/// Integrals over the profile between two heights; w is the width, l the x of the left wall.
struct Strip {
  double y_low_mm = 0.0;
  double y_high_mm = 0.0;
  double area_mm2 = 0.0;          ///< integral of w
  double moment_y_mm3 = 0.0;      ///< of y w
  double moment_left_mm3 = 0.0;   ///< of l w
  double moment_width_mm3 = 0.0;  ///< of w w
};

/// The walls at a height, straight between slices; clamped to the profile.
[[nodiscard]] section::Slice walls_at(const section::WeldSection& section, double y_mm);

/// Pre: low <= high. Exact: Simpson's rule on pieces where every integrand is a parabola.
[[nodiscard]] Strip strip_between(const section::WeldSection& section,
                                  double low_mm,
                                  double high_mm);

/// The strip and the cap above it (when `with_cap`), cut across by lines that keep the share of
/// the width, so that equal shares of the width are equal areas of the strip.
struct LayerShape {
  Strip strip;
  double cap_area_mm2 = 0.0;  ///< 0 below the last layer
  double cap_height_mm = 0.0;
  double cap_left_mm = 0.0;  ///< x of the cap's left toe
  double cap_width_mm = 0.0;
};
[[nodiscard]] LayerShape layer_shape(const section::WeldSection& section,
                                     double low_mm,
                                     double high_mm,
                                     bool with_cap);

/// Share of the width left of which lies a share of the layer's area. Pre: 0 <= share <= 1.
[[nodiscard]] double width_share(const LayerShape& shape, double area_share);

/// Centroid of the piece between two shares of the width. Pre: from < to.
[[nodiscard]] section::Point piece_centre(const LayerShape& shape, double from, double to);

}  // namespace seamturn::pass
