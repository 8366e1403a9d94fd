// SPDX-License-Identifier: MIT
#include "seamturn/joint/inside.hpp"

#include <cmath>
#include <limits>
#include <vector>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using geom::Vec3;
using joint::is_inside;
using joint::Member;

namespace {

constexpr double step_mm = 1e-3;

/// A face of a solid in its own frame: a point well within the face, and its outward normal.
struct Spot {
  Vec3 point;
  Vec3 normal;
};
struct Solid {
  const char* name;
  joint::Shape shape;
  std::vector<Spot> faces;
};

std::vector<Solid> solids() {
  const Vec3 x = Vec3::UnitX(), y = Vec3::UnitY(), z = Vec3::UnitZ();
  const Vec3 flat_60(0.5, std::sqrt(3.0) / 2.0, 0.0);
  const Vec3 cone = Vec3(1, 0, 1).normalized();
  return {
      {"plate",
       joint::Plate{400, 300, 25},
       {{{0, 150, 12}, -x},
        {{400, 150, 12}, x},
        {{200, 0, 12}, -y},
        {{200, 300, 12}, y},
        {{200, 150, 0}, -z},
        {{200, 150, 25}, z}}},
      {"tube",
       joint::Tube{200, 20, 500},
       {{{100, 0, 250}, x}, {{0, -80, 250}, y}, {{90, 0, 0}, -z}, {{0, 90, 500}, z}}},
      {"ring",
       joint::Ring{300, 100, 40},
       {{{0, 150, 20}, y}, {{50, 0, 20}, -x}, {{100, 0, 0}, -z}, {{100, 0, 40}, z}}},
      {"round bar",
       joint::Bar{joint::BarShape::round, 60, 60, 100},
       {{{30, 0, 50}, x}, {{0, 0, 0}, -z}, {{0, 0, 100}, z}}},
      {"square bar",
       joint::Bar{joint::BarShape::square, 60, 60, 100},
       {{{30, 10, 50}, x}, {{10, -30, 50}, -y}, {{29, 29, 0}, -z}}},
      {"flat bar",
       joint::Bar{joint::BarShape::flat, 60, 20, 100},
       {{{-30, 5, 50}, -x}, {{25, 10, 50}, y}, {{29, 9, 100}, z}}},
      {"hexagon bar",
       joint::Bar{joint::BarShape::hexagon, 60, 60, 100},
       {{{30, 0, 50}, x}, {30.0 * flat_60 + Vec3(0, 0, 50), flat_60}, {{0, 33, 0}, -z}}},
      {"stepped forging",
       joint::Forging{{{20, 100, 100}, {80, 50, 50}}, 30.0},
       {{{50, 0, 10}, x},
        {{40, 0, 20}, z},
        {{0, 25, 60}, y},
        {{0, 15, 60}, -y},
        {{20, 0, 100}, z},
        {{30, 0, 0}, -z}}},
      {"cone", joint::Forging{{{40, 100, 20}}, 0.0}, {{{30, 0, 20}, cone}, {{0, 0, 40}, z}}},
  };
}

Member placed(const joint::Shape& shape, const geom::Pose& X_JM) {
  Member member;
  member.shape = shape;
  member.X_JM = X_JM;
  return member;
}

geom::Pose oblique() {
  return {geom::rotation_about(Vec3(1, 2, 3), Angle::deg(40.0)), Vec3(-70, 500, 33)};
}

}  // namespace

TEST_SUITE("joint/inside") {
  TEST_CASE("given each face of each shape, closed-form: on it and just under it is inside") {
    for (const geom::Pose& X_JM : {geom::Pose{}, oblique()}) {
      for (const Solid& solid : solids()) {
        const Member member = placed(solid.shape, X_JM);
        for (const Spot& face : solid.faces) {
          INFO(solid.name << " at " << face.point.transpose());
          CHECK(is_inside(member, X_JM.point(face.point)));
          CHECK(is_inside(member, X_JM.point(face.point - step_mm * face.normal)));
          CHECK_FALSE(is_inside(member, X_JM.point(face.point + step_mm * face.normal)));
        }
      }
    }
  }

  TEST_CASE("given a growth of 3 mm, closed-form: each face lies 3 mm farther out") {
    for (const geom::Pose& X_JM : {geom::Pose{}, oblique()}) {
      for (const Solid& solid : solids()) {
        const Member member = placed(solid.shape, X_JM);
        for (const Spot& face : solid.faces) {
          INFO(solid.name << " at " << face.point.transpose());
          CHECK(is_inside(member, X_JM.point(face.point + 3.0 * face.normal), 3.0));
          CHECK(is_inside(member, X_JM.point(face.point + (3.0 - step_mm) * face.normal), 3.0));
          CHECK_FALSE(
              is_inside(member, X_JM.point(face.point + (3.0 + step_mm) * face.normal), 3.0));
          CHECK(is_inside(member, X_JM.point(face.point - 3.0 * face.normal), 3.0));
        }
      }
    }
  }

  TEST_CASE("given bores and edges, growth closes the bore it spans and rounds the edges") {
    const Member tube = placed(joint::Tube{60, 20, 100}, {});  // bore 20
    CHECK_FALSE(is_inside(tube, Vec3(0, 0, 50), 9.99));
    CHECK(is_inside(tube, Vec3(0, 0, 50), 10.0));
    const Member solid = placed(joint::Tube{60, 30, 100}, {});  // no bore
    CHECK(is_inside(solid, Vec3(0, 0, 50)));
    const Member plate = placed(joint::Plate{400, 300, 25}, {});
    CHECK(is_inside(plate, Vec3(403, 150, 29), 5.0));  // 3-4-5
    CHECK_FALSE(is_inside(plate, Vec3(403, 150, 29), 4.99));
  }

  TEST_CASE("given random points, cross: the share inside is the share of the volume") {
    base::Random random(base::named_seed(43, "inside"));
    const Vec3 low(-60, -60, -10), high(60, 60, 110);
    const joint::Shape shapes[] = {joint::Bar{joint::BarShape::hexagon, 60, 60, 100},
                                   joint::Forging{{{20, 100, 100}, {80, 80, 40}}, 30.0},
                                   joint::Tube{100, 20, 80},
                                   joint::Ring{110, 50, 100}};
    for (const joint::Shape& shape : shapes) {
      const Member member = placed(shape, {});
      constexpr int points = 40000;
      int inside = 0;
      for (int i = 0; i < points; ++i) {
        const Vec3 p(random.between(low.x(), high.x()),
                     random.between(low.y(), high.y()),
                     random.between(low.z(), high.z()));
        inside += is_inside(member, p);
      }
      const double box_mm3 = (high - low).prod();
      const double share = joint::volume_mm3(shape) / box_mm3;
      const double four_sigma = 4.0 * std::sqrt(share * (1.0 - share) / points);
      INFO(joint::shape_name(shape));
      CHECK(std::abs(static_cast<double>(inside) / points - share) <= four_sigma);
    }
  }

  TEST_CASE("refuses points and growths that are no quantities because they are a caller's bug") {
    const Member plate = placed(joint::Plate{400, 300, 25}, {});
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS((void)is_inside(plate, Vec3(nan, 0, 0)), base::ContractViolation);
    CHECK_THROWS_AS((void)is_inside(plate, Vec3(1, 1, 1), -1.0), base::ContractViolation);
    CHECK_THROWS_AS((void)is_inside(plate, Vec3(1, 1, 1), nan), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
