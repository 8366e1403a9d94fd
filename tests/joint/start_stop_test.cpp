// SPDX-License-Identifier: MIT
#include "seamturn/joint/start_stop.hpp"

#include <algorithm>
#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using joint::LayerStops;
using joint::start_stop_course;
using joint::start_stop_map;
using joint::StartStopCourse;
using joint::StartStopMap;
using joint::StartStopRule;

namespace {

/// Round a post of 60 x 40 mm: corners at 0, 60, 100 and 160 of 200 mm.
StartStopCourse round_post() {
  StartStopCourse course;
  course.length_mm = 200.0;
  course.closed = true;
  course.corners_mm = {0.0, 60.0, 100.0, 160.0};
  return course;
}

double round_apart(double a, double b, double length) {
  const double off = std::fmod(std::abs(a - b), length);
  return std::min(off, length - off);
}

bool has_code(const StartStopMap& map, const std::string& code) {
  return std::any_of(map.findings.begin(), map.findings.end(), [&](const base::Finding& finding) {
    return finding.code == code;
  });
}

}  // namespace

TEST_SUITE("joint/start_stop") {
  TEST_CASE("given a post, 15 mm off corners and 30 mm stagger, the layers go on round it") {
    // closed-form: first clear station 15; 45 is 30 on; 75 is 30 on and 15 off the corner at 60.
    const StartStopMap map = start_stop_map({15.0, 30.0}, round_post(), 3);
    REQUIRE(map.layers.size() == 3);
    CHECK(map.layers[0].start_mm == doctest::Approx(15.0));
    CHECK(map.layers[1].start_mm == doctest::Approx(45.0));
    CHECK(map.layers[2].start_mm == doctest::Approx(75.0));
    CHECK(map.layers[2].layer == 3);
    CHECK(map.findings.empty());
  }

  TEST_CASE("given a post's shortest side of 40 mm, 30 mm off its longest corners is the most") {
    CHECK(start_stop_map({30.0, 0.0}, round_post(), 1).findings.empty());
    const StartStopMap map = start_stop_map({31.0, 0.0}, round_post(), 1);
    CHECK(has_code(map, "joint.length.stop_at_corner"));
    CHECK(map.layers[0].start_mm == doctest::Approx(30.0).epsilon(0.01));
  }

  TEST_CASE("given a ring of 200 mm, stops lie at most half of it apart") {
    StartStopCourse ring;
    ring.length_mm = 200.0;
    ring.closed = true;
    CHECK(start_stop_map({10.0, 100.0}, ring, 4).findings.empty());
    CHECK(has_code(start_stop_map({10.0, 101.0}, ring, 2), "joint.length.stops_close"));
    CHECK(start_stop_map({10.0, 101.0}, ring, 1).findings.empty());
  }

  TEST_CASE("for any closed seam, law: starts and stops keep off corners and stops apart") {
    base::Random random(base::named_seed(37, "stops"));
    int kept = 0;
    for (int i = 0; i < 300; ++i) {
      StartStopCourse course;
      course.length_mm = random.between(100.0, 900.0);
      course.closed = true;
      const int corners = static_cast<int>(random.between(0.0, 6.0));
      for (int k = 0; k < corners; ++k) {
        course.corners_mm.push_back(random.between(0.0, course.length_mm));
      }
      course.asked.overlap_mm = random.between(0.0, 20.0);
      const StartStopRule rule{random.between(0.0, 30.0), random.between(0.0, 50.0)};
      const StartStopMap map = start_stop_map(rule, course, 5);
      INFO("seed 37, case " << i);
      REQUIRE(map.layers.size() == 5);
      double corner = 1e9;
      double stop = 1e9;
      for (std::size_t k = 0; k < 5; ++k) {
        const LayerStops& layer = map.layers[k];
        CHECK(round_apart(layer.stop_mm - layer.start_mm,
                          course.asked.overlap_mm,
                          course.length_mm) < 1e-6);
        for (const double at : course.corners_mm) {
          corner = std::min({corner,
                             round_apart(layer.start_mm, at, course.length_mm),
                             round_apart(layer.stop_mm, at, course.length_mm)});
        }
        if (k > 0) {
          stop = std::min(stop,
                          round_apart(layer.stop_mm, map.layers[k - 1].stop_mm, course.length_mm));
        }
      }
      const bool clear = corner >= rule.corner_clear_mm - 1e-6;
      const bool staggered = stop >= rule.stagger_mm - 1e-6;
      CHECK(clear != has_code(map, "joint.length.stop_at_corner"));
      CHECK(staggered != has_code(map, "joint.length.stops_close"));
      kept += clear && staggered ? 1 : 0;
    }
    CHECK(kept > 150);
  }

  TEST_CASE("given an open seam between member corners, only tabs or returns move its ends off") {
    const geom::Path path = geom::LinePath{geom::Vec3(0, 0, 0), geom::Vec3(300, 0, 0)};
    joint::WeldLength asked;
    auto map = start_stop_map({10.0, 50.0}, start_stop_course(path, asked, true), 3);
    CHECK(has_code(map, "joint.length.stop_at_corner"));
    CHECK_FALSE(map.layers[0].reversed);
    CHECK(map.layers[1].reversed);
    CHECK(map.layers[0].stop_mm == 300.0);
    CHECK(map.layers[1].stop_mm == 0.0);
    CHECK_FALSE(has_code(map, "joint.length.stops_close"));
    asked.end_return_mm = 10.0;
    map = start_stop_map({10.0, 50.0}, start_stop_course(path, asked, true), 3);
    CHECK(map.findings.empty());
    CHECK(map.layers[0].start_mm == -10.0);
    CHECK(map.layers[0].stop_mm == 310.0);
    asked.end_return_mm = 9.9;
    map = start_stop_map({10.0, 50.0}, start_stop_course(path, asked, true), 3);
    CHECK(has_code(map, "joint.length.stop_at_corner"));
    CHECK(start_stop_map({10.0, 50.0}, start_stop_course(path, {}, false), 3).findings.empty());
  }

  TEST_CASE("given no stagger on an open seam, every layer runs the same way") {
    // law: only a stagger asks for turning round.
    StartStopCourse course;
    course.length_mm = 300.0;
    for (const auto& layer : start_stop_map({0.0, 0.0}, course, 3).layers) {
      CHECK_FALSE(layer.reversed);
      CHECK(layer.start_mm == 0.0);
    }
    CHECK(start_stop_map({0.0, 30.0}, course, 3).layers[1].reversed);
  }

  TEST_CASE("given an open seam shorter than the stagger, its stops are told to lie too close") {
    const geom::Path path = geom::LinePath{geom::Vec3(0, 0, 0), geom::Vec3(40, 0, 0)};
    const auto course = start_stop_course(path, {}, false);
    CHECK(start_stop_map({0.0, 40.0}, course, 2).findings.empty());
    CHECK(has_code(start_stop_map({0.0, 40.1}, course, 2), "joint.length.stops_close"));
  }

  TEST_CASE("refuses no layers, corners off the seam and elements as a caller's bug") {
    CHECK_THROWS_AS((void)start_stop_map({}, round_post(), 0), base::ContractViolation);
    StartStopCourse course = round_post();
    course.corners_mm.push_back(201.0);
    CHECK_THROWS_AS((void)start_stop_map({}, course, 1), base::ContractViolation);
    course = round_post();
    course.asked.form = joint::LengthForm::intermittent;
    CHECK_THROWS_AS((void)start_stop_map({}, course, 1), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
