// SPDX-License-Identifier: MIT
#include "seamturn/geom/path.hpp"

#include <cmath>
#include <numbers>

#include "oracle.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using geom::CirclePath;
using geom::LinePath;
using geom::Path;
using geom::Vec3;

namespace {

const Path line = LinePath{Vec3(10, 0, 5), Vec3(10, 300, 405)};
const Path circle = CirclePath{Vec3(1, 2, 3), Vec3::UnitZ(), Vec3::UnitX(), 50.0};

void check_vec(const Vec3& got, const Vec3& expected) {
  INFO("got " << got.transpose() << ", expected " << expected.transpose());
  CHECK((got - expected).norm() < 1e-9);
}

}  // namespace

TEST_SUITE("geom/path") {
  TEST_CASE("given a line, its length, stations and ends are those of the triangle 3-4-5") {
    CHECK(geom::path_length_mm(line) == doctest::Approx(500.0));
    CHECK_FALSE(geom::is_closed(line));
    check_vec(geom::path_station(line, 250.0).point, Vec3(10, 150, 205));
    check_vec(geom::path_station(line, 250.0).tangent, Vec3(0, 0.6, 0.8));
    check_vec(geom::path_station(line, -5.0).point, Vec3(10, 0, 5));
    check_vec(geom::path_station(line, 505.0).point, Vec3(10, 300, 405));
    check_vec(geom::carried_direction(line, 250.0, Vec3::UnitX()), Vec3::UnitX());
  }

  TEST_CASE("given a circle, a quarter round it stands across the start and runs right-handed") {
    const double length = 2.0 * std::numbers::pi * 50.0;
    CHECK(geom::path_length_mm(circle) == doctest::Approx(length));
    CHECK(geom::is_closed(circle));
    check_vec(geom::path_station(circle, 0.0).point, Vec3(51, 2, 3));
    check_vec(geom::path_station(circle, 0.0).tangent, Vec3::UnitY());
    check_vec(geom::path_station(circle, length / 4).point, Vec3(1, 52, 3));
    check_vec(geom::path_station(circle, length / 4).tangent, -Vec3::UnitX());
    check_vec(geom::path_station(circle, 1.25 * length).point, Vec3(1, 52, 3));
    check_vec(geom::carried_direction(circle, length / 4, Vec3(1, 0, 1)), Vec3(0, 1, 1));
    check_vec(geom::carried_direction(circle, -length / 4, Vec3(1, 0, 1)), Vec3(0, -1, 1));
  }

  TEST_CASE("for any path and station, law: reversed it passes the same points the other way") {
    for (const Path& path : {line, circle}) {
      const Path back = geom::reversed_path(path);
      const double length = geom::path_length_mm(path);
      CHECK(geom::path_length_mm(back) == doctest::Approx(length));
      for (double share : {0.0, 0.2, 0.5, 0.9, 1.0}) {
        const geom::Station there = geom::path_station(path, share * length);
        const geom::Station here = geom::path_station(back, (1.0 - share) * length);
        check_vec(here.point, there.point);
        check_vec(here.tangent, -there.tangent);
      }
    }
  }

  TEST_CASE("for any pose, law: a moved path passes the moved points") {
    base::Random random(base::named_seed(23, "moved"));
    for (int i = 0; i < 200; ++i) {
      const Vec3 axis(random.between(-1, 1), random.between(-1, 1), random.between(0.1, 1));
      const geom::Pose pose{geom::rotation_about(axis, Angle::deg(random.between(-180, 180))),
                            Vec3(random.between(-99, 99), 4.0, 5.0)};
      const Path& path = i % 2 == 0 ? line : circle;
      const double distance = random.between(0.0, geom::path_length_mm(path));
      const geom::Station still = geom::path_station(path, distance);
      const geom::Station moved = geom::path_station(geom::moved_path(pose, path), distance);
      INFO("seed 23, case " << i);
      check_vec(moved.point, pose.point(still.point));
      check_vec(moved.tangent, pose.direction(still.tangent));
    }
  }
}

}  // namespace seamturn::tests
