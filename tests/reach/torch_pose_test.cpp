// SPDX-License-Identifier: MIT
#include "seamturn/reach/torch_pose.hpp"

#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using geom::Vec3;
using reach::key_poses;
using reach::torch_pose;
using reach::TorchPose;

namespace {

/// A fillet between a level plate (top z = 25) and an upright one (face y = 50), along +x.
struct FilletCase {
  joint::Joint joint;
  joint::Seam seam;
  section::WeldSection section;
  pass::Pass pass;
  FilletCase() {
    joint.preparation = joint::Fillet{6.0, 6.0};
    seam.id = "J1";
    seam.path = geom::LinePath{Vec3(10, 50, 25), Vec3(390, 50, 25)};
    seam.wall_1 = Vec3::UnitZ();
    seam.wall_2 = Vec3::UnitY();
    seam.face = Vec3(0, 1, 1).normalized();
    section.is_fillet = true;
  }
};

void check_vec(const Vec3& got, const Vec3& expected) {
  INFO("got " << got.transpose() << ", expected " << expected.transpose());
  CHECK((got - expected).norm() < 1e-9);
}

}  // namespace

TEST_SUITE("reach/torch_pose") {
  TEST_CASE("given a fillet and no angles, the torch looks into the corner along its bisector") {
    const FilletCase c;
    const TorchPose pose = torch_pose(c.joint, c.seam, c.section, c.pass, 100.0, false);
    check_vec(pose.point, Vec3(110, 50, 25));
    check_vec(pose.torch, Vec3(0, -1, -1).normalized());
    check_vec(pose.travel, Vec3::UnitX());
  }

  TEST_CASE("given a work angle of 45 deg towards the first plate, the torch lies along it") {
    // closed-form: x points to the first plate's toe, so 45 deg from the bisector is that plate.
    FilletCase c;
    c.pass.work_angle = Angle::deg(45.0);
    check_vec(torch_pose(c.joint, c.seam, c.section, c.pass, 0.0, false).torch, -Vec3::UnitY());
    c.pass.work_angle = Angle::deg(-45.0);
    check_vec(torch_pose(c.joint, c.seam, c.section, c.pass, 0.0, false).torch, -Vec3::UnitZ());
  }

  TEST_CASE("given a push of 10 deg, the wire points ahead, and given a drag, behind") {
    FilletCase c;
    c.pass.push = Angle::deg(10.0);
    const double sin10 = 0.17364817766693033;
    const TorchPose push = torch_pose(c.joint, c.seam, c.section, c.pass, 0.0, false);
    CHECK(push.torch.dot(push.travel) == doctest::Approx(sin10));
    const TorchPose back = torch_pose(c.joint, c.seam, c.section, c.pass, 0.0, true);
    CHECK(back.torch.dot(back.travel) == doctest::Approx(sin10));
    check_vec(back.travel, -Vec3::UnitX());
    c.pass.push = Angle::deg(-10.0);
    const TorchPose drag = torch_pose(c.joint, c.seam, c.section, c.pass, 0.0, false);
    CHECK(drag.torch.dot(drag.travel) == doctest::Approx(-sin10));
  }

  TEST_CASE("given an aim off the root, the wire points there in the section") {
    // closed-form: 2 mm towards the first plate's toe and 3 mm out along the bisector.
    FilletCase c;
    c.pass.aim = section::Point{2.0, 3.0};
    const double half = std::sqrt(0.5);
    check_vec(torch_pose(c.joint, c.seam, c.section, c.pass, 0.0, false).point,
              Vec3(10.0, 50.0 + 5.0 * half, 25.0 + 1.0 * half));
    // The section stays where it is when travelled from the other end.
    check_vec(torch_pose(c.joint, c.seam, c.section, c.pass, 0.0, true).point,
              Vec3(10.0, 50.0 + 5.0 * half, 25.0 + 1.0 * half));
  }

  TEST_CASE("given a butt whose path runs on the surface, the root lies a depth below it") {
    FilletCase c;
    c.joint.type = joint::JointType::butt;
    c.joint.preparation = joint::single_v({2.0, 1.0}, Angle::deg(60.0));
    c.seam.wall_1 = c.seam.wall_2 = c.seam.face = Vec3::UnitZ();
    c.section.is_fillet = false;
    c.section.seam_line_y_mm = 12.0;
    c.pass.aim = section::Point{0.5, 1.0};
    const TorchPose pose = torch_pose(c.joint, c.seam, c.section, c.pass, 0.0, false);
    check_vec(pose.point, Vec3(10.0, 50.5, 25.0 - 11.0));
    check_vec(pose.torch, -Vec3::UnitZ());
  }

  TEST_CASE("given a groove in a tee, the torch comes square to the second member") {
    FilletCase c;
    c.joint.preparation = joint::single_bevel({2.0, 2.0}, Angle::deg(50.0));
    c.section.seam_line_y_mm = 15.0;
    c.pass.aim = section::Point{1.0, 0.0};
    c.pass.work_angle = Angle::deg(30.0);
    const TorchPose pose = torch_pose(c.joint, c.seam, c.section, c.pass, 0.0, false);
    check_vec(pose.point, Vec3(10.0, 50.0 - 15.0, 26.0));
    check_vec(pose.torch, Vec3(0.0, -std::sqrt(0.75), -0.5));
  }

  TEST_CASE("for any angles, law: the torch is a unit direction at the push angle to the travel") {
    base::Random random(base::named_seed(17, "angles"));
    FilletCase c;
    for (int i = 0; i < 500; ++i) {
      c.pass.work_angle = Angle::deg(random.between(-60.0, 60.0));
      c.pass.push = Angle::deg(random.between(-25.0, 25.0));
      const TorchPose pose =
          torch_pose(c.joint, c.seam, c.section, c.pass, random.between(0.0, 380.0), i % 2 == 0);
      INFO("seed 17, case " << i);
      CHECK(std::abs(pose.torch.norm() - 1.0) < 1e-12);
      const Angle ahead = geom::angle_between(pose.torch, pose.travel);
      CHECK(std::abs((ahead + c.pass.push).deg() - 90.0) < 1e-9);
      const Angle off =
          geom::angle_between(pose.torch - pose.torch.dot(pose.travel) * pose.travel, -c.seam.face);
      CHECK(std::abs(off.deg() - std::abs(c.pass.work_angle.deg())) < 1e-9);
    }
  }

  TEST_CASE("given a line, its key points are its ends in the order of travel") {
    const FilletCase c;
    const auto there = key_poses(c.joint, c.seam, c.section, c.pass, {});
    REQUIRE(there.size() == 2);
    check_vec(there[0].point, Vec3(10, 50, 25));
    check_vec(there[1].point, Vec3(390, 50, 25));
    const auto back = key_poses(c.joint, c.seam, c.section, c.pass, {true, 0.0});
    check_vec(back[0].point, Vec3(390, 50, 25));
    check_vec(back[1].point, Vec3(10, 50, 25));
  }

  TEST_CASE("given a ring seam, key points stand every 30 deg and the last is the first") {
    FilletCase c;
    c.seam.path = geom::CirclePath{Vec3(0, 0, 25), Vec3::UnitZ(), Vec3::UnitX(), 100.0};
    c.seam.wall_2 = Vec3::UnitX();
    c.seam.face = Vec3(1, 0, 1).normalized();
    const auto poses = key_poses(c.joint, c.seam, c.section, c.pass, {});
    REQUIRE(poses.size() == 13);
    check_vec(poses[3].point, Vec3(0, 100, 25));
    check_vec(poses[3].torch, Vec3(0, -1, -1).normalized());
    check_vec(poses[3].travel, -Vec3::UnitX());
    CHECK(poses.front().point == poses.back().point);
    CHECK(key_poses(c.joint, c.seam, c.section, c.pass, {}, Angle::deg(50.0)).size() == 9);
  }

  TEST_CASE("refuses a seam without a path and a ring travelled backwards") {
    FilletCase c;
    c.seam.path = geom::CirclePath{Vec3(0, 0, 25), Vec3::UnitZ(), Vec3::UnitX(), 100.0};
    CHECK_THROWS_AS((void)torch_pose(c.joint, c.seam, c.section, c.pass, 0.0, true),
                    base::ContractViolation);
    c.seam.path.reset();
    CHECK_THROWS_AS((void)torch_pose(c.joint, c.seam, c.section, c.pass, 0.0, false),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)key_poses(c.joint, c.seam, c.section, c.pass, {}),
                    base::ContractViolation);
  }

  TEST_CASE("given two stretches, the arc is struck and put out at each, in the order of travel") {
    FilletCase c;
    c.seam.welded.stretches = {{0.0, 40.0}, {100.0, 140.0}};
    const auto there = key_poses(c.joint, c.seam, c.section, c.pass, {});
    REQUIRE(there.size() == 4);
    check_vec(there[1].point, Vec3(50, 50, 25));
    check_vec(there[2].point, Vec3(110, 50, 25));
    CHECK(there[0].arc == reach::Arc::on);
    CHECK(there[1].arc == reach::Arc::off);
    CHECK(there[2].arc == reach::Arc::on);
    const auto back = key_poses(c.joint, c.seam, c.section, c.pass, {true, 0.0});
    check_vec(back[0].point, Vec3(150, 50, 25));
    check_vec(back[3].point, Vec3(10, 50, 25));
    CHECK(back[0].arc == reach::Arc::on);
    CHECK(back[3].arc == reach::Arc::off);
  }

  TEST_CASE("given tabs, the points lie beyond the ends of the seam") {
    FilletCase c;
    c.seam.welded.stretches = {{-30.0, 420.0}};
    const auto poses = key_poses(c.joint, c.seam, c.section, c.pass, {});
    check_vec(poses.front().point, Vec3(-20, 50, 25));
    check_vec(poses.back().point, Vec3(430, 50, 25));
  }

  TEST_CASE("given a bead beside the corner's line, its courses meet where they cross") {
    // Round the outside of a post; the wire points 3 mm out along the floor from both sides.
    FilletCase c;
    c.seam.path = geom::PolylinePath{{Vec3(0, 0, 25), Vec3(60, 0, 25), Vec3(60, 40, 25)}, false};
    c.seam.wall_2 = -Vec3::UnitY();
    c.seam.face = Vec3(0, -1, 1).normalized();
    c.pass.aim = {3.0 / std::sqrt(2.0), 3.0 / std::sqrt(2.0)};
    const auto poses = key_poses(c.joint, c.seam, c.section, c.pass, {});
    REQUIRE(poses.size() == 4);
    check_vec(poses[0].point, Vec3(0, -3, 25));
    check_vec(poses[1].point, Vec3(63, -3, 25));
    check_vec(poses[2].point, Vec3(63, -3, 25));
    check_vec(poses[3].point, Vec3(63, 40, 25));
    check_vec(poses[1].torch, Vec3(0, 1, -1).normalized());
    check_vec(poses[2].torch, Vec3(-1, 0, -1).normalized());
    check_vec(poses[2].travel, Vec3::UnitY());
    const auto back = key_poses(c.joint, c.seam, c.section, c.pass, {true, 0.0});
    check_vec(back[1].travel, -Vec3::UnitY());
    check_vec(back[2].travel, -Vec3::UnitX());
  }

  TEST_CASE("given a ring started a quarter round with an overlap, the points run on past it") {
    FilletCase c;
    c.seam.path = geom::CirclePath{Vec3(0, 0, 25), Vec3::UnitZ(), Vec3::UnitX(), 100.0};
    c.seam.wall_2 = Vec3::UnitX();
    c.seam.face = Vec3(1, 0, 1).normalized();
    const double round = geom::path_length_mm(*c.seam.path);
    c.seam.welded.stretches = {{0.0, round * 13.0 / 12.0}};
    const auto poses = key_poses(c.joint, c.seam, c.section, c.pass, {false, round / 4.0});
    REQUIRE(poses.size() == 14);
    check_vec(poses.front().point, Vec3(0, 100, 25));
    check_vec(poses.back().point, Vec3(-50, 50 * std::sqrt(3.0), 25));
  }
}

}  // namespace seamturn::tests
