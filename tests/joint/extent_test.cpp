// SPDX-License-Identifier: MIT
// Lengths of metal from a weld into its parts, by hand.
#include "seamturn/joint/extent.hpp"

#include <numbers>

#include "oracle.hpp"

namespace seamturn::tests {

using base::Angle;
using geom::Vec3;
using joint::Member;

namespace {

constexpr double pi = std::numbers::pi;

Member member(joint::Shape shape, const geom::Pose& pose = {}) {
  Member out;
  out.id = "part";
  out.shape = std::move(shape);
  out.X_JM = pose;
  return out;
}

void check_mm(const Member& part, const Vec3& from, const Vec3& way, double expected_mm) {
  std::ostringstream text;
  text << joint::shape_name(part.shape) << " from " << from.transpose() << " along "
       << way.transpose();
  check_expected(text.str(),
                 joint::extent_mm(part, from, way),
                 {expected_mm, 1e-9, Origin::closed_form, "geometry of the solid"});
}

}  // namespace

TEST_SUITE("joint/extent") {
  TEST_CASE("given a plate, the metal reaches to the edge the way leads to") {
    const Member plate = member(joint::Plate{400, 300, 25});
    check_mm(plate, Vec3(200, 120, 25), Vec3::UnitY(), 180.0);
    check_mm(plate, Vec3(200, 120, 25), -Vec3::UnitY(), 120.0);
    check_mm(plate, Vec3(370, 120, 25), Vec3::UnitX(), 30.0);
    const double c = std::sqrt(0.5);
    check_mm(plate, Vec3(350, 100, 25), Vec3(c, c, 0), 50.0 / c);  // the near edge counts
    check_mm(plate, Vec3(200, 280, 25), Vec3(-c, c, 0), 20.0 / c);
  }

  TEST_CASE("given a weld a gap off the edge, all of the plate lies on one side and none beyond") {
    const Member plate = member(joint::Plate{400, 300, 25});
    check_mm(plate, Vec3(200, -1.5, 25), Vec3::UnitY(), 300.0);
    check_mm(plate, Vec3(200, -1.5, 25), -Vec3::UnitY(), 0.0);
    check_mm(plate, Vec3(200, 302.0, 25), -Vec3::UnitY(), 300.0);
    check_mm(plate, Vec3(200, 302.0, 25), Vec3::UnitY(), 0.0);
  }

  TEST_CASE("given a tube, the metal reaches to its ends and half the way round") {
    const Member tube = member(joint::Tube{200, 10, 500});
    check_mm(tube, Vec3(100, 0, 120), Vec3::UnitZ(), 380.0);
    check_mm(tube, Vec3(100, 0, 120), -Vec3::UnitZ(), 120.0);
    check_mm(tube, Vec3(100, 0, -2), Vec3::UnitZ(), 500.0);
    check_mm(tube, Vec3(100, 0, 120), Vec3::UnitY(), pi * 100.0);
    check_mm(tube, Vec3(100, 0, 120), -Vec3::UnitY(), pi * 100.0);
  }

  TEST_CASE("given a bar and a forging, the metal reaches along the axis") {
    const Member bar = member(joint::Bar{joint::BarShape::flat, 60, 20, 300});
    check_mm(bar, Vec3(30, 0, 100), Vec3::UnitZ(), 200.0);
    check_mm(bar, Vec3(30, 0, 100), -Vec3::UnitZ(), 100.0);
    const Member forging = member(joint::Forging{{{80, 120, 120}, {50, 90, 70}}, 40});
    check_mm(forging, Vec3(60, 0, 30), Vec3::UnitZ(), 100.0);
    check_mm(forging, Vec3(60, 0, 30), -Vec3::UnitZ(), 30.0);
    check_mm(forging, Vec3(60, 0, 30), Vec3::UnitY(), pi * 60.0);
  }

  TEST_CASE("given a ring, a straight way ends at the outer edge or at the hole") {
    const Member ring = member(joint::Ring{400, 200, 20});
    check_mm(ring, Vec3(150, 0, 20), Vec3::UnitX(), 50.0);
    check_mm(ring, Vec3(150, 0, 20), -Vec3::UnitX(), 50.0);
    // Across the radius: half the chord, sqrt(200^2 - 150^2).
    check_mm(ring, Vec3(150, 0, 20), Vec3::UnitY(), std::sqrt(17500.0));
    // Inward past the hole: at 45 deg from 150 mm the line passes the centre at 106 mm, above 100.
    const double c = std::sqrt(0.5);
    check_mm(ring, Vec3(150, 0, 20), Vec3(-c, c, 0), 150.0 * c + std::sqrt(40000.0 - 11250.0));
    // At 30 deg it passes at 75 mm and meets the hole.
    const double s30 = 0.5;
    const double c30 = std::sqrt(0.75);
    check_mm(ring, Vec3(150, 0, 20), Vec3(-c30, s30, 0), 150.0 * c30 - std::sqrt(10000.0 - 5625.0));
    check_mm(ring, Vec3(0, 201, 20), -Vec3::UnitY(), 100.0);
    check_mm(ring, Vec3(0, 201, 20), Vec3::UnitY(), 0.0);
    check_mm(ring, Vec3(0, 99, 20), -Vec3::UnitY(), 0.0);
    check_mm(member(joint::Ring{400, 0, 20}), Vec3(150, 0, 20), -Vec3::UnitX(), 350.0);
  }

  TEST_CASE("given a part put elsewhere, law: its extents move with it") {
    const geom::Pose pose{geom::rotation_about(Vec3(1, 2, 3), Angle::deg(40.0)), Vec3(9, 8, 7)};
    const Member plate = member(joint::Plate{400, 300, 25}, pose);
    check_mm(plate, pose.point(Vec3(200, 120, 25)), pose.direction(Vec3::UnitY()), 180.0);
    const Member ring = member(joint::Ring{400, 200, 20}, pose);
    check_mm(ring, pose.point(Vec3(150, 0, 20)), pose.direction(-Vec3::UnitX()), 50.0);
  }

  TEST_CASE("given a seam, the way across it lies in the wall, and none where it runs through it") {
    const Member plate = member(joint::Plate{400, 300, 25});
    CHECK((joint::across_wall(plate, Vec3(200, 120, 25), Vec3::UnitX()) - Vec3::UnitY()).norm() <
          1e-12);
    CHECK(joint::across_wall(plate, Vec3(0, 120, 10), Vec3::UnitZ()).norm() == 0.0);
    const Member tube = member(joint::Tube{200, 10, 500});
    const Vec3 round = joint::across_wall(tube, Vec3(0, 100, 0), -Vec3::UnitX());
    CHECK((round - Vec3::UnitZ()).norm() < 1e-12);
    const Vec3 along = joint::across_wall(tube, Vec3(0, 100, 50), Vec3::UnitZ());
    CHECK(std::abs(along.dot(Vec3::UnitX())) > 1.0 - 1e-12);
  }
}

}  // namespace seamturn::tests
