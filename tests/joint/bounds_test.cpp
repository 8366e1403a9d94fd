// SPDX-License-Identifier: MIT
#include "seamturn/joint/bounds.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "oracle.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/joint/inside.hpp"

namespace seamturn::tests {

using base::Angle;
using geom::Vec3;
using joint::BarShape;

namespace {

struct Known {
  const char* name;
  joint::Shape shape;
  Vec3 low, high;
  double radius_mm;  // of the ball
};

std::vector<Known> known_shapes() {
  const double corner = 60.0 / std::sqrt(3.0);  // of a hexagon 60 across flats
  return {
      {"plate",
       joint::Plate{400, 300, 24},
       {0, 0, 0},
       {400, 300, 24},
       std::sqrt(200. * 200 + 150. * 150 + 12 * 12)},
      {"tube", joint::Tube{160, 20, 120}, {-80, -80, 0}, {80, 80, 120}, 100},
      {"ring", joint::Ring{160, 100, 120}, {-80, -80, 0}, {80, 80, 120}, 100},
      {"round bar", joint::Bar{BarShape::round, 60, 60, 80}, {-30, -30, 0}, {30, 30, 80}, 50},
      {"flat bar",
       joint::Bar{BarShape::flat, 60, 20, 100},
       {-30, -10, 0},
       {30, 10, 100},
       std::sqrt(900. + 100 + 2500)},
      {"hexagon bar",
       joint::Bar{BarShape::hexagon, 60, 60, 100},
       {-30, -corner, 0},
       {30, corner, 100},
       std::hypot(corner, 50.0)},
      // Its first face, 160 across, lies 60 mm from the middle.
      {"forging",
       joint::Forging{{{20, 160, 100}, {100, 50, 40}}, 30.0},
       {-80, -80, 0},
       {80, 80, 120},
       100},
  };
}

joint::Member placed(const joint::Shape& shape, const geom::Pose& X_JM) {
  joint::Member member;
  member.shape = shape;
  member.X_JM = X_JM;
  return member;
}

geom::Pose oblique() {
  return {geom::rotation_about(Vec3(1, 2, 3), Angle::deg(40.0)), Vec3(-70, 500, 33)};
}

}  // namespace

TEST_SUITE("joint/bounds") {
  TEST_CASE("given each shape, closed-form: its box and the ball round it") {
    for (const Known& known : known_shapes()) {
      INFO(known.name);
      const joint::Box box = joint::box_of(known.shape);
      CHECK((box.low - known.low).norm() < 1e-9);
      CHECK((box.high - known.high).norm() < 1e-9);
      const joint::Ball ball = joint::ball_round(placed(known.shape, oblique()));
      CHECK((ball.centre - oblique().point((known.low + known.high) / 2.0)).norm() < 1e-9);
      CHECK(ball.radius_mm == doctest::Approx(known.radius_mm).epsilon(1e-12));
    }
  }

  TEST_CASE("given directions, closed-form: the lowest point") {
    const Vec3 aslant = Vec3(1, 0, 1).normalized();
    const double half = std::sqrt(0.5);
    const auto lowest = [](const joint::Shape& shape, const Vec3& up) {
      return joint::lowest_mm(placed(shape, {}), up);
    };
    CHECK(lowest(joint::Plate{400, 300, 24}, -aslant) == doctest::Approx(-424.0 * half));
    CHECK(lowest(joint::Tube{160, 20, 120}, aslant) == doctest::Approx(-80.0 * half));
    CHECK(lowest(joint::Tube{160, 20, 120}, -aslant) == doctest::Approx(-200.0 * half));
    // A hexagon on a flat and on a corner.
    const joint::Bar hexagon{BarShape::hexagon, 60, 60, 100};
    CHECK(lowest(hexagon, Vec3::UnitX()) == doctest::Approx(-30.0));
    CHECK(lowest(hexagon, Vec3::UnitY()) == doctest::Approx(-60.0 / std::sqrt(3.0)));
    // A cone's frustum aslant: the wide foot, or the narrow head.
    const joint::Forging cone{{{40, 100, 20}}, 0.0};
    CHECK(lowest(cone, aslant) == doctest::Approx(-50.0 * half));
    const joint::Forging blunt{{{40, 100, 60}}, 0.0};
    CHECK(lowest(blunt, -aslant) == doctest::Approx(-70.0 * half));
    CHECK(lowest(cone, Vec3(0, 0, -1)) == doctest::Approx(-40.0));
    const joint::Member shifted = placed(joint::Plate{400, 300, 24}, oblique());
    const Vec3 up = oblique().rotation * Vec3::UnitY();
    CHECK(joint::lowest_mm(shifted, up) == doctest::Approx(oblique().translation.dot(up)));
  }

  TEST_CASE("given random points of each shape, law: all lie within, and some near the border") {
    base::Random random(base::named_seed(5, "bounds"));
    for (const Known& known : known_shapes()) {
      INFO(known.name);
      const joint::Member member = placed(known.shape, oblique());
      const joint::Ball ball = joint::ball_round(member);
      const Vec3 up = Vec3(0.3, -0.8, 0.5).normalized();
      const double bound_mm = joint::lowest_mm(member, up);
      double lowest_mm = std::numeric_limits<double>::infinity();
      double farthest_mm = 0.0;
      Vec3 low = Vec3::Constant(lowest_mm), high = -low;
      for (int i = 0; i < 40000; ++i) {
        const Vec3 p_M(random.between(known.low.x() - 5.0, known.high.x() + 5.0),
                       random.between(known.low.y() - 5.0, known.high.y() + 5.0),
                       random.between(known.low.z() - 5.0, known.high.z() + 5.0));
        const Vec3 p = oblique().point(p_M);
        if (!joint::is_inside(member, p)) continue;
        lowest_mm = std::min(lowest_mm, p.dot(up));
        farthest_mm = std::max(farthest_mm, (p - ball.centre).norm());
        low = low.cwiseMin(p_M), high = high.cwiseMax(p_M);
      }
      const double near_mm = 0.1 * ball.radius_mm;  // so near the 40000 points come
      CHECK(lowest_mm >= bound_mm - 1e-9);
      CHECK(lowest_mm <= bound_mm + near_mm);
      CHECK(farthest_mm <= ball.radius_mm + 1e-9);
      CHECK(farthest_mm >= ball.radius_mm - near_mm);
      const joint::Box box = joint::box_of(known.shape);
      CHECK((low - box.low).minCoeff() >= -1e-9);
      CHECK((box.high - high).minCoeff() >= -1e-9);
      CHECK((low - box.low).maxCoeff() <= near_mm);
      CHECK((box.high - high).maxCoeff() <= near_mm);
    }
  }
}

}  // namespace seamturn::tests
