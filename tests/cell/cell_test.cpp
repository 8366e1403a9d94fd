// SPDX-License-Identifier: MIT
#include "seamturn/cell/cell.hpp"

#include "oracle.hpp"

namespace seamturn::tests {

TEST_SUITE("cell/cell") {
  TEST_CASE("given both kinds of positioner, their names are those of the cell file") {
    CHECK(positioner_kind_name(cell::PositionerKind::tilt_rotate) == "tilt-rotate");
    CHECK(positioner_kind_name(cell::PositionerKind::headstock) == "headstock");
  }
}

}  // namespace seamturn::tests
