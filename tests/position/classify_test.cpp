// SPDX-License-Identifier: MIT
#include "seamturn/position/classify.hpp"

#include <cmath>
#include <string>

#include "oracles/position.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Random;
using geom::Vec3;
using position::Attitude;
using position::classify;
using process::WeldFamily;
using process::WeldPosition;

namespace {

const Vec3 up = Vec3::UnitZ();

/// A weld of given slope and bank built by turning, not by the formula under test: level along +x,
/// face up, banked about its axis, then raised about -y.
struct Weld {
  Vec3 travel, normal;
};
Weld weld_at(double slope_deg, double bank_deg) {
  // Positive bank: up . (n x t) > 0. With t = x and n leaning towards +y, n x t has z up.
  const geom::Mat3 raise = geom::rotation_about(-Vec3::UnitY(), Angle::deg(slope_deg));
  const geom::Mat3 lean = geom::rotation_about(-Vec3::UnitX(), Angle::deg(bank_deg));
  return {raise * Vec3::UnitX(), raise * (lean * Vec3::UnitZ())};
}

Vec3 random_direction(Random& random) {
  for (;;) {
    const Vec3 v(random.between(-1, 1), random.between(-1, 1), random.between(-1, 1));
    if (v.norm() > 0.1 && v.norm() < 1.0) return v;
  }
}

Weld random_weld(Random& random) {
  for (;;) {
    const Weld weld{random_direction(random), random_direction(random)};
    const double off = geom::angle_between(weld.travel, weld.normal).deg();
    if (off > 2.0 && off < 178.0) return weld;
  }
}

}  // namespace

TEST_SUITE("position/classify") {
  TEST_CASE("given thirty welds in numbers, slope, bank and both codes are as computed by hand") {
    for (const oracles::PositionRow& row : oracles::position_rows) {
      const Vec3 axis(row.axis[0], row.axis[1], row.axis[2]);
      const Vec3 normal(row.normal[0], row.normal[1], row.normal[2]);
      const auto found = classify(row.family, axis, normal, up);
      INFO("row " << row.number);
      REQUIRE(found.has_value());
      const std::string name = "row " + std::to_string(row.number);
      const Expected slope{row.slope_deg, 0.01, Origin::computed, "ranges of ISO 6947, remembered"};
      check_expected(name + " slope", found->attitude.slope.deg(), slope);
      if (row.bank_size_deg != oracles::none) {
        const Expected bank{row.bank_size_deg, 0.01, Origin::computed, "ISO 6947, remembered"};
        check_expected(name + " bank", std::abs(found->attitude.bank.deg()), bank);
      }
      CHECK(found->iso == row.iso);
      CHECK(found->aws == row.aws);
    }
  }

  TEST_CASE("given published decisions on AWS inclination and face rotation, codes are the same") {
    for (const oracles::PublishedPosition& row : oracles::published_grooves) {
      INFO(row.source << ": inclination " << row.inclination_deg << ", face rotation "
                      << row.face_rotation_deg);
      const double bank = row.face_rotation_deg - 180.0;
      const Weld uphill = weld_at(row.inclination_deg, bank);
      const auto found = classify(WeldFamily::groove, uphill.travel, uphill.normal, up);
      REQUIRE(found.has_value());
      CHECK(found->aws == row.aws);
      CHECK(found->iso == row.uphill);
      const auto down = classify(WeldFamily::groove, -uphill.travel, uphill.normal, up);
      REQUIRE(down.has_value());
      CHECK(down->aws == row.aws);
      CHECK(down->iso == row.downhill);
    }
  }

  TEST_CASE("given GSI-POS, a fillet with its face 45 deg up and its axis level, it is PB, 2F") {
    const Weld weld = weld_at(0.0, 45.0);
    const auto found = classify(WeldFamily::fillet, weld.travel, weld.normal, up);
    REQUIRE(found.has_value());
    CHECK(found->iso == WeldPosition::pb);
    CHECK(found->aws == "2F");
  }

  TEST_CASE(
      "for any corner, law: the bank nearest to a level plate is PB, and level where it can be") {
    for (double between_deg = 60.0; between_deg <= 135.0; between_deg += 2.5) {
      const Angle level = Angle::deg(90.0 - between_deg / 2.0);
      const Angle bank = position::pb_bank_near(level);
      for (const double side : {1.0, -1.0}) {
        const Weld weld = weld_at(0.0, side * bank.deg());
        const auto found = classify(WeldFamily::fillet, weld.travel, weld.normal, up);
        INFO(between_deg);
        CHECK(found->iso == WeldPosition::pb);
      }
      if (between_deg >= 75.0 && between_deg <= 115.0) CHECK(bank == level);
      CHECK(std::abs((bank - level).deg()) <= 8.5);
    }
  }

  TEST_CASE("given places on borders and beside them, the easier row holds its border") {
    for (const oracles::BorderRow& row : oracles::border_rows) {
      for (const double side : {1.0, -1.0}) {
        const Weld weld = weld_at(row.slope_deg, side * row.bank_deg);
        INFO("slope " << row.slope_deg << ", bank " << side * row.bank_deg);
        const auto fillet = classify(WeldFamily::fillet, weld.travel, weld.normal, up);
        const auto groove = classify(WeldFamily::groove, weld.travel, weld.normal, up);
        REQUIRE((fillet.has_value() && groove.has_value()));
        CHECK(fillet->iso == row.fillet);
        CHECK(groove->iso == row.groove);
        CHECK(fillet->aws == row.fillet_aws);
        CHECK(groove->aws == row.groove_aws);
      }
    }
  }

  TEST_CASE("given a fixed pipe with level axis, round the clock a butt runs PA, PF or PG, PE") {
    // computed on the remembered ranges: slope on the climbing side is the clock angle.
    struct Row {
      double clock_deg, slope_deg;
      WeldPosition up, down;
      const char* aws;
    };
    using P = WeldPosition;
    const Row rows[] = {{0, 0, P::pa, P::pa, "1G"},
                        {10, 10, P::pa, P::pa, "1G"},
                        {14, 14, P::pa, P::pa, "1G"},
                        {20, 20, P::pf, P::pg, "3G"},
                        {45, 45, P::pf, P::pg, "3G"},
                        {85, 85, P::pf, P::pg, "3G"},
                        {95, 85, P::pf, P::pg, "3G"},
                        {99, 81, P::pf, P::pg, "3G"},
                        {101, 79, P::pe, P::pe, "4G"},
                        {135, 45, P::pe, P::pe, "4G"},
                        {180, 0, P::pe, P::pe, "4G"}};
    for (const Row& row : rows) {
      INFO("clock " << row.clock_deg);
      const double clock = Angle::deg(row.clock_deg).rad();
      const Vec3 outward(std::sin(clock), 0.0, std::cos(clock));
      const Vec3 climbing(-std::cos(clock), 0.0, std::sin(clock));
      const auto rising = classify(WeldFamily::groove, climbing, outward, up);
      const auto falling = classify(WeldFamily::groove, -climbing, outward, up);
      REQUIRE((rising.has_value() && falling.has_value()));
      CHECK(std::abs(rising->attitude.slope.deg() - row.slope_deg) < 1e-9);
      CHECK(rising->iso == row.up);
      CHECK(falling->iso == row.down);
      CHECK(rising->aws == row.aws);
    }
  }

  TEST_CASE("given published torch leads on turned pipes, the arc lies downhill and still in PA") {
    struct Row {
      double outside_mm, lead_mm, angle_deg;  // lead published, angle = lead / radius computed
    };
    // published: TWI-SAW-RING, table of leads (submerged arc). Angles: 0.005 degree, last digit.
    const Row rows[] = {{300, 22, 8.40},
                        {600, 34, 6.49},
                        {1000, 40, 4.58},
                        {1200, 50, 4.77},
                        {1500, 55, 4.20},
                        {2500, 75, 3.44}};
    const auto arc_at = [](double outside_mm, double lead_mm) {
      // The pipe turns about y; travel on it runs against the turning, over the top towards +x.
      const double ahead = -lead_mm / (outside_mm / 2.0);
      const Vec3 outward(-std::sin(ahead), 0.0, std::cos(ahead));
      const Vec3 travel(std::cos(ahead), 0.0, std::sin(ahead));
      return classify(WeldFamily::groove, travel, outward, up);
    };
    for (const Row& row : rows) {
      const auto found = arc_at(row.outside_mm, row.lead_mm);
      REQUIRE(found.has_value());
      check_expected("outside " + std::to_string(row.outside_mm),
                     -found->attitude.slope.deg(),
                     {row.angle_deg, 0.005, Origin::computed, "TWI-SAW-RING lead over radius"});
      CHECK(found->iso == WeldPosition::pa);
    }
    // computed: 15 degrees are passed below 168 mm outside, so small pipes need a smaller lead.
    CHECK(arc_at(169.0, 22.0)->iso == WeldPosition::pa);
    CHECK(arc_at(167.0, 22.0)->iso == WeldPosition::pg);
  }

  TEST_CASE("for any weld, law: turning the scene about z changes nothing") {
    Random random(base::named_seed(1, "turn about z"));
    for (int i = 0; i < 2000; ++i) {
      const Weld weld = random_weld(random);
      const geom::Mat3 turn = geom::rotation_about(up, Angle::deg(random.between(-180.0, 180.0)));
      const auto family = i % 2 == 0 ? WeldFamily::fillet : WeldFamily::groove;
      const auto a = classify(family, weld.travel, weld.normal, up);
      const auto b = classify(family, turn * weld.travel, turn * weld.normal, up);
      INFO("seed 1, case " << i);
      REQUIRE((a.has_value() && b.has_value()));
      CHECK(a->iso == b->iso);
      CHECK(a->aws == b->aws);
      CHECK(std::abs((a->attitude.bank - b->attitude.bank).deg()) < 1e-9);
      CHECK(std::abs((a->margin - b->margin).deg()) < 1e-9);
    }
  }

  TEST_CASE(
      "for any weld, law: mirrored across the upright plane of its axis only bank's sign turns") {
    Random random(base::named_seed(1, "mirror"));
    for (int i = 0; i < 2000; ++i) {
      const Weld weld = random_weld(random);
      const Vec3 plane = geom::unit(weld.travel.cross(up));
      const Vec3 mirrored = weld.normal - 2.0 * weld.normal.dot(plane) * plane;
      const auto family = i % 2 == 0 ? WeldFamily::fillet : WeldFamily::groove;
      const auto a = classify(family, weld.travel, weld.normal, up);
      const auto b = classify(family, weld.travel, mirrored, up);
      INFO("seed 1, case " << i);
      REQUIRE((a.has_value() && b.has_value()));
      CHECK(a->iso == b->iso);
      CHECK(a->aws == b->aws);
      CHECK(std::abs((a->attitude.bank + b->attitude.bank).deg()) < 1e-9);
      CHECK(std::abs((a->attitude.slope - b->attitude.slope).deg()) < 1e-9);
    }
  }

  TEST_CASE("for any weld, law: travelled the other way only PF and PG change places") {
    Random random(base::named_seed(1, "reverse"));
    int uphill = 0;
    for (int i = 0; i < 2000; ++i) {
      const Weld weld = random_weld(random);
      const auto family = i % 2 == 0 ? WeldFamily::fillet : WeldFamily::groove;
      const auto a = classify(family, weld.travel, weld.normal, up);
      const auto b = classify(family, -weld.travel, weld.normal, up);
      INFO("seed 1, case " << i);
      REQUIRE((a.has_value() && b.has_value()));
      WeldPosition expected = a->iso;
      if (a->iso == WeldPosition::pf) expected = WeldPosition::pg;
      if (a->iso == WeldPosition::pg) expected = WeldPosition::pf;
      uphill += a->iso == WeldPosition::pf ? 1 : 0;
      CHECK(b->iso == expected);
      CHECK(a->aws == b->aws);
      CHECK(std::abs((a->attitude.slope + b->attitude.slope).deg()) < 1e-9);
      CHECK(std::abs((a->attitude.bank + b->attitude.bank).deg()) < 1e-9);
    }
    CHECK(uphill > 100);  // the law was put to the test
  }

  TEST_CASE("for any weld, law: slope and bank may both change by the margin and keep the code") {
    Random random(base::named_seed(1, "margin"));
    for (int i = 0; i < 2000; ++i) {
      const double slope = random.between(-89.0, 89.0);
      const double bank = random.between(0.0, 180.0);
      const auto family = i % 2 == 0 ? WeldFamily::fillet : WeldFamily::groove;
      const Weld weld = weld_at(slope, bank);
      const auto found = classify(family, weld.travel, weld.normal, up);
      INFO("seed 1, case " << i << ", slope " << slope << ", bank " << bank);
      REQUIRE(found.has_value());
      for (const double ds : {-0.999, 0.999}) {
        for (const double db : {-0.999, 0.999}) {
          // Beyond upright or beyond face down the turn comes back on the other side.
          const double other_slope = slope + ds * found->margin.deg();
          const double other_bank = bank + db * found->margin.deg();
          if (std::abs(other_slope) > 89.9) continue;
          if ((found->iso == WeldPosition::pf || found->iso == WeldPosition::pg) &&
              slope * other_slope < 0.0) {
            continue;
          }
          const Weld other = weld_at(other_slope, other_bank);
          const auto same = classify(family, other.travel, other.normal, up);
          REQUIRE(same.has_value());
          CHECK(same->iso == found->iso);
        }
      }
    }
  }

  TEST_CASE("given single welds, the margin is the nearest border") {
    const auto margin = [](WeldFamily family, double slope, double bank) {
      const Weld weld = weld_at(slope, bank);
      return classify(family, weld.travel, weld.normal, up)->margin.deg();
    };
    // closed-form: differences to the borders 15, 30, 55, 100, 145, 80.
    CHECK(margin(WeldFamily::groove, 0, 0) == doctest::Approx(15.0));
    CHECK(margin(WeldFamily::groove, 0, 98) == doctest::Approx(2.0));
    CHECK(margin(WeldFamily::fillet, 0, 45) == doctest::Approx(10.0));
    CHECK(margin(WeldFamily::fillet, 10, 45) == doctest::Approx(5.0));
    CHECK(margin(WeldFamily::fillet, 60, 90) == doctest::Approx(10.0));
    CHECK(margin(WeldFamily::groove, 60, 180) == doctest::Approx(20.0));
  }

  TEST_CASE("refuses a face normal within 1 degree of the axis because it has no bank") {
    const auto code = [](double off_deg) {
      const Vec3 normal(
          std::cos(Angle::deg(off_deg).rad()), 0.0, std::sin(Angle::deg(off_deg).rad()));
      const auto found = classify(WeldFamily::groove, Vec3::UnitX(), normal, up);
      return found.has_value() ? std::string("accepted") : found.error().code;
    };
    CHECK(code(0.0) == "position.normal.along_axis");
    CHECK(code(0.99) == "position.normal.along_axis");
    CHECK(code(179.5) == "position.normal.along_axis");
    CHECK(code(1.01) == "accepted");
    CHECK_THROWS_AS((void)classify(WeldFamily::groove, Vec3::Zero(), Vec3::UnitX(), up),
                    base::ContractViolation);
  }

  TEST_CASE("given an upright weld, the bank is 0 and the slope 90 deg") {
    const auto found = position::attitude(-Vec3::UnitZ(), Vec3::UnitX(), up);
    REQUIRE(found.has_value());
    CHECK(found->slope.deg() == doctest::Approx(-90.0));
    CHECK(found->bank.deg() == 0.0);
  }

  TEST_CASE("given a bank towards the side of n x t, the bank is positive") {
    // closed-form: t along y, n towards x and up; n x t has z up.
    const auto found = position::attitude(Vec3::UnitY(), Vec3(1.0, 0.0, 1.0), up);
    REQUIRE(found.has_value());
    CHECK(found->bank.deg() == doctest::Approx(45.0));
    CHECK(found->slope.deg() == doctest::Approx(0.0));
  }

  TEST_CASE("given a working tolerance, just inside holds and just outside does not") {
    position::WorkingTolerance row;
    row.downhill = Angle::deg(2.0);
    row.uphill = Angle::deg(3.0);
    row.bank = Angle::deg(8.0);
    const auto within = [&](double slope, double bank, double nominal) {
      row.position = nominal > 0.0 ? WeldPosition::pb : WeldPosition::pa;
      return is_within(row, Attitude{Angle::deg(slope), Angle::deg(bank)}, Angle::deg(nominal));
    };
    CHECK(within(3.0, 0.0, 0.0));
    CHECK_FALSE(within(3.001, 0.0, 0.0));
    CHECK(within(-2.0, 0.0, 0.0));
    CHECK_FALSE(within(-2.001, 0.0, 0.0));
    CHECK(within(0.0, -8.0, 0.0));
    CHECK_FALSE(within(0.0, -8.001, 0.0));
    CHECK(within(0.0, -53.0, 45.0));
    CHECK(within(0.0, 37.0, 45.0));
    CHECK_FALSE(within(0.0, 36.999, 45.0));
    CHECK_FALSE(within(0.0, 0.0, 45.0));
  }

  TEST_CASE("given the card, the keys are those of the command line") {
    const base::FigureCard& card = position::position_card();
    CHECK(card.name == "position");
    REQUIRE(card.keys.size() == 3);
    CHECK(card.keys[0].name == "weld");
    CHECK(card.keys[1].name == "axis");
    CHECK(card.keys[2].name == "normal");
    CHECK(card.sources.size() >= 2);
  }

  TEST_CASE("given a row of 2, 3 and 8 deg, it holds to its limits and not beyond") {
    position::WorkingTolerance row;
    row.downhill = Angle::deg(2.0);
    row.uphill = Angle::deg(3.0);
    row.bank = Angle::deg(8.0);
    const Angle pb = Angle::deg(45.0);
    const auto at = [](double slope_deg, double bank_deg) {
      return Attitude{Angle::deg(slope_deg), Angle::deg(bank_deg)};
    };
    struct Case {
      WeldPosition position;
      double slope_deg, bank_deg;
      bool within;
    };
    using P = WeldPosition;
    const Case cases[] = {
        {P::pa, 3, 8, true},       {P::pa, 3.001, 0, false}, {P::pa, -2, -8, true},
        {P::pa, -2.001, 0, false}, {P::pa, 0, 8.001, false}, {P::pb, 0, 53, true},
        {P::pb, 0, -37, true},     {P::pb, 0, 36.9, false},  {P::pb, 0, 0, false},
        {P::pc, 0, 90, true},      {P::pc, 0, -97, true},    {P::pc, 0, 81, false},
        {P::pd, 0, 130, true},     {P::pe, 0, 173, true},    {P::pe, 0, 171, false},
        {P::pf, 88, 50, true},     {P::pf, 87.9, 0, false},  {P::pg, -87, 0, true},
        {P::pg, -86.9, 0, false},  {P::pg, 90, 0, false}};
    for (const Case& one : cases) {
      row.position = one.position;
      INFO(process::position_name(one.position), " ", one.slope_deg, " ", one.bank_deg);
      CHECK(position::is_within(row, at(one.slope_deg, one.bank_deg), pb) == one.within);
    }
  }

  TEST_CASE("given 0.9 at the edge, closed form: beads fall evenly with slope and bank") {
    position::WorkingTolerance row;
    row.downhill = Angle::deg(2.0);
    row.uphill = Angle::deg(4.0);
    row.bank = Angle::deg(8.0);
    row.bead_at_edge_ratio = 0.9;
    const auto share = [&](double slope_deg, double bank_deg) {
      return position::bead_share_ratio(
          row, {Angle::deg(slope_deg), Angle::deg(bank_deg)}, Angle::deg(45.0));
    };
    CHECK(share(0, 0) == doctest::Approx(1.0));
    CHECK(share(4, 0) == doctest::Approx(0.9));
    CHECK(share(-2, 0) == doctest::Approx(0.9));
    CHECK(share(1, 0) == doctest::Approx(0.975));
    CHECK(share(-1, 0) == doctest::Approx(0.95));
    CHECK(share(0, -4) == doctest::Approx(0.95));
    CHECK(share(4, 8) == doctest::Approx(0.8));
    // law: never above 1, and less the farther off.
    Random random(base::named_seed(1, "bead share"));
    for (int i = 0; i < 500; ++i) {
      const double slope_deg = random.between(0.0, 3.9);
      const double bank_deg = random.between(0.0, 7.9);
      CHECK(share(slope_deg, bank_deg) <= 1.0);
      CHECK(share(slope_deg + 0.1, bank_deg) < share(slope_deg, bank_deg));
      CHECK(share(slope_deg, bank_deg + 0.1) < share(slope_deg, bank_deg));
    }
    row.bead_at_edge_ratio = 1.0;
    CHECK(share(3, 7) == 1.0);
  }
}

}  // namespace seamturn::tests
