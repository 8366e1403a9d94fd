// SPDX-License-Identifier: MIT
#include "seamturn/cell/cell.hpp"

#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using base::Angle;
using cell::PositionerKind;
using geom::Vec3;

namespace {

cell::Positioner positioner_of(PositionerKind kind, std::size_t axes) {
  cell::Positioner positioner;
  positioner.kind = kind;
  positioner.tilt_centre = Vec3(10.0, 20.0, 900.0);
  positioner.overhang_mm = 150.0;
  positioner.between = Angle::deg(45.0);
  positioner.exchange_centre = Vec3(-2000.0, 0.0, 0.0);
  positioner.axes.resize(axes);
  return positioner;
}

}  // namespace

TEST_SUITE("cell/cell") {
  TEST_CASE("given every kind of positioner, their names are those of the cell file") {
    CHECK(positioner_kind_name(PositionerKind::tilt_rotate) == "tilt-rotate");
    CHECK(positioner_kind_name(PositionerKind::headstock) == "headstock");
    CHECK(positioner_kind_name(PositionerKind::inclined) == "inclined");
    CHECK(positioner_kind_name(PositionerKind::roll_arm) == "roll-arm");
    CHECK(positioner_kind_name(PositionerKind::station_changer) == "station-changer");
  }

  TEST_CASE(
      "given every kind of positioner, the faceplate looks up or along the axis, closed-form") {
    CHECK(cell::faceplate_normal_D(PositionerKind::tilt_rotate) == Vec3(0.0, 0.0, 1.0));
    CHECK(cell::faceplate_normal_D(PositionerKind::headstock) == Vec3(1.0, 0.0, 0.0));
    CHECK(cell::faceplate_normal_D(PositionerKind::inclined) == Vec3(0.0, 0.0, 1.0));
    CHECK(cell::faceplate_normal_D(PositionerKind::roll_arm) == Vec3(0.0, 0.0, 1.0));
    CHECK(cell::faceplate_normal_D(PositionerKind::station_changer) == Vec3(1.0, 0.0, 0.0));
  }

  TEST_CASE("given a kind, its axes stand where the page says, closed-form") {
    struct Row {
      PositionerKind kind;
      std::size_t axes;
      Vec3 first, last;
    };
    const double s = std::sqrt(0.5);
    const Row rows[] = {{PositionerKind::tilt_rotate, 2, Vec3(0, 1, 0), Vec3(0, 0, 1)},
                        {PositionerKind::headstock, 1, Vec3(1, 0, 0), Vec3(1, 0, 0)},
                        {PositionerKind::inclined, 2, Vec3(0, 1, 0), Vec3(0, s, s)},
                        {PositionerKind::roll_arm, 2, Vec3(1, 0, 0), Vec3(0, 0, 1)},
                        {PositionerKind::station_changer, 2, Vec3(0, 0, 1), Vec3(1, 0, 0)}};
    for (const Row& row : rows) {
      CAPTURE(std::string(positioner_kind_name(row.kind)));
      const cell::Positioner positioner = positioner_of(row.kind, row.axes);
      CHECK((cell::axis_line(positioner, 0).along - row.first).norm() < 1e-12);
      const cell::AxisLine last = cell::axis_line(positioner, row.axes - 1);
      CHECK((last.along - row.last).norm() < 1e-12);
      CHECK(last.at == positioner.tilt_centre);
      // The faceplate looks along the last axis, 150 mm from its point.
      const geom::Pose zero = cell::faceplate_at_zero(positioner);
      CHECK((zero.direction(cell::faceplate_normal_D(row.kind)) - row.last).norm() < 1e-12);
      CHECK((zero.translation - positioner.tilt_centre - 150.0 * row.last).norm() < 1e-9);
      CHECK(std::abs(zero.rotation.determinant() - 1.0) < 1e-12);
      CHECK(cell::is_exchange(positioner, 0) == (row.kind == PositionerKind::station_changer));
      CHECK_FALSE(cell::is_exchange(positioner, row.axes));
    }
    const cell::Positioner changer = positioner_of(PositionerKind::station_changer, 2);
    CHECK(cell::axis_line(changer, 0).at == changer.exchange_centre);
    CHECK_THROWS_AS((void)cell::axis_line(changer, 2), base::ContractViolation);
    CHECK_THROWS_AS((void)cell::faceplate_at_zero(cell::Positioner{}), base::ContractViolation);
  }

  TEST_CASE("given an axis that states its line, that counts, and the faceplate goes with it") {
    cell::Positioner positioner = positioner_of(PositionerKind::tilt_rotate, 2);
    positioner.axes[1].line = cell::AxisLine{Vec3(0.6, 0.0, 0.8), Vec3(5.0, 6.0, 700.0)};
    CHECK(cell::axis_line(positioner, 0).along == Vec3(0, 1, 0));
    CHECK(cell::axis_line(positioner, 1).at == Vec3(5.0, 6.0, 700.0));
    const geom::Pose zero = cell::faceplate_at_zero(positioner);
    CHECK((zero.direction(Vec3::UnitZ()) - Vec3(0.6, 0.0, 0.8)).norm() < 1e-12);
    // By the least turn: what lies across both directions stays.
    CHECK((zero.direction(Vec3::UnitY()) - Vec3::UnitY()).norm() < 1e-12);
    CHECK((zero.translation - Vec3(95.0, 6.0, 820.0)).norm() < 1e-9);
    // Upside down: still a rotation.
    positioner.axes[1].line = cell::AxisLine{Vec3(0.0, 0.0, -1.0), Vec3::Zero()};
    const geom::Pose hanging = cell::faceplate_at_zero(positioner);
    CHECK((hanging.direction(Vec3::UnitZ()) + Vec3::UnitZ()).norm() < 1e-12);
    CHECK(std::abs(hanging.rotation.determinant() - 1.0) < 1e-12);
  }
}

}  // namespace seamturn::tests
