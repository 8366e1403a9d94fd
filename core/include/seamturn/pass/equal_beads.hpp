// SPDX-License-Identifier: MIT
// Layers of a V when all beads are of one size and layer n holds n beads.
#pragma once

#include <vector>

#include "seamturn/base/angle.hpp"

namespace seamturn::pass {

using base::Angle;

struct EqualBeads {
  double bead_area_mm2 = 0.0;
  Angle included;       ///< between the faces
  double gap_mm = 0.0;  ///< at the bottom; no root face
  int layers = 0;
};

/// Height of each layer, the lowest first.
/// Units: mm2, Angle, mm -> mm.
/// Pre: bead area > 0, 0 < included < 180 deg, gap >= 0, layers > 0.
/// Outside: n/a. A reckoning of how layers thin out, not how passes are laid: make_pass_stack does
///   that.
/// Source: [TCWI] 2001 (2): layer n of a V holds n beads; heights from areas: plane geometry.
/// Accuracy: exact for flat layers.
/// Tests: pass/equal_beads - rule published, ratios computed; closed-form; law.
[[nodiscard]] std::vector<double> equal_bead_layer_heights_mm(const EqualBeads& beads);

}  // namespace seamturn::pass
