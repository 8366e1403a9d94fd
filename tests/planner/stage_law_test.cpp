// SPDX-License-Identifier: MIT
// Stages only add what must come before what: no build in stages is shorter than the same welds
// without. Small parts, so that both orders are proved the best.
#include <cmath>

#include "seamturn/base/random.hpp"
#include "staged_part.hpp"

namespace seamturn::tests {

namespace {

struct Both {
  Plan whole;
  Plan staged;
};

/// The small part with some of its joints, hung at a slant, in as many stages as are drawn.
Both random_build(std::uint64_t seed) {
  base::Random random(seed);
  const auto draw = [&](int most) {
    return static_cast<int>(random.below(static_cast<std::size_t>(most) + 1));
  };
  planner::Inputs inputs = staged_part();
  drop_operations(inputs);
  keep_stage(inputs, "tee");
  joint::Setup setup = inputs.weldment.setups.front();
  setup.X_DJ.rotation =
      geom::rotation_about(geom::Vec3::UnitX(), base::Angle::deg(10.0 + 5.0 * draw(12))) *
      setup.X_DJ.rotation;
  inputs.weldment.setups = {setup};
  inputs.cell->times.clean_every_s = 20.0 + 20.0 * draw(5);
  inputs.cell->times.clean_s = 30.0;
  const int dropped = draw(5);
  inputs.weldment.joints.erase(inputs.weldment.joints.begin() + dropped);
  for (joint::Joint& joint : inputs.weldment.joints) joint.stage.clear();
  Both both;
  planner::Inputs whole = inputs;
  whole.weldment.stages.clear();
  both.whole = planner::make_plan(whole);
  const int count = 2 + draw(1);
  std::vector<joint::Stage> stages(static_cast<std::size_t>(count));
  for (std::size_t k = 0; k < stages.size(); ++k) {
    stages[k].id = "stage" + std::to_string(k + 1);
    stages[k].setup = setup.id;
    joint::Operation fit;
    fit.id = "fit " + stages[k].id;
    fit.kind = joint::OperationKind::fit;
    fit.place = joint::OperationPlace::start;
    fit.level = true;
    stages[k].operations = {fit};
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
    if (draw(3) == 0) joint.stage = stages.back().id;
  }
  both.staged = planner::make_plan(inputs);
  return both;
}

}  // namespace

TEST_SUITE("planner/stage_law") {
  TEST_CASE("for random builds of a small part, law: stages never make the cycle shorter") {
    int proved = 0;
    int longer = 0;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
      const Both both = random_build(seed);
      if (!both.whole.proved_best || !both.staged.proved_best) continue;
      ++proved;
      INFO("seed ", seed, " stances ", both.whole.stances.size(), " ", both.staged.stances.size());
      CHECK(both.staged.cycle_s >= both.whole.cycle_s - 1e-6);
      CHECK(both.staged.lower_bound_s == doctest::Approx(both.staged.cycle_s));
      if (both.staged.cycle_s > both.whole.cycle_s + 1.0) ++longer;
    }
    CHECK(proved > 25);
    CHECK(longer > 10);
  }
}

}  // namespace seamturn::tests
