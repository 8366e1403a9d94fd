// SPDX-License-Identifier: MIT
#include "seamturn/turn/move_time.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "oracle.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Random;
using turn::move_time_s;
using turn::MoveParams;

namespace {

MoveParams move(double distance,
                double speed,
                double acceleration,
                std::optional<double> jerk = std::nullopt) {
  MoveParams params;
  params.distance = distance;
  params.speed = speed;
  params.acceleration = acceleration;
  params.jerk = jerk;
  return params;
}

/// Distance run in half the time when jerk, then acceleration, then speed press against their
/// limits: the jerk law stepped in time. The second half mirrors the first.
double distance_in(double time_s, const MoveParams& limits) {
  // Speeding up: jerk up to time_up, hold, jerk down; found from the limits by stepping.
  const double j = *limits.jerk;
  const int steps = 200000;
  const double dt = time_s / steps;
  double speed = 0.0, acceleration = 0.0, distance = 0.0;
  for (int i = 0; i < steps; ++i) {
    const double left_s = time_s / 2.0 - i * dt;  // until the middle of the move
    if (left_s <= 0.0) break;
    // The acceleration must be back at zero in the middle and when the speed is reached.
    const double speed_when_released = speed + acceleration * acceleration / (2.0 * j);
    const bool release = acceleration / j >= left_s || speed_when_released >= limits.speed;
    const double next = release ? std::max(0.0, acceleration - j * dt)
                                : std::min(limits.acceleration, acceleration + j * dt);
    const double mean = (acceleration + next) / 2.0;
    distance += speed * dt + mean * dt * dt / 2.0;
    speed = std::min(limits.speed, speed + mean * dt);
    acceleration = next;
  }
  return 2.0 * distance;
}

}  // namespace

TEST_SUITE("turn/move_time") {
  TEST_CASE("given moves without jerk, the trapezoid's times are as computed") {
    struct Row {
      double d, v, a, t_s;
    };
    // closed-form: constant acceleration; distances in degrees, then in mm.
    const Row rows[] = {{180, 20, 20, 10.0},
                        {90, 60, 120, 2.0},
                        {10, 60, 120, 0.57735},
                        {45, 30, 30, 2.5},
                        {1000, 1000, 3000, 1.33333},
                        {200, 1000, 3000, 0.51640}};
    for (const Row& row : rows) {
      check_expected("D " + std::to_string(row.d),
                     move_time_s(move(row.d, row.v, row.a)),
                     {row.t_s, 5e-6, Origin::closed_form, "constant acceleration"});
    }
    CHECK(move_time_s(move(0.0, 20, 20)) == 0.0);
  }

  TEST_CASE("given moves with bounded jerk, the double-S times are as computed") {
    struct Row {
      double d, v, a, j, t_s;
    };
    // computed: double-S formulas by script, checked there by integrating; formulas remembered from
    // BIAGIOTTI 2008 chapter 3.4.
    const Row rows[] = {{90, 60, 120, 600, 2.2},
                        {180, 20, 20, 40, 10.5},
                        {10, 60, 120, 600, 0.811010},
                        {1, 60, 120, 600, 0.376414},
                        {90, 60, 120, 200, 2.595445},
                        {10, 3, 2, 3, 5.5}};
    for (const Row& row : rows) {
      check_expected("D " + std::to_string(row.d) + " j " + std::to_string(row.j),
                     move_time_s(move(row.d, row.v, row.a, row.j)),
                     {row.t_s, 5e-7, Origin::computed, "BIAGIOTTI 3.4, by script"});
    }
  }

  TEST_CASE("for any limits, law: pressing jerk, acceleration and speed covers just the distance") {
    Random random(base::named_seed(7, "integrated"));
    for (int i = 0; i < 30; ++i) {
      const MoveParams params = move(random.between(0.5, 200.0),
                                     random.between(5.0, 90.0),
                                     random.between(10.0, 150.0),
                                     random.between(20.0, 900.0));
      INFO("seed 7, case " << i << ": D " << params.distance << " v " << params.speed << " a "
                           << params.acceleration << " j " << *params.jerk);
      // stepping error of the integration, not of the formula
      CHECK(distance_in(move_time_s(params), params) ==
            doctest::Approx(params.distance).epsilon(2e-4));
    }
  }

  TEST_CASE("for any move, law: farther takes longer, more jerk less, and none bounds it below") {
    Random random(base::named_seed(7, "monotone"));
    for (int i = 0; i < 2000; ++i) {
      const double d = random.between(0.1, 300.0), v = random.between(1.0, 90.0);
      const double a = random.between(1.0, 150.0), j = random.between(1.0, 900.0);
      INFO("seed 7, case " << i);
      const double time = move_time_s(move(d, v, a, j));
      CHECK(move_time_s(move(1.01 * d, v, a, j)) > time);
      CHECK(move_time_s(move(d, v, a, 1.01 * j)) <= time * (1.0 + 1e-12));
      CHECK(move_time_s(move(d, v, a)) <= time);
      CHECK(move_time_s(move(d, v, a, 1e12)) == doctest::Approx(move_time_s(move(d, v, a))));
    }
  }

  TEST_CASE("for distances beside the borders of the cases, law: time does not jump") {
    const auto close = [](double d, double v, double a, double j) {
      CHECK(move_time_s(move(d * (1 - 1e-9), v, a, j)) ==
            doctest::Approx(move_time_s(move(d * (1 + 1e-9), v, a, j))).epsilon(1e-7));
    };
    close(42.0, 60, 120, 600);                              // speed just reached: v Ta
    close(2.0 * 120 * 120 * 120 / 360000.0, 60, 120, 600);  // acceleration just reached
    close(2.0 * 60 * std::sqrt(60.0 / 200.0), 60, 120, 200);
  }

  TEST_CASE(
      "given a turn of two axes, the slower one counts and an endless one goes the short way") {
    cell::Positioner table;
    table.axes.resize(2);
    table.axes[0].speed_rad_s = Angle::deg(12).rad();
    table.axes[0].acceleration_rad_s2 = Angle::deg(10).rad();
    table.axes[1].speed_rad_s = Angle::deg(20).rad();
    table.axes[1].acceleration_rad_s2 = Angle::deg(20).rad();
    const std::vector<Angle> from{Angle(), Angle::deg(-170.0)};
    const std::vector<Angle> to{Angle::deg(45.0), Angle::deg(170.0)};
    // closed-form: 340/20 + 1 = 18 s against 45/12 + 1.2 = 4.95 s; the short way is 20/20 + 1 = 2
    // s.
    CHECK(turn::turn_time_s(table, from, to) == doctest::Approx(18.0));
    table.axes[1].endless = true;
    CHECK(turn::turn_time_s(table, from, to) == doctest::Approx(4.95));
    CHECK(turn::turn_time_s(table, to, to) == 0.0);
  }

  TEST_CASE("given axes with jerk, the turn takes the double-S time of the slower one") {
    cell::Positioner table;
    table.axes.resize(2);
    for (cell::Axis& axis : table.axes) {
      axis.speed_rad_s = Angle::deg(60).rad();
      axis.acceleration_rad_s2 = Angle::deg(120).rad();
    }
    const std::vector<Angle> from{Angle(), Angle()};
    const std::vector<Angle> to{Angle::deg(90.0), Angle::deg(10.0)};
    const auto time_s = [&] { return turn::turn_time_s(table, from, to); };
    CHECK(time_s() == doctest::Approx(2.0));
    table.axes[1].jerk_rad_s3 = Angle::deg(600).rad();
    CHECK(time_s() == doctest::Approx(2.0));  // 0.811 s: the other one counts
    table.axes[0].jerk_rad_s3 = Angle::deg(600).rad();
    check_expected("90 deg with jerk", time_s(), {2.2, 5e-7, Origin::computed, "BIAGIOTTI 3.4"});
  }

  TEST_CASE("for any turn, law: axes slowed to go together all take the time of the slowest") {
    // T = max T_i; v, a, j by lambda, lambda^2, lambda^3, lambda = T_i / T.
    Random random(base::named_seed(8, "together"));
    for (int i = 0; i < 500; ++i) {
      INFO("seed 8, case " << i);
      cell::Positioner arm;
      arm.axes.resize(3);
      std::vector<Angle> from, to;
      for (cell::Axis& axis : arm.axes) {
        axis.speed_rad_s = random.between(0.05, 1.0);
        axis.acceleration_rad_s2 = random.between(0.05, 2.0);
        if (random.unit() < 0.5) axis.jerk_rad_s3 = random.between(0.1, 10.0);
        from.push_back(Angle::deg(random.between(-180, 180)));
        to.push_back(random.unit() < 0.2 ? from.back() : Angle::deg(random.between(-180, 180)));
      }
      const double time_s = turn::turn_time_s(arm, from, to);
      const auto moves = turn::together(arm, from, to);
      REQUIRE(moves.size() == 3);
      double most = 0.0;
      for (std::size_t k = 0; k < 3; ++k) {
        const turn::AxisMove& slowed = moves[k];
        most = std::max(most, slowed.slow_ratio);
        CHECK(slowed.travel.rad() == doctest::Approx((to[k] - from[k]).rad()));
        if (slowed.slow_ratio == 0.0) {
          CHECK(slowed.travel.rad() == 0.0);
          continue;
        }
        CHECK(slowed.slow_ratio <= 1.0);
        CHECK(move_time_s({std::abs(slowed.travel.rad()),
                           slowed.speed_rad_s,
                           slowed.acceleration_rad_s2,
                           slowed.jerk_rad_s3}) == doctest::Approx(time_s));
        CHECK(slowed.speed_rad_s <= arm.axes[k].speed_rad_s);
      }
      if (time_s > 0.0) CHECK(most == doctest::Approx(1.0));
    }
  }

  TEST_CASE("given an air move, the robot's speed and acceleration count") {
    cell::Robot robot;
    robot.air_speed_mm_s = 1000.0;
    robot.air_acceleration_mm_s2 = 3000.0;
    CHECK(turn::air_time_s(robot, 1000.0) == doctest::Approx(4.0 / 3.0));
  }

  TEST_CASE("refuses limits that are not above zero because no time follows from them") {
    CHECK_THROWS_AS((void)move_time_s(move(1.0, 0.0, 1.0)), base::ContractViolation);
    CHECK_THROWS_AS((void)move_time_s(move(-1.0, 1.0, 1.0)), base::ContractViolation);
    CHECK_THROWS_AS((void)move_time_s(move(1.0, 1.0, 1.0, 0.0)), base::ContractViolation);
  }

  TEST_CASE("given the card, the keys are those of the command line") {
    std::string names;
    for (const base::FigureKey& key : turn::move_time_card().keys) {
      names += std::string(key.name) + ' ';
    }
    CHECK(names == "distance speed acceleration jerk ");
  }
}

}  // namespace seamturn::tests
