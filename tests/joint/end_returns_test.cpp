// SPDX-License-Identifier: MIT
#include "seamturn/joint/end_returns.hpp"

#include <doctest/doctest.h>

#include "joint/tee_seam.hpp"
#include "seamturn/joint/segments.hpp"

namespace seamturn::tests {

namespace {

using geom::Vec3;

/// The seam of joint/tee_seam.hpp with returns asked for.
joint::Seam returned_seam(const geom::Path& path, double return_mm) {
  joint::Seam seam = tee_seam("J1", path);
  seam.asked.end_return_mm = return_mm;
  return seam;
}

void check_direction(const Vec3& found, const Vec3& expected) {
  CAPTURE(found.transpose());
  CAPTURE(expected.transpose());
  CHECK((found - expected).norm() < 1e-12);
}

}  // namespace

TEST_SUITE("joint/end_returns") {
  // closed-form: the web ends at x = 0 and 300; 12 mm returns lie on its ends, towards -y
  TEST_CASE("a line goes on behind the web at both ends, one leg each") {
    const joint::Seam out =
        joint::with_end_returns(returned_seam(geom::LinePath{Vec3::Zero(), Vec3(300, 0, 0)}, 12.0));
    const auto& path = std::get<geom::PolylinePath>(*out.path);
    REQUIRE(path.points.size() == 4);
    check_direction(path.points[0], Vec3(0, -12, 0));
    check_direction(path.points[1], Vec3(0, 0, 0));
    check_direction(path.points[2], Vec3(300, 0, 0));
    check_direction(path.points[3], Vec3(300, -12, 0));
    CHECK(out.length_mm == doctest::Approx(324.0));
    CHECK(out.asked.end_return_mm == 0.0);
    // The base stays below; the web's surface is its end there, and the face turns with it.
    check_direction(out.wall_1, Vec3::UnitZ());
    check_direction(out.wall_2, -Vec3::UnitX());
    check_direction(out.face, (Vec3::UnitZ() - Vec3::UnitX()).normalized());
    const auto at = [&](double mm, const Vec3& start) {
      return geom::carried_direction(*out.path, mm, start);
    };
    check_direction(at(100.0, out.wall_2), Vec3::UnitY());
    check_direction(at(320.0, out.wall_2), Vec3::UnitX());
  }

  // closed-form: a web leaning 30 deg keeps its returns in the base's surface
  TEST_CASE("returns of a leaning web lie flat on the base") {
    joint::Seam seam = returned_seam(geom::LinePath{Vec3::Zero(), Vec3(300, 0, 0)}, 10.0);
    seam.wall_2 = Vec3(0, std::cos(0.5), std::sin(0.5));
    const auto path = std::get<geom::PolylinePath>(*joint::with_end_returns(seam).path);
    check_direction(path.points[3], Vec3(300, -10, 0));
  }

  TEST_CASE("arcs, closed seams, seams without a place or without returns stay as they are") {
    const geom::ArcPath arc{Vec3::Zero(), Vec3::UnitZ(), Vec3::UnitX(), 50.0, base::Angle::deg(90)};
    CHECK(std::holds_alternative<geom::ArcPath>(
        *joint::with_end_returns(returned_seam(arc, 10.0)).path));
    const geom::CirclePath ring{Vec3::Zero(), Vec3::UnitZ(), Vec3::UnitX(), 50.0};
    CHECK(std::holds_alternative<geom::CirclePath>(
        *joint::with_end_returns(returned_seam(ring, 10.0)).path));
    const geom::LinePath line{Vec3::Zero(), Vec3(300, 0, 0)};
    CHECK(std::holds_alternative<geom::LinePath>(
        *joint::with_end_returns(returned_seam(line, 0.0)).path));
    joint::Seam nowhere = returned_seam(line, 10.0);
    nowhere.path.reset();
    CHECK_FALSE(joint::with_end_returns(nowhere).path.has_value());
  }

  // closed-form: in two with 10 mm of overlap and no stagger, the first ends 5 mm past the middle
  TEST_CASE("a segment has its return where the course drawn ends, and none where segments meet") {
    joint::Joint joint;
    joint.id = "J1";
    joint.seams = {returned_seam(geom::LinePath{Vec3::Zero(), Vec3(300, 0, 0)}, 12.0)};
    const joint::Joint split =
        joint::split_joint(joint, {2, joint::SegmentTravel::outward, 0.0, 10.0});
    const joint::Seam first = joint::with_end_returns(split.seams[0]);
    const auto& begun = std::get<geom::PolylinePath>(*first.path);
    REQUIRE(begun.points.size() == 3);
    check_direction(begun.points[0], Vec3(0, -12, 0));
    check_direction(begun.points[1], Vec3(0, 0, 0));
    check_direction(begun.points[2], Vec3(155, 0, 0));
    CHECK(first.welded.stretches == std::vector<joint::Stretch>{{0.0, 12.0 + 155.0}});
    const joint::Seam last = joint::with_end_returns(split.seams[1]);
    const auto& ended = std::get<geom::PolylinePath>(*last.path);
    REQUIRE(ended.points.size() == 3);
    check_direction(ended.points[0], Vec3(145, 0, 0));
    check_direction(ended.points[2], Vec3(300, -12, 0));
    CHECK(last.welded.stretches == std::vector<joint::Stretch>{{0.0, 155.0 + 12.0}});
    check_direction(last.wall_2, Vec3::UnitY());  // on the leg it begins on
  }
}

}  // namespace seamturn::tests
