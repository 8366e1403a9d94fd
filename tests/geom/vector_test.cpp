// SPDX-License-Identifier: MIT
#include "seamturn/geom/vector.hpp"

#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Random;
using geom::Mat3;
using geom::Pose;
using geom::Vec3;

namespace {

Vec3 random_vector(Random& random) {
  return Vec3(random.between(-9, 9), random.between(-9, 9), random.between(0.1, 9));
}
Pose random_pose(Random& random) {
  return Pose{geom::rotation_about(random_vector(random), Angle::deg(random.between(-180, 180))),
              random_vector(random)};
}

}  // namespace

TEST_SUITE("geom/vector") {
  TEST_CASE("given a quarter turn about z, x goes to y") {
    const Mat3 quarter = geom::rotation_about(Vec3(0, 0, 7), Angle::deg(90.0));
    CHECK((quarter * Vec3::UnitX() - Vec3::UnitY()).norm() < 1e-15);
    CHECK((quarter * Vec3::UnitZ() - Vec3::UnitZ()).norm() < 1e-15);
  }

  TEST_CASE("for any axis and angle, law: a rotation keeps its axis, lengths and handedness") {
    Random random(base::named_seed(19, "rotation"));
    for (int i = 0; i < 500; ++i) {
      const Vec3 axis = random_vector(random);
      const Angle angle = Angle::deg(random.between(-180, 180));
      const Mat3 turn = geom::rotation_about(axis, angle);
      INFO("seed 19, case " << i);
      CHECK((turn * axis - axis).norm() < 1e-13);
      CHECK((turn.transpose() * turn - Mat3::Identity()).norm() < 1e-14);
      CHECK(turn.determinant() == doctest::Approx(1.0));
      const Vec3 across = geom::any_normal_to(axis);
      CHECK(std::abs((geom::signed_angle(axis, across, turn * across) - angle).deg()) < 1e-9);
    }
  }

  TEST_CASE("for any poses, law: they chain, undo and carry points as matrices do") {
    Random random(base::named_seed(19, "poses"));
    for (int i = 0; i < 500; ++i) {
      const Pose X_AB = random_pose(random), X_BC = random_pose(random);
      const Vec3 p = random_vector(random);
      INFO("seed 19, case " << i);
      CHECK(((X_AB * X_BC).point(p) - X_AB.point(X_BC.point(p))).norm() < 1e-12);
      CHECK((geom::inverse(X_AB).point(X_AB.point(p)) - p).norm() < 1e-12);
      CHECK(((X_AB * X_BC).direction(p) - X_AB.direction(X_BC.direction(p))).norm() < 1e-12);
    }
  }

  TEST_CASE("given directions almost along each other, their angle is still told") {
    // closed-form: atan of the offset; an arc cosine would lose it.
    const Vec3 near(1.0, 1e-9, 0.0);
    CHECK(geom::angle_between(Vec3::UnitX(), near).rad() == doctest::Approx(1e-9));
    CHECK(geom::angle_between(-Vec3::UnitX(), near).rad() == doctest::Approx(3.141592652589793));
    CHECK(geom::angle_between(Vec3(2, 0, 0), Vec3(0, 0, 3)).deg() == doctest::Approx(90.0));
  }

  TEST_CASE("given an axis, the angle about it is signed and ignores what lies along it") {
    const Vec3 z = Vec3::UnitZ();
    CHECK(geom::signed_angle(z, Vec3(1, 0, 5), Vec3(0, 1, -3)).deg() == doctest::Approx(90.0));
    CHECK(geom::signed_angle(z, Vec3(0, 1, 0), Vec3(1, 0, 0)).deg() == doctest::Approx(-90.0));
    CHECK(geom::signed_angle(-z, Vec3(0, 1, 0), Vec3(1, 0, 0)).deg() == doctest::Approx(90.0));
  }

  TEST_CASE("for any direction, law: the chosen normal stands across it, the same every time") {
    Random random(base::named_seed(19, "normal"));
    for (int i = 0; i < 500; ++i) {
      Vec3 v = random_vector(random);
      if (i % 5 == 0) v[i % 3] = 0.0;
      const Vec3 n = geom::any_normal_to(v);
      INFO("seed 19, case " << i);
      CHECK(std::abs(n.dot(v)) < 1e-13);
      CHECK(n.norm() == doctest::Approx(1.0));
      CHECK(n == geom::any_normal_to(v));
    }
  }

  TEST_CASE("refuses the direction of no length because it points nowhere") {
    CHECK_THROWS_AS((void)geom::unit(Vec3::Zero()), base::ContractViolation);
    CHECK_THROWS_AS((void)geom::rotation_about(Vec3::Zero(), Angle()), base::ContractViolation);
    CHECK((geom::unit(Vec3(0, 0, -4)) + Vec3::UnitZ()).norm() == 0.0);
  }
}

}  // namespace seamturn::tests
