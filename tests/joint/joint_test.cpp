// SPDX-License-Identifier: MIT
#include "seamturn/joint/joint.hpp"

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using base::Angle;
using geom::Vec3;
using joint::JointType;

namespace {

joint::Joint joint_of(JointType type, const joint::Preparation& preparation) {
  joint::Joint out;
  out.type = type;
  out.preparation = preparation;
  return out;
}

/// A corner of a level first member (+z) and an upright second one (+y), travelled along +x.
joint::Seam corner_seam() {
  joint::Seam seam;
  seam.path = geom::LinePath{Vec3(10, 50, 25), Vec3(390, 50, 25)};
  seam.wall_1 = Vec3::UnitZ();
  seam.wall_2 = Vec3::UnitY();
  seam.face = Vec3(0, 1, 1).normalized();
  seam.between_walls = Angle::deg(90.0);
  return seam;
}

}  // namespace

TEST_SUITE("joint/joint") {
  TEST_CASE(
      "given joints, fillets and tee and corner grooves go by the fillet rows, butts do not") {
    using process::WeldFamily;
    CHECK(position_family(joint_of(JointType::tee, joint::Fillet{6, 6})) == WeldFamily::fillet);
    CHECK(position_family(joint_of(JointType::tee, joint::single_bevel({}, {}))) ==
          WeldFamily::fillet);
    CHECK(position_family(joint_of(JointType::corner, joint::single_v({}, {}))) ==
          WeldFamily::fillet);
    CHECK(position_family(joint_of(JointType::butt, joint::single_v({}, {}))) ==
          WeldFamily::groove);
  }

  TEST_CASE("given a fillet, y looks out of the corner and x along the first plate, away from it") {
    const auto joint = joint_of(JointType::tee, joint::Fillet{6, 6});
    const joint::Seam seam = corner_seam();
    const joint::SectionFrame frame = section_frame(joint, seam, 100.0);
    CHECK((frame.origin - Vec3(110, 50, 25)).norm() < 1e-9);
    CHECK((frame.tangent - Vec3::UnitX()).norm() < 1e-12);
    CHECK((frame.y - Vec3(0, 1, 1).normalized()).norm() < 1e-12);
    CHECK((frame.x - Vec3(0, 1, -1).normalized()).norm() < 1e-12);
  }

  TEST_CASE(
      "given a fillet travelled the other way, law: x still points to the first plate's toe") {
    const auto joint = joint_of(JointType::tee, joint::Fillet{6, 6});
    joint::Seam seam = corner_seam();
    seam.path = geom::reversed_path(*seam.path);
    CHECK((section_frame(joint, seam, 0.0).x - Vec3(0, 1, -1).normalized()).norm() < 1e-12);
  }

  TEST_CASE("given a groove in a tee, y leaves the second member and x the first") {
    const auto joint = joint_of(JointType::tee, joint::single_bevel({}, {}));
    const joint::SectionFrame frame = section_frame(joint, corner_seam(), 0.0);
    CHECK((frame.y - Vec3::UnitY()).norm() < 1e-12);
    CHECK((frame.x - Vec3::UnitZ()).norm() < 1e-12);
  }

  TEST_CASE("given a butt or a flush corner, y is the face and x is n x t") {
    joint::Seam seam = corner_seam();
    seam.wall_1 = seam.wall_2 = seam.face = Vec3::UnitZ();
    for (const JointType type : {JointType::butt, JointType::corner}) {
      const auto frame = section_frame(joint_of(type, joint::single_v({}, {})), seam, 0.0);
      CHECK((frame.y - Vec3::UnitZ()).norm() < 1e-12);
      CHECK((frame.x - Vec3::UnitY()).norm() < 1e-12);
    }
  }

  TEST_CASE("given a ring seam, law: its frame turns with it") {
    const auto joint = joint_of(JointType::tee, joint::Fillet{6, 6});
    joint::Seam seam;
    seam.path = geom::CirclePath{Vec3(0, 0, 25), Vec3::UnitZ(), Vec3::UnitX(), 100.0};
    seam.wall_1 = Vec3::UnitZ();
    seam.wall_2 = Vec3::UnitX();
    seam.face = Vec3(1, 0, 1).normalized();
    const double quarter = geom::path_length_mm(*seam.path) / 4.0;
    const joint::SectionFrame frame = section_frame(joint, seam, quarter);
    CHECK((frame.origin - Vec3(0, 100, 25)).norm() < 1e-9);
    CHECK((frame.face - Vec3(0, 1, 1).normalized()).norm() < 1e-12);
    CHECK((frame.x - Vec3(0, 1, -1).normalized()).norm() < 1e-12);
    CHECK((frame.tangent + Vec3::UnitX()).norm() < 1e-12);
  }

  TEST_CASE("refuses a seam without a path because it has no frame") {
    joint::Seam seam = corner_seam();
    seam.path.reset();
    CHECK_THROWS_AS((void)section_frame(joint_of(JointType::tee, joint::Fillet{}), seam, 0.0),
                    base::ContractViolation);
  }

  TEST_CASE("given kinds, their names are those of the files") {
    CHECK(joint_type_name(JointType::butt) == "butt");
    CHECK(joint_type_name(JointType::corner) == "corner");
    CHECK(root_decision_name(joint::RootDecision::ceramic_backing) == "ceramic-backing");
    CHECK(root_decision_name(joint::RootDecision::open) == "open");
  }

  TEST_CASE("a second path is opposed when it starts where the first ends") {
    // closed-form: starts 0 and 100 mm from the first's start
    const auto line = [](double from_x, double to_x) {
      joint::Seam seam;
      seam.path = geom::LinePath{geom::Vec3(from_x, 0, 0), geom::Vec3(to_x, 0, 0)};
      seam.length_mm = geom::path_length_mm(*seam.path);
      return seam;
    };
    CHECK_FALSE(joint::runs_against(line(0, 100), line(0, 100)));
    CHECK(joint::runs_against(line(100, 0), line(0, 100)));
    CHECK(joint::runs_against(line(51, 200), line(0, 100)));
    CHECK_FALSE(joint::runs_against(line(49, 200), line(0, 100)));
    joint::Seam ring;
    ring.path = geom::CirclePath{};
    CHECK_FALSE(joint::runs_against(line(100, 0), ring));
    CHECK_FALSE(joint::runs_against(ring, ring));
    joint::Seam other_way = ring;
    other_way.path = geom::reversed_path(*ring.path);
    CHECK(joint::runs_against(other_way, ring));
    CHECK_FALSE(joint::runs_against(joint::Seam{}, line(0, 100)));
  }
}

}  // namespace seamturn::tests
