// SPDX-License-Identifier: MIT
#include "seamturn/geom/path.hpp"

#include <cmath>
#include <numbers>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using geom::ArcPath;
using geom::AtCorner;
using geom::CirclePath;
using geom::LinePath;
using geom::Path;
using geom::PolylinePath;
using geom::Vec3;

namespace {

const Path line = LinePath{Vec3(10, 0, 5), Vec3(10, 300, 405)};
const Path circle = CirclePath{Vec3(1, 2, 3), Vec3::UnitZ(), Vec3::UnitX(), 50.0};

const Path arc = ArcPath{Vec3(1, 2, 3), Vec3::UnitZ(), Vec3::UnitX(), 60.0, Angle::deg(90.0)};
/// Along +x, then up a wall, then along -y on it: legs of 100, 50 and 20 mm.
const Path bent =
    PolylinePath{{Vec3(0, 0, 0), Vec3(100, 0, 0), Vec3(100, 0, 50), Vec3(100, -20, 50)}, false};
/// Round a bar of 60 x 40 mm, anticlockwise seen from above.
const Path all_round =
    PolylinePath{{Vec3(0, 0, 5), Vec3(60, 0, 5), Vec3(60, 40, 5), Vec3(0, 40, 5)}, true};
const Path all_paths[] = {line, circle, arc, bent, all_round};

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
    check_vec(geom::path_station(line, -5.0).point, Vec3(10, -3, 1));
    check_vec(geom::path_station(line, 505.0).point, Vec3(10, 303, 409));
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
    for (const Path& path : all_paths) {
      const Path back = geom::reversed_path(path);
      const double length = geom::path_length_mm(path);
      CHECK(geom::path_length_mm(back) == doctest::Approx(length));
      for (double share : {0.0, 0.2, 0.5, 0.9, 1.0}) {
        const geom::Station there = geom::path_station(path, share * length);
        const geom::Station here =
            geom::path_station(back, (1.0 - share) * length, AtCorner::arriving);
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
      const Path& path = all_paths[i % 5];
      const double distance = random.between(0.0, geom::path_length_mm(path));
      const geom::Station still = geom::path_station(path, distance);
      const geom::Station moved = geom::path_station(geom::moved_path(pose, path), distance);
      INFO("seed 23, case " << i);
      check_vec(moved.point, pose.point(still.point));
      check_vec(moved.tangent, pose.direction(still.tangent));
    }
  }

  TEST_CASE(
      "given a quarter arc of 60 mm radius, it is 94.25 mm long and ends square to its start") {
    const double length = 30.0 * std::numbers::pi;
    CHECK(geom::path_length_mm(arc) == doctest::Approx(length));
    CHECK_FALSE(geom::is_closed(arc));
    check_vec(geom::path_station(arc, 0.0).point, Vec3(61, 2, 3));
    check_vec(geom::path_station(arc, length / 3).point,
              Vec3(1 + 60 * std::sqrt(3.0) / 2, 2 + 30, 3));
    check_vec(geom::path_station(arc, length).point, Vec3(1, 62, 3));
    check_vec(geom::path_station(arc, length).tangent, -Vec3::UnitX());
    check_vec(geom::carried_direction(arc, length, Vec3(1, 0, 1)), Vec3(0, 1, 1));
  }

  TEST_CASE("given an arc with tabs, it runs straight on beyond both ends") {
    const double length = geom::path_length_mm(arc);
    check_vec(geom::path_station(arc, -20.0).point, Vec3(61, -18, 3));
    check_vec(geom::path_station(arc, -20.0).tangent, Vec3::UnitY());
    check_vec(geom::path_station(arc, length + 20.0).point, Vec3(-19, 62, 3));
    check_vec(geom::carried_direction(arc, length + 20.0, Vec3::UnitX()), Vec3::UnitY());
  }

  TEST_CASE("given a polyline, each station lies on its leg and a corner belongs to both") {
    CHECK(geom::path_length_mm(bent) == doctest::Approx(170.0));
    check_vec(geom::path_station(bent, 40.0).point, Vec3(40, 0, 0));
    check_vec(geom::path_station(bent, 130.0).point, Vec3(100, 0, 30));
    check_vec(geom::path_station(bent, 100.0).point, Vec3(100, 0, 0));
    check_vec(geom::path_station(bent, 100.0).tangent, Vec3::UnitZ());
    check_vec(geom::path_station(bent, 100.0, AtCorner::arriving).tangent, Vec3::UnitX());
    check_vec(geom::path_station(bent, 180.0).point, Vec3(100, -30, 50));
    check_vec(geom::path_station(bent, -10.0).point, Vec3(-10, 0, 0));
    CHECK(geom::corner_stations_mm(bent) == std::vector<double>{100.0, 150.0});
    CHECK(geom::corner_stations_mm(arc).empty());
  }

  TEST_CASE("given a polyline from a floor onto a wall, the floor's normal becomes the wall's") {
    // The floor looks up; where the path climbs the wall at x = 100, the surface looks back along
    // -x.
    check_vec(geom::carried_direction(bent, 100.0, Vec3::UnitZ(), AtCorner::arriving),
              Vec3::UnitZ());
    check_vec(geom::carried_direction(bent, 100.0, Vec3::UnitZ()), -Vec3::UnitX());
    check_vec(geom::carried_direction(bent, 160.0, Vec3::UnitZ()), -Vec3::UnitX());
    check_vec(geom::carried_direction(bent, 120.0, Vec3::UnitY()), Vec3::UnitY());
    check_vec(geom::carried_direction(bent, 160.0, Vec3::UnitY()), Vec3::UnitZ());
  }

  TEST_CASE("given a bar of 60 x 40 mm welded all round, its sides' normals come round with it") {
    CHECK(geom::path_length_mm(all_round) == doctest::Approx(200.0));
    CHECK(geom::is_closed(all_round));
    const Vec3 out = -Vec3::UnitY();  // of the first side
    check_vec(geom::carried_direction(all_round, 80.0, out), Vec3::UnitX());
    check_vec(geom::carried_direction(all_round, 130.0, out), Vec3::UnitY());
    check_vec(geom::carried_direction(all_round, 199.0, out), -Vec3::UnitX());
    check_vec(geom::carried_direction(all_round, 200.0, out), out);
    check_vec(geom::carried_direction(all_round, 0.0, out, AtCorner::arriving), -Vec3::UnitX());
    check_vec(geom::carried_direction(all_round, 80.0, Vec3::UnitZ()), Vec3::UnitZ());
    check_vec(geom::path_station(all_round, 230.0).point, Vec3(30, 0, 5));
    CHECK(geom::corner_stations_mm(all_round) == std::vector<double>{0.0, 60.0, 100.0, 160.0});
  }

  TEST_CASE("for any path, law: lengths add up along it and stations are continuous") {
    for (const Path& path : all_paths) {
      const double length = geom::path_length_mm(path);
      constexpr int pieces = 4000;
      double sum = 0.0;
      for (int i = 0; i < pieces; ++i) {
        const Vec3 a = geom::path_station(path, length * i / pieces).point;
        const Vec3 b = geom::path_station(path, length * (i + 1) / pieces).point;
        CHECK((b - a).norm() <= length / pieces + 1e-9);
        sum += (b - a).norm();
      }
      // Chords are shorter than arcs by (step angle)^2 / 24, and cut corners by less than a step.
      CHECK(sum <= length + 1e-6);
      CHECK(sum >= length - 4.0 * length / pieces);
    }
  }

  TEST_CASE("for any path, law: a part of it passes where the whole does, and is open") {
    for (const Path& path : all_paths) {
      const double length_mm = geom::path_length_mm(path);
      CAPTURE(length_mm);
      std::vector<std::pair<double, double>> parts = {{0.0, 0.4 * length_mm},
                                                      {0.3 * length_mm, length_mm}};
      if (geom::is_closed(path)) parts.emplace_back(0.8 * length_mm, 1.2 * length_mm);
      if (geom::is_closed(path)) parts.emplace_back(-0.1 * length_mm, 0.25 * length_mm);
      for (const auto& [from_mm, to_mm] : parts) {
        CAPTURE(from_mm);
        const Path part = geom::part_of_path(path, from_mm, to_mm);
        CHECK_FALSE(geom::is_closed(part));
        CHECK(geom::path_length_mm(part) == doctest::Approx(to_mm - from_mm));
        for (int i = 0; i <= 20; ++i) {
          const double along_mm = (to_mm - from_mm) * i / 20.0;
          const geom::Station one = geom::path_station(part, along_mm);
          const double whole_mm = geom::is_closed(path)
                                      ? geom::wrapped_station_mm(from_mm + along_mm, length_mm)
                                      : from_mm + along_mm;
          CHECK((one.point - geom::path_station(path, whole_mm).point).norm() < 1e-8);
        }
      }
    }
  }

  TEST_CASE("for any path and station, law: a direction carried there and back is itself") {
    base::Random random(base::named_seed(29, "carried"));
    for (int i = 0; i < 200; ++i) {
      const Path& path = all_paths[i % 5];
      const double at = random.between(-20.0, 1.2 * geom::path_length_mm(path));
      const Vec3 v(random.between(-1, 1), random.between(-1, 1), random.between(0.1, 1));
      const Vec3 there = geom::carried_direction(path, at, v);
      INFO("seed 29, case " << i);
      check_vec(geom::carried_to_start(path, at, there), v);
      const Vec3 t0 = geom::path_station(path, 0.0).tangent;
      check_vec(geom::carried_direction(path, at, t0), geom::path_station(path, at).tangent);
    }
  }

  TEST_CASE("given stretches, key stations are ends, corners twice, and steps of an arc") {
    const auto distances = [](const Path& path, double from, double to) {
      std::vector<double> found;
      for (const geom::KeyStation& key : geom::key_stations(path, from, to)) {
        found.push_back(key.distance_mm);
      }
      return found;
    };
    CHECK(distances(line, 100.0, 140.0) == std::vector<double>{100.0, 140.0});
    CHECK(distances(bent, -10.0, 180.0) ==
          std::vector<double>{-10.0, 100.0, 100.0, 150.0, 150.0, 180.0});
    CHECK(distances(all_round, 0.0, 200.0) ==
          std::vector<double>{0.0, 60.0, 60.0, 100.0, 100.0, 160.0, 160.0, 200.0});
    CHECK(distances(all_round, 150.0, 210.0) ==
          std::vector<double>{150.0, 160.0, 160.0, 200.0, 200.0, 210.0});
    const double length = geom::path_length_mm(arc);
    const auto of_arc = distances(arc, -5.0, length);
    REQUIRE(of_arc.size() == 5);  // the tab's end, the arc's start, two steps of 30 deg, the end
    CHECK(of_arc[1] == 0.0);
    CHECK(of_arc[2] == doctest::Approx(length / 3));
    CHECK(distances(circle, 0.0, geom::path_length_mm(circle)).size() == 13);
  }

  TEST_CASE("refuses a polyline that turns straight back and one of a single point") {
    const Path back = PolylinePath{{Vec3(0, 0, 0), Vec3(9, 0, 0), Vec3(4, 0, 0)}, false};
    CHECK_THROWS_AS((void)geom::carried_direction(back, 12.0, Vec3::UnitZ()),
                    base::ContractViolation);
    const Path point = PolylinePath{{Vec3(0, 0, 0)}, false};
    CHECK_THROWS_AS((void)geom::path_length_mm(point), base::ContractViolation);
  }

  TEST_CASE("a station of a closed course is brought into one round") {
    // closed-form
    CHECK(geom::wrapped_station_mm(130.0, 100.0) == 30.0);
    CHECK(geom::wrapped_station_mm(-30.0, 100.0) == 70.0);
    CHECK(geom::wrapped_station_mm(100.0, 100.0) == 0.0);
    CHECK(geom::wrapped_station_mm(0.0, 100.0) == 0.0);
    CHECK(geom::way_round_mm(10.0, 30.0, 100.0) == 20.0);
    CHECK(geom::way_round_mm(95.0, 5.0, 100.0) == 10.0);
    CHECK(geom::way_round_mm(5.0, 295.0, 100.0) == 10.0);
  }
}

}  // namespace seamturn::tests
