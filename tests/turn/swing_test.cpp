// SPDX-License-Identifier: MIT
#include "seamturn/turn/swing.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Random;
using geom::Vec3;
using joint::Member;

namespace {

cell::Positioner table(double centre_height_mm) {
  cell::Positioner out;
  out.id = "T1";
  out.tilt_centre = Vec3(0.0, 0.0, centre_height_mm);
  out.overhang_mm = 150.0;
  out.axes.resize(2);
  out.axes[0].name = "tilt";
  out.axes[1].name = "rotate";
  for (cell::Axis& axis : out.axes) axis.speed_rad_s = 1.0;
  return out;
}

cell::Positioner headstock(double centre_height_mm) {
  cell::Positioner out;
  out.id = "H1";
  out.kind = cell::PositionerKind::headstock;
  out.tilt_centre = Vec3(0.0, 0.0, centre_height_mm);
  out.axes.resize(1);
  out.axes[0].name = "turn";
  out.axes[0].speed_rad_s = 1.0;
  return out;
}

/// A drum standing on the faceplate.
Member drum(double radius_mm, double height_mm) {
  Member out;
  out.id = "drum";
  joint::Bar bar;
  bar.width_mm = bar.height_mm = 2.0 * radius_mm;
  bar.length_mm = height_mm;
  out.shape = bar;
  return out;
}

Member plate(const Vec3& size_mm, const Vec3& corner) {
  Member out;
  out.id = "plate";
  out.shape = joint::Plate{size_mm.x(), size_mm.y(), size_mm.z()};
  out.X_JM.translation = corner;
  return out;
}

turn::SwingBody body_of(const Member& member) {
  turn::SwingBody body;
  body.members = {&member};
  return body;
}

}  // namespace

TEST_SUITE("turn/swing") {
  TEST_CASE("given a drum 800 mm in radius and 1 m high, depth and worst tilt are as worked out") {
    // computed: OH 0.15, h 1.0, R 0.8 m: 1.379 m below the pivot at 135 deg, worst 1.401 at 145.2.
    check_expected("at 135 deg",
                   turn::cylinder_depth_mm(150.0, 1000.0, 800.0, Angle::deg(135.0)),
                   {1379.0, 0.5, Origin::computed, "geometry by script"});
    const auto worst = turn::worst_cylinder_depth(150.0, 1000.0, 800.0);
    check_expected("worst", worst.depth_mm, {1401.0, 0.5, Origin::computed, "geometry by script"});
    check_expected(
        "worst at", worst.tilt.deg(), {145.2, 0.05, Origin::computed, "geometry by script"});
    // cross: the member's own lowest point, at every tilt, and the worst on the way.
    const Member member = drum(800.0, 1000.0);
    const turn::SwingBody body = body_of(member);
    for (double tilt_deg = 0.0; tilt_deg <= 180.0; tilt_deg += 7.5) {
      CAPTURE(tilt_deg);
      const auto low =
          turn::lowest_at(table(2000.0), body, {Angle::deg(tilt_deg), Angle::deg(33.0)});
      CHECK(2000.0 - low.height_mm ==
            doctest::Approx(turn::cylinder_depth_mm(150.0, 1000.0, 800.0, Angle::deg(tilt_deg))));
      CHECK(low.of == "drum");
    }
    const auto way = turn::lowest_on_way(
        table(2000.0), body, {Angle(), Angle()}, {Angle::deg(180.0), Angle::deg(-90.0)});
    CHECK(std::abs(2000.0 - way.height_mm - worst.depth_mm) < 0.01);
    CHECK(180.0 * way.at_ratio == doctest::Approx(worst.tilt.deg()).epsilon(1e-4));
  }

  TEST_CASE("for any shapes and turn, brute force: nothing on the way is lower than the lowest") {
    Random random(base::named_seed(51, "lowest"));
    for (int i = 0; i < 30; ++i) {
      INFO("seed 51, case " << i);
      const cell::Positioner positioner = i % 2 == 0 ? table(1200.0) : headstock(1200.0);
      const Member one = drum(random.between(50, 400), random.between(50, 900));
      const Member two = plate(Vec3(random.between(50, 1500), random.between(50, 600), 20.0),
                               Vec3(random.between(-600, 0), random.between(-600, 0), 300.0));
      turn::SwingBody body;
      body.members = {&one, &two};
      body.X_DJ = {geom::rotation_about(Vec3(1, 2, -1), Angle::deg(random.between(0, 360))),
                   Vec3(random.between(-200, 200), 50.0, 100.0)};
      joint::SetupSolid riser;
      riser.kind = "riser";
      riser.centre = Vec3(0, 0, 50);
      riser.size_mm = Vec3(random.between(100, 900), 300, 100);
      body.solids = {riser};
      std::vector<Angle> from, to;
      for (std::size_t k = 0; k < positioner.axes.size(); ++k) {
        from.push_back(Angle::deg(random.between(-180, 180)));
        to.push_back(Angle::deg(random.between(-180, 180)));
      }
      const auto lowest = turn::lowest_on_way(positioner, body, from, to);
      double least = 1e9;
      for (int k = 0; k <= 4000; ++k) {
        std::vector<Angle> here;
        for (std::size_t j = 0; j < from.size(); ++j) {
          here.push_back(from[j] + (k / 4000.0) * (to[j] - from[j]));
        }
        least = std::min(least, turn::lowest_at(positioner, body, here).height_mm);
      }
      CHECK(lowest.height_mm <= least + 0.01);
      CHECK(lowest.height_mm >= least - 0.5);
    }
  }

  TEST_CASE("given a floor just cleared and just not, the finding names what and how much") {
    const Member bar = plate(Vec3(100.0, 20.0, 800.0), Vec3(0.0, -10.0, -800.0));
    const turn::SwingBody body = body_of(bar);  // reaches 800 mm below the axis at 0
    const double reach_mm = std::hypot(800.0, 10.0);
    const auto codes = [&](double height_mm, std::optional<double> clearance_mm) {
      cell::Positioner positioner = headstock(height_mm);
      positioner.floor_clearance_mm = clearance_mm;
      const auto lowest =
          turn::lowest_on_way(positioner, body, {Angle::deg(-90.0)}, {Angle::deg(90.0)});
      const auto found = turn::check_swing(positioner, lowest, "S01 to S02");
      return found.empty() ? std::string() : found[0].code + ": " + found[0].text;
    };
    CHECK(codes(reach_mm + 0.1, {}).empty());
    CHECK(codes(reach_mm - 0.1, {}).find("turn.swing.floor: S01 to S02: plate would strike") == 0);
    CHECK(codes(reach_mm + 100.1, 100.0).empty());
    const std::string near = codes(reach_mm + 99.9, 100.0);
    CHECK(near.find("plate comes within 100 mm of the floor") != std::string::npos);
    CHECK(near.find("100 mm must stay free") != std::string::npos);
    // Turned the other way round it is never down there.
    cell::Positioner positioner = headstock(reach_mm - 100.0);
    const auto over =
        turn::lowest_on_way(positioner, body, {Angle::deg(90.0)}, {Angle::deg(180.0)});
    CHECK(turn::check_swing(positioner, over, "").empty());
  }

  TEST_CASE("for a beam on a headstock, closed-form: the rim is its corner, not its length") {
    const Member beam = plate(Vec3(3000.0, 300.0, 200.0), Vec3(0.0, -150.0, -50.0));
    const auto radii = turn::rim_radii_mm(headstock(1000.0), body_of(beam));
    REQUIRE(radii.size() == 1);
    const double corner_mm = std::hypot(150.0, 150.0);
    CHECK(radii[0] >= corner_mm - 1e-9);
    CHECK(radii[0] <= corner_mm * (1.0 + 4e-5));
  }

  TEST_CASE("for any load and setting, law: no point is farther from an axis than its rim") {
    Random random(base::named_seed(52, "rim"));
    for (int i = 0; i < 40; ++i) {
      INFO("seed 52, case " << i);
      cell::Positioner positioner = i % 2 == 0 ? table(1000.0) : headstock(1000.0);
      if (i % 4 == 0) {
        positioner.kind = cell::PositionerKind::station_changer;
        positioner.exchange_centre = Vec3(-2000.0, 300.0, 0.0);
      }
      const Vec3 size(random.between(50, 1500), random.between(50, 600), random.between(10, 500));
      const Member member = plate(
          size, Vec3(random.between(-900, 200), random.between(-900, 200), random.between(0, 90)));
      const auto radii = turn::rim_radii_mm(positioner, body_of(member));
      REQUIRE(radii.size() == positioner.axes.size());
      for (int k = 0; k < 40; ++k) {
        std::vector<Angle> axes;
        for (std::size_t j = 0; j < radii.size(); ++j) {
          axes.push_back(Angle::deg(random.between(-180, 180)));
        }
        const auto lines = turn::axis_lines_W(positioner, axes);
        for (const double x : {0.0, size.x()}) {
          for (const double y : {0.0, size.y()}) {
            const Vec3 corner = turn::pose_WD(positioner, axes)
                                    .point(member.X_JM.point(Vec3(x, y, k % 2 * size.z())));
            for (std::size_t j = 0; j < radii.size(); ++j) {
              CHECK(lines[j].along.cross(corner - lines[j].at).norm() <= radii[j] + 1e-9);
            }
          }
        }
      }
    }
  }

  TEST_CASE("given a cap on the rim's speed, an axis keeps it and a slower one its own") {
    cell::Positioner positioner = table(1000.0);
    positioner.axes[0].speed_rad_s = 0.2;
    positioner.axes[1].speed_rad_s = 0.5;
    const auto free = turn::held_to_rim_speed(positioner, {2000.0, 1000.0});
    CHECK(free.axes[1].speed_rad_s == 0.5);
    positioner.rim_speed_max_mm_s = 450.0;
    const auto held = turn::held_to_rim_speed(positioner, {2000.0, 1000.0});
    CHECK(held.axes[0].speed_rad_s == 0.2);
    CHECK(held.axes[1].speed_rad_s == doctest::Approx(0.45));
  }

  TEST_CASE("refuses an empty load because there is nothing to look at") {
    CHECK_THROWS_AS((void)turn::lowest_at(table(1000.0), turn::SwingBody{}, {Angle(), Angle()}),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)turn::rim_radii_mm(table(1000.0), turn::SwingBody{}),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)turn::cylinder_depth_mm(150.0, 0.0, 800.0, Angle()),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)turn::cylinder_depth_mm(150.0, 1000.0, 800.0, Angle::deg(181.0)),
                    base::ContractViolation);
  }
}

}  // namespace seamturn::tests
