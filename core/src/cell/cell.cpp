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

}  // namespace seamturn::cell
