// SPDX-License-Identifier: MIT
// The order of an earlier plan as a sequence of today's job: of the hub's stages, with orders drawn
// at random. Expected values: law; closed-form where two arcs share a nozzle.
#include "planner/detail_start_sequence.hpp"

#include <algorithm>
#include <set>

#include "planned_demos.hpp"
#include "planner/detail_earlier_start.hpp"
#include "planner/detail_joints.hpp"
#include "planner/detail_stances.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::tests {

namespace {

namespace detail = planner::detail;
using planner::EarlierOrder;
using planner::EarlierStep;

/// A stage of the hub with all its order is made of.
struct Stage {
  const detail::StageWork* work = nullptr;
  detail::StancePool pool;
  detail::OrderJob order;
};

struct Hub {
  planner::Inputs inputs = hub().inputs;
  std::vector<base::Finding> findings;
  std::vector<detail::JointWork> joints = detail::work_joints(inputs, findings);
  std::vector<detail::SeamRef> seams = detail::all_seams(joints);
  std::vector<detail::StageWork> works = detail::work_stages(inputs, findings);
  std::vector<Stage> stages;

  Hub() {
    for (const detail::StageWork& work : works) {
      if (work.setup == nullptr) continue;
      Stage stage;
      stage.work = &work;
      stage.pool = detail::find_stance_pool(inputs, work, seams, findings);
      const auto placements = detail::choose_placements(inputs, seams, stage.pool);
      stage.order = detail::make_order_job(inputs, work, seams, stage.pool, placements, false);
      stages.push_back(std::move(stage));
    }
  }
};

const Hub& parts() {
  static const Hub all;
  return all;
}

/// Any ready block next, any of its options.
order::Sequence drawn(const order::Job& job, base::Random& random) {
  order::Sequence sequence;
  std::vector<bool> done(job.blocks.size(), false);
  while (sequence.size() < job.blocks.size()) {
    std::vector<int> ready;
    for (std::size_t b = 0; b < job.blocks.size(); ++b) {
      const auto& after = job.blocks[b].after;
      const bool free = std::all_of(after.begin(), after.end(), [&](int leader) {
        return done[static_cast<std::size_t>(leader)];
      });
      if (free && !done[b]) ready.push_back(static_cast<int>(b));
    }
    const int block = ready[random.below(ready.size())];
    const auto& options = job.blocks[static_cast<std::size_t>(block)].options;
    sequence.push_back({block, static_cast<int>(random.below(options.size()))});
    done[static_cast<std::size_t>(block)] = true;
  }
  return sequence;
}

/// What a plan with that sequence would tell of a block.
std::vector<EarlierStep> steps_of(const Stage& stage, const order::Step& step) {
  const detail::BlockOrigin& origin = stage.order.origins[static_cast<std::size_t>(step.block)];
  const order::Option& option = stage.order.job.blocks[static_cast<std::size_t>(step.block)]
                                    .options[static_cast<std::size_t>(step.option)];
  EarlierStep told;
  told.stage = stage.work->stage->id;
  const int held = stage.order.pool_stance[static_cast<std::size_t>(option.stance)];
  if (held >= 0) told.stance = stage.pool.stances[static_cast<std::size_t>(held)];
  if (origin.seam < 0) {
    told.operation = stage.work->operations[static_cast<std::size_t>(origin.operation)].id;
    return {told};
  }
  const auto seam = static_cast<std::size_t>(origin.seam);
  told.seam = parts().seams[seam].work->seam->id;
  told.reversed = stage.order.placements[seam][static_cast<std::size_t>(option.tag)].reversed;
  std::vector<EarlierStep> all;
  for (const int pass : origin.passes) {
    told.pass = pass + 1;
    all.push_back(told);
  }
  return all;
}

EarlierOrder order_of(const Stage& stage, const order::Sequence& sequence) {
  EarlierOrder order;
  for (const order::Step& step : sequence) {
    for (EarlierStep& told : steps_of(stage, step)) order.steps.push_back(std::move(told));
  }
  return order;
}

order::Sequence begun(const Stage& stage,
                      const EarlierOrder& earlier,
                      detail::StartCounts& counts) {
  return detail::start_sequence(parts().inputs.cell->positioner,
                                *stage.work,
                                parts().seams,
                                stage.pool,
                                stage.order,
                                earlier,
                                counts);
}

order::Sequence without(const order::Sequence& sequence, const std::vector<int>& dropped) {
  order::Sequence kept;
  for (const order::Step& step : sequence) {
    const bool is_dropped = std::find(dropped.begin(), dropped.end(), step.block) != dropped.end();
    if (!is_dropped) kept.push_back(step);
  }
  return kept;
}

}  // namespace

TEST_SUITE("planner/start_sequence") {
  TEST_CASE("for any order of a stage, law: told as a plan tells it, it is the same sequence") {
    base::Random random(base::named_seed(1, "start same"));
    REQUIRE(parts().stages.size() >= 3);
    for (const Stage& stage : parts().stages) {
      for (int n = 0; n < 10; ++n) {
        const order::Sequence sequence = drawn(stage.order.job, random);
        detail::StartCounts counts;
        CHECK(begun(stage, order_of(stage, sequence), counts) == sequence);
        CHECK(counts.blocks == static_cast<int>(sequence.size()));
        CHECK(counts.new_ones == 0);
        CHECK(counts.brought_on == 0);
        CHECK(counts.other_stance == 0);
      }
    }
  }

  TEST_CASE("for any order that lacks blocks, law: the others stay as they are, and all stand") {
    base::Random random(base::named_seed(1, "start new"));
    for (const Stage& stage : parts().stages) {
      const order::Job& job = stage.order.job;
      for (int n = 0; n < 10; ++n) {
        const order::Sequence sequence = drawn(job, random);
        std::vector<int> dropped;
        for (std::size_t b = 1; b < job.blocks.size(); ++b) {
          if (random.below(4) == 0) dropped.push_back(static_cast<int>(b));
        }
        const order::Sequence kept = without(sequence, dropped);
        detail::StartCounts counts;
        const order::Sequence got = begun(stage, order_of(stage, kept), counts);
        CHECK(order::is_valid(job, got));
        CHECK(without(got, dropped) == kept);
        CHECK(counts.new_ones == static_cast<int>(dropped.size()));
        CHECK(counts.brought_on == 0);
      }
    }
  }

  TEST_CASE(
      "given one block left out of an order, it needs a turn of its own only where no stay "
      "serves") {
    base::Random random(base::named_seed(1, "start fit"));
    for (const Stage& stage : parts().stages) {
      const order::Job& job = stage.order.job;
      const order::Sequence sequence = drawn(job, random);
      for (std::size_t b = 0; b < job.blocks.size(); ++b) {
        const int block = static_cast<int>(b);
        const order::Sequence kept = without(sequence, {block});
        if (kept.empty()) continue;
        detail::StartCounts counts;
        const order::Sequence got = begun(stage, order_of(stage, kept), counts);
        // Between its leaders and its followers, is the part ever held as one of its options asks?
        const std::set<int> all_leaders(job.blocks[b].after.begin(), job.blocks[b].after.end());
        bool could_stay = false;
        std::size_t leaders = 0;
        int held = job.start_stance;
        for (const order::Step& step : kept) {
          const auto& after = job.blocks[static_cast<std::size_t>(step.block)].after;
          const auto serves = [&](const order::Option& option) { return option.stance == held; };
          const auto& options = job.blocks[b].options;
          if (leaders == all_leaders.size()) {
            could_stay = could_stay || std::any_of(options.begin(), options.end(), serves);
          }
          if (std::find(after.begin(), after.end(), block) != after.end()) break;
          leaders += all_leaders.count(step.block);
          held = job.blocks[static_cast<std::size_t>(step.block)]
                     .options[static_cast<std::size_t>(step.option)]
                     .stance;
        }
        std::size_t at = 0;
        while (got[at].block != block) ++at;
        const auto stance_at = [&](std::size_t i) {
          const order::Step& step = got[i];
          return job.blocks[static_cast<std::size_t>(step.block)]
              .options[static_cast<std::size_t>(step.option)]
              .stance;
        };
        const int before = at == 0 ? job.start_stance : stance_at(at - 1);
        if (could_stay) CHECK(stance_at(at) == before);
      }
    }
  }

  TEST_CASE("for any blocks in any order, law: links are kept, and what must come on is counted") {
    base::Random random(base::named_seed(1, "start shuffled"));
    for (const Stage& stage : parts().stages) {
      const order::Job& job = stage.order.job;
      order::Sequence sequence = drawn(job, random);
      for (int n = 0; n < 10; ++n) {
        for (std::size_t i = sequence.size(); i > 1; --i) {
          std::swap(sequence[i - 1], sequence[random.below(i)]);
        }
        detail::StartCounts counts;
        const order::Sequence got = begun(stage, order_of(stage, sequence), counts);
        CHECK(order::is_valid(job, got));
        CHECK((counts.brought_on == 0) == order::is_valid(job, sequence));
        for (const order::Step& step : got) {
          CHECK(std::find(sequence.begin(), sequence.end(), step) != sequence.end());
        }
      }
    }
  }

  TEST_CASE("given an order that knows none of the blocks, there is nothing to begin with") {
    for (const Stage& stage : parts().stages) {
      EarlierOrder earlier;
      EarlierStep stranger;
      stranger.seam = "X1";
      stranger.pass = 1;
      earlier.steps = {stranger};
      detail::StartCounts counts;
      CHECK(begun(stage, earlier, counts).empty());
      CHECK(counts.new_ones == counts.blocks);
      // Work of people of another stage is other work, whatever its name.
      for (const joint::Operation& operation : stage.work->operations) {
        EarlierStep work;
        work.operation = operation.id;
        work.stage = "another";
        earlier.steps = {work};
        CHECK(begun(stage, earlier, counts).empty());
      }
    }
  }

  TEST_CASE("given two stages, the nozzle goes into the second as it left the first, closed-form") {
    order::Job job;
    job.turn_s = {{0.0}};
    job.clean_every_s = 100.0;
    job.clean_s = 12.0;
    order::Block block;
    block.passes = {order::BlockPass{60.0}};
    block.options = {order::Option{}};
    job.blocks = {block};
    detail::ChainClock clock;
    clock.run(job, {{0, 0}});
    CHECK(clock.objective_s() == doctest::Approx(60.0));
    clock.run(job, {{0, 0}});  // 60 + 60 is more than 100: cleaned before
    CHECK(clock.objective_s() == doctest::Approx(60.0 + 12.0 + 60.0));
    job.blocks[0].passes[0].arc_s = 30.0;  // 60 + 30 is not: clean 60 s ago
    clock.run(job, {{0, 0}});
    CHECK(clock.objective_s() == doctest::Approx(60.0 + 12.0 + 60.0 + 30.0));
    const order::Found found = detail::as_begun(job, {{0, 0}});
    CHECK(found.cycle_s == doctest::Approx(30.0));
    CHECK(found.lower_bound_s <= found.cycle_s);
    CHECK_FALSE(found.proved_best);
  }
}

}  // namespace seamturn::tests
