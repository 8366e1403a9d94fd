// SPDX-License-Identifier: MIT
#include "seamturn/cell/cell.hpp"

#include "oracle.hpp"

namespace seamturn::tests {

TEST_SUITE("cell/cell") {
  TEST_CASE("given both kinds of positioner, their names are those of the cell file") {
    CHECK(positioner_kind_name(cell::PositionerKind::tilt_rotate) == "tilt-rotate");
    CHECK(positioner_kind_name(cell::PositionerKind::headstock) == "headstock");
  }

  TEST_CASE(
      "given both kinds of positioner, the faceplate looks up or along the axis, closed-form") {
    CHECK(cell::faceplate_normal_D(cell::PositionerKind::tilt_rotate) == geom::Vec3(0.0, 0.0, 1.0));
    CHECK(cell::faceplate_normal_D(cell::PositionerKind::headstock) == geom::Vec3(1.0, 0.0, 0.0));
  }
}

}  // namespace seamturn::tests
