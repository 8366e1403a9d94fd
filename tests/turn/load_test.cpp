// SPDX-License-Identifier: MIT
#include "seamturn/turn/load.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "oracle.hpp"
#include "seamturn/base/gravity.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/base/units.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Dimension;
using base::Random;
using geom::Vec3;
using joint::Weight;

namespace {

cell::Positioner demo_table() {
  cell::Positioner table;
  table.id = "T1";
  table.tilt_centre = Vec3(100.0, -50.0, 900.0);
  table.overhang_mm = 150.0;
  table.load_max_kg = 2000.0;
  table.load_centre_mm = 300.0;
  table.axes.resize(2);
  table.axes[0].name = "tilt";
  table.axes[0].torque_max_nm = 9000.0;
  table.axes[1].name = "rotate";
  table.axes[1].torque_max_nm = 2500.0;
  return table;
}

cell::Positioner demo_headstock() {
  cell::Positioner headstock;
  headstock.id = "H1";
  headstock.kind = cell::PositionerKind::headstock;
  headstock.tilt_centre = Vec3(0.0, 0.0, 1000.0);
  headstock.overhang_mm = 80.0;
  headstock.load_max_kg = 1500.0;
  headstock.load_centre_mm = 500.0;
  headstock.axes.resize(1);
  headstock.axes[0].name = "turn";
  headstock.axes[0].torque_max_nm = 1000.0;
  return headstock;
}

/// Potential energy of the load, J.
double energy_j(const cell::Positioner& positioner,
                const Weight& load,
                const std::vector<Angle>& axes) {
  const double height_m = turn::pose_WD(positioner, axes).point(load.centre).z() / 1000.0;
  return load.mass_kg * base::gravity_m_s2 * height_m;
}

/// The number that follows some words; NaN where they are not said.
double number_after(const std::string& text, const std::string& words) {
  const std::size_t at = text.find(words);
  return at == std::string::npos ? NAN : std::stod(text.substr(at + words.size()));
}

const base::Finding* find_code(const std::vector<base::Finding>& findings, const char* code) {
  for (const base::Finding& finding : findings) {
    if (finding.code == code) return &finding;
  }
  return nullptr;
}

bool overloads_rotate(const cell::Positioner& table,
                      const Weight& load,
                      const std::vector<Angle>& axes) {
  const auto found = turn::check_load(table, load, axes, "");
  return std::any_of(found.begin(), found.end(), [](const base::Finding& finding) {
    return finding.text.find("axis rotate") != std::string::npos;
  });
}

}  // namespace

TEST_SUITE("turn/load") {
  TEST_CASE("given the sizing rule's loads, tilt and rotation torque are as worked out by hand") {
    // computed: products of the published rule W (OH + d), W e (POSITIONER-SIZING).
    const double pound = 0.45359237;
    const turn::SizingTorque us =
        turn::sizing_torque(4000.0 * pound, 6 * 25.4, 10 * 25.4, 4 * 25.4);
    const auto in_lb = [](double nm) { return base::in_unit(nm, Dimension::torque, "in lb"); };
    check_expected("4000 lb, OH 6 in, d 10 in, tilt in lb",
                   in_lb(us.tilt_nm),
                   {64000.0, 0.01, Origin::computed, "POSITIONER-SIZING rule"});
    check_expected("4000 lb, e 4 in, rotation in lb",
                   in_lb(us.rotate_nm),
                   {16000.0, 0.01, Origin::computed, "POSITIONER-SIZING rule"});
    const turn::SizingTorque si = turn::sizing_torque(2000.0, 150.0, 400.0, 100.0);
    check_expected("2000 kg, OH 0.15 m, d 0.40 m, tilt",
                   si.tilt_nm,
                   {10787.0, 0.5, Origin::computed, "POSITIONER-SIZING rule"});
    check_expected("2000 kg, e 0.10 m, rotation",
                   si.rotate_nm,
                   {1961.0, 0.5, Origin::computed, "POSITIONER-SIZING rule"});
  }

  TEST_CASE("given 2000 kg rated at 300 mm, the load allowed farther out is derated") {
    const cell::Positioner table = demo_table();
    struct Row {
      double distance_mm, allowed_kg;
    };
    const Row rows[] = {
        {0, 2000.0}, {300, 2000.0}, {400, 1636.4}, {500, 1384.6}, {750, 1000.0}, {1000, 782.6}};
    for (const Row& row : rows) {
      check_expected("distance " + std::to_string(row.distance_mm),
                     turn::load_allowed_kg(table, row.distance_mm),
                     {row.allowed_kg, 0.05, Origin::computed, "POSITIONER-SIZING rule"});
    }
    // Rated at a published plate, overhang assumed 12 in.
    cell::Positioner big = table;
    big.load_max_kg = 40000.0;
    big.overhang_mm = 304.8;
    big.load_centre_mm = 304.8;
    CHECK(turn::load_allowed_kg(big, 18 * 25.4) == doctest::Approx(32000.0));
    CHECK(turn::load_allowed_kg(big, 36 * 25.4) == doctest::Approx(20000.0));
  }

  TEST_CASE("for any stance, law: torque about an axis is what the height of the load gives back") {
    // Independent statics: -dV/d(angle) by central difference of the potential energy.
    Random random(base::named_seed(5, "virtual work"));
    for (int i = 0; i < 300; ++i) {
      cell::Positioner positioner = i % 2 == 0 ? demo_table() : demo_headstock();
      if (i % 10 == 2) positioner.kind = cell::PositionerKind::inclined;
      if (i % 10 == 4) positioner.kind = cell::PositionerKind::roll_arm;
      if (i % 10 == 6) positioner.kind = cell::PositionerKind::station_changer;
      positioner.between = Angle::deg(50.0);
      positioner.exchange_centre = Vec3(-1500.0, 200.0, 0.0);
      if (i % 10 == 8) {  // askew, and not through one point
        positioner.axes[0].line = cell::AxisLine{Vec3(0.48, 0.64, 0.6), Vec3(-200.0, 40.0, 800.0)};
        positioner.axes[1].line = cell::AxisLine{Vec3(0.6, 0.0, 0.8), Vec3(90.0, -70.0, 1100.0)};
      }
      Weight load;
      load.mass_kg = random.between(10.0, 3000.0);
      load.centre =
          Vec3(random.between(-500, 900), random.between(-500, 500), random.between(-100, 900));
      std::vector<Angle> axes(positioner.axes.size());
      for (Angle& axis : axes) axis = Angle::deg(random.between(-180.0, 180.0));
      const auto torques = turn::axis_torques_nm(positioner, load, axes);
      REQUIRE(torques.size() == axes.size());
      INFO("seed 5, case " << i);
      for (std::size_t k = 0; k < axes.size(); ++k) {
        constexpr double step_rad = 1e-4;
        std::vector<Angle> more = axes, less = axes;
        more[k] = axes[k] + Angle::rad(step_rad);
        less[k] = axes[k] - Angle::rad(step_rad);
        const double slope =
            (energy_j(positioner, load, more) - energy_j(positioner, load, less)) / (2 * step_rad);
        CHECK(torques[k] == doctest::Approx(-slope).epsilon(1e-6).scale(10.0));
      }
    }
  }

  TEST_CASE("given the worst tilt, the torques of the axes are those of the sizing rule") {
    const cell::Positioner table = demo_table();
    const Weight load{2000.0, Vec3(0.0, 100.0, 400.0)};
    const auto upright = turn::axis_torques_nm(table, load, {Angle::deg(90.0), Angle()});
    const turn::SizingTorque rule = turn::sizing_torque(2000.0, 150.0, 400.0, 100.0);
    CHECK(upright[0] == doctest::Approx(rule.tilt_nm));
    CHECK(std::abs(upright[1]) == doctest::Approx(rule.rotate_nm));
    const auto level = turn::axis_torques_nm(table, load, {Angle(), Angle::deg(90.0)});
    CHECK(std::abs(level[1]) < 1e-9);
  }

  TEST_CASE("given a load at its limits, nothing is said, and just beyond, what and by how much") {
    const cell::Positioner table = demo_table();
    const std::vector<Angle> level{Angle(), Angle()};
    const std::vector<Angle> upright{Angle::deg(90.0), Angle()};
    CHECK(turn::check_load(table, Weight{2000.0, Vec3(0, 0, 300)}, level, "S01").empty());
    const auto heavy = turn::check_load(table, Weight{2000.1, Vec3(0, 0, 300)}, level, "S01");
    REQUIRE(heavy.size() == 1);
    CHECK(heavy[0].code == "turn.load.too_heavy");
    CHECK(heavy[0].text.find("2000.1 kg") != std::string::npos);
    CHECK(heavy[0].severity == base::Severity::error);

    const double e_mm = 2500.0 / (1000.0 * base::gravity_m_s2) * 1000.0;  // rotation plate exactly
    CHECK(turn::check_load(table, Weight{1000.0, Vec3(0, e_mm - 0.01, 0)}, upright, "S02").empty());
    const auto turning =
        turn::check_load(table, Weight{1000.0, Vec3(0, e_mm + 0.01, 0)}, upright, "S02");
    REQUIRE(turning.size() == 1);
    CHECK(turning[0].code == "turn.load.torque");
    CHECK(turning[0].text.find("rotate") != std::string::npos);
    CHECK(turning[0].text.find("S02") != std::string::npos);
    // 0.01 mm more of 1000 kg is 0.098 N m: whole numbers would read "2500, allows 2500".
    CHECK(turning[0].text.find("with 2500.1 N m, its plate allows 2500.0 N m") !=
          std::string::npos);

    // Too far out: weight and both torques are told at once.
    const auto all = turn::check_load(table, Weight{2000.0, Vec3(0, 400, 900)}, upright, "S03");
    CHECK(all.size() == 3);
    const auto head =
        turn::check_load(demo_headstock(), Weight{1500.0, Vec3(501, 0, 0)}, {Angle()}, "S04");
    REQUIRE(head.size() == 1);
    CHECK(head[0].code == "turn.load.too_heavy");
  }

  TEST_CASE("given two weights, the common centre of gravity balances them") {
    const Weight sum =
        turn::combined_weight(Weight{30.0, Vec3(0, 0, 100)}, Weight{10.0, Vec3(400, 0, 0)});
    CHECK(sum.mass_kg == doctest::Approx(40.0));
    CHECK((sum.centre - Vec3(100.0, 0.0, 75.0)).norm() < 1e-9);
    CHECK(turn::combined_weight(Weight{}, Weight{}).centre.norm() == 0.0);
  }

  TEST_CASE(
      "given 1500 kg 1.2 m from the head of a span of 3 m, head and tail share by the lever") {
    // computed: W (L - x)/L and W x/L (statics): 900 and 600 kg.
    const turn::EndShares shares = turn::end_shares(1500.0, 1200.0, 3000.0);
    check_expected("head", shares.head_kg, {900.0, 1e-9, Origin::computed, "statics"});
    check_expected("tail", shares.tail_kg, {600.0, 1e-9, Origin::computed, "statics"});
    // law: both together bear the load, moments about the tail's end balance.
    Random random(base::named_seed(6, "shares"));
    for (int i = 0; i < 100; ++i) {
      const double mass = random.between(1, 5000), x = random.between(-500, 4000);
      const turn::EndShares ends = turn::end_shares(mass, x, 3000.0);
      CHECK(ends.head_kg + ends.tail_kg == doctest::Approx(mass));
      CHECK(ends.head_kg * 3000.0 == doctest::Approx(mass * (3000.0 - x)).scale(1.0));
    }
    CHECK_THROWS_AS((void)turn::end_shares(1.0, 1.0, 0.0), base::ContractViolation);
  }

  TEST_CASE("given a tailstock, each end is held to its own plate and nothing is derated") {
    cell::Positioner headstock = demo_headstock();
    headstock.load_max_kg = 900.0;
    headstock.load_centre_mm = 0.0;
    headstock.tailstock = cell::Tailstock{3000.0, 600.0};
    CHECK(turn::load_most_kg(headstock) == 1500.0);
    CHECK(turn::load_most_kg(demo_headstock()) == 1500.0);
    const auto codes = [&](double mass, double x) {
      std::string out;
      for (const auto& f :
           turn::check_load(headstock, Weight{mass, Vec3(x, 0, 0)}, {Angle()}, "S05")) {
        out += f.code + (f.text.find("tailstock") != std::string::npos ? " tail;" : " head;");
      }
      return out;
    };
    CHECK(codes(1500.0, 1200.0).empty());
    CHECK(codes(1500.0, 1199.0) == "turn.load.end head;");
    CHECK(codes(1500.0, 1201.0) == "turn.load.end tail;");
    // The head's share falls by half a kilogram a millimetre.
    const auto just =
        turn::check_load(headstock, Weight{1500.0, Vec3(1199.4, 0, 0)}, {Angle()}, "");
    CHECK(just.at(0).text.find(" bears 900.3 kg of the load, its plate allows 900.0 kg") !=
          std::string::npos);
    CHECK(codes(1600.0, 1200.0) == "turn.load.end head;turn.load.end tail;");
    CHECK(codes(900.0, -1500.0) == "turn.load.end head;");  // behind the faceplate: 1350 kg
    headstock.margin = cell::LoadMargin{0.0, 10.0};
    CHECK(codes(1500.0, 1200.0) == "turn.load.end head;turn.load.end tail;");
    const auto told = turn::check_load(headstock, Weight{1500.0, Vec3(1200, 0, 0)}, {Angle()}, "");
    CHECK(told.at(0).text.find("with a margin of 0.0 % and 10 mm, ") != std::string::npos);
  }

  TEST_CASE("given a margin, weight, distance and torque are judged with it") {
    cell::Positioner table = demo_table();
    const std::vector<Angle> level{Angle(), Angle()};
    CHECK(turn::check_load(table, Weight{1904.7, Vec3(0, 0, 280)}, level, "").empty());
    table.margin = cell::LoadMargin{0.05, 20.0};
    CHECK(turn::check_load(table, Weight{1904.7, Vec3(0, 0, 280)}, level, "").empty());
    CHECK(turn::check_load(table, Weight{1904.8, Vec3(0, 0, 280)}, level, "").size() == 1);
    CHECK(turn::check_load(table, Weight{1904.7, Vec3(0, 0, 280.1)}, level, "").size() == 1);
    // Rotate, upright: 2500 N m at 1.05 x 9.80665 x m (e + 20 mm).
    const double e_mm = 2.5e6 / (1.05 * 1000.0 * base::gravity_m_s2) - 20.0;
    const std::vector<Angle> upright{Angle::deg(90.0), Angle()};
    CHECK(turn::check_load(table, Weight{1000.0, Vec3(0, e_mm - 0.01, 0)}, upright, "").empty());
    const auto turning =
        turn::check_load(table, Weight{1000.0, Vec3(0, e_mm + 0.01, 0)}, upright, "");
    REQUIRE(turning.size() == 1);
    CHECK(turning[0].code == "turn.load.torque");
    CHECK(turning[0].text.find("margin of 5.0 % and 20 mm") != std::string::npos);
  }

  // closed-form: 2500 N m hold 1000 kg at 254.9 mm; with 5 % and 20 mm at 222.8 mm.
  TEST_CASE("given an axis beyond its plate, the lever and the weight it holds are told") {
    cell::Positioner table = demo_table();
    const std::vector<Angle> upright{Angle::deg(90.0), Angle()};
    const auto told = turn::check_load(table, Weight{1000.0, Vec3(0, 300, 0)}, upright, "");
    REQUIRE(told.size() == 1);
    CHECK(told[0].text.find("do not turn it: set the part up nearer the axis, its weight has a "
                            "lever of 300 mm and may have 254 mm, hang a balance mass opposite, "
                            "which counts in the load, take weight off, down to 849 kg if it sits "
                            "so, or take a larger positioner") != std::string::npos);
    table.margin = cell::LoadMargin{0.05, 20.0};
    const auto safe = turn::check_load(table, Weight{1000.0, Vec3(0, 300, 0)}, upright, "");
    REQUIRE(safe.size() == 1);
    CHECK(safe[0].text.find("lever of 300 mm and may have 222 mm") != std::string::npos);
    // The tilt axis is balanced by nothing: its lever is that of overhang and part, 750 mm.
    const auto tilting = turn::check_load(table, Weight{1500.0, Vec3(0, 0, 600)}, upright, "");
    const base::Finding* tilt = find_code(tilting, "turn.load.torque");
    REQUIRE(tilt != nullptr);
    CHECK(tilt->text.find("lever of 750 mm and may have 562 mm, take weight") != std::string::npos);
    // Nothing is left where the margin alone is too much.
    table.margin = cell::LoadMargin{0.0, 300.0};
    const auto none = turn::check_load(table, Weight{1000.0, Vec3(0, 1, 0)}, upright, "");
    REQUIRE(none.size() == 1);
    CHECK(none[0].text.find("do not turn it: take weight off, down to 846 kg") !=
          std::string::npos);
  }

  TEST_CASE("for any overload, law: what is told to help does, and a millimetre more does not") {
    Random random(base::named_seed(31, "remedies"));
    int levers = 0, distances = 0;
    for (int i = 0; i < 300; ++i) {
      INFO("seed 31, case " << i);
      cell::Positioner table = demo_table();
      table.axes[0].torque_max_nm = 1e9;
      if (i % 2 == 0) table.margin = cell::LoadMargin{random.between(0, 0.2), 30.0};
      const Weight load{random.between(300, 1990), Vec3(0, random.between(100, 900), 250)};
      const std::vector<Angle> axes{Angle::deg(random.between(20, 135)), Angle()};
      const auto found = turn::check_load(table, load, axes, "");
      if (const auto* torque = find_code(found, "turn.load.torque")) {
        const double kg = number_after(torque->text, "down to ");
        CHECK_FALSE(overloads_rotate(table, Weight{kg, load.centre}, axes));
        CHECK(overloads_rotate(table, Weight{kg + 1.0, load.centre}, axes));
        // The lever is that about the axis leaned back by the tilt.
        const double mm = number_after(torque->text, "may have ");
        if (std::isnan(mm)) continue;
        ++levers;
        const double e_mm = mm / std::sin(axes[0].rad());
        CHECK_FALSE(overloads_rotate(table, Weight{load.mass_kg, Vec3(0, e_mm, 250)}, axes));
        const double beyond_mm = (mm + 1.0) / std::sin(axes[0].rad());
        CHECK(overloads_rotate(table, Weight{load.mass_kg, Vec3(0, beyond_mm, 250)}, axes));
      }
      const Weight far{load.mass_kg, Vec3(0, 0, random.between(300, 1200))};
      const auto heavy = turn::check_load(table, far, {Angle(), Angle()}, "");
      const auto* finding = find_code(heavy, "turn.load.too_heavy");
      if (finding == nullptr) continue;
      const double mm = number_after(finding->text, "gravity at most ");
      if (std::isnan(mm)) continue;
      ++distances;
      const auto judged = [&](double distance_mm) {
        const Weight nearer{far.mass_kg, Vec3(0, 0, distance_mm)};
        return turn::check_load(table, nearer, {Angle(), Angle()}, "").size();
      };
      CHECK(judged(mm) == 0);
      CHECK(judged(mm + 1.0) == 1);
    }
    CHECK(levers > 50);
    CHECK(distances > 50);
  }

  TEST_CASE("given more than the plate carries anywhere, no other place is advised") {
    const std::vector<Angle> level{Angle(), Angle()};
    const auto heavy = turn::check_load(demo_table(), Weight{2001, Vec3(0, 0, 900)}, level, "");
    REQUIRE(heavy.size() == 1);
    CHECK(heavy[0].text.find("do not turn it: take weight off, or") != std::string::npos);
  }

  TEST_CASE("for an arm whose faceplate lies below its axis, the overhang is none") {
    cell::Positioner arm = demo_table();
    arm.kind = cell::PositionerKind::roll_arm;
    arm.overhang_mm = -400.0;
    CHECK(turn::load_allowed_kg(arm, 300.0) == 2000.0);
    CHECK(turn::load_allowed_kg(arm, 600.0) == doctest::Approx(1000.0));
    // closed-form: a load with its centre of gravity on the roll axis turns nothing.
    const auto torques = turn::axis_torques_nm(
        arm, Weight{1000.0, Vec3(0, 0, 400)}, {Angle::deg(70.0), Angle::deg(20.0)});
    CHECK(std::abs(torques[0]) < 1e-9);
  }

  TEST_CASE("refuses axis values that do not fit the positioner because no torque could be told") {
    CHECK_THROWS_AS((void)turn::axis_torques_nm(demo_table(), Weight{}, {Angle()}),
                    base::ContractViolation);
  }

  TEST_CASE("given the card, the keys are those of the command line") {
    std::string names;
    for (const base::FigureKey& key : turn::torque_card().keys)
      names += std::string(key.name) + ' ';
    CHECK(names == "mass overhang offset eccentricity ");
  }
}

}  // namespace seamturn::tests
