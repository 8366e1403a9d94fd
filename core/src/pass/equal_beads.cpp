// SPDX-License-Identifier: MIT
#include "seamturn/pass/equal_beads.hpp"

#include <cmath>
#include <numbers>

#include "seamturn/base/error.hpp"

namespace seamturn::pass {

std::vector<double> equal_bead_layer_heights_mm(const EqualBeads& beads) {
  SEAMTURN_REQUIRE(beads.bead_area_mm2 > 0.0, beads.bead_area_mm2);
  SEAMTURN_REQUIRE(beads.included.rad() > 0.0 && beads.included.rad() < std::numbers::pi,
                   beads.included.deg());
  SEAMTURN_REQUIRE(beads.gap_mm >= 0.0 && beads.layers > 0, beads.gap_mm, beads.layers);
  const double slope = std::tan(0.5 * beads.included.rad());
  std::vector<double> heights_mm;
  heights_mm.reserve(static_cast<std::size_t>(beads.layers));
  double below_mm = 0.0;
  for (int layer = 1; layer <= beads.layers; ++layer) {
    const double area_mm2 = 0.5 * layer * (layer + 1) * beads.bead_area_mm2;
    // gap y + slope y2 = area; this form of the root has no cancellation at a wide gap.
    const double top_mm =
        2.0 * area_mm2 /
        (beads.gap_mm + std::sqrt(beads.gap_mm * beads.gap_mm + 4.0 * slope * area_mm2));
    heights_mm.push_back(top_mm - below_mm);
    below_mm = top_mm;
  }
  return heights_mm;
}

}  // namespace seamturn::pass
