// SPDX-License-Identifier: MIT
#include "seamturn/joint/member.hpp"

#include <cmath>
#include <numbers>

#include "oracle.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/joint/weldment.hpp"

namespace seamturn::tests {

using base::Angle;
using geom::Vec3;
using joint::Face;
using joint::faces_at;
using joint::Member;
using joint::Plate;
using joint::Ring;
using joint::Tube;

namespace {

Member member(const char* id, joint::Shape shape, const geom::Pose& pose = {}) {
  Member out;
  out.id = id;
  out.shape = shape;
  out.X_JM = pose;
  return out;
}

bool has_face(const std::vector<Face>& faces, const Vec3& normal, double distance_mm) {
  for (const Face& face : faces) {
    if ((face.normal - normal).norm() < 1e-9 && std::abs(face.distance_mm - distance_mm) < 1e-9) {
      return true;
    }
  }
  return false;
}

}  // namespace

TEST_SUITE("joint/member") {
  TEST_CASE("given plate, tube, bar and ring, volume, wall and mass are those of the solids") {
    // closed-form: 7850 kg/m3 times the volume.
    const Member plate = member("p", Plate{400, 300, 25});
    CHECK(joint::volume_mm3(plate.shape) == doctest::Approx(3.0e6));
    CHECK(joint::mass_kg(plate) == doctest::Approx(23.55));
    CHECK(joint::wall_thickness_mm(plate.shape) == 25.0);
    const double pi = std::numbers::pi;
    CHECK(joint::volume_mm3(Tube{200, 10, 1000}) == doctest::Approx(pi * 190.0 * 10.0 * 1000.0));
    CHECK(joint::volume_mm3(Tube{100, 50, 1000}) == doctest::Approx(pi * 2500.0 * 1000.0));
    CHECK(joint::wall_thickness_mm(Tube{200, 10, 1000}) == 10.0);
    CHECK(joint::volume_mm3(Ring{300, 100, 20}) == doctest::Approx(pi * 20000.0 * 20.0));
    CHECK(joint::wall_thickness_mm(Ring{300, 100, 20}) == 20.0);
    CHECK(joint::shape_name(Plate{}) == "plate");
    CHECK(joint::shape_name(Tube{}) == "tube");
    CHECK(joint::shape_name(Ring{}) == "ring");
  }

  TEST_CASE("given members placed apart, weight and centre of gravity balance") {
    const geom::Pose turned{geom::rotation_about(Vec3::UnitZ(), Angle::deg(90.0)),
                            Vec3(1000.0, 0.0, 0.0)};
    const Member a = member("a", Plate{100, 200, 10});
    const Member b = member("b", Plate{100, 200, 10}, turned);
    CHECK((joint::centre_of_gravity(a) - Vec3(50, 100, 5)).norm() < 1e-9);
    CHECK((joint::centre_of_gravity(b) - Vec3(900, 50, 5)).norm() < 1e-9);
    const joint::Weight both = joint::total_weight({a, b});
    CHECK(both.mass_kg == doctest::Approx(2 * 1.57));
    CHECK((both.centre - Vec3(475, 75, 5)).norm() < 1e-9);
    CHECK(joint::total_weight({}).mass_kg == 0.0);
    CHECK((joint::centre_of_gravity(member("t", Tube{100, 10, 300})) - Vec3(0, 0, 150)).norm() ==
          0.0);
  }

  TEST_CASE("given a plate, its faces are found at edges, inside their outline and not beyond") {
    const Member plate = member("p", Plate{400, 300, 25});
    const auto edge = faces_at(plate, Vec3(400, 150, 25), 1.0, 1.0);
    REQUIRE(edge.size() == 2);
    CHECK(has_face(edge, Vec3::UnitZ(), 0.0));
    CHECK(has_face(edge, Vec3::UnitX(), 0.0));
    CHECK((edge[0].normal - Vec3::UnitZ()).norm() < 1e-12);  // of faces as near the wide ones first
    CHECK(has_face(faces_at(plate, Vec3(400.9, 150, 25.5), 1.0, 1.0), Vec3::UnitZ(), 0.5));
    CHECK(faces_at(plate, Vec3(401.1, 150, 25), 1.0, 1.0).empty());
    CHECK(faces_at(plate, Vec3(200, 150, 26.001), 1.0, 1.0).empty());
    CHECK(faces_at(plate, Vec3(200, 150, 25.999), 1.0, 1.0).size() == 1);
    CHECK(faces_at(plate, Vec3(200, 150, 12.5), 1.0, 1.0).empty());
    const auto ordered = faces_at(plate, Vec3(399.5, 150, 24.8), 1.0, 0.0);
    REQUIRE(ordered.size() == 2);
    CHECK((ordered[0].normal - Vec3::UnitZ()).norm() < 1e-12);
    CHECK(ordered[0].distance_mm == doctest::Approx(0.2));
  }

  TEST_CASE("given a tube, a bar and a ring, mantle, bore and end faces look out of the steel") {
    const Member tube = member("t", Tube{200, 10, 300});
    const double c = std::cos(0.7), s = std::sin(0.7);
    CHECK(has_face(faces_at(tube, Vec3(100 * c, 100 * s, 150), 1, 0), Vec3(c, s, 0), 0.0));
    CHECK(has_face(faces_at(tube, Vec3(90 * c, 90 * s, 150), 1, 0), Vec3(-c, -s, 0), 0.0));
    const auto foot = faces_at(tube, Vec3(100, 0, 0), 1, 0);
    CHECK(foot.size() == 2);
    CHECK(has_face(foot, -Vec3::UnitZ(), 0.0));
    CHECK(has_face(faces_at(tube, Vec3(95, 0, 300), 1, 0), Vec3::UnitZ(), 0.0));
    CHECK(faces_at(tube, Vec3(0, 0, 300), 1, 1).empty());  // the open end
    const Member bar = member("b", Tube{100, 50, 300});
    CHECK(faces_at(bar, Vec3(0, 0, 150), 1, 0).empty());
    CHECK(has_face(faces_at(bar, Vec3(0, 0, 300), 1, 0), Vec3::UnitZ(), 0.0));
    const Member ring = member("r", Ring{300, 100, 20});
    const auto bore = faces_at(ring, Vec3(0, 50, 20), 1, 0);
    CHECK(bore.size() == 2);
    CHECK(has_face(bore, -Vec3::UnitY(), 0.0));
    CHECK(has_face(bore, Vec3::UnitZ(), 0.0));
  }

  TEST_CASE("for any place of a member, law: its faces move with it") {
    base::Random random(base::named_seed(11, "faces move"));
    const joint::Shape shapes[] = {Plate{400, 300, 25}, Tube{200, 10, 300}, Ring{300, 100, 20}};
    const Vec3 points[] = {Vec3(400, 150, 25), Vec3(100, 0, 0), Vec3(0, 50, 20)};
    for (int i = 0; i < 200; ++i) {
      const auto k = static_cast<std::size_t>(i % 3);
      const Vec3 axis(random.between(-1, 1), random.between(-1, 1), random.between(0.1, 1));
      const geom::Pose pose{geom::rotation_about(axis, Angle::deg(random.between(-180, 180))),
                            Vec3(random.between(-900, 900), random.between(-900, 900), 5.0)};
      const auto still = faces_at(member("m", shapes[k]), points[k], 1.0, 1.0);
      const auto moved = faces_at(member("m", shapes[k], pose), pose.point(points[k]), 1.0, 1.0);
      INFO("seed 11, case " << i);
      REQUIRE(moved.size() == still.size());
      for (const Face& face : still) {
        bool found = false;
        for (const Face& other : moved) {
          found = found || (other.normal - pose.direction(face.normal)).norm() < 1e-9;
        }
        CHECK(found);
      }
    }
  }

  TEST_CASE("given ids, members and joints are found, and unknown ones are not") {
    joint::Weldment weldment;
    weldment.members = {member("base", Plate{1, 1, 1}), member("web", Plate{1, 1, 1})};
    weldment.joints.resize(1);
    weldment.joints[0].id = "J1";
    CHECK(joint::find_member(weldment, "web") == &weldment.members[1]);
    CHECK(joint::find_member(weldment, "lug") == nullptr);
    CHECK(joint::find_joint(weldment, "J1") == weldment.joints.data());
    CHECK(joint::find_joint(weldment, "J2") == nullptr);
  }

  TEST_CASE("given bars, volume, centre and thickness are those of their sections") {
    // closed-form: pi/4 d^2, s^2, w h, sqrt(3)/2 s^2 across flats.
    using joint::Bar;
    using joint::BarShape;
    const double pi = std::numbers::pi;
    CHECK(joint::volume_mm3(Bar{BarShape::round, 60, 60, 100}) == doctest::Approx(pi * 90000.0));
    CHECK(joint::volume_mm3(Bar{BarShape::square, 60, 60, 100}) == doctest::Approx(360000.0));
    CHECK(joint::volume_mm3(Bar{BarShape::flat, 60, 20, 100}) == doctest::Approx(120000.0));
    CHECK(joint::volume_mm3(Bar{BarShape::hexagon, 60, 60, 100}) ==
          doctest::Approx(std::sqrt(3.0) / 2.0 * 360000.0));
    CHECK(joint::wall_thickness_mm(Bar{BarShape::flat, 60, 20, 100}) == 20.0);
    CHECK(joint::wall_thickness_mm(Bar{BarShape::round, 60, 60, 100}) == 60.0);
    const Member bar = member("b", Bar{BarShape::flat, 60, 20, 100});
    CHECK((joint::centre_of_gravity(bar) - Vec3(0, 0, 50)).norm() < 1e-9);
    CHECK(joint::mass_kg(bar) == doctest::Approx(0.942));
    CHECK(joint::shape_name(bar.shape) == "bar");
    CHECK(joint::bar_shape_name(BarShape::hexagon) == "hexagon");
  }

  TEST_CASE("given a cone, a stepped and a bored forging, weight and centre are the solids'") {
    // closed-form: a frustum of 60 and 30 mm over 70 mm holds pi/12 h (a^2 + ab + b^2); its centre
    // lies h/4 (a^2 + 2ab + 3b^2)/(a^2 + ab + b^2) from the wide end.
    using joint::Forging;
    const double pi = std::numbers::pi;
    const Member cone = member("c", Forging{{{70, 60, 30}}, 0.0});
    CHECK(joint::volume_mm3(cone.shape) == doctest::Approx(pi / 12.0 * 70.0 * 6300.0));
    CHECK((joint::centre_of_gravity(cone) - Vec3(0, 0, 70.0 / 4.0 * 9900.0 / 6300.0)).norm() <
          1e-9);
    const Member stepped = member("s", Forging{{{20, 100, 100}, {80, 50, 50}}, 0.0});
    const double disc = pi / 4.0 * 10000.0 * 20.0;
    const double neck = pi / 4.0 * 2500.0 * 80.0;
    CHECK(joint::volume_mm3(stepped.shape) == doctest::Approx(disc + neck));
    CHECK(joint::centre_of_gravity(stepped).z() ==
          doctest::Approx((disc * 10.0 + neck * 60.0) / (disc + neck)));
    CHECK(joint::wall_thickness_mm(stepped.shape) == 100.0);
    const Member bored = member("h", Forging{{{40, 100, 100}}, 60.0});
    CHECK(joint::volume_mm3(bored.shape) == doctest::Approx(pi / 4.0 * 6400.0 * 40.0));
    CHECK(joint::centre_of_gravity(bored).z() == doctest::Approx(20.0));
    CHECK(joint::wall_thickness_mm(bored.shape) == 20.0);
    CHECK(joint::shape_name(bored.shape) == "forging");
  }

  TEST_CASE("given a hexagon bar, its flats and ends are found and its corners end them") {
    const Member bar = member("b", joint::Bar{joint::BarShape::hexagon, 60, 60, 100});
    CHECK(has_face(faces_at(bar, Vec3(30, 0, 50), 1.0, 0.0), Vec3::UnitX(), 0.0));
    const Vec3 flat_60(0.5, std::sqrt(3.0) / 2.0, 0.0);
    CHECK(has_face(faces_at(bar, 30.4 * flat_60, 1.0, 1.0), flat_60, 0.4));
    CHECK(has_face(faces_at(bar, Vec3(10, 10, 100), 1.0, 0.0), Vec3::UnitZ(), 0.0));
    const double half_side = 30.0 / std::sqrt(3.0);
    CHECK(faces_at(bar, Vec3(30, half_side - 0.1, 50), 0.01, 0.0).size() == 1);
    CHECK(faces_at(bar, Vec3(30, half_side + 0.1, 50), 0.01, 0.0).empty());
    const auto corner = faces_at(bar, Vec3(30, half_side, 50), 0.01, 0.01);
    CHECK(corner.size() == 2);
  }

  TEST_CASE("given a forging, shoulder, cone and bore are found with their normals") {
    using joint::Forging;
    const Member stepped = member("s", Forging{{{20, 100, 100}, {80, 50, 50}}, 30.0});
    CHECK(has_face(faces_at(stepped, Vec3(40, 0, 20), 0.5, 0.0), Vec3::UnitZ(), 0.0));
    CHECK(has_face(faces_at(stepped, Vec3(0, 25, 60), 0.5, 0.0), Vec3::UnitY(), 0.0));
    CHECK(has_face(faces_at(stepped, Vec3(0, 15, 60), 0.5, 0.0), -Vec3::UnitY(), 0.0));
    CHECK(faces_at(stepped, Vec3(20, 0, 20), 0.5, 0.0).empty());  // inside, below the neck
    CHECK(has_face(faces_at(stepped, Vec3(20, 0, 100), 0.5, 0.0), Vec3::UnitZ(), 0.0));
    // A cone of 45 deg: radius 50 at z 0, 10 at z 40.
    const Member cone = member("c", Forging{{{40, 100, 20}}, 0.0});
    CHECK(has_face(faces_at(cone, Vec3(30, 0, 20), 0.5, 0.0), Vec3(1, 0, 1).normalized(), 0.0));
    CHECK(has_face(faces_at(cone, Vec3(30, 0, 20) + Vec3(0.2, 0, 0.2), 0.5, 0.0),
                   Vec3(1, 0, 1).normalized(),
                   std::sqrt(0.08)));
    CHECK(has_face(faces_at(cone, Vec3(0, 0, 0), 0.5, 0.0), -Vec3::UnitZ(), 0.0));
  }

  TEST_CASE("for round and square bars and one-step forgings, law: they are the solids known") {
    base::Random random(base::named_seed(41, "solids"));
    const Member pairs[][2] = {
        {member("b", joint::Bar{joint::BarShape::round, 60, 60, 100}),
         member("t", Tube{60, 30, 100})},
        {member("f", joint::Forging{{{100, 60, 60}}, 40.0}), member("t", Tube{60, 10, 100})},
        {member("s", joint::Bar{joint::BarShape::flat, 60, 40, 100}),
         member("p", Plate{60, 40, 100}, geom::Pose{geom::Mat3::Identity(), Vec3(-30, -20, 0)})}};
    for (int i = 0; i < 600; ++i) {
      const auto& pair = pairs[i % 3];
      const Vec3 p(random.between(-40, 40), random.between(-40, 40), random.between(-10, 110));
      const auto a = faces_at(pair[0], p, 5.0, 2.0);
      const auto b = faces_at(pair[1], p, 5.0, 2.0);
      INFO("seed 41, case " << i);
      CHECK(a.size() == b.size());
      for (const Face& face : b) CHECK(has_face(a, face.normal, face.distance_mm));
      CHECK(joint::mass_kg(pair[0]) == doctest::Approx(joint::mass_kg(pair[1])));
      CHECK((joint::centre_of_gravity(pair[0]) - joint::centre_of_gravity(pair[1])).norm() < 1e-9);
    }
  }
}

}  // namespace seamturn::tests
