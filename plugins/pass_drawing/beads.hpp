// SPDX-License-Identifier: MIT
// Shapes of beads: schematic, but each of the area planned. A layer is a band of the weld; in it a
// bead is bounded by round flanks, and a bead laid later lies over the flank of the one before.
#pragma once

#include <string>
#include <vector>

#include "pass_drawing/fill_map.hpp"

namespace seamturn::pass_drawing {

struct PassData {
  int number = 0;
  int layer = 0;
  int bead = 0;
  std::string role;
  double area_mm2 = 0.0;
  Point centre;
  Point aim;
  double work_angle_deg = 0.0;
};

struct BeadShape {
  int number = 0;
  int layer = 0;
  std::string role;
  std::vector<Polygon> parts;  ///< anticlockwise; the first is the bead, others lie behind a root
  Point middle;
};

/// In the order laid. Where passes hold more than the outline all are drawn smaller alike; where
/// they hold less, the rest stays empty.
[[nodiscard]] std::vector<BeadShape> bead_shapes(const FillMap& map,
                                                 const std::vector<PassData>& passes);

}  // namespace seamturn::pass_drawing
