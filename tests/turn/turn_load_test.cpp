// SPDX-License-Identifier: MIT
#include "seamturn/turn/turn_load.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "oracle.hpp"
#include "seamturn/base/gravity.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/turn/load.hpp"
#include "seamturn/turn/move_time.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Random;
using geom::Vec3;
using joint::Body;

namespace {

cell::Axis axis(const char* name, double torque_nm) {
  cell::Axis out;
  out.name = name;
  out.min = Angle::deg(-370.0);
  out.max = Angle::deg(370.0);
  out.speed_rad_s = Angle::deg(20.0).rad();
  out.acceleration_rad_s2 = Angle::deg(20.0).rad();
  out.torque_max_nm = torque_nm;
  return out;
}

cell::Positioner table() {
  cell::Positioner out;
  out.id = "T1";
  out.tilt_centre = Vec3(100.0, -50.0, 900.0);
  out.overhang_mm = 150.0;
  out.load_max_kg = 2000.0;
  out.load_centre_mm = 300.0;
  out.axes = {axis("tilt", 9000.0), axis("rotate", 2500.0)};
  return out;
}

cell::Positioner headstock() {
  cell::Positioner out;
  out.id = "H1";
  out.kind = cell::PositionerKind::headstock;
  out.tilt_centre = Vec3(0.0, 0.0, 1000.0);
  out.load_max_kg = 3000.0;
  out.load_centre_mm = 500.0;
  out.axes = {axis("turn", 1500.0)};
  return out;
}

Body load(double mass_kg, const Vec3& centre, double inertia_kg_m2 = 0.0) {
  return {{mass_kg, centre}, inertia_kg_m2 * geom::Mat3::Identity()};
}

std::vector<base::Finding> judged(const cell::Positioner& positioner,
                                  const Body& part,
                                  const std::vector<Angle>& from,
                                  const std::vector<Angle>& to,
                                  const std::string& name) {
  const auto peaks = turn::turn_peaks(positioner, part, from, to);
  return turn::check_turn_load(positioner, part, from, to, peaks, name);
}

std::string codes(const std::vector<base::Finding>& findings) {
  std::string out;
  for (const base::Finding& finding : findings) {
    out += (out.empty() ? "" : " ") + finding.code;
  }
  return out;
}

}  // namespace

TEST_SUITE("turn/turn_load") {
  TEST_CASE("given 2000 kg 50 mm off the axis, the torque while speeding up is as worked out") {
    // computed: 2000 kg, e 0.05 m, J 800 kg m2, 20 deg/s2: 980.7 + 281.0 = 1261.7 N m.
    const double alpha = Angle::deg(20.0).rad();
    check_expected("speeding up",
                   turn::speeding_torque_nm(2000.0, 50.0, 800.0, alpha),
                   {1261.7, 0.05, Origin::computed, "mechanics, worked by script"});
    check_expected("static part",
                   turn::speeding_torque_nm(2000.0, 50.0, 800.0, 0.0),
                   {980.7, 0.05, Origin::computed, "mechanics, worked by script"});
    // The same along a turn that passes through level: no other code path may say less.
    const auto peaks = turn::turn_peaks(headstock(),
                                        load(2000.0, Vec3(300.0, 50.0, 0.0), 800.0),
                                        {Angle::deg(-90.0)},
                                        {Angle::deg(90.0)});
    check_expected("largest on the way while speeding up",
                   std::abs(peaks.speeding[0].torque_nm),
                   {1261.7, 0.05, Origin::computed, "mechanics, worked by script"});
    check_expected("largest on the way at rest",
                   std::abs(peaks.still[0].torque_nm),
                   {980.7, 0.05, Origin::computed, "mechanics, worked by script"});
    CHECK(peaks.still[0].at_ratio == doctest::Approx(0.5).epsilon(1e-4));
    CHECK_FALSE(peaks.stopping[0].has_value());
  }

  TEST_CASE(
      "for a headstock, closed-form: m g e cos(theta - theta_cg), largest where it is level") {
    const double g = base::gravity_m_s2;
    const Body part = load(1000.0, Vec3(200.0, 30.0, 40.0));  // e 50 mm, at 53.13 deg
    const auto still = [&](double from, double to) {
      return turn::turn_peaks(headstock(), part, {Angle::deg(from)}, {Angle::deg(to)}).still[0];
    };
    const double at_rest = std::atan2(40.0, 30.0) * 180.0 / std::acos(-1.0);
    const auto at = [&](double theta) {
      return 1000.0 * g * 0.05 * std::cos(Angle::deg(theta + at_rest).rad());
    };
    // Level at -53.13 and 126.87 deg: passed, not passed, just beside.
    CHECK(std::abs(still(-90.0, 0.0).torque_nm) == doctest::Approx(1000.0 * g * 0.05));
    CHECK(std::abs(still(90.0, 180.0).torque_nm) == doctest::Approx(1000.0 * g * 0.05));
    CHECK(std::abs(still(0.0, 90.0).torque_nm) == doctest::Approx(std::abs(at(90.0))));
    CHECK(std::abs(still(-20.0, 20.0).torque_nm) == doctest::Approx(std::abs(at(-20.0))));
    CHECK(std::abs(still(-20.0, 20.0).torque_nm) < 1000.0 * g * 0.05 * 0.9);
  }

  TEST_CASE("for any turn of any kind, brute force: nothing on the way is more than the peak") {
    Random random(base::named_seed(41, "along the way"));
    for (int i = 0; i < 40; ++i) {
      INFO("seed 41, case " << i);
      cell::Positioner positioner = i % 2 == 0 ? table() : headstock();
      if (i % 4 == 2) {
        positioner.kind = cell::PositionerKind::inclined;
        positioner.between = Angle::deg(45.0);
      }
      if (i % 3 == 0) positioner.margin = cell::LoadMargin{0.05, 20.0};
      for (cell::Axis& a : positioner.axes) a.stop_rad_s2 = Angle::deg(60.0).rad();
      const Body part = load(
          500.0,
          Vec3(random.between(-300, 300), random.between(-300, 300), random.between(-100, 400)),
          20.0);
      std::vector<Angle> from, to;
      for (std::size_t k = 0; k < positioner.axes.size(); ++k) {
        from.push_back(Angle::deg(random.between(-180.0, 180.0)));
        to.push_back(Angle::deg(random.between(-180.0, 180.0)));
      }
      const auto peaks = turn::turn_peaks(positioner, part, from, to);
      std::vector<double> still(from.size(), 0.0), stopping(from.size(), 0.0);
      for (int k = 0; k <= 1500; ++k) {
        std::vector<Angle> here;
        for (std::size_t j = 0; j < from.size(); ++j) {
          here.push_back(from[j] + (k / 1500.0) * (to[j] - from[j]));
        }
        const auto torques = turn::safe_torques_nm(positioner, part.weight, here);
        const auto inertias = turn::axis_inertias_kg_m2(positioner, part, here);
        for (std::size_t j = 0; j < from.size(); ++j) {
          still[j] = std::max(still[j], std::abs(torques[j]));
          const double mass = positioner.margin ? 1.05 : 1.0;
          stopping[j] =
              std::max(stopping[j],
                       std::abs(torques[j]) + mass * inertias[j] * *positioner.axes[j].stop_rad_s2);
        }
      }
      for (std::size_t j = 0; j < from.size(); ++j) {
        const double most = std::abs(peaks.still[j].torque_nm);
        CHECK(most >= still[j] * (1.0 - 1e-6));
        CHECK(most == doctest::Approx(still[j]).epsilon(1e-4).scale(10.0));
        const double stop = std::abs(peaks.stopping[j]->torque_nm);
        CHECK(stop >= stopping[j] * (1.0 - 1e-6));
        CHECK(stop == doctest::Approx(stopping[j]).epsilon(1e-4).scale(10.0));
      }
    }
  }

  TEST_CASE("for any setting, law: moments of inertia are those of the kinetic energy") {
    // cross: a body of eight points; the speed of each from two settings a hair apart.
    Random random(base::named_seed(42, "kinetic energy"));
    for (int i = 0; i < 60; ++i) {
      INFO("seed 42, case " << i);
      const cell::Positioner positioner = i % 2 == 0 ? table() : headstock();
      std::vector<Vec3> points(8);
      std::vector<Body> bodies;
      for (Vec3& p : points) {
        p = Vec3(random.between(-400, 400), random.between(-400, 400), random.between(-400, 400));
        bodies.push_back(load(25.0, p));
      }
      const Body part = joint::together(bodies);
      std::vector<Angle> axes(positioner.axes.size());
      for (Angle& a : axes) a = Angle::deg(random.between(-180.0, 180.0));
      const auto inertias = turn::axis_inertias_kg_m2(positioner, part, axes);
      for (std::size_t k = 0; k < axes.size(); ++k) {
        constexpr double step_rad = 1e-5;
        std::vector<Angle> more = axes, less = axes;
        more[k] = axes[k] + Angle::rad(step_rad);
        less[k] = axes[k] - Angle::rad(step_rad);
        double energy = 0.0;  // 1/2 J at 1 rad/s
        for (const Vec3& p : points) {
          const Vec3 speed = 1e-3 *
                             (turn::pose_WD(positioner, more).point(p) -
                              turn::pose_WD(positioner, less).point(p)) /
                             (2.0 * step_rad);
          energy += 0.5 * 25.0 * speed.squaredNorm();
        }
        CHECK(inertias[k] == doctest::Approx(2.0 * energy).epsilon(1e-6));
      }
    }
  }

  TEST_CASE("given limits just met and just passed, the finding comes with number, limit, axis") {
    // Level 50 mm off: 980.665 N m at rest with 2000 kg; 1261.7 while speeding up.
    const Body part = load(2000.0, Vec3(300.0, 50.0, 0.0), 800.0);
    const std::vector<Angle> from{Angle::deg(-30.0)}, to{Angle::deg(30.0)};
    const auto found = [&](double plate_nm, std::optional<double> peak_nm, double stop_deg_s2) {
      cell::Positioner positioner = headstock();
      positioner.axes[0].torque_max_nm = plate_nm;
      positioner.axes[0].torque_peak_nm = peak_nm;
      if (stop_deg_s2 > 0.0) positioner.axes[0].stop_rad_s2 = Angle::deg(stop_deg_s2).rad();
      return judged(positioner, part, from, to, "S01 to S02");
    };
    CHECK(codes(found(1262.0, {}, 0.0)).empty());
    CHECK(codes(found(1261.0, {}, 0.0)) == "turn.load.speeding_up");
    CHECK(codes(found(981.0, {}, 0.0)) == "turn.load.speeding_up");
    CHECK(codes(found(981.0, 1262.0, 0.0)).empty());
    const auto beyond = found(980.0, 1262.0, 0.0);
    REQUIRE(codes(beyond) == "turn.load.turn");
    CHECK(beyond[0].severity == base::Severity::error);
    CHECK(beyond[0].text.find("S01 to S02") != std::string::npos);
    CHECK(beyond[0].text.find("axis turn with 981 N m") != std::string::npos);
    CHECK(beyond[0].text.find("allows 980 N m") != std::string::npos);
    CHECK(found(980.6, 1262.0, 0.0)[0].text.find("980.7 N m, its plate allows 980.6 N m") !=
          std::string::npos);
    // 40 deg/s2: 980.7 + 805 x 0.698 = 1542.7 N m.
    CHECK(codes(found(1543.0, {}, 40.0)).empty());
    const auto stop = found(1542.0, {}, 40.0);
    REQUIRE(codes(stop) == "turn.load.stop");
    CHECK(stop[0].severity == base::Severity::warning);
    CHECK(stop[0].text.find("1543 N m") != std::string::npos);
    CHECK(stop[0].text.find("no more than 39.9 deg/s2") != std::string::npos);
    // A table upright through its worst: only what moves speeds up.
    cell::Positioner tilting = table();
    tilting.axes[1].torque_max_nm = 1.0;
    const auto tilt_only = judged(tilting,
                                  load(100.0, Vec3(0.0, 0.0, 100.0), 50.0),
                                  {Angle(), Angle()},
                                  {Angle::deg(90.0), Angle()},
                                  "S01");
    CHECK(codes(tilt_only).empty());
  }

  TEST_CASE("given a margin, mass and centre are taken on the safe side, by hand") {
    cell::Positioner positioner = headstock();
    const Body part = load(1000.0, Vec3(200.0, 30.0, 0.0));
    const double g = base::gravity_m_s2;
    CHECK(std::abs(turn::safe_torques_nm(positioner, part.weight, {Angle()})[0]) ==
          doctest::Approx(1000.0 * g * 0.03));
    positioner.margin = cell::LoadMargin{0.05, 20.0};
    // 5 % more, 20 mm farther out: 1050 kg at 50 mm.
    CHECK(std::abs(turn::safe_torques_nm(positioner, part.weight, {Angle()})[0]) ==
          doctest::Approx(1050.0 * g * 0.05));
    // Straight below the axis 20 mm are left.
    CHECK(std::abs(turn::safe_torques_nm(positioner, part.weight, {Angle::deg(-90.0)})[0]) ==
          doctest::Approx(1050.0 * g * 0.02));
    // About an upright axis weight does nothing, wherever it lies.
    const auto upright = turn::safe_torques_nm(table(), part.weight, {Angle(), Angle()});
    CHECK(std::abs(upright[1]) < 1e-9);
  }

  TEST_CASE("for an endless axis, the turn goes the short way and so do its peaks") {
    cell::Positioner positioner = headstock();
    const Body part = load(1000.0, Vec3(200.0, 0.0, -40.0));  // hangs straight below at 0
    const std::vector<Angle> from{Angle::deg(-10.0)}, to{Angle::deg(350.0)};
    CHECK(std::abs(turn::turn_peaks(positioner, part, from, to).still[0].torque_nm) ==
          doctest::Approx(1000.0 * base::gravity_m_s2 * 0.04));
    positioner.axes[0].endless = true;
    CHECK(std::abs(turn::turn_peaks(positioner, part, from, to).still[0].torque_nm) ==
          doctest::Approx(1000.0 * base::gravity_m_s2 * 0.04 * std::sin(Angle::deg(10.0).rad())));
  }
}

}  // namespace seamturn::tests
