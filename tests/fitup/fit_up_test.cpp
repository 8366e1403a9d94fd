// SPDX-License-Identifier: MIT
// Bands and gap tables: closed forms, and laws on random preparations and tolerances.
#include "seamturn/fitup/fit_up.hpp"

#include <cmath>
#include <numbers>

#include "oracle.hpp"
#include "pass/pass_fixture.hpp"
#include "section/random_section.hpp"

namespace seamturn::tests {

using base::Angle;
using fitup::fit_up_band;
using fitup::FitUpBand;
using fitup::gap_table;
using fitup::GapTable;
using fitup::StopLimit;
using fitup::Tolerances;
using section::SectionParams;

namespace {

/// Rows that lay anything, so that only geometry decides.
struct Shop {
  process::Wire wire = solid_wire();
  std::vector<process::LinkedSettings> settings = any_travel();
  pass::StackRequest request(process::WeldFamily family) const {
    pass::StackRequest request;
    request.family = family;
    request.length_mm = 500.0;
    request.wire = &wire;
    request.settings = settings;
    return request;
  }
};

SectionParams v_12mm() {
  SectionParams params;
  params.preparation = joint::single_v({2.0, 1.0}, Angle::deg(60.0));
  params.thickness_mm = 12.0;
  return params;
}

Tolerances shop_tolerances() {
  Tolerances t;
  t.gap_minus_mm = 1.0;
  t.gap_plus_mm = 1.0;
  t.root_face_minus_mm = 0.5;
  t.root_face_plus_mm = 1.0;
  t.angle_minus = Angle::deg(5.0);
  t.angle_plus = Angle::deg(5.0);
  t.size_minus_mm = 0.0;
  t.size_plus_mm = 1.0;
  return t;
}

double v_area_mm2(double gap_mm, double root_face_mm, double angle_deg) {
  const double cut_mm = 12.0 - root_face_mm;
  return 12.0 * gap_mm + cut_mm * cut_mm * std::tan(0.5 * angle_deg * std::numbers::pi / 180.0);
}

}  // namespace

TEST_SUITE("fitup/band") {
  TEST_CASE("given a V of 12 mm and tolerances, the band ends at the corners worked by hand") {
    const Shop shop;
    const auto band =
        fit_up_band(v_12mm(), shop_tolerances(), shop.request(process::WeldFamily::groove));
    REQUIRE(band.has_value());
    const char* source = "closed form of the V";
    check_expected("low",
                   band->low.section.area_mm2,
                   {v_area_mm2(1.0, 2.0, 55.0), 1e-9, Origin::closed_form, source});
    check_expected("nominal",
                   band->nominal.section.area_mm2,
                   {v_area_mm2(2.0, 1.0, 60.0), 1e-9, Origin::closed_form, source});
    check_expected("high",
                   band->high.section.area_mm2,
                   {v_area_mm2(3.0, 0.5, 65.0), 1e-9, Origin::closed_form, source});
    for (const fitup::FitUpCase* item : {&band->low, &band->nominal, &band->high}) {
      REQUIRE(item->stack.has_value());
      CHECK(item->stack->arc_time_s > 0.0);
    }
  }

  TEST_CASE("for any preparation, law: every mix of departures lies inside the band") {
    const std::uint64_t seed = base::named_seed(20261125, "fit-up");
    base::Random random(seed);
    const Shop shop;
    int compared = 0;
    for (int i = 0; i < 200; ++i) {
      const bool fillet = i % 4 == 0;
      const SectionParams drawn = fillet ? random_fillet(random) : random_groove(random);
      const auto family = fillet ? process::WeldFamily::fillet : process::WeldFamily::groove;
      Tolerances t;
      t.gap_minus_mm = random.between(0.0, 1.0);
      t.gap_plus_mm = random.between(0.0, 1.5);
      t.root_face_minus_mm = random.between(0.0, 1.0);
      t.root_face_plus_mm = random.between(0.0, 0.3);
      t.angle_minus = Angle::deg(random.between(0.0, 3.0));
      t.angle_plus = Angle::deg(random.between(0.0, 3.0));
      t.size_minus_mm = random.between(0.0, 0.3);
      t.size_plus_mm = random.between(0.0, 1.0);
      const auto all = fit_up_band(drawn, t, shop.request(family));
      if (!all) continue;  // a departure no edge can have, e.g. a round bottom that no longer fits
      INFO("seed ", seed, " case ", i);
      // Each tolerance alone, both ways.
      for (int only = 0; only < 4; ++only) {
        Tolerances one;
        if (only == 0) one.gap_minus_mm = t.gap_minus_mm, one.gap_plus_mm = t.gap_plus_mm;
        if (only == 1) {
          one.root_face_minus_mm = t.root_face_minus_mm;
          one.root_face_plus_mm = t.root_face_plus_mm;
        }
        if (only == 2) one.angle_minus = t.angle_minus, one.angle_plus = t.angle_plus;
        if (only == 3) one.size_minus_mm = t.size_minus_mm, one.size_plus_mm = t.size_plus_mm;
        const auto band = fit_up_band(drawn, one, shop.request(family));
        if (!band) continue;
        ++compared;
        const double slack_mm2 = 1e-9 * all->high.section.area_mm2;
        CHECK(band->low.section.area_mm2 >= all->low.section.area_mm2 - slack_mm2);
        CHECK(band->high.section.area_mm2 <= all->high.section.area_mm2 + slack_mm2);
        CHECK(band->low.section.area_mm2 <= band->nominal.section.area_mm2 + slack_mm2);
        CHECK(band->high.section.area_mm2 >= band->nominal.section.area_mm2 - slack_mm2);
      }
    }
    CHECK(compared > 400);
  }

  TEST_CASE("given a partial weld, a thinner root face deepens the metal down to the cut") {
    const Shop shop;
    SectionParams drawn;
    drawn.preparation = joint::single_bevel({0.0, 8.0}, Angle::deg(45.0));
    drawn.thickness_mm = 16.0;
    drawn.depth_mm = 8.0;
    Tolerances t;
    t.root_face_minus_mm = 1.0;
    const auto band = fit_up_band(drawn, t, shop.request(process::WeldFamily::groove));
    REQUIRE(band.has_value());
    CHECK(band->nominal.section.area_mm2 == doctest::Approx(32.0).epsilon(1e-12));
    CHECK(band->high.section.area_mm2 == doctest::Approx(40.5).epsilon(1e-12));
  }

  TEST_CASE("given a double V with its cut stated, side 1 gives half of what the root face takes") {
    // 20 mm plate, root face 2, cuts 10 and 8: side 1 holds the gap over root face and cut, and the
    // V of its own cut. Root face 3: cuts 9.5 and 7.5; root face 1: cuts 10.5 and 8.5.
    const Shop shop;
    joint::Groove groove = joint::single_v({2.0, 2.0}, Angle::deg(60.0));
    groove.is_double = true;
    groove.side_2 = groove.side_1;
    groove.side_1.depth_mm = 10.0;
    Tolerances t;
    t.root_face_minus_mm = 1.0;
    t.root_face_plus_mm = 1.0;
    const double tan30 = 1.0 / std::numbers::sqrt3;
    struct Row {
      int side;
      double low_mm2, nominal_mm2, high_mm2;
    };
    const Row rows[] = {
        {1,
         2.0 * 12.5 + 9.5 * 9.5 * tan30,
         2.0 * 12.0 + 10.0 * 10.0 * tan30,
         2.0 * 11.5 + 10.5 * 10.5 * tan30},
        {2,
         2.0 * 7.5 + 7.5 * 7.5 * tan30,
         2.0 * 8.0 + 8.0 * 8.0 * tan30,
         2.0 * 8.5 + 8.5 * 8.5 * tan30},
    };
    for (const Row& row : rows) {
      SectionParams drawn;
      drawn.preparation = groove;
      drawn.thickness_mm = 20.0;
      drawn.side = row.side;
      const auto band = fit_up_band(drawn, t, shop.request(process::WeldFamily::groove));
      REQUIRE(band.has_value());
      const std::string item = "side " + std::to_string(row.side);
      const char* source = "closed form of one side of a double V";
      const auto hold = [&](const char* end, const fitup::FitUpCase& got, double mm2) {
        check_expected(item + end, got.section.area_mm2, {mm2, 1e-9, Origin::closed_form, source});
      };
      hold(" least", band->low, row.low_mm2);
      hold(" drawn", band->nominal, row.nominal_mm2);
      hold(" most", band->high, row.high_mm2);
    }
  }

  TEST_CASE("given tolerances of the angle, the second side of a double V opens by them too") {
    const Shop shop;
    joint::Groove groove = joint::single_v({2.0, 2.0}, Angle::deg(60.0));
    groove.is_double = true;
    groove.side_2 = groove.side_1;
    SectionParams drawn;
    drawn.preparation = groove;
    drawn.thickness_mm = 20.0;
    drawn.side = 2;
    Tolerances t;
    t.angle_minus = t.angle_plus = Angle::deg(5.0);
    const auto band = fit_up_band(drawn, t, shop.request(process::WeldFamily::groove));
    REQUIRE(band.has_value());
    const char* source = "closed form: gap x 9 + 81 tan of half the angle";
    const auto side_mm2 = [](double deg) {
      return 2.0 * 9.0 + 81.0 * std::tan(0.5 * deg * std::numbers::pi / 180.0);
    };
    check_expected(
        "low", band->low.section.area_mm2, {side_mm2(55.0), 1e-9, Origin::closed_form, source});
    check_expected(
        "high", band->high.section.area_mm2, {side_mm2(65.0), 1e-9, Origin::closed_form, source});
  }

  TEST_CASE("given a fillet whose gap may close, nothing reaches behind the root any more") {
    const Shop shop;
    SectionParams drawn;
    drawn.preparation = joint::Fillet{8.0, 8.0, 0.0, 1.0, 2.0};
    Tolerances t;
    t.gap_minus_mm = 1.0;
    const auto band = fit_up_band(drawn, t, shop.request(process::WeldFamily::fillet));
    REQUIRE(band.has_value());
    check_expected("closed",
                   band->low.section.area_mm2,
                   {32.0, 1e-9, Origin::closed_form, "half a square of 8 mm"});
    CHECK(band->low.section.behind_area_mm2 == 0.0);
  }

  TEST_CASE("given an angle smaller than its tolerance, the edge stops short of square") {
    // law: no edge leans the other way; the least metal is that of the gap and hardly more.
    const Shop shop;
    SectionParams drawn = v_12mm();
    drawn.preparation = joint::single_v({2.0, 1.0}, Angle::deg(4.0));
    Tolerances t;
    t.angle_minus = Angle::deg(5.0);
    const auto band = fit_up_band(drawn, t, shop.request(process::WeldFamily::groove));
    REQUIRE(band.has_value());
    CHECK(band->low.section.area_mm2 >= 24.0);
    CHECK(band->low.section.area_mm2 < v_area_mm2(2.0, 1.0, 1.0));
  }

  TEST_CASE("given rows that lay only small beads, the high case says why it does not close") {
    Shop shop;
    shop.settings.clear();
    const auto band =
        fit_up_band(v_12mm(), shop_tolerances(), shop.request(process::WeldFamily::groove));
    REQUIRE(band.has_value());
    CHECK_FALSE(band->high.stack.has_value());
    CHECK(band->high.why.find("no settings") != std::string::npos);
  }
}

TEST_SUITE("fitup/gap_table") {
  TEST_CASE(
      "given a stop limit of 3.5 mm, rows run 0 1 2 3 3.5 and grow by the plate's thickness") {
    const Shop shop;
    const auto table = gap_table(v_12mm(),
                                 StopLimit{3.5, "a test", base::Status::proposed},
                                 shop.request(process::WeldFamily::groove));
    REQUIRE(table.has_value());
    REQUIRE(table->rows.size() == 4);
    CHECK(table->rows.back().to_mm == doctest::Approx(3.5));
    CHECK(table->stop.reason == "a test");
    for (const fitup::GapRow& row : table->rows) {
      check_expected(
          "row", row.area_mm2, {v_area_mm2(row.to_mm, 1.0, 60.0), 1e-9, Origin::closed_form, "V"});
      CHECK(row.stack.has_value());
    }
  }

  TEST_CASE("for any groove, law: wider rows take more metal and arc time, never fewer passes") {
    const std::uint64_t seed = base::named_seed(20261125, "gap table");
    base::Random random(seed);
    const Shop shop;
    for (int i = 0; i < 60; ++i) {
      const SectionParams drawn = random_groove(random);
      const auto table = gap_table(drawn,
                                   StopLimit{5.0, "a test", base::Status::proposed},
                                   shop.request(process::WeldFamily::groove));
      REQUIRE(table.has_value());
      INFO("seed ", seed, " case ", i);
      for (std::size_t k = 1; k < table->rows.size(); ++k) {
        const fitup::GapRow& before = table->rows[k - 1];
        const fitup::GapRow& row = table->rows[k];
        if (!row.stack || !before.stack) continue;
        CHECK(row.area_mm2 > before.area_mm2);
        CHECK(row.from_mm == before.to_mm);
      }
    }
  }

  TEST_CASE("given a limit no layer can keep, the table stops and calls in its first row") {
    const Shop shop;
    auto request = shop.request(process::WeldFamily::groove);
    process::BeadLimit limit;
    limit.id = "test-limit";
    limit.family = process::WeldFamily::groove;
    limit.thickness_max_mm = 1e-3;
    const std::vector<process::BeadLimit> limits{limit};
    request.limits = limits;
    const auto table =
        gap_table(v_12mm(), StopLimit{4.0, "a test", base::Status::proposed}, request);
    REQUIRE(table.has_value());
    CHECK(table->rows.size() == 1);
    CHECK_FALSE(table->rows.front().why.empty());
    CHECK(table->stop.gap_mm == 0.0);
    CHECK(table->stop.reason == "no settings close beyond it");
  }

  TEST_CASE("given gaps too tight for any bead, the table goes on to those that close") {
    Shop shop;
    // Wire of 1.2 mm: at this travel 12 mm2 are laid, the least.
    for (process::LinkedSettings& row : shop.settings) {
      row.travel_max_mm_s = row.feed_mm_s * 1.131 * 0.95 / 12.0;
      row.travel_preferred_mm_s = std::min(row.travel_preferred_mm_s, row.travel_max_mm_s);
    }
    SectionParams drawn = v_12mm();
    joint::Groove square;
    square.form = joint::GrooveForm::square;
    square.gap_mm = 4.0;
    drawn.preparation = square;
    auto request = shop.request(process::WeldFamily::groove);
    process::BeadLimit thin;
    thin.id = "thin";
    thin.family = process::WeldFamily::groove;
    thin.thickness_max_mm = 5.0;
    const std::vector<process::BeadLimit> limits{thin};
    request.limits = limits;
    const auto table = gap_table(drawn, StopLimit{5.0, "a test", base::Status::proposed}, request);
    REQUIRE(table.has_value());
    REQUIRE(table->rows.size() == 5);
    CHECK_FALSE(table->rows.front().stack);  // 1 mm by 5 mm are 5 mm2
    CHECK_FALSE(table->rows.front().why.empty());
    CHECK(table->rows[3].stack);
    CHECK(table->rows[4].stack);
    CHECK(table->stop.gap_mm == 5.0);
    CHECK(table->stop.reason == "a test");
  }

  TEST_CASE("refuses a stop limit of 0 mm because no gap would be left") {
    const Shop shop;
    const auto table = gap_table(v_12mm(),
                                 StopLimit{0.0, "a test", base::Status::proposed},
                                 shop.request(process::WeldFamily::groove));
    REQUIRE_FALSE(table.has_value());
    CHECK(table.error().code == "fitup.gap.stop_below_zero");
  }
}

}  // namespace seamturn::tests
