// SPDX-License-Identifier: MIT
#include "seamturn/joint/seam_faces.hpp"

#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using geom::Vec3;
using joint::find_seam_faces;
using joint::JointType;
using joint::Member;
using joint::Plate;
using joint::Ring;
using joint::SeamFaces;
using joint::Tube;

namespace {

const joint::Preparation fillet = joint::Fillet{6.0, 6.0};

Member member(const char* id, joint::Shape shape, const geom::Pose& pose = {}) {
  Member out;
  out.id = id;
  out.shape = shape;
  out.X_JM = pose;
  return out;
}
geom::Pose at(double x, double y, double z) {
  return geom::Pose{geom::Mat3::Identity(), Vec3(x, y, z)};
}
/// Local x along world x, width up, thickness along world y: a plate standing with stand="y".
geom::Pose standing_y(double x, double y, double z) {
  geom::Pose pose = at(x, y, z);
  pose.rotation.col(0) = -Vec3::UnitX();
  pose.rotation.col(1) = Vec3::UnitZ();
  pose.rotation.col(2) = Vec3::UnitY();
  return pose;
}

const Member base_plate = member("base", Plate{400, 300, 25});
/// The web of a bracket: y from 142.5 to 157.5, x from 0 to 400, z from 25 to 145.
const Member web = member("web", Plate{400, 120, 15}, standing_y(400, 142.5, 25));

void check_faces(const base::Outcome<SeamFaces>& got,
                 const Vec3& wall_1,
                 const Vec3& wall_2,
                 double between_deg) {
  REQUIRE_MESSAGE(got.has_value(), got.error().text);
  CHECK((got->wall_1 - wall_1).norm() < 1e-9);
  CHECK((got->wall_2 - wall_2).norm() < 1e-9);
  CHECK((got->face - (wall_1 + wall_2).normalized()).norm() < 1e-9);
  CHECK(std::abs(got->between_walls.deg() - between_deg) < 1e-6);
}

std::string code_of(const base::Outcome<SeamFaces>& got) {
  return got.has_value() ? std::string("accepted") : got.error().code;
}

geom::Path ring_path(double z, double radius) {
  return geom::CirclePath{Vec3(0, 0, z), Vec3::UnitZ(), Vec3::UnitX(), radius};
}

}  // namespace

TEST_SUITE("joint/seam_faces") {
  TEST_CASE("given a web on a base plate, both corners are told apart") {
    const geom::Path front = geom::LinePath{Vec3(10, 157.5, 25), Vec3(390, 157.5, 25)};
    const geom::Path back = geom::LinePath{Vec3(390, 142.5, 25), Vec3(10, 142.5, 25)};
    check_faces(find_seam_faces(JointType::tee, fillet, base_plate, web, front),
                Vec3::UnitZ(),
                Vec3::UnitY(),
                90.0);
    check_faces(find_seam_faces(JointType::tee, fillet, base_plate, web, back),
                Vec3::UnitZ(),
                -Vec3::UnitY(),
                90.0);
    check_faces(find_seam_faces(JointType::tee,
                                joint::single_bevel({2.0, 2.0}, Angle::deg(50)),
                                base_plate,
                                web,
                                front),
                Vec3::UnitZ(),
                Vec3::UnitY(),
                90.0);
  }

  TEST_CASE("given a strap on a plate, the fillet runs along the strap's edge whichever is named") {
    // law: naming the members the other way round moves no edge.
    const Member strap = member("strap", Plate{100, 200, 8}, at(150, 50, 25));
    const geom::Path along = geom::LinePath{Vec3(150, 240, 25), Vec3(150, 60, 25)};
    const auto lapping = [&](const Member& first, const Member& second) {
      const auto faces = find_seam_faces(JointType::lap, fillet, first, second, along);
      REQUIRE(faces.has_value());
      joint::Joint joint;
      joint.type = JointType::lap;
      joint.seams.resize(1);
      joint.seams.front().path = along;
      joint.seams.front().wall_1 = faces->wall_1;
      joint.seams.front().wall_2 = faces->wall_2;
      return joint::lapping_member(joint, first, second);
    };
    CHECK(lapping(base_plate, strap) == 2);
    CHECK(lapping(strap, base_plate) == 1);
    // Without a place the second member is taken, as in a tee.
    joint::Joint unplaced;
    unplaced.seams.resize(1);
    CHECK(joint::lapping_member(unplaced, strap, base_plate) == 2);
  }

  TEST_CASE("for any thickness of a lapped sheet and any gap below it, law: its edge is found") {
    const geom::Path along = geom::LinePath{Vec3(150, 240, 25), Vec3(150, 60, 25)};
    for (const double thickness_mm : {0.8, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0}) {
      for (const double gap_mm : {0.0, 0.3, 1.0, 1.6, 2.5, 3.9}) {
        for (const bool drawn_apart : {false, true}) {
          const Member sheet = member(
              "sheet", Plate{100, 200, thickness_mm}, at(150, 50, 25 + (drawn_apart ? gap_mm : 0)));
          joint::Fillet over_gap{6.0, 6.0};
          over_gap.gap_mm = gap_mm;
          INFO("sheet of " << thickness_mm << " mm, gap " << gap_mm << " mm, " << drawn_apart);
          check_faces(find_seam_faces(JointType::lap, over_gap, base_plate, sheet, along),
                      Vec3::UnitZ(),
                      -Vec3::UnitX(),
                      90.0);
        }
      }
    }
  }

  TEST_CASE("given a path drawn up to 1 mm off, the same corner is found") {
    base::Random random(base::named_seed(13, "off by a little"));
    for (int i = 0; i < 200; ++i) {
      const Vec3 off(0.0, random.between(-0.7, 0.7), random.between(-0.7, 0.7));
      const geom::Path path = geom::LinePath{Vec3(10, 157.5, 25) + off, Vec3(390, 157.5, 25) + off};
      INFO("seed 13, case " << i << ": off " << off.y() << ' ' << off.z());
      check_faces(find_seam_faces(JointType::tee, fillet, base_plate, web, path),
                  Vec3::UnitZ(),
                  Vec3::UnitY(),
                  90.0);
    }
  }

  TEST_CASE("for any place of the assembly, law: walls and face move with it") {
    base::Random random(base::named_seed(13, "moved assembly"));
    const geom::Path front = geom::LinePath{Vec3(10, 157.5, 25), Vec3(390, 157.5, 25)};
    for (int i = 0; i < 200; ++i) {
      const Vec3 axis(random.between(-1, 1), random.between(-1, 1), random.between(0.1, 1));
      const geom::Pose pose{geom::rotation_about(axis, Angle::deg(random.between(-180, 180))),
                            Vec3(random.between(-900, 900), random.between(-900, 900), 5.0)};
      Member base_moved = base_plate, web_moved = web;
      base_moved.X_JM = pose * base_plate.X_JM;
      web_moved.X_JM = pose * web.X_JM;
      INFO("seed 13, case " << i);
      check_faces(find_seam_faces(
                      JointType::tee, fillet, base_moved, web_moved, geom::moved_path(pose, front)),
                  pose.direction(Vec3::UnitZ()),
                  pose.direction(Vec3::UnitY()),
                  90.0);
    }
  }

  TEST_CASE("given a tube standing on a plate, outside and bore are told apart all round") {
    const Member plate = member("base", Plate{400, 400, 25}, at(-200, -200, 0));
    const Member tube = member("tube", Tube{200, 10, 300}, at(0, 0, 25));
    check_faces(find_seam_faces(JointType::tee, fillet, plate, tube, ring_path(25, 100)),
                Vec3::UnitZ(),
                Vec3::UnitX(),
                90.0);
    check_faces(find_seam_faces(JointType::tee, fillet, plate, tube, ring_path(25, 90)),
                Vec3::UnitZ(),
                -Vec3::UnitX(),
                90.0);
  }

  TEST_CASE("given a ring round a tube, its upper and lower corner are found") {
    const Member tube = member("tube", Tube{200, 10, 300});
    const Member ring = member("ring", Ring{300, 200, 20}, at(0, 0, 100));
    check_faces(find_seam_faces(JointType::tee, fillet, tube, ring, ring_path(120, 100)),
                Vec3::UnitX(),
                Vec3::UnitZ(),
                90.0);
    check_faces(find_seam_faces(JointType::tee, fillet, ring, tube, ring_path(100, 100)),
                -Vec3::UnitZ(),
                Vec3::UnitX(),
                90.0);
  }

  TEST_CASE("given a gusset along a tube, its corner opens wider than 90 deg by the tube's curve") {
    const Member tube = member("tube", Tube{200, 10, 300});
    // Gusset 20 mm thick, y from -10 to 10, from the mantle outwards: its face meets the mantle at
    // x = sqrt(100^2 - 10^2), where the mantle leans by asin(10/100).
    const double x = std::sqrt(100.0 * 100.0 - 100.0);
    const Member gusset = member("gusset", Plate{100, 200, 20}, standing_y(x + 100, -10, 50));
    const geom::Path path = geom::LinePath{Vec3(x, 10, 60), Vec3(x, 10, 240)};
    const double lean_deg = 5.739170477266787;  // asin 0.1
    check_faces(find_seam_faces(JointType::tee, fillet, tube, gusset, path),
                Vec3(x / 100.0, 0.1, 0.0),
                Vec3::UnitY(),
                90.0 + lean_deg);
  }

  TEST_CASE("given a butt of plates with a gap, the common face is found on either side") {
    const Member left = member("left", Plate{200, 300, 12});
    const Member right = member("right", Plate{200, 300, 12}, at(203, 0, 0));
    const joint::Preparation v = joint::single_v({3.0, 1.0}, Angle::deg(60));
    const auto path = [](double z) {
      return geom::Path(geom::LinePath{Vec3(201.5, 0, z), Vec3(201.5, 300, z)});
    };
    check_faces(find_seam_faces(JointType::butt, v, left, right, path(12)),
                Vec3::UnitZ(),
                Vec3::UnitZ(),
                180.0);
    check_faces(find_seam_faces(JointType::butt, v, left, right, path(0)),
                -Vec3::UnitZ(),
                -Vec3::UnitZ(),
                180.0);
  }

  TEST_CASE("given a butt of two tubes, the face looks outwards all round") {
    const Member lower = member("lower", Tube{200, 10, 300});
    const Member upper = member("upper", Tube{200, 10, 300}, at(0, 0, 302));
    const joint::Preparation v = joint::single_v({2.0, 1.0}, Angle::deg(60));
    check_faces(find_seam_faces(JointType::butt, v, lower, upper, ring_path(301, 100)),
                Vec3::UnitX(),
                Vec3::UnitX(),
                180.0);
  }

  TEST_CASE("given a corner with a groove seen from outside, both members are level there") {
    // The web's outer side is flush with the edge of the base.
    const Member flush = member("web", Plate{400, 120, 15}, standing_y(400, 285, 25));
    const geom::Path outside = geom::LinePath{Vec3(390, 300, 25), Vec3(10, 300, 25)};
    const joint::Preparation bevel = joint::single_bevel({2.0, 1.0}, Angle::deg(50));
    check_faces(find_seam_faces(JointType::corner, bevel, base_plate, flush, outside),
                Vec3::UnitY(),
                Vec3::UnitY(),
                180.0);
    // Its fillet lies inside.
    const geom::Path inside = geom::LinePath{Vec3(10, 285, 25), Vec3(390, 285, 25)};
    check_faces(find_seam_faces(JointType::corner, fillet, base_plate, flush, inside),
                Vec3::UnitZ(),
                -Vec3::UnitY(),
                90.0);
    // A fillet has nothing to lie on outside.
    CHECK(code_of(find_seam_faces(JointType::corner, fillet, base_plate, flush, outside)) ==
          "joint.seam.no_corner");
  }

  TEST_CASE("given skew webs, corners from 60 to 135 deg are worked with and others are not") {
    const auto skew = [](double between_deg) {
      // A plate standing on the base, leaning about the corner's line y = 100, z = 25.
      geom::Pose pose = standing_y(400, 85, 25);
      const geom::Pose to_line = at(0, 100, 25), back = at(0, -100, -25);
      const geom::Pose lean{geom::rotation_about(Vec3::UnitX(), Angle::deg(between_deg - 90.0)),
                            Vec3::Zero()};
      const Member leaning = member("web", Plate{400, 120, 15}, to_line * lean * back * pose);
      const geom::Path path = geom::LinePath{Vec3(10, 100, 25), Vec3(390, 100, 25)};
      return find_seam_faces(JointType::tee, fillet, base_plate, leaning, path);
    };
    for (const double angle : {60.0, 75.0, 90.0, 120.0, 135.0}) {
      const auto got = skew(angle);
      REQUIRE_MESSAGE(got.has_value(), got.error().text);
      CHECK(got->between_walls.deg() == doctest::Approx(angle));
    }
    CHECK(code_of(skew(59.9)) == "joint.seam.no_corner");
    CHECK(code_of(skew(135.1)) == "joint.seam.no_corner");
    CHECK(skew(59.9).error().text.find("59.9 deg") != std::string::npos);
  }

  TEST_CASE("tells on which hand of a flush path the second member lies, for a bevel is lopsided") {
    const Member square = member("square", Plate{200, 300, 12});
    const Member bevelled = member("bevelled", Plate{200, 300, 12}, at(202, 0, 0));
    const joint::Preparation bevel = joint::single_bevel({2.0, 1.0}, Angle::deg(45));
    const Vec3 near_end(201, 0, 12), far_end(201, 300, 12);
    // Travelled towards -y with the face up, the left hand points to +x, where the bevel is.
    const geom::Path left = geom::LinePath{far_end, near_end};
    const geom::Path right = geom::LinePath{near_end, far_end};
    check_faces(find_seam_faces(JointType::butt, bevel, square, bevelled, left),
                Vec3::UnitZ(),
                Vec3::UnitZ(),
                180.0);
    const auto second_on_left =
        [&](const Member& first, const Member& second, const geom::Path& p) {
          return find_seam_faces(JointType::butt, bevel, first, second, p).value().second_on_left;
        };
    CHECK(second_on_left(square, bevelled, left));
    CHECK_FALSE(second_on_left(square, bevelled, right));
    CHECK(second_on_left(bevelled, square, right));
    CHECK_FALSE(second_on_left(bevelled, square, left));
    const joint::Preparation v = joint::single_v({2.0, 1.0}, Angle::deg(60));
    CHECK(code_of(find_seam_faces(JointType::butt, v, square, bevelled, right)) == "accepted");
  }

  TEST_CASE("refuses a path off a member because it would weld air, and says how far off") {
    const auto found = [](const Vec3& from, const Vec3& to) {
      return find_seam_faces(JointType::tee, fillet, base_plate, web, geom::LinePath{from, to});
    };
    const auto high = found(Vec3(10, 157.5, 27.5), Vec3(390, 157.5, 27.5));
    REQUIRE(code_of(high) == "joint.seam.not_on_member");
    CHECK(high.error().text.find("2.5 mm off the surface of member base") != std::string::npos);
    const auto aside = found(Vec3(10, 160, 25), Vec3(390, 160, 25));
    REQUIRE(code_of(aside) == "joint.seam.not_on_member");
    CHECK(aside.error().text.find("member web") != std::string::npos);
    const auto long_path = found(Vec3(10, 157.5, 25), Vec3(415, 157.5, 25));
    REQUIRE(code_of(long_path) == "joint.seam.not_on_member");
    CHECK(long_path.error().text.find("the end") != std::string::npos);
    CHECK(code_of(found(Vec3(10, 157.5, 25.99), Vec3(390, 157.5, 25.99))) == "accepted");
    CHECK(code_of(found(Vec3(10, 157.5, 26.01), Vec3(390, 157.5, 26.01))) ==
          "joint.seam.not_on_member");
  }

  TEST_CASE("refuses surfaces that enclose no weld because the face would be a guess") {
    // Two plates lying on each other: their tops and sides are parallel.
    const Member top = member("top", Plate{400, 300, 25}, at(0, 0, 25));
    const geom::Path seam = geom::LinePath{Vec3(10, 0, 25), Vec3(390, 0, 25)};
    CHECK(code_of(find_seam_faces(JointType::tee, fillet, base_plate, top, seam)) ==
          "joint.seam.no_corner");
    // Two plates that touch along one line only enclose two corners.
    const Member across = member("across", Plate{400, 300, 25}, at(0, -300, 25));
    const auto two = find_seam_faces(JointType::corner, fillet, base_plate, across, seam);
    REQUIRE(code_of(two) == "joint.seam.no_corner");
    CHECK(two.error().text.find("two corners") != std::string::npos);
    // A butt of plates at a right angle has no common face.
    const geom::Path front = geom::LinePath{Vec3(10, 157.5, 25), Vec3(390, 157.5, 25)};
    CHECK(code_of(
              find_seam_faces(JointType::butt, joint::square_butt(0.0), base_plate, web, front)) ==
          "joint.seam.no_corner");
  }

  TEST_CASE("given a post welded all round, the sides' normals come round and the floor's stays") {
    const Member post = member("post", Plate{60, 40, 100}, at(100, 100, 25));
    const geom::Path path = geom::PolylinePath{{Vec3(130, 100, 25),
                                                Vec3(160, 100, 25),
                                                Vec3(160, 140, 25),
                                                Vec3(100, 140, 25),
                                                Vec3(100, 100, 25)},
                                               true};
    const auto got = find_seam_faces(JointType::tee, fillet, base_plate, post, path);
    check_faces(got, Vec3::UnitZ(), -Vec3::UnitY(), 90.0);
    const geom::Path inside_out = geom::reversed_path(path);
    check_faces(find_seam_faces(JointType::tee, fillet, base_plate, post, inside_out),
                Vec3::UnitZ(),
                -Vec3::UnitY(),
                90.0);
  }

  TEST_CASE("given a polyline, its corners and the middles of its legs must lie on both members") {
    const Member post = member("post", Plate{60, 40, 100}, at(100, 100, 25));
    const geom::Path off =
        geom::PolylinePath{{Vec3(100, 100, 25), Vec3(160, 100, 25), Vec3(163, 140, 25)}, false};
    const auto got = find_seam_faces(JointType::tee, fillet, base_plate, post, off);
    REQUIRE(code_of(got) == "joint.seam.not_on_member");
    CHECK(got.error().text.find("middle of leg 2") != std::string::npos);
  }

  TEST_CASE("refuses a polyline whose leg lies askew to the surface the corners carry along") {
    const Member tube = member("tube", Tube{200, 10, 100}, at(200, 150, 25));
    const auto on_tube = [&](double deg, double radius) {
      const double rad = Angle::deg(deg).rad();
      return Vec3(200 + radius * std::cos(rad), 150 + radius * std::sin(rad), 25);
    };
    const auto code = [&](double last_radius) {
      const geom::Path path =
          geom::PolylinePath{{on_tube(0, 100), on_tube(12, 100), on_tube(18, last_radius)}, false};
      return code_of(find_seam_faces(JointType::tee, fillet, base_plate, tube, path));
    };
    CHECK(code(100.0) == "accepted");
    CHECK(code(100.9) == "joint.seam.leg_differs");
  }

  TEST_CASE("given a quarter arc round a tube, the tube's normal at its start is found") {
    const Member tube = member("tube", Tube{200, 10, 100}, at(200, 150, 25));
    const geom::Path path =
        geom::ArcPath{Vec3(200, 150, 25), Vec3::UnitZ(), Vec3::UnitY(), 100.0, Angle::deg(90.0)};
    check_faces(find_seam_faces(JointType::tee, fillet, base_plate, tube, path),
                Vec3::UnitZ(),
                Vec3::UnitY(),
                90.0);
    const geom::Path wide =
        geom::ArcPath{Vec3(200, 150, 25), Vec3::UnitZ(), Vec3::UnitY(), 102.0, Angle::deg(90.0)};
    CHECK(code_of(find_seam_faces(JointType::tee, fillet, base_plate, tube, wide)) ==
          "joint.seam.not_on_member");
  }
}

}  // namespace seamturn::tests
