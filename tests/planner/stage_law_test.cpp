// SPDX-License-Identifier: MIT
// Stages only add what must come before what: held in the same stances, no build in stages is
// shorter than the same welds without. Small parts, so that both orders are proved the best.
#include <cmath>

#include "planner/detail_joints.hpp"
#include "planner/detail_order_job.hpp"
#include "planner/detail_stances.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/order/search.hpp"
#include "staged_part.hpp"

namespace seamturn::tests {

namespace {

namespace detail = planner::detail;

/// A stage whose fit takes no time.
joint::Stage bare_stage(const std::string& id, const std::string& setup) {
  joint::Operation fit;
  fit.id = "fit " + id;
  fit.kind = joint::OperationKind::fit;
  fit.place = joint::OperationPlace::start;
  fit.level = true;
  joint::Stage stage;
  stage.id = id;
  stage.setup = setup;
  stage.operations = {fit};
  return stage;
}

/// The small part without one of its joints, hung at a slant, in as many stages as are drawn.
planner::Inputs random_build(std::uint64_t seed) {
  base::Random random(seed);
  const auto draw = [&](int most) {
    return static_cast<int>(random.below(static_cast<std::size_t>(most) + 1));
  };
  planner::Inputs inputs = staged_part();
  joint::Setup setup = inputs.weldment.setups.front();
  setup.X_DJ.rotation =
      geom::rotation_about(geom::Vec3::UnitX(), base::Angle::deg(10.0 + 5.0 * draw(12))) *
      setup.X_DJ.rotation;
  for (joint::SetupSolid& solid : setup.solids) solid.size_mm.reset();  // stands in no way
  inputs.weldment.setups = {setup};
  inputs.cell->times.clean_every_s = 20.0 + 20.0 * draw(5);
  inputs.cell->times.clean_s = 30.0;
  inputs.weldment.joints.erase(inputs.weldment.joints.begin() + draw(5));
  const int count = 2 + draw(1);
  std::vector<joint::Stage> stages;
  for (int k = 1; k <= count; ++k) {
    stages.push_back(bare_stage("stage" + std::to_string(k), setup.id));
  }
  const auto fitted = [&](const char* member, int stage) {
    stages[static_cast<std::size_t>(stage)].operations.front().members.push_back(member);
    return stage;
  };
  fitted("base", 0);
  const int web = fitted("web", draw(1));
  fitted("rib_1", std::max(web, draw(count - 1)));
  fitted("rib_2", std::max(web, draw(count - 1)));
  inputs.weldment.stages = stages;
  for (joint::Joint& joint : inputs.weldment.joints) {
    joint.stage = draw(3) == 0 ? stages.back().id : "";
  }
  return inputs;
}

planner::Inputs without_stages(planner::Inputs inputs) {
  inputs.weldment.stages.clear();
  for (joint::Joint& joint : inputs.weldment.joints) joint.stage.clear();
  return inputs;
}

/// The best order without stages in which every seam is held as its stage chose to hold it.
order::Found held_as_in_stages(const planner::Inputs& staged) {
  std::vector<base::Finding> findings;
  const planner::Inputs whole = without_stages(staged);
  const auto joints = detail::work_joints(whole, findings);
  const auto seams = detail::all_seams(joints);
  const detail::StageWork all = detail::work_stages(whole, findings).front();
  detail::StancePool pool = detail::find_stance_pool(whole, all, seams, findings);
  std::vector<std::vector<detail::Placement>> placements(seams.size());
  for (const detail::StageWork& stage : detail::work_stages(staged, findings)) {
    const auto own = detail::find_stance_pool(staged, stage, seams, findings);
    const auto chosen = detail::choose_placements(staged, seams, own);
    for (std::size_t i = 0; i < seams.size(); ++i) {
      for (detail::Placement placement : chosen[i]) {
        const turn::Stance& wanted = own.stances[static_cast<std::size_t>(placement.stance)];
        auto same = std::find_if(pool.stances.begin(), pool.stances.end(), [&](const auto& stance) {
          return detail::same_stance(stance, wanted);
        });
        // What seams share depends on which seams there are.
        if (same == pool.stances.end()) same = pool.stances.insert(same, wanted);
        placement.stance = static_cast<int>(same - pool.stances.begin());
        placements[i].push_back(placement);
      }
    }
  }
  REQUIRE_FALSE(base::has_errors(findings));
  const auto job = detail::make_order_job(whole, all, seams, pool, placements, true);
  return order::find_order(job.job, {});
}

}  // namespace

TEST_SUITE("planner/stage_law") {
  TEST_CASE(
      "for random builds held in the same stances, law: stages never make the cycle shorter") {
    int proved = 0;
    int longer = 0;
    for (std::uint64_t seed = 1; seed <= 80; ++seed) {
      const planner::Inputs inputs = random_build(seed);
      const Plan staged = planner::make_plan(inputs);
      const order::Found whole = held_as_in_stages(inputs);
      if (!whole.proved_best || !staged.proved_best) continue;
      ++proved;
      INFO("seed ", seed);
      CHECK(staged.cycle_s >= whole.cycle_s - 1e-6);
      CHECK(staged.lower_bound_s == doctest::Approx(staged.cycle_s));
      if (staged.cycle_s > whole.cycle_s + 1.0) ++longer;
    }
    CHECK(proved > 60);
    CHECK(longer > 30);
  }

  TEST_CASE(
      "given the choice of stances too, a build in stages is shorter by chance, and by little") {
    // computed, no outside check: stances are chosen by rule of thumb before the order is searched,
    // so a stage may happen on a better choice than the whole did (seed 74: 2 %).
    for (const std::uint64_t seed : {3, 17, 74, 123, 167, 195}) {
      const planner::Inputs inputs = random_build(seed);
      const Plan whole = planner::make_plan(without_stages(inputs));
      INFO("seed ", seed);
      CHECK(planner::make_plan(inputs).cycle_s > 0.97 * whole.cycle_s);
    }
  }
}

}  // namespace seamturn::tests
