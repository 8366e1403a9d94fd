// SPDX-License-Identifier: MIT
// The beads of one layer of a groove.
#pragma once

#include <vector>

#include "pass/detail_layout.hpp"
#include "pass/detail_strip.hpp"

namespace seamturn::pass {

/// Appends beads of equal area, from the first member's side across; role, layer and limit are
/// those of `like`. thickness_mm: of the layer, with the cap's mean height on the last.
void append_layer(std::vector<Bead>& beads,
                  const section::WeldSection& section,
                  const LayerShape& shape,
                  const Bead& like,
                  int count,
                  double thickness_mm);

}  // namespace seamturn::pass
