// SPDX-License-Identifier: MIT
// Ways that keep within what the axes hold, and halts that keep within their travel.
#include <algorithm>
#include <cmath>
#include <string>

#include <doctest/doctest.h>

#include "seamturn/base/random.hpp"
#include "seamturn/turn/clear_way.hpp"
#include "seamturn/turn/load.hpp"
#include "seamturn/turn/move_time.hpp"
#include "seamturn/turn/turn_load.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Random;
using geom::Vec3;
using joint::Member;
using Axes = std::vector<Angle>;

namespace {

Axes at(double tilt_deg, double rotate_deg) {
  return {Angle::deg(tilt_deg), Angle::deg(rotate_deg)};
}

/// Far above any floor; both axes hold anything.
cell::Positioner high_table() {
  cell::Positioner out;
  out.id = "T1";
  out.tilt_centre = Vec3(0.0, 0.0, 9000.0);
  out.overhang_mm = 150.0;
  out.axes.resize(2);
  out.axes[0].name = "tilt";
  out.axes[0].min = Angle::deg(-135.0);
  out.axes[0].max = Angle::deg(135.0);
  out.axes[1].name = "rotate";
  out.axes[1].min = Angle::deg(-360.0);
  out.axes[1].max = Angle::deg(360.0);
  for (cell::Axis& axis : out.axes) {
    axis.speed_rad_s = 0.5;
    axis.acceleration_rad_s2 = 1e-6;  // no torque on top of the load's
    axis.torque_max_nm = 1e9;
  }
  return out;
}

/// A bar that lies on the table beside the turning axis.
Member bar_beside(double x_mm, double y_mm) {
  Member out;
  out.id = "bar";
  out.shape = joint::Plate{300.0, 80.0, 60.0};
  out.X_JM.translation = Vec3(x_mm, y_mm, 0.0);
  return out;
}

turn::ClearWays load_only(const cell::Positioner& positioner, const Member& member) {
  return turn::ClearWays(positioner, turn::SwingBody{}, joint::body_of(member));
}

/// Largest torque on each axis along a legged way, margins counted, looked at every 1 %.
std::vector<double> most_nm(const cell::Positioner& positioner,
                            const Member& member,
                            const Axes& from,
                            const turn::LeggedWay& way,
                            const Axes& to) {
  std::vector<double> most(positioner.axes.size(), 0.0);
  const joint::Weight load = joint::body_of(member).weight;
  std::vector<Axes> ends = way.halts;
  ends.push_back(to);
  Axes begin = from;
  for (const Axes& end : ends) {
    for (int k = 0; k <= 100; ++k) {
      Axes here = begin;
      for (std::size_t i = 0; i < here.size(); ++i) {
        here[i] = begin[i] + k / 100.0 * turn::axis_travel(positioner.axes[i], begin[i], end[i]);
      }
      const auto torques = turn::safe_torques_nm(positioner, load, here);
      for (std::size_t i = 0; i < most.size(); ++i) {
        most[i] = std::max(most[i], std::abs(torques[i]));
      }
    }
    begin = end;
  }
  return most;
}

bool is_held(const cell::Positioner& positioner, const std::vector<double>& torques_nm) {
  for (std::size_t i = 0; i < torques_nm.size(); ++i) {
    if (torques_nm[i] > positioner.axes[i].torque_max_nm * (1.0 + 1e-9)) return false;
  }
  return true;
}

}  // namespace

TEST_SUITE("turn/clear_load") {
  TEST_CASE("for any load and turn, law: a way called clear is held all along, else none is") {
    Random random(base::named_seed(61, "held"));
    int straight = 0, round = 0, none = 0;
    for (int i = 0; i < 60; ++i) {
      INFO("seed 61, case " << i);
      cell::Positioner positioner = high_table();
      if (i % 3 == 0) positioner.margin = cell::LoadMargin{0.3, 60.0};
      if (i % 4 == 0) {
        positioner.kind = cell::PositionerKind::roll_arm;
        positioner.overhang_mm = -random.between(0.0, 300.0);
      }
      const Member member = bar_beside(random.between(-300, 300), random.between(-300, 300));
      const Axes from = at(random.between(-135, 135), random.between(-180, 180));
      const Axes to = at(random.between(-135, 135), random.between(-180, 180));
      const auto worst = most_nm(positioner, member, from, {}, to);
      // One axis is made too weak, or just strong enough.
      const std::size_t weak = i % 2 == 0 ? 1 : 0;
      positioner.axes[weak].torque_max_nm = worst[weak] * random.between(0.6, 1.1);
      const auto way = load_only(positioner, member).find(from, to);
      const auto torques = most_nm(positioner, member, from, way, to);
      const bool straight_holds = is_held(positioner, worst);
      CHECK(is_held(positioner, torques) == way.clear);
      // Every leg goes somewhere.
      Axes begin = from;
      for (const Axes& halt : way.halts) {
        CHECK(turn::turn_time_s(positioner, begin, halt) > 0.0);
        begin = halt;
      }
      if (!way.halts.empty()) CHECK(turn::turn_time_s(positioner, begin, to) > 0.0);
      CHECK(way.halts.empty() == (straight_holds || !way.clear));
      straight += straight_holds ? 1 : 0;
      round += way.clear && !way.halts.empty() ? 1 : 0;
      none += way.clear ? 0 : 1;
    }
    CHECK(straight > 5);
    CHECK(round > 5);
    CHECK(none > 5);
  }

  TEST_CASE("given angles off the grid, one axis goes after the other, whichever must be first") {
    // Level nothing turns the rotate axis: it is turned there, before the tilt or after it.
    const Member member = bar_beside(200.0, -40.0);
    cell::Positioner positioner = high_table();
    const joint::Weight load = joint::body_of(member).weight;
    const Axes level = at(0.0, 1.3);
    Axes leaned = at(61.7, 0.0);
    double least_nm = 1e9;
    for (double deg = -179.7; deg < 180.0; deg += 1.0) {
      const Axes here = at(61.7, deg);
      const double nm = std::abs(turn::safe_torques_nm(positioner, load, here)[1]);
      const bool far = std::abs((here[1] - level[1]).deg()) > 95.0;
      if (!far || nm >= least_nm) continue;
      least_nm = nm;
      leaned = here;
    }
    const double straight_nm = most_nm(positioner, member, level, {}, leaned)[1];
    REQUIRE(straight_nm > 3.0 * least_nm);
    positioner.axes[1].torque_max_nm = 0.5 * straight_nm;
    const auto ways = load_only(positioner, member);
    const auto there = ways.find(level, leaned);
    const auto back = ways.find(leaned, level);
    REQUIRE((there.halts.size() == 1 && back.halts.size() == 1));
    for (const turn::LeggedWay& way : {there, back}) {
      CHECK(way.halts[0][0].deg() == doctest::Approx(0.0));
      CHECK(way.halts[0][1].deg() == doctest::Approx(leaned[1].deg()));
    }
  }

  TEST_CASE(
      "given three axes in a chain, closed-form: the first is looked at with all their reach") {
    // Level axes at 0 and 500 mm, an upright one at 1300 mm with the load on it: half way of a
    // swing about the first the load hangs 1300 mm out, and the plate holds 1000 mm.
    Member member;
    member.id = "block";
    member.shape = joint::Plate{100.0, 100.0, 100.0};
    cell::Positioner positioner = high_table();
    positioner.axes.insert(positioner.axes.begin(), positioner.axes.front());
    positioner.tilt_centre = Vec3(1300.0, 0.0, 9000.0);
    positioner.overhang_mm = 0.0;
    positioner.axes[0].line = cell::AxisLine{Vec3::UnitY(), Vec3(0.0, 0.0, 9000.0)};
    positioner.axes[1].line = cell::AxisLine{Vec3::UnitY(), Vec3(500.0, 0.0, 9000.0)};
    positioner.axes[2].line = cell::AxisLine{Vec3::UnitZ(), Vec3(1300.0, 0.0, 9000.0)};
    const joint::Weight load = joint::body_of(member).weight;
    positioner.axes[0].torque_max_nm = load.mass_kg * 9.80665 * 1.0;
    const auto from = Axes{Angle::deg(-80.0), Angle(), Angle()};
    const auto to = Axes{Angle::deg(80.0), Angle(), Angle()};
    const auto worst = most_nm(positioner, member, from, {}, to);
    REQUIRE(worst[0] > positioner.axes[0].torque_max_nm);
    const auto way = load_only(positioner, member).find(from, to);
    CHECK((!way.clear || !way.halts.empty()));
    if (way.clear) CHECK(is_held(positioner, most_nm(positioner, member, from, way, to)));
  }

  TEST_CASE(
      "given plates that hold at rest, a turn too brisk for them goes straight all the same") {
    // What is asked while speeding up is warned of: it is turned more gently, not another way.
    const Member member = bar_beside(200.0, 0.0);
    cell::Positioner positioner = high_table();
    for (cell::Axis& axis : positioner.axes) axis.acceleration_rad_s2 = 20.0;
    const Axes from = at(30.0, 0.0), to = at(60.0, 40.0);
    const auto worst = most_nm(positioner, member, from, {}, to);
    for (std::size_t i = 0; i < 2; ++i) positioner.axes[i].torque_max_nm = 1.01 * worst[i];
    const joint::Body load = joint::body_of(member);
    const auto peaks = turn::turn_peaks(positioner, load, from, to);
    const auto told = turn::check_turn_load(positioner, load, from, to, peaks, "");
    REQUIRE_FALSE(told.empty());
    REQUIRE_FALSE(base::has_errors(told));
    const auto way = load_only(positioner, member).find(from, to);
    CHECK(way.clear);
    CHECK(way.halts.empty());
  }

  TEST_CASE("given a halt beyond the travel of an axis, closed-form: it is not offered") {
    // Pivot at 800 mm, lever 1000 mm: clear for a whole turn below asin 0.8, 53.1 deg of tilt. From
    // 52 deg on the axis has no whole five degrees there, from 50 deg on it has.
    Member lever;
    lever.id = "lever";
    lever.shape = joint::Plate{1000.0, 20.0, 20.0};
    lever.X_JM.translation = Vec3(0.0, -10.0, 0.0);
    turn::SwingBody body;
    body.members = {&lever};
    for (const double side : {1.0, -1.0}) {
      for (const double least_deg : {50.0, 52.0}) {
        INFO("tilt on side " << side << " from " << least_deg << " deg on");
        cell::Positioner positioner = high_table();
        positioner.tilt_centre.z() = 800.0;
        positioner.overhang_mm = 0.0;
        cell::Axis& tilt = positioner.axes[0];
        tilt.min = Angle::deg(side > 0.0 ? least_deg : -100.0);
        tilt.max = Angle::deg(side > 0.0 ? 100.0 : -least_deg);
        double down_deg = 0.0, lowest_mm = 1e9;
        for (const double deg : {0.0, 90.0, 180.0, -90.0}) {
          const double mm = turn::lowest_at(positioner, body, at(side * 90.0, deg)).height_mm;
          if (mm >= lowest_mm) continue;
          lowest_mm = mm;
          down_deg = deg;
        }
        positioner.axes[1].min = Angle::deg(down_deg - 100.0);
        positioner.axes[1].max = Angle::deg(down_deg + 100.0);
        const turn::ClearWays ways(positioner, body, joint::body_of(lever));
        const auto way =
            ways.find(at(side * 90.0, down_deg - 80.0), at(side * 90.0, down_deg + 80.0));
        CHECK(way.clear == (least_deg < 51.0));
        for (const Axes& halt : way.halts) {
          CHECK(halt[0].deg() == doctest::Approx(side * 50.0));
        }
      }
    }
  }

  TEST_CASE("for any clearance, law: a way called clear keeps it, and the last of it is used") {
    Random random(base::named_seed(62, "clearance"));
    int round = 0, straight = 0;
    for (int i = 0; i < 800; ++i) {
      INFO("seed 62, case " << i);
      Member member = bar_beside(random.between(-700, 0), -40.0);
      member.shape = joint::Plate{random.between(500, 1200), 80.0, 60.0};
      turn::SwingBody body;
      body.members = {&member};
      cell::Positioner positioner = high_table();
      positioner.tilt_centre.z() = random.between(600.0, 1300.0);
      positioner.floor_clearance_mm = random.between(0.0, 400.0);
      positioner.axes[1].endless = i % 2 == 0;
      const Axes from = at(random.between(-135, 135), random.between(-180, 180));
      const Axes to = at(random.between(-135, 135), random.between(-180, 180));
      const auto way = turn::ClearWays(positioner, body, joint::body_of(member)).find(from, to);
      const auto lowest_mm = [&](const turn::LeggedWay& legs) {
        double least_mm = 1e9;
        std::vector<Axes> ends = legs.halts;
        ends.push_back(to);
        Axes begin = from;
        for (const Axes& end : ends) {
          for (int k = 0; k <= 500; ++k) {
            Axes here = begin;
            for (std::size_t a = 0; a < 2; ++a) {
              here[a] =
                  begin[a] + k / 500.0 * turn::axis_travel(positioner.axes[a], begin[a], end[a]);
            }
            least_mm = std::min(least_mm, turn::lowest_at(positioner, body, here).height_mm);
          }
          begin = end;
        }
        return least_mm;
      };
      if (way.clear) CHECK(lowest_mm(way) >= *positioner.floor_clearance_mm - 0.01);
      if (!way.clear || !way.halts.empty()) {
        CHECK(lowest_mm({}) < *positioner.floor_clearance_mm + 0.05);
      }
      round += way.clear && !way.halts.empty() ? 1 : 0;
      straight += way.clear && way.halts.empty() ? 1 : 0;
    }
    CHECK(round > 5);
    CHECK(straight > 50);
  }

  TEST_CASE("given an endless axis, a lever goes over the top whichever half turn that is") {
    for (const double drawn_deg : {0.0, 90.0, 180.0, 270.0}) {
      INFO("drawn at " << drawn_deg << " deg");
      Member lever;
      lever.id = "lever";
      lever.shape = joint::Plate{1000.0, 20.0, 20.0};
      lever.X_JM.rotation = geom::rotation_about(Vec3::UnitZ(), Angle::deg(drawn_deg));
      lever.X_JM.translation = lever.X_JM.rotation * Vec3(0.0, -10.0, 0.0);
      turn::SwingBody body;
      body.members = {&lever};
      cell::Positioner positioner = high_table();
      positioner.tilt_centre.z() = 800.0;
      positioner.overhang_mm = 0.0;
      positioner.axes[1].endless = true;
      double down_deg = 0.0, lowest_mm = 1e9;
      for (const double deg : {0.0, 90.0, 180.0, -90.0}) {
        const double mm = turn::lowest_at(positioner, body, at(90.0, deg)).height_mm;
        if (mm >= lowest_mm) continue;
        lowest_mm = mm;
        down_deg = deg;
      }
      const Axes from = at(90.0, down_deg - 80.0), to = at(90.0, down_deg + 80.0);
      const auto way = turn::ClearWays(positioner, body, joint::body_of(lever)).find(from, to);
      REQUIRE(way.clear);
      REQUIRE(way.halts.size() == 1);
      // 200 deg over the top in two legs at 0.5 rad/s, each with what speeding up takes.
      CHECK(way.halts[0][0].deg() == doctest::Approx(90.0));
      const double first_deg =
          turn::axis_travel(positioner.axes[1], from[1], way.halts[0][1]).deg();
      CHECK(first_deg < 0.0);
      CHECK(first_deg + turn::axis_travel(positioner.axes[1], way.halts[0][1], to[1]).deg() ==
            doctest::Approx(-200.0));
    }
  }
}

}  // namespace seamturn::tests
