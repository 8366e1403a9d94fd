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
}

}  // namespace seamturn::tests
