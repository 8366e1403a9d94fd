// SPDX-License-Identifier: MIT
#include "seamturn/tack/carry.hpp"

#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Random;
using geom::Vec3;
using tack::CarriedPart;
using tack::HeldTack;

namespace {

constexpr double g_m_s2 = 9.80665;

/// A part whose weight with its factor is this force.
CarriedPart part_of(double weight_n, const Vec3& centre, std::vector<Vec3> downs) {
  CarriedPart part;
  part.mass_kg = 0.5 * weight_n / g_m_s2;
  part.site_factor = 2.0;
  part.centre_of_gravity = centre;
  part.gravity_directions = std::move(downs);
  part.permitted.stress_mpa = 100.0;
  return part;
}

tack::Carry carried(const std::vector<HeldTack>& tacks, const CarriedPart& part) {
  const auto out = tack::carry(tacks, part);
  REQUIRE(out);
  return *out;
}

Vec3 random_vector(Random& random, double size) {
  return {random.between(-size, size), random.between(-size, size), random.between(-size, size)};
}
std::vector<HeldTack> random_tacks(Random& random) {
  std::vector<HeldTack> tacks(2 + random.below(6));
  for (HeldTack& one : tacks) {
    one = {random_vector(random, 500.0),
           random_vector(random, 1.0).normalized(),
           random.between(10.0, 120.0),
           random.between(2.0, 8.0)};
  }
  return tacks;
}
CarriedPart random_part(Random& random) {
  CarriedPart part = part_of(random.between(500.0, 50000.0), random_vector(random, 600.0), {});
  for (int i = 0; i < 3; ++i) {
    part.gravity_directions.push_back(random_vector(random, 1.0).normalized());
  }
  return part;
}

/// Another method: six unknown movements of the part (about J's origin, not the centroid), springs
/// at two points of each tack, solved as one dense system; stress read at the ends of each tack.
double dense_worst_stress(const std::vector<HeldTack>& tacks, const CarriedPart& part) {
  const auto moves = [](const Vec3& r) {
    Eigen::Matrix<double, 3, 6> m;
    m << 1, 0, 0, 0, r.z(), -r.y(), 0, 1, 0, -r.z(), 0, r.x(), 0, 0, 1, r.y(), -r.x(), 0;
    return m;
  };
  const double apart = 0.5 / std::sqrt(3.0);  // two points that hold area and inertia of a line
  Eigen::Matrix<double, 6, 6> stiffness = Eigen::Matrix<double, 6, 6>::Zero();
  for (const HeldTack& one : tacks) {
    for (const double side : {-apart, apart}) {
      const auto m = moves(one.centre + side * one.length_mm * one.direction);
      stiffness += 0.5 * one.length_mm * one.throat_mm * m.transpose() * m;
    }
  }
  double worst = 0.0;
  for (const Vec3& down : part.gravity_directions) {
    const Vec3 weight = part.mass_kg * g_m_s2 * part.site_factor * down;
    const Eigen::Matrix<double, 6, 1> load = moves(part.centre_of_gravity).transpose() * weight;
    const Eigen::Matrix<double, 6, 1> moved = stiffness.fullPivLu().solve(load);
    for (const HeldTack& one : tacks) {
      for (const double side : {-0.5, 0.5}) {
        worst = std::max(worst,
                         (moves(one.centre + side * one.length_mm * one.direction) * moved).norm());
      }
    }
  }
  return worst;
}

/// Both sides of a tee: two lines of tacks a plate apart.
std::vector<tack::TackSeam> tee(double length_mm) {
  std::vector<tack::TackSeam> seams(2);
  for (const int side : {0, 1}) {
    const double y = side == 0 ? -8.0 : 8.0;
    seams[side].path = geom::LinePath{Vec3(0.0, y, 0.0), Vec3(length_mm, y, 0.0)};
    seams[side].thicker_mm = 20.0;
    seams[side].yield_mpa = 355.0;
    seams[side].weld_throat_mm = 6.0;
    seams[side].root_run_mm = 4.0;
    seams[side].second_side = side == 1;
  }
  return seams;
}

}  // namespace

TEST_SUITE("tack/carry") {
  TEST_CASE("given two tacks side by side, closed-form: couples across, along and about") {
    // Lines of 50 x 4 = 200 mm2 along x, 100 mm to each side; 4000 N: 10 MPa when central.
    const std::vector<HeldTack> pair{{Vec3(0, 100, 0), Vec3::UnitX(), 50.0, 4.0},
                                     {Vec3(0, -100, 0), Vec3::UnitX(), 50.0, 4.0}};
    const Vec3 down = -Vec3::UnitZ();
    CHECK(carried(pair, part_of(4000, Vec3::Zero(), {down})).stress_mpa == doctest::Approx(10.0));
    // closed-form: a load e off the middle, h 100: (W / 2A) (1 + e / h).
    const auto across = carried(pair, part_of(4000, Vec3(0, -150, 0), {down}));
    CHECK(across.stress_mpa == doctest::Approx(25.0));
    CHECK(across.worst_tack == 1);
    CHECK(across.loads[0].force_n.z() == doctest::Approx(1000.0));
    CHECK(across.loads[1].force_n.z() == doctest::Approx(-5000.0));
    CHECK(across.loads[0].stress_mpa == doctest::Approx(5.0));
    // closed-form: along the lines as a bar in bending: (W / 2A) (1 + 6 e / L).
    CHECK(carried(pair, part_of(4000, Vec3(75, 0, 0), {down})).stress_mpa ==
          doctest::Approx(100.0));
    // closed-form: in their plane: Iz = 2 A (h^2 + L^2 / 12); at x 25, y +-100 of a load along -y.
    const double turn = 4000.0 * 300.0 / (400.0 * (1e4 + 2500.0 / 12.0));
    const double expected = std::hypot(100.0 * turn, 10.0 + 25.0 * turn);
    CHECK(carried(pair, part_of(4000, Vec3(300, 0, 0), {-Vec3::UnitY()})).stress_mpa ==
          doctest::Approx(expected));
  }

  TEST_CASE("given four tacks on a square, closed-form: a load above their plane") {
    // Along y at x, y = +-60, 40 x 5; 2400 N along x, 150 above: shear 3, push and pull
    // W c / (4 A b) = 7.5.
    std::vector<HeldTack> four;
    for (const double x : {-60.0, 60.0}) {
      for (const double y : {-60.0, 60.0}) four.push_back({Vec3(x, y, 0), Vec3::UnitY(), 40, 5});
    }
    const auto got = carried(four, part_of(2400, Vec3(0, 0, 150), {Vec3::UnitX()}));
    CHECK(got.stress_mpa == doctest::Approx(std::hypot(3.0, 7.5)));
    CHECK(got.utilisation_ratio == doctest::Approx(std::hypot(3.0, 7.5) / 100.0));
    // closed-form: no attitude is worse than straight along x or y there but for the lines' ends:
    // along y, Ix holds 4 A (b^2 + L^2 / 12) and the far end lies 80 off.
    const double ends = 2400.0 * 150.0 * 80.0 / (800.0 * (3600.0 + 1600.0 / 12.0));
    CHECK(got.any_attitude_stress_mpa >= std::hypot(3.0, ends) - 1e-9);
  }

  TEST_CASE("given the plate of docs/methods/tacks.md, closed-form: its stress and ratio") {
    std::vector<tack::TackSeam> seams = tee(1000.0);
    for (const int side : {0, 1}) {
      const double y = side == 0 ? -20.0 : 20.0;
      seams[side].path = geom::LinePath{Vec3(0.0, y, 0.0), Vec3(1000.0, y, 0.0)};
      seams[side].thicker_mm = 40.0;
    }
    std::vector<HeldTack> tacks = tack::held_tacks(*tack::plan_tacks(seams[0], {}));
    REQUIRE(tacks.size() == 5);
    for (const HeldTack& one : tack::held_tacks(*tack::plan_tacks(seams[1], {}))) {
      tacks.push_back(one);
    }
    REQUIRE(tacks.size() == 9);
    CarriedPart plate;
    plate.mass_kg = 188.4;
    plate.site_factor = 2.0;
    plate.centre_of_gravity = Vec3(500.0, -20.0 / 9.0, 300.0);
    plate.gravity_directions = {Vec3::UnitY()};
    plate.permitted = *tack::permitted_stress(470.0, 355.0, {});
    const auto got = carried(tacks, plate);
    // closed-form: M 22.22 / 711 111 and W / 1800 square to one another.
    const double w = 188.4 * g_m_s2 * 2.0;
    const double iy = 200.0 * (5.0 * 160.0 * 160.0 + 4.0 * 200.0 * 200.0) / 81.0;
    const double expected = std::hypot(w * 300.0 * (200.0 / 9.0) / iy, w / 1800.0);
    CHECK(got.stress_mpa == doctest::Approx(expected));
    CHECK(got.stress_mpa == doctest::Approx(34.7).epsilon(0.002));
    CHECK(got.utilisation_ratio == doctest::Approx(0.144).epsilon(0.004));
    CHECK(got.worst_tack >= 5);
  }

  TEST_CASE("for random groups, cross: a dense system of springs gives the same worst stress") {
    Random random(base::named_seed(11, "tack groups"));
    for (int i = 0; i < 300; ++i) {
      INFO("seed 11, case " << i);
      const std::vector<HeldTack> tacks = random_tacks(random);
      const CarriedPart part = random_part(random);
      CHECK(carried(tacks, part).stress_mpa ==
            doctest::Approx(dense_worst_stress(tacks, part)).epsilon(1e-7));
    }
  }

  TEST_CASE("for random groups, law: forces add up to the weight, and their moments too") {
    Random random(base::named_seed(12, "tack groups"));
    for (int i = 0; i < 200; ++i) {
      INFO("seed 12, case " << i);
      std::vector<HeldTack> tacks = random_tacks(random);
      if (tacks.size() < 3) continue;                    // two points are a hinge
      for (HeldTack& one : tacks) one.length_mm = 1e-3;  // so short that each acts at a point
      CarriedPart part = random_part(random);
      const auto got = carried(tacks, part);
      const Vec3 weight =
          part.mass_kg * g_m_s2 * part.site_factor * part.gravity_directions[got.worst_attitude];
      Vec3 force = Vec3::Zero(), moment = Vec3::Zero();
      for (std::size_t k = 0; k < tacks.size(); ++k) {
        force += got.loads[k].force_n;
        moment += tacks[k].centre.cross(got.loads[k].force_n);
      }
      CHECK((force - weight).norm() < 1e-6 * weight.norm());
      const Vec3 due = part.centre_of_gravity.cross(weight);
      CHECK((moment - due).norm() < 1e-5 * weight.norm() * 1000.0);
    }
  }

  TEST_CASE("for random groups, law: turned or moved as a whole, nothing changes") {
    Random random(base::named_seed(13, "tack groups"));
    for (int i = 0; i < 100; ++i) {
      INFO("seed 13, case " << i);
      std::vector<HeldTack> tacks = random_tacks(random);
      CarriedPart part = random_part(random);
      const auto before = carried(tacks, part);
      const geom::Pose X{geom::rotation_about(random_vector(random, 1.0),
                                              base::Angle::deg(random.between(-180.0, 180.0))),
                         random_vector(random, 2000.0)};
      for (HeldTack& one : tacks) {
        one.centre = X.point(one.centre);
        one.direction = X.direction(one.direction).normalized();
      }
      part.centre_of_gravity = X.point(part.centre_of_gravity);
      for (Vec3& down : part.gravity_directions) down = X.direction(down).normalized();
      const auto after = carried(tacks, part);
      CHECK(after.stress_mpa == doctest::Approx(before.stress_mpa).epsilon(1e-8));
      CHECK(after.any_attitude_stress_mpa ==
            doctest::Approx(before.any_attitude_stress_mpa).epsilon(1e-8));
      CHECK(after.worst_attitude == before.worst_attitude);
    }
  }

  TEST_CASE("for random groups, law: stress goes with mass and factor, and against the throat") {
    Random random(base::named_seed(14, "tack groups"));
    for (int i = 0; i < 50; ++i) {
      std::vector<HeldTack> tacks = random_tacks(random);
      CarriedPart part = random_part(random);
      const double before = carried(tacks, part).stress_mpa;
      part.mass_kg *= 3.0;
      CHECK(carried(tacks, part).stress_mpa == doctest::Approx(3.0 * before));
      part.site_factor *= 2.0;
      CHECK(carried(tacks, part).stress_mpa == doctest::Approx(6.0 * before));
      for (HeldTack& one : tacks) one.throat_mm *= 4.0;
      CHECK(carried(tacks, part).stress_mpa == doctest::Approx(1.5 * before));
      part.permitted.stress_mpa = 50.0;
      CHECK(carried(tacks, part).utilisation_ratio == doctest::Approx(1.5 * before / 50.0));
    }
  }

  TEST_CASE("for random groups, law: no attitude is worse than the worst of any, one reaches it") {
    Random random(base::named_seed(15, "tack groups"));
    for (int i = 0; i < 20; ++i) {
      INFO("seed 15, case " << i);
      const std::vector<HeldTack> tacks = random_tacks(random);
      CarriedPart part = random_part(random);
      part.gravity_directions.clear();
      for (int k = 0; k < 4000; ++k) {  // evenly over the sphere by the golden angle
        const double z = 1.0 - (2.0 * k + 1.0) / 4000.0;
        const double turn = k * std::numbers::pi * (3.0 - std::sqrt(5.0));
        const double r = std::sqrt(1.0 - z * z);
        part.gravity_directions.push_back(
            Vec3(r * std::cos(turn), r * std::sin(turn), z).normalized());
      }
      const auto got = carried(tacks, part);
      CHECK(got.stress_mpa <= got.any_attitude_stress_mpa * (1.0 + 1e-9));
      CHECK(got.stress_mpa >= got.any_attitude_stress_mpa * 0.998);
    }
  }

  TEST_CASE("for rings and tees, law: more tacks never raise the worst stress") {
    double ring_before = 1e300, tee_before = 1e300;
    for (int count = 4; count <= 16; ++count) {
      tack::TackSeam ring;
      geom::CirclePath circle;
      circle.radius_mm = 300.0;
      ring.path = circle;
      ring.thicker_mm = 20.0;
      ring.yield_mpa = 355.0;
      ring.weld_throat_mm = 6.0;
      ring.root_run_mm = 4.0;
      ring.count = count;
      const CarriedPart part = part_of(8000.0, Vec3(0, 0, 400.0), {Vec3::UnitX()});
      const auto plan = tack::plan_tacks(ring, {});
      REQUIRE(plan);
      const double ring_now = carried(tack::held_tacks(*plan), part).any_attitude_stress_mpa;
      CHECK(ring_now <= ring_before * (1.0 + 1e-9));
      ring_before = ring_now;
      std::vector<HeldTack> both;
      for (tack::TackSeam seam : tee(2000.0)) {
        seam.second_side = false;
        seam.count = count;
        for (const HeldTack& one : tack::held_tacks(*tack::plan_tacks(seam, {}))) {
          both.push_back(one);
        }
      }
      const CarriedPart plate = part_of(8000.0, Vec3(1000, 0, 250.0), {Vec3::UnitY()});
      const double tee_now = carried(both, plate).any_attitude_stress_mpa;
      CHECK(tee_now <= tee_before * (1.0 + 1e-9));
      tee_before = tee_now;
    }
  }

  TEST_CASE("given a load at the permitted stress, a note only, and just above it a warning") {
    const std::vector<HeldTack> pair{{Vec3(0, 100, 0), Vec3::UnitX(), 50.0, 4.0},
                                     {Vec3(0, -100, 0), Vec3::UnitX(), 50.0, 4.0}};
    const Vec3 up = Vec3::UnitZ();
    const auto holds = carried(pair, part_of(39999.9, Vec3::Zero(), {up}));
    REQUIRE(holds.findings.size() == 1);
    CHECK(holds.findings[0].code == "tack.carry.not_released");
    CHECK(holds.findings[0].severity == base::Severity::note);
    const auto breaks = carried(pair, part_of(40000.1, Vec3(0, -0.001, 0), {up, -up}));
    REQUIRE(breaks.findings.size() == 1);
    CHECK(breaks.findings[0].code == "tack.carry.overloaded");
    CHECK(breaks.findings[0].severity == base::Severity::warning);
    CHECK(breaks.findings[0].text.find("tack 2") != std::string::npos);
  }

  TEST_CASE("refuses tacks in one line because the part would turn about it like a door") {
    const std::vector<HeldTack> line{{Vec3(0, 0, 0), Vec3::UnitX(), 50.0, 4.0},
                                     {Vec3(400, 0, 0), Vec3::UnitX(), 50.0, 4.0}};
    const CarriedPart part = part_of(1000.0, Vec3(200, 0, 50), {Vec3::UnitY()});
    const auto door = tack::carry(line, part);
    REQUIRE_FALSE(door);
    CHECK(door.error().code == "tack.carry.hinge");
    CHECK_FALSE(tack::carry({line.front()}, part));
    std::vector<HeldTack> bent = line;
    bent[1].direction = Vec3::UnitY();
    CHECK(tack::carry(bent, part));
  }

  TEST_CASE("given a tee that needs more tacks, law: so many hold, and one fewer does not") {
    const std::vector<tack::TackSeam> seams = tee(1200.0);
    CarriedPart part = part_of(6000.0, Vec3(600, 0, 120), {Vec3::UnitY(), -Vec3::UnitZ()});
    std::vector<HeldTack> first;
    std::size_t count = 0;
    for (const tack::TackSeam& seam : seams) {
      for (const HeldTack& one : tack::held_tacks(*tack::plan_tacks(seam, {}))) {
        first.push_back(one);
        ++count;
      }
    }
    const double stress = carried(first, part).stress_mpa;
    part.permitted.stress_mpa = stress * 1.0001;
    const auto none = tack::more_tacks_needed(seams, {}, part);
    REQUIRE(none);
    CHECK(none->more == 0);
    part.permitted.stress_mpa = stress * 0.7;
    const auto more = tack::more_tacks_needed(seams, {}, part);
    REQUIRE(more);
    CHECK(more->more > 1);
    CHECK(more->carry.utilisation_ratio <= 1.0);
    CHECK(more->plans[0].tacks.size() + more->plans[1].tacks.size() == count + more->more);
    std::vector<HeldTack> after = tack::held_tacks(more->plans[0]);
    for (const HeldTack& one : tack::held_tacks(more->plans[1])) after.push_back(one);
    CHECK(carried(after, part).stress_mpa == more->carry.stress_mpa);
    const auto capped = tack::more_tacks_needed(seams, {}, part, more->more - 1);
    REQUIRE_FALSE(capped);
    CHECK(capped.error().code == "tack.carry.not_by_more");
    CHECK(capped.error().text.find(std::to_string(more->more - 1) + " more") == 0);
    part.permitted.stress_mpa = stress * 0.01;  // no room for so many
    const auto full = tack::more_tacks_needed(seams, {}, part);
    REQUIRE_FALSE(full);
    CHECK(full.error().code == "tack.carry.not_by_more");
    const auto door = tack::more_tacks_needed({seams[0]}, {}, part);
    REQUIRE_FALSE(door);
    CHECK(door.error().code == "tack.carry.hinge");
  }

  TEST_CASE("given seams laid unevenly, more tacks go where they lie furthest apart") {
    std::vector<tack::TackSeam> seams = tee(1000.0);
    seams[1].second_side = false;
    seams[1].count = 2;  // 910 apart, the first side's 227.5
    CarriedPart part = part_of(6000.0, Vec3(500, 0, 120), {Vec3::UnitY()});
    std::vector<HeldTack> first = tack::held_tacks(*tack::plan_tacks(seams[0], {}));
    for (const HeldTack& one : tack::held_tacks(*tack::plan_tacks(seams[1], {}))) {
      first.push_back(one);
    }
    part.permitted.stress_mpa = carried(first, part).stress_mpa * 0.999;
    const auto more = tack::more_tacks_needed(seams, {}, part);
    REQUIRE(more);
    CHECK(more->more == 1);
    CHECK(more->plans[0].tacks.size() == 5);
    CHECK(more->plans[1].tacks.size() == 3);
  }

  TEST_CASE("refuses what is no quantity because it is a caller's bug") {
    const std::vector<HeldTack> tacks{{Vec3(0, 100, 0), Vec3::UnitX(), 50.0, 4.0},
                                      {Vec3(0, -100, 0), Vec3::UnitX(), 50.0, 4.0}};
    const auto broken = [&](auto change) {
      std::vector<HeldTack> some = tacks;
      CarriedPart part = part_of(1000.0, Vec3::Zero(), {Vec3::UnitZ()});
      change(some, part);
      CHECK_THROWS_AS((void)tack::carry(some, part), base::ContractViolation);
    };
    broken([](auto& t, auto&) { t.clear(); });
    broken([](auto& t, auto&) { t[0].length_mm = 0.0; });
    broken([](auto& t, auto&) { t[0].throat_mm = std::nan(""); });
    broken([](auto& t, auto&) { t[0].direction *= 2.0; });
    broken([](auto& t, auto&) { t[0].centre.x() = std::nan(""); });
    broken([](auto&, auto& p) { p.mass_kg = 0.0; });
    broken([](auto&, auto& p) { p.site_factor = 0.99; });
    broken([](auto&, auto& p) { p.gravity_directions.clear(); });
    broken([](auto&, auto& p) { p.gravity_directions[0] *= 1.1; });
    broken([](auto&, auto& p) { p.centre_of_gravity.y() = std::nan(""); });
    broken([](auto&, auto& p) { p.permitted.stress_mpa = 0.0; });
    CHECK_THROWS_AS((void)tack::more_tacks_needed({}, {}, CarriedPart{}), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
