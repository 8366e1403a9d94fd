// SPDX-License-Identifier: MIT
#include "seamturn/turn/clear_way.hpp"

#include <cmath>
#include <string>

#include "seamturn/base/random.hpp"
#include "seamturn/turn/move_time.hpp"
#include "seamturn/turn/turn_load.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Random;
using geom::Vec3;
using joint::Member;
using Axes = std::vector<Angle>;

namespace {

/// Tilts either way, turns for ever; axes that hold anything.
cell::Positioner strong_table(double centre_height_mm) {
  cell::Positioner out;
  out.id = "T1";
  out.tilt_centre = Vec3(0.0, 0.0, centre_height_mm);
  out.axes.resize(2);
  out.axes[0].name = "tilt";
  out.axes[0].min = Angle::deg(-135.0);
  out.axes[0].max = Angle::deg(135.0);
  out.axes[1].name = "rotate";
  out.axes[1].endless = true;
  for (cell::Axis& axis : out.axes) {
    axis.speed_rad_s = 0.5;
    axis.acceleration_rad_s2 = 1.0;
    axis.torque_max_nm = 1e9;
  }
  return out;
}

/// A lever lying on the table, all to one side of the turning axis.
Member lever(double length_mm) {
  Member out;
  out.id = "lever";
  out.shape = joint::Plate{length_mm, 20.0, 20.0};
  out.X_JM.translation = Vec3(0.0, -10.0, 0.0);
  return out;
}

/// Where the lever points straight down when the table stands upright.
double down_deg(const cell::Positioner& positioner, const Member& member) {
  turn::SwingBody body;
  body.members = {&member};
  double best_deg = 0.0;
  double least_mm = 1e9;
  for (const double deg : {0.0, 90.0, 180.0, -90.0}) {
    const Axes here = {Angle::deg(90.0), Angle::deg(deg)};
    const double height_mm = turn::lowest_at(positioner, body, here).height_mm;
    if (height_mm >= least_mm) continue;
    least_mm = height_mm;
    best_deg = deg;
  }
  return best_deg;
}

/// The same, turning no more than 100 deg to each side of an angle.
cell::Positioner turning_near(cell::Positioner positioner, double deg) {
  positioner.axes[1].endless = false;
  positioner.axes[1].min = Angle::deg(deg - 100.0);
  positioner.axes[1].max = Angle::deg(deg + 100.0);
  return positioner;
}

turn::ClearWays ways_of(const cell::Positioner& positioner, const Member& member) {
  turn::SwingBody body;
  body.members = {&member};
  return turn::ClearWays(positioner, body, joint::body_of(member));
}

Axes axes(double tilt_deg, double rotate_deg) {
  return {Angle::deg(tilt_deg), Angle::deg(rotate_deg)};
}

/// The lowest of a whole legged way, looked at every third of a degree.
double lowest_mm(const cell::Positioner& positioner,
                 const Member& member,
                 const Axes& from,
                 const turn::LeggedWay& way,
                 const Axes& to) {
  turn::SwingBody body;
  body.members = {&member};
  double least = 1e9;
  Axes at = from;
  std::vector<Axes> ends = way.halts;
  ends.push_back(to);
  for (const Axes& end : ends) {
    constexpr int looks = 1000;
    for (int k = 0; k <= looks; ++k) {
      Axes here = at;
      for (std::size_t i = 0; i < at.size(); ++i) {
        here[i] = at[i] + static_cast<double>(k) / looks *
                              turn::axis_travel(positioner.axes[i], at[i], end[i]);
      }
      least = std::min(least, turn::lowest_at(positioner, body, here).height_mm);
    }
    at = end;
  }
  return least;
}

double legs_s(const cell::Positioner& positioner,
              const Axes& from,
              const turn::LeggedWay& way,
              const Axes& to) {
  double sum_s = 0.0;
  Axes at = from;
  for (const Axes& halt : way.halts) {
    sum_s += turn::turn_time_s(positioner, at, halt);
    at = halt;
  }
  return sum_s + turn::turn_time_s(positioner, at, to);
}

}  // namespace

TEST_SUITE("turn/clear_way") {
  TEST_CASE("given a floor out of reach, the way is straight and as long as the turn") {
    const Member member = lever(900.0);
    const cell::Positioner positioner = strong_table(1000.0);
    const auto way = ways_of(positioner, member).find(axes(90.0, 0.0), axes(90.0, 170.0));
    CHECK(way.clear);
    CHECK(way.halts.empty());
    CHECK(way.time_s == turn::turn_time_s(positioner, axes(90.0, 0.0), axes(90.0, 170.0)));
  }

  TEST_CASE("given a lever that would sweep the floor, closed-form: it is lifted just enough") {
    // At tilt t its tip hangs sin t times its length below the table when it points down. Pivot at
    // 800 mm, lever 1000 mm with its rim: clear for a whole turn only while 1000 sin t < 800, so up
    // to 53 deg; of the halts offered 50 deg is the one nearest to 90.
    const Member member = lever(1000.0);
    const double down = down_deg(strong_table(800.0), member);
    const cell::Positioner positioner = turning_near(strong_table(800.0), down);
    const auto ways = ways_of(positioner, member);
    const Axes from = axes(90.0, down - 80.0), to = axes(90.0, down + 80.0);
    REQUIRE(ways.check_standing(from, "").empty());
    REQUIRE(ways.check_standing(to, "").empty());
    REQUIRE_FALSE(ways.check_standing(axes(90.0, down), "").empty());
    const auto way = ways.find(from, to);
    CHECK(way.clear);
    REQUIRE(way.halts.size() == 2);
    for (const Axes& halt : way.halts) CHECK(halt[0].deg() == doctest::Approx(50.0));
    CHECK(way.halts[0][1].deg() == doctest::Approx(from[1].deg()));
    CHECK(way.halts[1][1].deg() == doctest::Approx(to[1].deg()));
    CHECK(way.time_s == doctest::Approx(legs_s(positioner, from, way, to)));
    CHECK(lowest_mm(positioner, member, from, way, to) >= 0.0);
  }

  TEST_CASE("given a clearance, the lever is lifted further") {
    const Member member = lever(1000.0);
    const double down = down_deg(strong_table(800.0), member);
    cell::Positioner positioner = turning_near(strong_table(800.0), down);
    positioner.floor_clearance_mm = 150.0;  // 1000 sin t < 650: 40.5 deg
    const auto way =
        ways_of(positioner, member).find(axes(90.0, down - 80.0), axes(90.0, down + 80.0));
    REQUIRE(way.halts.size() == 2);
    CHECK(way.halts[0][0].deg() == doctest::Approx(40.0));
  }

  TEST_CASE("given an axis that turns for ever, a lever goes the long way round over the top") {
    const Member member = lever(1000.0);
    const cell::Positioner positioner = strong_table(800.0);
    const double down = down_deg(positioner, member);
    const Axes from = axes(90.0, down - 80.0), to = axes(90.0, down + 80.0);
    const auto way = ways_of(positioner, member).find(from, to);
    CHECK(way.clear);
    REQUIRE(way.halts.size() == 1);
    CHECK(way.halts[0][0].deg() == doctest::Approx(90.0));
    // 200 deg in two legs beside 160 deg through the floor.
    const double first_deg = turn::axis_travel(positioner.axes[1], from[1], way.halts[0][1]).deg();
    const double second_deg = turn::axis_travel(positioner.axes[1], way.halts[0][1], to[1]).deg();
    CHECK(first_deg + second_deg == doctest::Approx(-200.0));
  }

  TEST_CASE("given plates that do not hold the load half way, one axis goes after the other") {
    // The centre of gravity lies off the turning axis: level nothing turns that axis, tilted it
    // does, unless the part hangs straight down or stands straight up.
    const Member member = lever(1000.0);
    cell::Positioner positioner = strong_table(5000.0);
    const Axes from = axes(0.0, 0.0);
    Axes to = axes(60.0, 0.0);
    const joint::Body load = joint::body_of(member);
    double least_nm = 1e9;
    for (const double deg : {0.0, 90.0, 180.0, -90.0}) {
      const auto there = turn::turn_peaks(positioner, load, axes(60.0, deg), axes(60.0, deg));
      if (std::abs(there.still[1].torque_nm) >= least_nm) continue;
      least_nm = std::abs(there.still[1].torque_nm);
      to[1] = Angle::deg(deg + 180.0);
    }
    const auto straight = turn::turn_peaks(positioner, load, from, to);
    REQUIRE(std::abs(straight.still[1].torque_nm) > 1.5);
    positioner.axes[1].torque_max_nm = 0.5 * std::abs(straight.still[1].torque_nm);
    const auto way = ways_of(positioner, member).find(from, to);
    CHECK(way.clear);
    REQUIRE(way.halts.size() == 1);
    CHECK(way.halts[0][0].deg() == doctest::Approx(0.0));  // turned while level, then tilted
    CHECK(way.halts[0][1].deg() == doctest::Approx(to[1].deg()));
  }

  TEST_CASE("given an end that strikes the floor, no way is clear and the straight one is told") {
    const Member member = lever(1000.0);
    const auto ways = ways_of(strong_table(800.0), member);
    const double down = down_deg(strong_table(800.0), member);
    const auto way = ways.find(axes(0.0, 0.0), axes(90.0, down));
    CHECK_FALSE(way.clear);
    CHECK(way.halts.empty());
    const auto told = ways.check_standing(axes(90.0, down), "tilt 90 deg");
    REQUIRE(told.size() == 1);
    CHECK(told[0].code == "turn.swing.floor");
    CHECK(told[0].text.find("tilt 90 deg: lever would strike the floor, 2") == 0);
  }

  TEST_CASE("for any turns, brute force: what is called clear is, and no candidate is quicker") {
    Random random(base::named_seed(53, "ways"));
    int round = 0, none = 0;
    for (int i = 0; i < 200; ++i) {
      INFO("seed 53, case " << i);
      const Member member = lever(random.between(500.0, 1500.0));
      cell::Positioner positioner = strong_table(random.between(500.0, 1200.0));
      positioner.axes[1].speed_rad_s = random.between(0.1, 1.0);
      const auto ways = ways_of(positioner, member);
      const Axes from = axes(random.between(-135, 135), random.between(-180, 180));
      const Axes to = axes(random.between(-135, 135), random.between(-180, 180));
      const bool ends_stand =
          ways.check_standing(from, "").empty() && ways.check_standing(to, "").empty();
      const auto way = ways.find(from, to);
      if (!ends_stand) CHECK_FALSE(way.clear);
      if (!way.clear) {
        ++none;
        CHECK(way.halts.empty());
        continue;
      }
      CHECK(lowest_mm(positioner, member, from, way, to) >= -0.01);
      CHECK(way.time_s == doctest::Approx(legs_s(positioner, from, way, to)));
      const turn::LeggedWay straight;
      if (way.halts.empty()) continue;
      ++round;
      CHECK(lowest_mm(positioner, member, from, straight, to) < 0.01);
      // Every tilt of the grid, worked through by hand.
      for (double tilt_deg = -135.0; tilt_deg <= 135.0; tilt_deg += 5.0) {
        turn::LeggedWay over;
        over.halts = {axes(tilt_deg, from[1].deg()), axes(tilt_deg, to[1].deg())};
        if (legs_s(positioner, from, over, to) >= way.time_s - 1e-9) continue;
        CHECK(lowest_mm(positioner, member, from, over, to) < 0.01);
      }
    }
    CHECK(round >= 5);
    CHECK(none >= 5);
  }

  TEST_CASE("for any load and setting, law: nothing comes below the height never gone below") {
    Random random(base::named_seed(54, "never"));
    for (int i = 0; i < 40; ++i) {
      INFO("seed 54, case " << i);
      cell::Positioner positioner = strong_table(900.0);
      if (i % 2 == 0) {
        positioner.kind = cell::PositionerKind::station_changer;
        positioner.exchange_centre = Vec3(-2000.0, 300.0, 0.0);
      }
      const Member member = lever(random.between(200.0, 2000.0));
      turn::SwingBody body;
      body.members = {&member};
      body.X_DJ.translation = Vec3(random.between(-300, 300), 40.0, random.between(-100, 300));
      const double never_mm = turn::never_below_mm(positioner, body);
      for (int k = 0; k < 40; ++k) {
        const Axes here = axes(random.between(-180, 180), random.between(-180, 180));
        CHECK(turn::lowest_at(positioner, body, here).height_mm >= never_mm - 1e-9);
      }
    }
  }
}

}  // namespace seamturn::tests
