// SPDX-License-Identifier: MIT
#include "seamturn/turn/two_axes.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "oracles/stance.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/position/classify.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Random;
using geom::Mat3;
using geom::rotation_about;
using geom::Vec3;
using turn::TwoTurns;

namespace {

const Vec3 sky = Vec3::UnitZ();

/// Evenly over the sphere.
Vec3 even_unit(Random& random) {
  const double z = random.between(-1.0, 1.0);
  const double round = random.between(0.0, 2.0 * std::numbers::pi);
  const double across = std::sqrt(1.0 - z * z);
  return {across * std::cos(round), across * std::sin(round), z};
}

Vec3 turned(const Vec3& first, const Vec3& second, Angle a, Angle b, const Vec3& u) {
  return rotation_about(first, a) * (rotation_about(second, b) * u);
}

/// Another way to tell whether u can be had: the plane coordinates of docs/methods/stance.md.
double gamma_squared(const Vec3& h1, const Vec3& h2, const Vec3& u) {
  const double c = h1.dot(h2);
  const double alpha = (c * h2.dot(u) - h1.dot(sky)) / (c * c - 1.0);
  const double beta = (c * h1.dot(sky) - h2.dot(u)) / (c * c - 1.0);
  return (1.0 - alpha * alpha - beta * beta - 2.0 * alpha * beta * c) / h1.cross(h2).squaredNorm();
}

/// The least lean of u on a grid of both axes.
Angle least_on_grid(const Vec3& first, const Vec3& second, const Vec3& u, int steps) {
  Angle least = Angle::deg(180.0);
  for (int j = 0; j < steps; ++j) {
    const Vec3 after = rotation_about(second, Angle::deg(360.0 * j / steps)) * u;
    // The first axis can do no better than one axis does: try all its turns all the same.
    for (int i = 0; i < steps; ++i) {
      const Vec3 there = rotation_about(first, Angle::deg(360.0 * i / steps)) * after;
      least = std::min(least, geom::angle_between(there, sky));
    }
  }
  return least;
}

Angle apart(Angle a, Angle b) {
  return Angle::rad(std::abs(std::remainder((a - b).rad(), 2.0 * std::numbers::pi)));
}

}  // namespace

TEST_SUITE("turn/two_axes") {
  TEST_CASE("given table cases T1 to T13, the general formula has the table's two answers") {
    for (const oracles::TableRow& row : oracles::table_rows) {
      INFO(row.name);
      const Vec3 t = Vec3(row.t[0], row.t[1], row.t[2]).normalized();
      const Vec3 n = Vec3(row.n[0], row.n[1], row.n[2]).normalized();
      const Vec3 u = turn::sky_direction(t, n, Angle::deg(row.slope_deg), Angle::deg(row.bank_deg));
      const auto answers = turn::two_turns_to_sky(Vec3::UnitY(), Vec3::UnitZ(), u);
      REQUIRE(answers.size() == (row.rotate_free ? 1U : 2U));
      CHECK(answers[0].second_free == row.rotate_free);
      CHECK_FALSE(answers[0].first_free);
      for (const double branch : {1.0, -1.0}) {
        if (row.rotate_free && branch < 0.0) continue;
        const bool found = std::any_of(answers.begin(), answers.end(), [&](const TwoTurns& answer) {
          const double rotate_deg = row.rotate_deg + (branch < 0.0 ? 180.0 : 0.0);
          return apart(answer.first, Angle::deg(branch * row.tilt_deg)).deg() < 5e-5 &&
                 (row.rotate_free || apart(answer.second, Angle::deg(rotate_deg)).deg() < 5e-5);
        });
        CHECK(found);
      }
    }
  }

  TEST_CASE("for random directions on a table, cross: the general answers are the table's own") {
    cell::Positioner table;
    table.axes.resize(2);
    Random random(base::named_seed(11, "general against table"));
    for (int i = 0; i < 5000; ++i) {
      INFO("seed 11, case " << i);
      const Vec3 u = even_unit(random);
      const auto general = turn::two_turns_to_sky(Vec3::UnitY(), Vec3::UnitZ(), u);
      const auto own = turn::stances_for_sky(table, u);
      REQUIRE(general.size() == 2);
      REQUIRE(own.size() == 2);
      for (const turn::StanceAnswer& answer : own) {
        const bool found = std::any_of(general.begin(), general.end(), [&](const TwoTurns& two) {
          return apart(two.first, answer.axes[0]).rad() < 1e-9 &&
                 apart(two.second, answer.axes[1]).rad() < 1e-9;
        });
        CHECK(found);
      }
    }
  }

  TEST_CASE("for any two axes, law: every answer points u to the sky, or leaves what it says") {
    Random random(base::named_seed(12, "any two axes"));
    int reached = 0, missed = 0;
    for (int i = 0; i < 20000; ++i) {
      INFO("seed 12, case " << i);
      const Vec3 first = even_unit(random), second = even_unit(random), u = even_unit(random);
      if (first.cross(second).norm() < 0.02) continue;
      const double criterion = gamma_squared(first, second, u);
      if (std::abs(criterion) < 1e-9) continue;
      const auto answers = turn::two_turns_to_sky(first, second, u);
      CHECK(answers.size() == (criterion > 0.0 ? 2U : 1U));
      CHECK((answers[0].residual.rad() == 0.0) == (criterion > 0.0));
      ++(criterion > 0.0 ? reached : missed);
      for (const TwoTurns& answer : answers) {
        const Vec3 there = turned(first, second, answer.first, answer.second, u);
        CHECK(std::abs((geom::angle_between(there, sky) - answer.residual).rad()) < 1e-9);
      }
      if (answers.size() == 2) {
        CHECK(std::max(apart(answers[0].first, answers[1].first),
                       apart(answers[0].second, answers[1].second))
                  .rad() > 1e-9);
      }
    }
    CHECK(reached > 5000);
    CHECK(missed > 2000);
  }

  TEST_CASE("for any two axes, brute force: no setting comes nearer to the sky") {
    Random random(base::named_seed(13, "any two axes, grid"));
    constexpr int steps = 120;
    const Angle coarse = Angle::deg(2.0 * 360.0 / steps);  // half a step of each axis, and slack
    int missed = 0;
    for (int i = 0; i < 30; ++i) {
      INFO("seed 13, case " << i);
      const Vec3 first = even_unit(random), second = even_unit(random), u = even_unit(random);
      if (first.cross(second).norm() < 0.05) continue;
      const Angle residual = turn::two_turns_to_sky(first, second, u).front().residual;
      const Angle least = least_on_grid(first, second, u, steps);
      CHECK(least >= residual - Angle::deg(1e-9));
      CHECK(least <= residual + coarse);
      if (residual.rad() > 0.0) ++missed;
    }
    CHECK(missed > 5);
  }

  TEST_CASE("given a level first axis, closed-form: sin(between) of the sphere can be had") {
    for (const double between_deg : {20.0, 45.0, 60.0, 90.0}) {
      CAPTURE(between_deg);
      const Angle between = Angle::deg(between_deg);
      const Vec3 second(0.0, std::cos(between.rad()), std::sin(between.rad()));
      Random random(base::named_seed(14, "share of the sphere"));
      constexpr int tries = 20000;
      int reached = 0;
      for (int i = 0; i < tries; ++i) {
        const Vec3 u = even_unit(random);
        if (turn::two_turns_to_sky(Vec3::UnitY(), second, u)[0].residual.rad() == 0.0) ++reached;
      }
      // Three standard deviations of a share of 20 000 are 0.0107 at most.
      check_expected("between " + std::to_string(between_deg),
                     static_cast<double>(reached) / tries,
                     {std::sin(between.rad()), 0.0107, Origin::closed_form, "zone of a sphere"});
    }
  }

  TEST_CASE("given an inclined axis, closed-form: the residual is what the cone lacks") {
    // Second axis 45 deg off a level first one: u along it comes to lie 45 deg off the sky at best.
    const Vec3 second = Vec3(0.0, 1.0, 1.0).normalized();
    const auto along = turn::two_turns_to_sky(Vec3::UnitY(), second, second);
    REQUIRE(along.size() == 1);
    CHECK(along[0].second_free);
    CHECK(along[0].residual.deg() == doctest::Approx(45.0));
    CHECK(along[0].first.deg() == doctest::Approx(0.0));
    // At 45 deg to it, it just comes there; a little less, and it lacks just that.
    const auto off = [&](double deg) {
      const Vec3 u = rotation_about(Vec3::UnitX(), Angle::deg(deg)) * second;
      return turn::two_turns_to_sky(Vec3::UnitY(), second, u).front().residual.deg();
    };
    CHECK(off(45.001) == 0.0);
    CHECK(off(44.999) == doctest::Approx(0.001));
    CHECK(off(30.0) == doctest::Approx(15.0));
    CHECK(off(134.999) == 0.0);
    CHECK(off(150.0) == doctest::Approx(15.0));
  }

  TEST_CASE("given an upright first axis, it is free and the second decides alone") {
    const Vec3 second = Vec3(0.0, 1.0, 1.0).normalized();
    Random random(base::named_seed(15, "upright"));
    for (int i = 0; i < 200; ++i) {
      INFO("seed 15, case " << i);
      const Vec3 u = even_unit(random);
      const auto answers = turn::two_turns_to_sky(sky, second, u);
      REQUIRE(answers.size() == 1);
      CHECK(answers[0].first_free);
      const turn::OneTurn one = turn::one_turn_to_sky(second, u);
      CHECK(answers[0].residual.rad() == doctest::Approx(one.residual.rad()).epsilon(1e-9));
      CHECK(apart(answers[0].second, one.turn).rad() < 1e-9);
    }
  }

  TEST_CASE("for any one axis, brute force: no turn comes nearer, and the formula's residual") {
    Random random(base::named_seed(16, "one axis"));
    for (int i = 0; i < 50; ++i) {
      INFO("seed 16, case " << i);
      const Vec3 axis = even_unit(random), u = even_unit(random);
      const turn::OneTurn best = turn::one_turn_to_sky(axis, u);
      const auto lean = [&](Angle turn) {
        return geom::angle_between(rotation_about(axis, turn) * u, sky);
      };
      CHECK(std::abs((lean(best.turn) - best.residual).rad()) < 1e-9);
      // delta = |acos(u.k) - acos(z.k)|, docs/methods/stance.md.
      CHECK(std::abs(best.residual.rad() - std::abs(std::acos(u.dot(axis)) - std::acos(axis.z()))) <
            1e-9);
      Angle least = Angle::deg(180.0);
      for (int k = 0; k < 3600; ++k) least = std::min(least, lean(Angle::deg(0.1 * k)));
      CHECK(least >= best.residual - Angle::deg(1e-9));
      CHECK(least <= best.residual + Angle::deg(0.1));
    }
    CHECK(turn::one_turn_to_sky(sky, Vec3::UnitX()).free);
    CHECK(turn::one_turn_to_sky(Vec3::UnitX(), Vec3::UnitX()).free);
  }

  TEST_CASE("given H8, the turn best within PA is not the one nearest to the sky") {
    const Vec3 t(0.6, 0.64, 0.48);
    const Vec3 n = t.cross(sky).normalized();
    const turn::LieTolerance pa{Angle::deg(15.0), Angle::deg(30.0)};
    const auto best = turn::most_tolerant_turn(Vec3::UnitX(), t, n, pa);
    check_expected("H8 turn", best.turn.deg(), {-66.65, 0.005, Origin::computed, "STANCE H8"});
    check_expected("H8 norm", best.norm, {1.561, 0.0005, Origin::computed, "STANCE H8"});
    // Nearest to the sky: -90 deg, slope -39.7918.
    const Mat3 at_best = rotation_about(Vec3::UnitX(), Angle::deg(-90.0));
    const auto lie = position::attitude(at_best * t, at_best * n, sky);
    REQUIRE(lie.has_value());
    check_expected("H8 norm nearest to the sky",
                   std::abs(lie->slope.deg()) / 15.0,
                   {2.65, 0.005, Origin::computed, "STANCE H8"});
  }

  TEST_CASE("for any seam and axis, brute force: no turn is better within the tolerance") {
    Random random(base::named_seed(17, "most tolerant"));
    for (int i = 0; i < 40; ++i) {
      INFO("seed 17, case " << i);
      const Vec3 axis = even_unit(random), t = even_unit(random);
      const Vec3 n =
          rotation_about(t, Angle::deg(random.between(0.0, 360.0))) * geom::any_normal_to(t);
      const turn::LieTolerance tolerance{Angle::deg(random.between(1.0, 20.0)),
                                         Angle::deg(random.between(1.0, 40.0))};
      const Angle bank = Angle::deg(random.between(-60.0, 60.0));
      const auto best = turn::most_tolerant_turn(axis, t, n, tolerance, Angle(), bank);
      const auto norm = [&](Angle turn) {
        const Mat3 R = rotation_about(axis, turn);
        const auto lie = position::attitude(R * t, R * n, sky);
        return std::max(std::abs(lie->slope.rad()) / tolerance.slope.rad(),
                        apart(lie->bank, bank).rad() / tolerance.bank.rad());
      };
      CHECK(norm(best.turn) == doctest::Approx(best.norm).epsilon(1e-6));
      double least = 1e9;
      for (int k = 0; k < 3600; ++k) least = std::min(least, norm(Angle::deg(0.1 * k)));
      CHECK(least >= best.norm - 1e-9);
    }
  }

  TEST_CASE("refuses parallel axes and directions without length because no turn follows") {
    CHECK_THROWS_AS((void)turn::two_turns_to_sky(sky, -sky, Vec3::UnitX()),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)turn::two_turns_to_sky(sky, Vec3::UnitX(), Vec3::Zero()),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)turn::one_turn_to_sky(2.0 * sky, Vec3::UnitX()), base::ContractViolation);
    CHECK_THROWS_AS(
        (void)turn::most_tolerant_turn(sky, sky, sky, {Angle::deg(1.0), Angle::deg(1.0)}),
        base::ContractViolation);
    CHECK_THROWS_AS(
        (void)turn::most_tolerant_turn(sky, Vec3::UnitX(), sky, {Angle(), Angle::deg(1.0)}),
        base::ContractViolation);
  }
}

}  // namespace seamturn::tests
