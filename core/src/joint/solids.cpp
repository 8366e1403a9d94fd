// SPDX-License-Identifier: MIT
#include <algorithm>
#include <numbers>

#include "detail_shapes.hpp"

namespace seamturn::joint::detail {

HollowCylinder cylinder_of(const Tube& tube) {
  const double outer = tube.outer_diameter_mm / 2.0;
  return {outer, std::max(0.0, outer - tube.wall_mm), tube.length_mm};
}

HollowCylinder cylinder_of(const Bar& round) {
  return {round.width_mm / 2.0, 0.0, round.length_mm};
}

HollowCylinder cylinder_of(const Ring& ring) {
  return {ring.outer_diameter_mm / 2.0, ring.inner_diameter_mm / 2.0, ring.thickness_mm};
}

double volume_of(const Plate& plate) {
  return plate.length_mm * plate.width_mm * plate.thickness_mm;
}

double volume_of(const HollowCylinder& body) {
  const double section =
      body.outer_radius_mm * body.outer_radius_mm - body.inner_radius_mm * body.inner_radius_mm;
  return std::numbers::pi * section * body.height_mm;
}

geom::Vec3 centre_of(const Plate& plate) {
  return geom::Vec3(plate.length_mm, plate.width_mm, plate.thickness_mm) / 2.0;
}

geom::Vec3 centre_of(const HollowCylinder& body) {
  return {0.0, 0.0, body.height_mm / 2.0};
}

}  // namespace seamturn::joint::detail
