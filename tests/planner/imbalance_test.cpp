// SPDX-License-Identifier: MIT
// How far twins drift apart on the clock, and the moment of the shrinkage forces.
#include <cmath>

#include "ordered_part.hpp"
#include "planner/detail_assemble.hpp"
#include "planner/detail_joints.hpp"

namespace seamturn::tests {

namespace {

using geom::Vec3;
using planner::detail::SeamRef;

/// Seams of one weld each, whose passes are laid when a test says so.
struct LaidSeams {
  std::vector<joint::Joint> joints;
  std::vector<joint::Seam> seams;
  std::vector<planner::detail::JointWork> joint_works;
  std::vector<planner::detail::SeamWork> works;
  std::vector<SeamRef> refs;
  Plan plan;

  explicit LaidSeams(const std::vector<geom::Path>& paths) {
    for (std::size_t i = 0; i < paths.size(); ++i) {
      joint::Seam seam;
      seam.id = std::string(1, static_cast<char>('A' + i));
      seam.path = paths[i];
      seam.length_mm = geom::path_length_mm(paths[i]);
      seams.push_back(seam);
    }
    joint_works.resize(paths.size());
    works.resize(paths.size());
    for (std::size_t i = 0; i < paths.size(); ++i) {
      works[i].seam = &seams[i];
      refs.push_back({&joint_works[i], &works[i]});
      plan::PlannedJoint joint;
      joint.seams.resize(1);
      joint.seams.front().id = seams[i].id;
      plan.joints.push_back(joint);
    }
  }
  void lay(std::size_t seam, double end_s, double area_mm2, double heat_kj_mm) {
    plan::PlannedPass pass;
    pass.start_s = end_s - 1.0;
    pass.end_s = end_s;
    pass.pass.area_mm2 = area_mm2;
    pass.pass.heat_input_kj_mm = heat_kj_mm;
    plan.joints[seam].seams.front().passes.push_back(pass);
  }
};

geom::Path along_x(double y_mm, double z_mm) {
  return geom::LinePath{Vec3(-100.0, y_mm, z_mm), Vec3(100.0, y_mm, z_mm)};
}

plan::PlannedTwins drift(LaidSeams& laid) {
  laid.plan.twins.clear();
  planner::detail::assemble_twins(laid.refs, {{0, 1, plan::TwinKind::plate, {}, {}}}, laid.plan);
  return laid.plan.twins.front();
}

plan::ShrinkageMoment moment(const LaidSeams& laid) {
  const auto found = planner::detail::find_shrink_moment(laid.refs, laid.plan);
  REQUIRE(found);
  return *found;
}

}  // namespace

TEST_SUITE("planner/imbalance") {
  TEST_CASE("given 20 25 25 30 mm2 in turn, the other side is 30 ahead, worked example") {
    // closed-form: docs/methods/order.md, "Balance": 20, -5, -30, 0
    LaidSeams laid({along_x(0.0, 0.0), along_x(0.0, 10.0)});
    laid.lay(0, 10.0, 20.0, 1.0);
    laid.lay(0, 40.0, 30.0, 1.5);
    laid.lay(1, 20.0, 25.0, 2.0);
    laid.lay(1, 30.0, 25.0, 0.25);
    const plan::PlannedTwins twins = drift(laid);
    CHECK(twins.first == "A");
    CHECK(twins.second == "B");
    CHECK(twins.metal_1_mm2 == 50.0);
    CHECK(twins.metal_2_mm2 == 50.0);
    CHECK(twins.ahead_mm2 == doctest::Approx(30.0));
    CHECK(twins.ahead == "B");
    CHECK(twins.ahead_from_s == 30.0);
    CHECK(twins.ahead_kj_mm == doctest::Approx(1.25));  // 1, -1, -1.25, 0.25
    CHECK(twins.keeps_step);
  }

  TEST_CASE("for every plan, law: the drift is the largest of the sums of all passes so far") {
    std::vector<Plan> more = {quick_plan(ordered_part())};
    std::vector<const Plan*> all = {&more.front()};
    for (const Planned& planned : plans()) all.push_back(&planned.plan);
    int looked_at = 0;
    for (const Plan* plan : all) {
      for (const plan::PlannedTwins& twins : plan->twins) {
        INFO(plan->weldment.title, " ", twins.first, " ", twins.second);
        const auto sum_by = [&](const std::string& id, double at_s) {
          double sum_mm2 = 0.0;
          for (const plan::PlannedPass& pass : seam_of(*plan, id).passes) {
            if (*pass.end_s <= at_s) sum_mm2 += pass.pass.area_mm2;
          }
          return sum_mm2;
        };
        double largest_mm2 = 0.0;
        for (const Arc& arc : arcs_of(*plan)) {
          if (!arc.pass->end_s) continue;
          const double at_s = *arc.pass->end_s;
          largest_mm2 = std::max(largest_mm2,
                                 std::abs(sum_by(twins.first, at_s) - sum_by(twins.second, at_s)));
        }
        CHECK(twins.ahead_mm2 == doctest::Approx(largest_mm2));
        const double then =
            sum_by(twins.ahead, twins.ahead_from_s) -
            sum_by(twins.ahead == twins.first ? twins.second : twins.first, twins.ahead_from_s);
        CHECK(then == doctest::Approx(largest_mm2));
        CHECK(sum_by(twins.first, 1e12) == doctest::Approx(twins.metal_1_mm2));
        CHECK(sum_by(twins.second, 1e12) == doctest::Approx(twins.metal_2_mm2));
        ++looked_at;
      }
    }
    CHECK(looked_at >= 30);
  }

  TEST_CASE("given a weld off centre, its moment is 0.2 kN per J/mm times its distance") {
    // closed-form: 200 N per J/mm x 1500 J/mm x 50 mm; distance of (30, 40) across x
    LaidSeams laid({along_x(30.0 + 7.0, 40.0 - 3.0)});
    laid.plan.part.centre = Vec3(12.0, 7.0, -3.0);
    laid.lay(0, 10.0, 20.0, 1.0);
    laid.lay(0, 20.0, 20.0, 0.5);
    const plan::ShrinkageMoment found = moment(laid);
    CHECK(found.largest_nm == doctest::Approx(200.0 * 1500.0 * 0.050));
    CHECK(found.final_nm == doctest::Approx(found.largest_nm));
    CHECK(found.axis == 'x');
    CHECK(found.seam == "A");
    CHECK(found.at_s == 20.0);
  }

  TEST_CASE(
      "given two welds that balance, law: nothing is left in the end, the first is the most") {
    LaidSeams laid({along_x(0.0, 40.0), along_x(0.0, -40.0)});
    laid.lay(0, 10.0, 20.0, 1.0);
    laid.lay(1, 20.0, 20.0, 1.0);
    CHECK(moment(laid).largest_nm == doctest::Approx(200.0 * 1000.0 * 0.040));
    CHECK(moment(laid).final_nm == doctest::Approx(0.0));
    CHECK(moment(laid).at_s == 10.0);
  }

  TEST_CASE("given a ring beside the centre, half its force acts along each axis of its plane") {
    // closed-form: the mean of cos2 over a turn is 1/2; off the plane's axis by 80 mm
    geom::CirclePath ring;
    ring.centre = Vec3(0.0, 0.0, 80.0);
    ring.radius_mm = 300.0;
    LaidSeams laid({ring});
    laid.lay(0, 10.0, 20.0, 1.0);
    CHECK(moment(laid).largest_nm == doctest::Approx(200.0 * 1000.0 * 0.080 / 2.0));
  }

  TEST_CASE("law: nothing laid, no moment") {
    const LaidSeams laid({along_x(0.0, 40.0)});
    CHECK_FALSE(planner::detail::find_shrink_moment(laid.refs, laid.plan));
  }
}

}  // namespace seamturn::tests
