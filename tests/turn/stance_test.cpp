// SPDX-License-Identifier: MIT
#include "seamturn/turn/stance.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "oracles/stance.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/position/classify.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Random;
using cell::PositionerKind;
using geom::Vec3;
using turn::StanceAnswer;
using turn::stances_for_sky;

namespace {

Vec3 vec(const double (&v)[3]) {
  return Vec3(v[0], v[1], v[2]);
}

/// Axes of a kind without limits, at the floor's origin.
cell::Positioner plain(PositionerKind kind) {
  cell::Positioner positioner;
  positioner.kind = kind;
  positioner.axes.resize(kind == PositionerKind::headstock ? 1 : 2);
  return positioner;
}

Vec3 random_unit(Random& random) {
  for (;;) {
    const Vec3 v(random.between(-1, 1), random.between(-1, 1), random.between(-1, 1));
    if (v.norm() > 0.1 && v.norm() < 1.0) return v.normalized();
  }
}

/// Angles are the same setting of an axis when whole turns apart.
void check_setting(const std::string& name, Angle got, double expected_deg) {
  const double off = std::remainder(got.deg() - expected_deg, 360.0);
  check_expected(name, off, {0.0, 5e-5, Origin::computed, "STANCE, closed form by script"});
}

/// computed: the letter of the AWS diagrams, worked out beside each headstock case.
void check_class(const Vec3& t, const Vec3& n, process::WeldFamily family, char letter) {
  const auto found = position::classify(family, t, n, Vec3::UnitZ());
  REQUIRE(found.has_value());
  const auto digit = std::string("FHVO").find(letter) + 1;
  const char* kind = family == process::WeldFamily::fillet ? "F" : "G";
  CHECK(found->aws == std::to_string(digit) + kind);
}

cell::Positioner table_with(double tilt_min, double tilt_max, double turn_min, double turn_max) {
  cell::Positioner table;
  table.id = "T1";
  cell::Axis tilt;
  tilt.name = "tilt";
  tilt.min = Angle::deg(tilt_min);
  tilt.max = Angle::deg(tilt_max);
  cell::Axis rotate;
  rotate.name = "rotate";
  rotate.min = Angle::deg(turn_min);
  rotate.max = Angle::deg(turn_max);
  table.axes = {tilt, rotate};
  return table;
}

}  // namespace

TEST_SUITE("turn/stance") {
  TEST_CASE("given table cases T1 to T13, tilt and rotate are as worked out by script") {
    for (const oracles::TableRow& row : oracles::table_rows) {
      INFO(row.name);
      const Vec3 u = turn::sky_direction(vec(row.t).normalized(),
                                         vec(row.n).normalized(),
                                         Angle::deg(row.slope_deg),
                                         Angle::deg(row.bank_deg));
      const auto answers = stances_for_sky(plain(PositionerKind::tilt_rotate), u);
      REQUIRE(answers.size() == (row.rotate_free ? 1U : 2U));
      const std::string name = row.name;
      CHECK(answers[0].rotate_free == row.rotate_free);
      check_setting(name + " tilt", answers[0].axes[0], row.tilt_deg);
      CHECK(std::abs(answers[0].axes[0].deg() - row.tilt_deg) < 5e-5);
      if (row.rotate_free) continue;
      check_setting(name + " rotate", answers[0].axes[1], row.rotate_deg);
      check_setting(name + " second tilt", answers[1].axes[0], -row.tilt_deg);
      check_setting(name + " second rotate", answers[1].axes[1], row.rotate_deg + 180.0);
    }
  }

  TEST_CASE("given headstock cases H1 to H8, turn, residual, slope and bank are as worked out") {
    for (const oracles::HeadstockRow& row : oracles::headstock_rows) {
      INFO(row.name);
      const Vec3 t = vec(row.t).normalized();
      const Vec3 n = vec(row.n).normalized();
      const Vec3 u = turn::sky_direction(t, n, Angle(), Angle::deg(row.bank_wanted_deg));
      const auto answers = stances_for_sky(plain(PositionerKind::headstock), u);
      REQUIRE(answers.size() == 1);
      const std::string name = row.name;
      CHECK(answers[0].rotate_free == row.free);
      check_setting(name + " turn", answers[0].axes[0], row.turn_deg);
      check_expected(name + " residual",
                     answers[0].residual.deg(),
                     {row.residual_deg, 5e-5, Origin::computed, "STANCE, closed form by script"});
      const auto R = turn::rotation_WD(plain(PositionerKind::headstock), answers[0].axes);
      const auto lie = position::attitude(R * t, R * n, Vec3::UnitZ());
      REQUIRE(lie.has_value());
      const Expected slope{row.slope_deg, 5e-5, Origin::computed, "STANCE"};
      const Expected bank{row.bank_deg, 5e-5, Origin::computed, "STANCE"};
      check_expected(name + " slope", lie->slope.deg(), slope);
      check_expected(name + " bank", lie->bank.deg(), bank);
      check_class(R * t, R * n, process::WeldFamily::fillet, row.fillet_class);
      check_class(R * t, R * n, process::WeldFamily::groove, row.groove_class);
    }
  }

  TEST_CASE("for any wanted direction, law: both answers of a table point it to the sky") {
    Random random(base::named_seed(3, "table round trip"));
    for (int i = 0; i < 20000; ++i) {
      const Vec3 u = random_unit(random);
      for (const StanceAnswer& answer : stances_for_sky(plain(PositionerKind::tilt_rotate), u)) {
        const Vec3 sky = turn::rotation_WD(plain(PositionerKind::tilt_rotate), answer.axes) * u;
        INFO("seed 3, case " << i);
        CHECK((sky - Vec3::UnitZ()).norm() < 1e-14);
        CHECK(answer.residual.rad() == 0.0);
      }
    }
  }

  TEST_CASE("for any seam, slope and bank, law: the stance gives it that slope and bank") {
    Random random(base::named_seed(3, "attitude round trip"));
    for (int i = 0; i < 2000; ++i) {
      const Vec3 t = random_unit(random);
      const Vec3 n = geom::any_normal_to(t);
      const Vec3 turned = geom::rotation_about(t, Angle::deg(random.between(0.0, 360.0))) * n;
      const Angle slope = Angle::deg(random.between(-80.0, 80.0));
      const Angle bank = Angle::deg(random.between(-179.0, 179.0));
      const Vec3 u = turn::sky_direction(t, turned, slope, bank);
      INFO("seed 3, case " << i);
      for (const StanceAnswer& answer : stances_for_sky(plain(PositionerKind::tilt_rotate), u)) {
        const auto R = turn::rotation_WD(plain(PositionerKind::tilt_rotate), answer.axes);
        const auto lie = position::attitude(R * t, R * turned, Vec3::UnitZ());
        REQUIRE(lie.has_value());
        CHECK(std::abs((lie->slope - slope).deg()) < 1e-9);
        CHECK(std::abs((lie->bank - bank).deg()) < 1e-9);
      }
    }
  }

  TEST_CASE("for any wanted direction, no turn of a headstock comes nearer to the sky") {
    Random random(base::named_seed(3, "headstock brute force"));
    for (int i = 0; i < 50; ++i) {
      const Vec3 u = random_unit(random);
      const StanceAnswer best = stances_for_sky(plain(PositionerKind::headstock), u).front();
      const auto lean = [&](Angle turn) {
        return geom::angle_between(turn::rotation_WD(plain(PositionerKind::headstock), {turn}) * u,
                                   Vec3::UnitZ());
      };
      INFO("seed 3, case " << i);
      CHECK(std::abs((lean(best.axes[0]) - best.residual).deg()) < 1e-9);
      Angle least = Angle::deg(180.0);
      for (int k = 0; k < 3600; ++k) least = std::min(least, lean(Angle::deg(0.1 * k)));
      CHECK(least >= best.residual - Angle::deg(1e-9));
      CHECK(least <= best.residual + Angle::deg(0.1));
    }
  }

  TEST_CASE("given PB of a corner of 120 deg, the plate named lies level") {
    // closed-form: plates with normals z and (sin60, 0, cos60 = 0.5), face between them.
    const Vec3 plate_1 = Vec3::UnitZ();
    const Vec3 plate_2(oracles::sin60, 0.0, 0.5);
    const Vec3 n = (plate_1 + plate_2).normalized();
    const Angle bank = Angle::deg(90.0 - 120.0 / 2.0);
    // t along y: n x t points to the side of z, so positive bank lays the first plate level.
    const Vec3 down_1 = turn::sky_direction(Vec3::UnitY(), n, Angle(), bank);
    const Vec3 down_2 = turn::sky_direction(Vec3::UnitY(), n, Angle(), -bank);
    CHECK((down_1 - plate_1).norm() < 1e-12);
    CHECK((down_2 - plate_2).norm() < 1e-12);
  }

  TEST_CASE("given tilt 90 deg and the faceplate 150 mm off, the faceplate stands 150 mm aside") {
    cell::Positioner table = table_with(-15, 135, -370, 370);
    table.tilt_centre = Vec3(10.0, 20.0, 900.0);
    table.overhang_mm = 150.0;
    const auto level = turn::pose_WD(table, {Angle(), Angle::deg(30.0)});
    CHECK((level.translation - Vec3(10.0, 20.0, 1050.0)).norm() < 1e-9);
    const auto tilted = turn::pose_WD(table, {Angle::deg(90.0), Angle()});
    CHECK((tilted.translation - Vec3(160.0, 20.0, 900.0)).norm() < 1e-9);
    CHECK((tilted.direction(Vec3::UnitZ()) - Vec3::UnitX()).norm() < 1e-12);
    cell::Positioner headstock;
    headstock.kind = PositionerKind::headstock;
    headstock.overhang_mm = 200.0;
    headstock.axes.resize(1);
    const auto turned = turn::pose_WD(headstock, {Angle::deg(90.0)});
    CHECK((turned.translation - Vec3(200.0, 0.0, 0.0)).norm() < 1e-9);
    CHECK((turned.direction(Vec3::UnitY()) - Vec3::UnitZ()).norm() < 1e-12);
  }

  TEST_CASE("for any chain, law: pose and lines of the axes are those of turning one by one") {
    // cross: the last axis first, each about its own line at zero.
    Random random(base::named_seed(3, "chains"));
    for (int i = 0; i < 200; ++i) {
      INFO("seed 3, case " << i);
      cell::Positioner arm;
      arm.kind = i % 2 == 0 ? PositionerKind::inclined : PositionerKind::station_changer;
      arm.between = Angle::deg(random.between(5.0, 175.0));
      arm.tilt_centre = Vec3(random.between(-500, 500), 40.0, 900.0);
      arm.exchange_centre = Vec3(-2000.0, random.between(-500, 500), 0.0);
      arm.overhang_mm = random.between(-300, 300);
      arm.axes.resize(2);
      if (i % 3 == 0) {
        arm.axes[0].line = cell::AxisLine{random_unit(random), Vec3(100.0, 200.0, 300.0)};
        arm.axes[1].line = cell::AxisLine{random_unit(random), Vec3(-50.0, 70.0, 900.0)};
      }
      const std::vector<Angle> axes{Angle::deg(random.between(-180, 180)),
                                    Angle::deg(random.between(-180, 180))};
      const Vec3 p_D(random.between(-300, 300), random.between(-300, 300), 200.0);
      Vec3 point = cell::faceplate_at_zero(arm).point(p_D);
      Vec3 on_last = cell::axis_line(arm, 1).at;
      Vec3 past_last = on_last + cell::axis_line(arm, 1).along;
      for (std::size_t k = 2; k-- > 0;) {
        const cell::AxisLine line = cell::axis_line(arm, k);
        const auto turn = [&](Vec3& p) {
          p = line.at + geom::rotation_about(line.along, axes[k]) * (p - line.at);
        };
        turn(point);
        if (k == 0) turn(on_last);
        if (k == 0) turn(past_last);
      }
      CHECK((turn::pose_WD(arm, axes).point(p_D) - point).norm() < 1e-9);
      const auto lines = turn::axis_lines_W(arm, axes);
      CHECK((lines[1].at - on_last).norm() < 1e-9);
      CHECK((lines[1].along - (past_last - on_last)).norm() < 1e-10);  // of places 1 m off
      CHECK((lines[0].at - cell::axis_line(arm, 0).at).norm() < 1e-9);
    }
  }

  TEST_CASE("for every kind, law: an answer leaves just its residual, an exchange stands still") {
    Random random(base::named_seed(3, "kinds"));
    const PositionerKind kinds[] = {PositionerKind::tilt_rotate,
                                    PositionerKind::headstock,
                                    PositionerKind::inclined,
                                    PositionerKind::roll_arm,
                                    PositionerKind::station_changer};
    for (int i = 0; i < 2000; ++i) {
      INFO("seed 3, case " << i);
      cell::Positioner positioner = plain(kinds[i % 5]);
      positioner.between = Angle::deg(random.between(10.0, 170.0));
      if (i % 3 == 0) positioner.axes.back().line = cell::AxisLine{random_unit(random), {}};
      const Vec3 u = random_unit(random);
      for (const StanceAnswer& answer : stances_for_sky(positioner, u)) {
        const Vec3 there = turn::rotation_WD(positioner, answer.axes) * u;
        CHECK(std::abs((geom::angle_between(there, Vec3::UnitZ()) - answer.residual).rad()) < 1e-9);
        if (positioner.kind == PositionerKind::station_changer) CHECK(answer.axes[0] == Angle());
      }
    }
    // A roll-arm has every direction; a station changer what its headstock has.
    const Vec3 u = Vec3(0.3, -0.4, 0.5).normalized();
    CHECK(stances_for_sky(plain(PositionerKind::roll_arm), u).size() == 2);
    const auto side = stances_for_sky(plain(PositionerKind::station_changer), u);
    const auto head = stances_for_sky(plain(PositionerKind::headstock), u);
    REQUIRE(side.size() == 1);
    CHECK(side[0].axes[1] == head[0].axes[0]);
    CHECK(side[0].residual == head[0].residual);
  }

  TEST_CASE("given an upright first axis, it stays as near to zero as it may stand") {
    cell::Positioner table = table_with(20, 90, -370, 370);
    const auto free =
        turn::within_limits(table, {{{Angle(), Angle::deg(10.0)}, false, Angle(), true}});
    REQUIRE(free.size() == 3);
    CHECK(free[0].axes[0].deg() == doctest::Approx(20.0));
    CHECK(free[0].axes[1].deg() == doctest::Approx(10.0));
    CHECK(free[0].first_free);
  }

  TEST_CASE("given axis limits, answers come with every whole turn inside and none outside") {
    const auto settings = [](const cell::Positioner& table, double tilt, double rotate) {
      return turn::within_limits(table,
                                 {{{Angle::deg(tilt), Angle::deg(rotate)}, false, Angle(), false}});
    };
    const cell::Positioner table = table_with(-15, 135, -370, 370);
    const auto two = settings(table, 90.0, 170.0);
    REQUIRE(two.size() == 2);  // nearest to zero first
    CHECK(two[0].axes[1].deg() == doctest::Approx(170.0));
    CHECK(two[1].axes[1].deg() == doctest::Approx(-190.0));
    CHECK(settings(table, 90.0, 0.0).size() == 3);
    CHECK(settings(table, 135.0, 20.0).size() == 2);
    CHECK(settings(table, 135.001, 20.0).empty());
    CHECK(settings(table, -15.001, 20.0).empty());
    CHECK(settings(table, -15.0, 20.0).size() == 2);
    CHECK(settings(table_with(0, 135, 170, 190), 90.0, -175.0).front().axes[1].deg() ==
          doctest::Approx(185.0));
    CHECK(settings(table_with(0, 135, 5, 90), 0.0, 0.0).empty());
    cell::Positioner endless = table;
    endless.axes[1].endless = true;
    CHECK(settings(endless, 90.0, 170.0).size() == 1);
    const auto free = turn::within_limits(table_with(0, 135, 5, 90),
                                          {{{Angle(), Angle()}, true, Angle(), false}});
    REQUIRE(free.size() == 1);
    CHECK(free[0].axes[1].deg() == doctest::Approx(5.0));
  }

  TEST_CASE("refuses directions of a seam that are not square because the sky would be wrong") {
    CHECK_THROWS_AS(
        (void)turn::sky_direction(Vec3::UnitX(), Vec3(1, 0, 1).normalized(), Angle(), Angle()),
        base::ContractViolation);
    CHECK_THROWS_AS((void)turn::rotation_WD(plain(PositionerKind::headstock), {Angle(), Angle()}),
                    base::ContractViolation);
  }

  TEST_CASE("given the card, the keys are those of the command line") {
    std::string names;
    for (const base::FigureKey& key : turn::stance_card().keys)
      names += std::string(key.name) + ' ';
    CHECK(names == "positioner axis normal want down angle ");
  }
}

}  // namespace seamturn::tests
