// SPDX-License-Identifier: MIT
#include "seamturn/reach/torch_body.hpp"

#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using geom::Vec3;
using reach::body_direction;
using reach::TorchPose;

namespace {

/// Straight down on the origin, welding along +x.
TorchPose upright() {
  return {Vec3::Zero(), -Vec3::UnitZ(), Vec3::UnitX()};
}

void check_vec(const Vec3& got, const Vec3& expected) {
  INFO("got " << got.transpose() << ", expected " << expected.transpose());
  CHECK((got - expected).norm() < 1e-9);
}

}  // namespace

TEST_SUITE("reach/torch_body") {
  TEST_CASE(
      "given an upright torch, headings are counted from behind, right-handed about the wire") {
    // closed-form: the torch points down, so right-handed about it is clockwise seen from above:
    // from behind (-x) by 90 deg to +y.
    const Angle square = Angle::deg(90.0);
    check_vec(body_direction(upright(), square, Angle()), -Vec3::UnitX());
    check_vec(body_direction(upright(), square, Angle::deg(90.0)), Vec3::UnitY());
    check_vec(body_direction(upright(), square, Angle::deg(180.0)), Vec3::UnitX());
    check_vec(body_direction(upright(), square, Angle::deg(-90.0)), -Vec3::UnitY());
    check_vec(body_direction(upright(), Angle(), Angle::deg(77.0)), Vec3::UnitZ());
    check_vec(body_direction(upright(), Angle::deg(30.0), Angle()),
              Vec3(-0.5, 0.0, std::sqrt(3.0) / 2.0));
  }

  TEST_CASE(
      "for any torch, law: the body is bent from the wire by its angle, behind at heading 0") {
    base::Random random(11);
    for (int i = 0; i < 500; ++i) {
      const auto any = [&] {
        return Vec3(random.between(-1, 1), random.between(-1, 1), random.between(-1, 1));
      };
      TorchPose pose{any(), geom::unit(any() + Vec3(0, 0, 3)), Vec3::Zero()};
      pose.travel = geom::unit(pose.torch.cross(geom::any_normal_to(pose.torch) + 0.1 * any()));
      const Angle bend = Angle::deg(random.between(1.0, 90.0));
      const Angle heading = Angle::deg(random.between(-180.0, 180.0));
      const Vec3 body = body_direction(pose, bend, heading);
      CHECK(geom::angle_between(body, -pose.torch).deg() == doctest::Approx(bend.deg()));
      CHECK(body_direction(pose, bend, Angle()).dot(pose.travel) < 0.0);
      // Turned about the torch by the heading: the same turn of the whole torch.
      check_vec(geom::rotation_about(pose.torch, heading) * body_direction(pose, bend, Angle()),
                body);
    }
  }

  TEST_CASE("given a torch, its balls follow the wire to the bend and the body to its end") {
    cell::Torch torch;
    torch.nozzle_diameter_mm = 18.0;
    const cell::TorchBody body{100.0, Angle::deg(45.0), 200.0, 50.0};
    const auto balls = reach::torch_balls(upright(), torch, body, Angle(), 30.0);
    check_vec(balls.front().centre, Vec3(0, 0, 30));
    const Vec3 end = Vec3(0, 0, 100) + 200.0 * Vec3(-1, 0, 1).normalized();
    check_vec(balls.back().centre, end);
    CHECK(balls.back().radius_mm == 25.0);
    const Vec3 bend(0, 0, 100);
    for (std::size_t i = 0; i < balls.size(); ++i) {
      const Vec3 off = balls[i].centre - bend;
      const bool on_body = off.x() < -1e-9;
      const bool is_wide = on_body && off.norm() > 25.0 + 1e-9;
      if (std::abs(off.norm() - 25.0) > 1e-6) CHECK(balls[i].radius_mm == (is_wide ? 25.0 : 9.0));
      if (i == 0) continue;
      // Two balls of radius r, 2/5 r apart: the waist between them is 0.98 r wide.
      const double apart = (balls[i].centre - balls[i - 1].centre).norm();
      CHECK(apart <= 0.4 * balls[i].radius_mm + 1e-9);
    }
    // A tip that reaches out of the joint only behind the bend leaves the body alone.
    for (const auto& ball : reach::torch_balls(upright(), torch, body, Angle(), 120.0)) {
      CHECK((ball.centre.x() < 0.0 || (ball.centre - bend).norm() < 1e-9));
    }
  }
}

}  // namespace seamturn::tests
