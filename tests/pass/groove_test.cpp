// SPDX-License-Identifier: MIT
#include "oracle.hpp"
#include "oracles/pass_limits.hpp"
#include "pass/pass_fixture.hpp"

namespace seamturn::tests {
namespace {

using process::PassRole;

std::vector<process::BeadLimit> groove_limits(double root_mm, double area_mm2, double split_mm) {
  process::BeadLimit root;
  root.id = "root-height";
  root.family = process::WeldFamily::groove;
  root.roles = {PassRole::root};
  root.thickness_max_mm = root_mm;
  process::BeadLimit fill = root;
  fill.id = "fill-height";
  fill.roles = {PassRole::fill, PassRole::cap};
  fill.thickness_max_mm = fill_thickness_mm;
  process::BeadLimit all;
  all.id = "size";
  all.family = process::WeldFamily::groove;
  all.area_max_mm2 = area_mm2;
  process::BeadLimit split = all;
  split.id = "split";
  split.area_max_mm2.reset();
  split.split_width_mm = split_mm;
  return {root, fill, all, split};
}

Bench groove_bench(const GrooveSize& size) {
  Bench bench;
  bench.section = groove_section(size);
  bench.family = process::WeldFamily::groove;
  bench.settings = shop_travel();
  bench.limits = groove_limits(10.0, 40.0, 16.0);
  return bench;
}

const GrooveSize v20 = {20.0, 3.0, 2.0, 30.0, 30.0, 2.0, 1.0};

}  // namespace

TEST_SUITE("pass/groove") {
  TEST_CASE("given V t20 gap 3 root face 2 60 deg, areas add up to the closed form plus the cap") {
    const auto stack = groove_bench(v20).lay().value();
    double sum_mm2 = 0.0;
    for (const pass::Pass& pass : stack.passes) {
      sum_mm2 += pass.area_mm2;
    }
    // b t + (t-c)2 tan 30 = 247.06; cap 2/3 x 25.785 x 2 = 34.38.
    check_expected("V t20", sum_mm2, {281.44, 0.01, Origin::closed_form, "plane geometry"});
    CHECK(stack.passes.front().role == PassRole::root);
    CHECK(stack.passes.back().role == PassRole::cap);
  }

  TEST_CASE("given V t20, bead centres balance at the centroid of groove and cap") {
    const auto stack = groove_bench(v20).lay().value();
    double moment_x = 0.0;
    double moment_y = 0.0;
    for (const pass::Pass& pass : stack.passes) {
      moment_x += pass.area_mm2 * pass.centre.x_mm;
      moment_y += pass.area_mm2 * pass.centre.y_mm;
    }
    // Rectangle 3 x 20, two triangles 18 x 10.392, parabola cap (its centroid at 2/5 of height).
    const double side = 18.0 * std::tan(std::numbers::pi / 6.0);
    const double cap = 2.0 / 3.0 * (3.0 + 2.0 * side + 2.0) * 2.0;
    const double expected = 60.0 * 10.0 + side * 18.0 * (2.0 + 12.0) + cap * (20.0 + 0.8);
    check_expected("moment about x",
                   moment_y,
                   {expected, 1e-6, Origin::closed_form, "composite of simple shapes"});
    CHECK(std::abs(moment_x) < 1e-6);
  }

  TEST_CASE(
      "given a bevel in a tee with a triangular cover, beads balance at the centroid of both") {
    Bench bench = groove_bench(v20);
    bench.section = tee_section(12.0, 45.0, 6.0);
    bench.settings = any_travel();
    bench.limits[1].thickness_max_mm = 8.0;
    const auto stack = bench.lay().value();
    section::Point sum;
    double area_mm2 = 0.0;
    for (const pass::Pass& pass : stack.passes) {
      area_mm2 += pass.area_mm2;
      sum.x_mm += pass.area_mm2 * pass.centre.x_mm;
      sum.y_mm += pass.area_mm2 * pass.centre.y_mm;
    }
    // Rectangle 3 x 12, triangle 12 x 12 beside it, cover 17 wide and 6 high at the wall.
    check_expected("area", area_mm2, {159.0, 1e-9, Origin::closed_form, "simple shapes"});
    check_expected("x",
                   sum.x_mm,
                   {36.0 * 1.5 + 72.0 * 7.0 + 51.0 * 17.0 / 3.0, 1e-6, Origin::closed_form, ""});
    check_expected(
        "y", sum.y_mm, {36.0 * 6.0 + 72.0 * 8.0 + 51.0 * 14.0, 1e-6, Origin::closed_form, ""});
    CHECK(stack.passes.back().bead > 1);  // the cover was cut across
  }

  TEST_CASE("given AWS D1.1:2020 table 5.1 root and fill thickness, each is kept to the tenth") {
    for (const PassLimitRow& row : pass_limit_rows) {
      INFO(row.source);
      // A square groove 5 mm wide; the root row lays one size only.
      const auto bench_of = [&](double root_mm, double thickness_mm) {
        Bench bench = groove_bench({thickness_mm, 5.0, 0.0, 0.0, 0.0, 0.0, 0.0});
        bench.position = row.position;
        bench.settings = any_travel();
        bench.settings.pop_back();  // no single rows
        const double travel_cm_min =
            std::numbers::pi * 0.36 * 0.95 * 10.0 * 1000.0 / (5.0 * root_mm) / 10.0;
        bench.settings[0] = settings_row(
            {"one-size", PassRole::root, 10.0, travel_cm_min, travel_cm_min, travel_cm_min});
        bench.limits = groove_limits(row.root_thickness_mm, 1000.0, 1000.0);
        return bench;
      };
      const double root_mm = row.root_thickness_mm;
      CHECK(count_passes(bench_of(root_mm, root_mm + fill_thickness_mm)) == 2);
      CHECK(count_passes(bench_of(root_mm, root_mm + fill_thickness_mm + 0.1)) == 3);
      const auto above = bench_of(root_mm + 0.1, root_mm + 10.0).lay();
      REQUIRE_FALSE(above.has_value());
      CHECK(above.error().text.find("root-height") != std::string::npos);
    }
  }

  TEST_CASE(
      "given root faces that touch, the root begins where they end and its height counts from "
      "there") {
    Bench bench = groove_bench({20.0, 0.0, 12.0, 30.0, 30.0, 0.0, 0.0});
    bench.settings = any_travel();
    bench.settings.pop_back();  // no single rows
    // The root limit of 10 mm is below the root face of 12 mm, but no metal lies there.
    const auto stack = bench.lay().value();
    CHECK(stack.passes.front().aim.y_mm == 12.0);
    CHECK(stack.passes.front().centre.y_mm > 12.0);
    // Two triangles 8 mm high: 64 tan 30.
    double area_mm2 = 0.0;
    for (const pass::Pass& pass : stack.passes) area_mm2 += pass.area_mm2;
    check_expected("V 8", area_mm2, {36.95, 5e-3, Origin::closed_form, "triangles"});
  }

  TEST_CASE("given a U, the root fills the rounded bottom and beads balance at its middle") {
    Bench bench = groove_bench(v20);
    bench.section = u_section({30.0, 2.0, 3.0, 6.0, 10.0, 2.0});
    const auto stack = bench.lay().value();
    double moment_x = 0.0;
    for (const pass::Pass& pass : stack.passes) moment_x += pass.area_mm2 * pass.centre.x_mm;
    CHECK(std::abs(moment_x) < 1e-6);
    CHECK(stack.passes.front().centre.y_mm < 9.0);
  }

  TEST_CASE("given a square butt t3 gap 1.5, one single pass is laid when a row for it exists") {
    Bench bench = groove_bench({3.0, 1.5, 0.0, 0.0, 0.0, 1.0, 2.5});
    bench.settings.push_back(settings_row({"thin", PassRole::single, 5.0, 40.0, 120.0, 70.0}));
    const auto stack = bench.lay().value();
    REQUIRE(stack.passes.size() == 1);
    CHECK(stack.passes[0].role == PassRole::single);
    CHECK(stack.passes[0].settings == "thin");
  }

  TEST_CASE("given a wide root gap on backing, the root takes two beads beyond the split width") {
    Bench bench = groove_bench({20.0, 16.0, 0.0, 10.0, 10.0, 2.0, 1.0});
    bench.limits.back().split_width_mm = 30.0;
    CHECK(bench.lay().value().passes[1].layer == 2);
    bench.limits.back().split_width_mm = 15.9;
    const auto stack = bench.lay().value();
    CHECK(stack.passes[1].layer == 1);
    CHECK(stack.passes[1].role == PassRole::root);
    CHECK(stack.passes[0].centre.x_mm < stack.passes[1].centre.x_mm);
  }

  TEST_CASE("given a layer just inside and just beyond the split width, beads are 1 and 2") {
    Bench bench = groove_bench({8.0, 12.0, 0.0, 0.0, 0.0, 2.0, 0.0});
    bench.settings = any_travel();
    bench.limits = groove_limits(10.0, 1000.0, 12.0);
    CHECK(bench.lay().value().passes.back().bead == 1);
    bench.limits.back().split_width_mm = 11.9;
    CHECK(bench.lay().value().passes.back().bead == 2);
    CHECK(bench.lay().value().passes.back().limited_by == "split");
  }

  TEST_CASE("given a bevel of 45 deg, a lone bead is laid at half the angle of the walls") {
    const auto stack = groove_bench({10.0, 3.0, 0.0, 0.0, 45.0, 0.0, 0.0}).lay().value();
    CHECK(stack.passes.front().work_angle.deg() == doctest::Approx(22.5));
    CHECK(stack.passes.front().aim.y_mm == 0.0);
  }

  TEST_CASE("given two beads abreast in a V, each torch points into the corner at its own wall") {
    const auto stack = groove_bench(v20).lay().value();
    const auto last = std::find_if(
        stack.passes.begin(), stack.passes.end(), [](const auto& pass) { return pass.bead == 2; });
    REQUIRE(last != stack.passes.end());
    const auto first = std::prev(last);
    CHECK(first->work_angle.deg() == doctest::Approx(25.0));  // half of -30 and 90, kept to 25
    CHECK(last->work_angle.deg() < -5.0);
    CHECK(first->aim.x_mm < first->centre.x_mm);
    CHECK(last->aim.x_mm > last->centre.x_mm);
  }

  TEST_CASE("for any bead of a V, law: the aim lies within the walls and the lean within 25 deg") {
    const Bench bench = groove_bench({40.0, 3.0, 2.0, 25.0, 30.0, 2.0, 1.0});
    for (const pass::Pass& pass : bench.lay().value().passes) {
      CHECK(std::abs(pass.work_angle.deg()) <= 25.0 + 1e-9);
      const double above_mm = std::max(0.0, pass.aim.y_mm - 2.0);
      CHECK(pass.aim.x_mm >= -1.5 - above_mm * std::tan(25.0 * std::numbers::pi / 180.0) - 1e-9);
      CHECK(pass.aim.x_mm <= 1.5 + above_mm * std::tan(30.0 * std::numbers::pi / 180.0) + 1e-9);
      CHECK(pass.aim.y_mm < pass.centre.y_mm);
    }
  }
}

}  // namespace seamturn::tests
