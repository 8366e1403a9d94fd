// SPDX-License-Identifier: MIT
#include "seamturn/joint/inertia.hpp"

#include <cmath>
#include <numbers>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/joint/inside.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Random;
using geom::Mat3;
using geom::Vec3;
using joint::Body;
using joint::Member;

namespace {

Member member(joint::Shape shape, const geom::Pose& pose = {}) {
  Member out;
  out.id = "m";
  out.shape = std::move(shape);
  out.X_JM = pose;
  return out;
}

joint::Forging forging() {
  joint::Forging out;
  out.steps = {{60.0, 80.0, 80.0}, {50.0, 120.0, 70.0}};
  out.bore_mm = 30.0;
  return out;
}

joint::Bar bar(joint::BarShape shape, double width, double height, double length) {
  joint::Bar out;
  out.shape = shape;
  out.width_mm = width;
  out.height_mm = height;
  out.length_mm = length;
  return out;
}

/// Cross: mass and moments summed over small cubes whose middle lies in the member.
Body summed(const Member& member, double side_mm) {
  Body sum;
  Mat3 second = Mat3::Zero();
  const double cube_kg = 7.85e-6 * side_mm * side_mm * side_mm;
  for (double x = -100.0 + side_mm / 2; x < 100.0; x += side_mm) {
    for (double y = -100.0 + side_mm / 2; y < 100.0; y += side_mm) {
      for (double z = -100.0 + side_mm / 2; z < 200.0; z += side_mm) {
        const Vec3 p(x, y, z);
        if (!joint::is_inside(member, p, 0.0)) continue;
        sum.weight.mass_kg += cube_kg;
        sum.weight.centre += cube_kg * p;
        second += cube_kg * p * p.transpose();
      }
    }
  }
  sum.weight.centre /= sum.weight.mass_kg;
  second -= sum.weight.mass_kg * sum.weight.centre * sum.weight.centre.transpose();
  sum.inertia_kg_m2 = 1e-6 * (second.trace() * Mat3::Identity() - second);
  return sum;
}

}  // namespace

TEST_SUITE("joint/inertia") {
  TEST_CASE("given box, cylinder, tube and ring, the textbook moments, closed-form") {
    // m (b^2 + c^2)/12; m r^2/2 and m (3 r^2 + h^2)/12; m (R^2 + r^2)/2.
    const Body plate = joint::body_of(member(joint::Plate{400, 300, 20}));
    const double m = 18.84;
    CHECK(plate.weight.mass_kg == doctest::Approx(m));
    CHECK((plate.weight.centre - Vec3(200, 150, 10)).norm() < 1e-9);
    CHECK(plate.inertia_kg_m2(0, 0) == doctest::Approx(m * (0.09 + 0.0004) / 12.0));
    CHECK(plate.inertia_kg_m2(1, 1) == doctest::Approx(m * (0.16 + 0.0004) / 12.0));
    CHECK(plate.inertia_kg_m2(2, 2) == doctest::Approx(m * (0.16 + 0.09) / 12.0));
    const Body round = joint::body_of(member(bar(joint::BarShape::round, 100, 100, 600)));
    const double rod_kg = round.weight.mass_kg;
    CHECK(rod_kg == doctest::Approx(7.85e-6 * std::numbers::pi * 2500.0 * 600.0));
    CHECK(round.inertia_kg_m2(2, 2) == doctest::Approx(rod_kg * 0.0025 / 2.0));
    CHECK(round.inertia_kg_m2(0, 0) == doctest::Approx(rod_kg * (3 * 0.0025 + 0.36) / 12.0));
    const Body tube = joint::body_of(member(joint::Tube{200, 20, 500}));
    CHECK(tube.inertia_kg_m2(2, 2) == doctest::Approx(tube.weight.mass_kg * (0.01 + 0.0064) / 2.0));
    CHECK(tube.inertia_kg_m2(1, 1) ==
          doctest::Approx(tube.weight.mass_kg * (3 * (0.01 + 0.0064) + 0.25) / 12.0));
    const Body ring = joint::body_of(member(joint::Ring{300, 100, 30}));
    CHECK(ring.inertia_kg_m2(2, 2) ==
          doctest::Approx(ring.weight.mass_kg * (0.0225 + 0.0025) / 2.0));
  }

  TEST_CASE("given a cone's frustum and a hexagon, the textbook moments, closed-form") {
    // Frustum about its axis: 3 m (R^5 - r^5) / (10 (R^3 - r^3)).
    joint::Forging cone;
    cone.steps = {{90.0, 120.0, 60.0}};
    const Body body = joint::body_of(member(cone));
    const double fifths = std::pow(0.06, 5) - std::pow(0.03, 5);
    const double thirds = std::pow(0.06, 3) - std::pow(0.03, 3);
    CHECK(body.inertia_kg_m2(2, 2) == doctest::Approx(0.3 * body.weight.mass_kg * fifths / thirds));
    // Hexagon of side s about its axis: 5 m s^2 / 12.
    const Body hexagon = joint::body_of(member(bar(joint::BarShape::hexagon, 60, 60, 200)));
    const double side2 = 0.06 * 0.06 / 3.0;
    CHECK(hexagon.inertia_kg_m2(2, 2) ==
          doctest::Approx(5.0 / 12.0 * hexagon.weight.mass_kg * side2));
  }

  TEST_CASE("for every shape, cross: mass and moments are those of small cubes summed") {
    const geom::Pose askew{geom::rotation_about(Vec3(1, 2, 3), Angle::deg(35.0)),
                           Vec3(-20.0, -30.0, 10.0)};
    const joint::Shape shapes[] = {joint::Plate{120, 60, 40},
                                   joint::Tube{100, 25, 120},
                                   joint::Ring{140, 60, 40},
                                   bar(joint::BarShape::round, 70, 70, 110),
                                   bar(joint::BarShape::square, 60, 60, 110),
                                   bar(joint::BarShape::flat, 80, 40, 110),
                                   bar(joint::BarShape::hexagon, 80, 80, 110),
                                   forging()};
    for (const joint::Shape& shape : shapes) {
      CAPTURE(std::string(joint::shape_name(shape)));
      const Member placed = member(shape, askew);
      const Body got = joint::body_of(placed);
      const Body sum = summed(placed, 4.0);
      // Cubes of 4 mm on walls of 25 mm and more: a few per mille.
      CHECK(got.weight.mass_kg == doctest::Approx(sum.weight.mass_kg).epsilon(0.01));
      CHECK((got.weight.centre - sum.weight.centre).norm() < 0.5);
      CHECK((got.inertia_kg_m2 - sum.inertia_kg_m2).norm() < 0.015 * sum.inertia_kg_m2.norm());
      // law: mass and centre are those of the other room's function.
      CHECK(got.weight.mass_kg == doctest::Approx(joint::mass_kg(placed)));
      CHECK((got.weight.centre - joint::centre_of_gravity(placed)).norm() < 1e-9);
    }
  }

  TEST_CASE("given a block sawn in two, law: both halves together are the block") {
    const geom::Pose aside{Mat3::Identity(), Vec3(150.0, 0.0, 0.0)};
    const Body whole = joint::body_of(member(joint::Plate{400, 300, 20}));
    const Body sum = joint::together({joint::body_of(member(joint::Plate{150, 300, 20})),
                                      joint::body_of(member(joint::Plate{250, 300, 20}, aside))});
    CHECK(sum.weight.mass_kg == doctest::Approx(whole.weight.mass_kg));
    CHECK((sum.weight.centre - whole.weight.centre).norm() < 1e-9);
    CHECK((sum.inertia_kg_m2 - whole.inertia_kg_m2).norm() < 1e-12);
    CHECK(joint::together({}).weight.mass_kg == 0.0);
  }

  TEST_CASE("about a line, law: turning all with the line changes nothing, parallel axis rule") {
    Random random(base::named_seed(31, "inertia"));
    const Body body = joint::body_of(member(forging()));
    for (int i = 0; i < 50; ++i) {
      INFO("seed 31, case " << i);
      const Vec3 axis(random.between(-1, 1), random.between(-1, 1), random.between(-1, 1));
      const geom::Pose X{geom::rotation_about(axis, Angle::deg(random.between(0, 360))),
                         Vec3(random.between(-500, 500), 20.0, random.between(-500, 500))};
      const Vec3 along = geom::unit(Vec3(axis.y(), axis.z(), axis.x() + 2.0));
      const Vec3 point(random.between(-100, 100), random.between(-100, 100), 5.0);
      const double own = joint::inertia_about_kg_m2(body, point, along);
      CHECK(joint::inertia_about_kg_m2(joint::moved(X, body), X.point(point), X.direction(along)) ==
            doctest::Approx(own));
      // Sliding the point along the line is no other line.
      CHECK(joint::inertia_about_kg_m2(body, point + 70.0 * along, along) == doctest::Approx(own));
      const double arm_m = 1e-3 * along.cross(body.weight.centre - point).norm();
      CHECK(own == doctest::Approx(joint::inertia_about_kg_m2(body, body.weight.centre, along) +
                                   body.weight.mass_kg * arm_m * arm_m));
    }
    CHECK_THROWS_AS((void)joint::inertia_about_kg_m2(body, Vec3::Zero(), Vec3(0, 0, 2)),
                    base::ContractViolation);
  }

  TEST_CASE("given a riser with and without its box, a box and a point") {
    joint::SetupSolid riser;
    riser.mass_kg = 120.0;
    riser.centre = Vec3(0, 0, 100);
    CHECK(joint::body_of(riser).inertia_kg_m2.norm() == 0.0);
    riser.size_mm = Vec3(600, 400, 200);
    CHECK(joint::body_of(riser).inertia_kg_m2(2, 2) == doctest::Approx(10.0 * (0.36 + 0.16)));
    CHECK(joint::body_of(riser).inertia_kg_m2(0, 0) == doctest::Approx(10.0 * (0.16 + 0.04)));
  }
}

}  // namespace seamturn::tests
