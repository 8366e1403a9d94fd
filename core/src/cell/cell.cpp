// SPDX-License-Identifier: MIT
#include "seamturn/cell/cell.hpp"

namespace seamturn::cell {

std::string_view positioner_kind_name(PositionerKind kind) {
  switch (kind) {
    case PositionerKind::tilt_rotate:
      return "tilt-rotate";
    case PositionerKind::headstock:
      return "headstock";
  }
  return "tilt-rotate";
}

geom::Vec3 faceplate_normal_D(PositionerKind kind) {
  return kind == PositionerKind::headstock ? geom::Vec3(geom::Vec3::UnitX())
                                           : geom::Vec3(geom::Vec3::UnitZ());
}

}  // namespace seamturn::cell
