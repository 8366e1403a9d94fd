// SPDX-License-Identifier: MIT
#include "oracle.hpp"
#include "oracles/pass_limits.hpp"
#include "pass/pass_fixture.hpp"

namespace seamturn::tests {
namespace {

using process::PassRole;
using process::WeldPosition;

/// The limits of the code for one position, as rows.
std::vector<process::BeadLimit> code_limits(const PassLimitRow& published) {
  process::BeadLimit leg;
  leg.id = "leg";
  leg.roles = {PassRole::single};
  leg.positions = {published.position};
  leg.leg_max_mm = published.single_leg_mm;
  process::BeadLimit root = leg;
  root.id = "root";
  root.roles = {PassRole::root};
  root.leg_max_mm.reset();
  root.thickness_max_mm = published.root_thickness_mm;
  process::BeadLimit fill = root;
  fill.id = "fill";
  fill.roles = {PassRole::fill, PassRole::cap};
  fill.positions.clear();
  fill.thickness_max_mm = fill_thickness_mm;
  return {leg, root, fill};
}

Bench code_bench(const PassLimitRow& published, double leg_mm) {
  Bench bench;
  bench.section = fillet_section(leg_mm, leg_mm);
  bench.position = published.position;
  bench.settings = any_travel();
  bench.limits = code_limits(published);
  return bench;
}

}  // namespace

TEST_SUITE("pass/fillet") {
  TEST_CASE("given AWS D1.1:2020 table 5.1 leg at the limit, passes are 1, and more just above") {
    for (const PassLimitRow& row : pass_limit_rows) {
      INFO(row.source);
      CHECK(count_passes(code_bench(row, row.single_leg_mm)) == 1);
      const auto above = code_bench(row, row.single_leg_mm + 0.1).lay().value();
      CHECK(above.passes.size() == 3);
      CHECK(above.passes.front().limited_by == "leg");
    }
  }

  TEST_CASE(
      "given Miller on smaller, longer fillets, passes are 1 at 1/4 in and 3 to 6 at 1/2 in") {
    for (const PassCountRow& row : pass_count_rows) {
      INFO(row.source);
      const auto passes =
          static_cast<int>(count_passes(code_bench(pass_limit_rows[1], row.leg_mm)));
      CHECK(passes >= row.least_passes);
      CHECK(passes <= row.most_passes);
    }
  }

  TEST_CASE("given the equal-bead layer rule of 2001, layer heights are 1, .7321, .7174, .7128") {
    Bench bench;
    bench.section = fillet_section(20.0, 20.0);
    bench.settings = any_travel();
    process::BeadLimit area;
    area.id = "area";
    area.area_max_mm2 = 20.0;  // 200 mm2 in 10 beads: four layers
    bench.limits = {area};
    const auto stack = bench.lay().value();
    REQUIRE(stack.layers == 4);
    double total = 0.0;
    for (const double height : equal_bead_heights) {
      total += height;
    }
    // Centroid of the strip of a triangle between two heights, from the published heights.
    double low_mm = 0.0;
    for (int layer = 1; layer <= 4; ++layer) {
      const double high_mm =
          low_mm + equal_bead_heights[layer - 1] / total * bench.section.throat_mm;
      const double centroid_mm = 2.0 / 3.0 * (std::pow(high_mm, 3) - std::pow(low_mm, 3)) /
                                 (high_mm * high_mm - low_mm * low_mm);
      double mean_mm = 0.0;
      int beads = 0;
      for (const pass::Pass& pass : stack.passes) {
        if (pass.layer == layer) {
          mean_mm += pass.centre.y_mm;
          ++beads;
        }
      }
      CHECK(beads == layer);
      // Heights carry four digits: half the last one, times the throat over the sum of heights.
      check_expected("layer " + std::to_string(layer),
                     mean_mm / beads,
                     {centroid_mm, 1e-3, Origin::computed, equal_bead_source, "rounded heights"});
      low_mm = high_mm;
    }
  }

  TEST_CASE("given three passes, the root is laid first and the toe of the first plate second") {
    const auto stack = code_bench(pass_limit_rows[1], 12.0).lay().value();
    REQUIRE(stack.passes.size() == 3);
    CHECK(stack.layers == 2);
    CHECK(stack.passes[0].role == PassRole::root);
    CHECK(stack.passes[0].aim.x_mm == 0.0);
    CHECK(stack.passes[0].aim.y_mm == 0.0);
    CHECK(stack.passes[0].work_angle.deg() == 0.0);
    CHECK(stack.passes[1].role == PassRole::cap);
    CHECK(stack.passes[1].centre.x_mm > 0.0);
    CHECK(stack.passes[2].centre.x_mm < 0.0);
    // The second wire points at the toe of the root on the first plate, where the leg is
    // z / sqrt(3), and the torch stands nearer to the second plate.
    CHECK(stack.passes[1].aim.x_mm == doctest::Approx(12.0 / std::sqrt(3.0) * std::sqrt(0.5)));
    CHECK(stack.passes[1].work_angle.deg() < -5.0);
    CHECK(stack.passes[2].work_angle.deg() > 0.0);
  }

  TEST_CASE("given legs 8 and 12 mm at 75 deg, bead centres balance at the triangle's centroid") {
    Bench bench;
    bench.section = fillet_section(8.0, 12.0, 75.0);
    bench.settings = any_travel();
    process::BeadLimit area;
    area.area_max_mm2 = 10.0;
    bench.limits = {area};
    const auto stack = bench.lay().value();
    CHECK(stack.passes.size() == 6);
    section::Point sum;
    for (const pass::Pass& pass : stack.passes) {
      sum.x_mm += pass.area_mm2 * pass.centre.x_mm;
      sum.y_mm += pass.area_mm2 * pass.centre.y_mm;
    }
    // Closed form: the mean of the three corners.
    const double half = 37.5 * std::numbers::pi / 180.0;
    check_expected("x",
                   sum.x_mm / bench.section.area_mm2,
                   {(8.0 - 12.0) * std::sin(half) / 3.0, 1e-9, Origin::closed_form, "triangle"});
    check_expected("y",
                   sum.y_mm / bench.section.area_mm2,
                   {(12.0 + 8.0) * std::cos(half) / 3.0, 1e-9, Origin::closed_form, "triangle"});
  }

  TEST_CASE("given a leg between the ranges of one and three passes, a count between is laid") {
    // 1.2 mm wire at 10.5 m/min and 95 %: 25..60 cm/min lay 18.8..45.1 mm2. 50 mm2 is too much
    // for one bead and too little for three.
    Bench bench;
    bench.section = fillet_section(10.0, 10.0);
    for (const PassRole role : {PassRole::root, PassRole::fill, PassRole::cap}) {
      bench.settings.push_back(settings_row({"row", role, 10.5, 25.0, 60.0, 40.0}));
    }
    const auto stack = bench.lay().value();
    CHECK(stack.passes.size() == 2);
    CHECK(stack.passes.front().area_mm2 == doctest::Approx(25.0));
    CHECK(stack.passes.front().limited_by == "row");
  }

  TEST_CASE("for any fillet, law: laid from the second plate and back again is what it was") {
    for (const double leg_mm : {6.0, 12.0, 18.0, 25.0}) {
      Bench bench;
      bench.section = fillet_section(leg_mm, leg_mm);
      bench.position = process::WeldPosition::pb;
      bench.settings = shop_travel();
      const auto laid = bench.lay();
      REQUIRE(laid.has_value());
      const pass::PassStack turned = pass::laid_from_second(*laid);
      const pass::PassStack back = pass::laid_from_second(turned);
      CHECK(turned.arc_time_s == laid->arc_time_s);
      for (std::size_t i = 0; i < laid->passes.size(); ++i) {
        const pass::Pass& first = laid->passes[i];
        const pass::Pass& second = turned.passes[i];
        INFO(leg_mm, " pass ", first.number);
        // Equal legs: the section is its own mirror image, and so are the beads.
        CHECK(second.aim.x_mm == doctest::Approx(-first.aim.x_mm).epsilon(1e-9));
        CHECK(second.centre.x_mm == doctest::Approx(-first.centre.x_mm).epsilon(1e-9));
        CHECK(second.aim.y_mm == doctest::Approx(first.aim.y_mm).epsilon(1e-9));
        CHECK(second.work_angle == -first.work_angle);
        CHECK(second.number == first.number);
        CHECK(back.passes[i].aim.x_mm == first.aim.x_mm);
        CHECK(back.passes[i].work_angle == first.work_angle);
      }
    }
  }
}

}  // namespace seamturn::tests
