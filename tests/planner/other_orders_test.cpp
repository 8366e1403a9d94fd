// SPDX-License-Identifier: MIT
// The orders nobody searched for: the one of the file, and the greedy one, beside the one found.
#include "planned_demos.hpp"
#include "planner/detail_other_orders.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::tests {

namespace {

using planner::detail::sequence_of_file;

/// A block of one arc in each of the stances named.
order::Block block_in(const std::vector<int>& stances) {
  order::Block block;
  block.passes = {order::BlockPass{10.0, 0.0, 0.0, 0.0}};
  for (const int stance : stances) {
    order::Option option;
    option.stance = stance;
    block.options.push_back(option);
  }
  return block;
}

order::Job job_of(std::size_t stances) {
  order::Job job;
  job.turn_s.assign(stances, std::vector<double>(stances, 20.0));
  for (std::size_t i = 0; i < stances; ++i) job.turn_s[i][i] = 0.0;
  return job;
}

std::vector<int> blocks_of(const order::Sequence& sequence) {
  std::vector<int> blocks;
  for (const order::Step& step : sequence) blocks.push_back(step.block);
  return blocks;
}

}  // namespace

TEST_SUITE("planner/other_orders") {
  TEST_CASE("given three free blocks, law: the order of the file is theirs as listed") {
    order::Job job = job_of(2);
    job.blocks = {block_in({1}), block_in({0}), block_in({1})};
    CHECK(blocks_of(sequence_of_file(job)) == std::vector<int>{0, 1, 2});
  }

  TEST_CASE("given a first block that waits for the last, law: it comes as soon as it may") {
    order::Job job = job_of(2);
    job.blocks = {block_in({1}), block_in({1}), block_in({1}), block_in({1})};
    job.blocks[0].after = {2};
    CHECK(blocks_of(sequence_of_file(job)) == std::vector<int>{1, 2, 0, 3});
    CHECK(order::is_valid(job, sequence_of_file(job)));
  }

  TEST_CASE("given work of people that may come now, law: it comes before the next weld") {
    order::Job job = job_of(2);
    job.blocks = {block_in({1}), block_in({1}), block_in({0})};
    job.blocks[2].passes.clear();
    job.blocks[2].work_s = 60.0;
    job.blocks[2].after = {0};
    CHECK(blocks_of(sequence_of_file(job)) == std::vector<int>{0, 2, 1});
  }

  TEST_CASE("given a block of two stances, law: it stays where the part is held") {
    order::Job job = job_of(3);
    job.blocks = {block_in({2}), block_in({1, 2}), block_in({1, 2})};
    const order::Sequence sequence = sequence_of_file(job);
    CHECK(sequence[1].option == 1);
    CHECK(sequence[2].option == 1);
    job.blocks[0] = block_in({1});
    CHECK(sequence_of_file(job)[1].option == 0);
  }

  TEST_CASE("given a block held alike from both ends, law: it begins at the nearer one") {
    order::Job job = job_of(2);
    job.blocks = {block_in({1}), block_in({1, 1})};
    job.blocks[0].options[0].end_W = geom::Vec3(1000.0, 0.0, 0.0);
    job.blocks[1].options[0].start_W = geom::Vec3(0.0, 0.0, 0.0);
    job.blocks[1].options[1].start_W = geom::Vec3(900.0, 0.0, 0.0);
    CHECK(sequence_of_file(job)[1].option == 1);
  }

  TEST_CASE("for every demo weldment, law: no order beside it is shorter than the one planned") {
    for (const Planned& planned : plans()) {
      INFO(planned.file);
      for (const plan::OtherOrder& other : {planned.plan.greedy_order, planned.plan.file_order}) {
        CHECK(other.longer_s >= -1e-6);
        CHECK(planned.plan.cycle_s + other.longer_s >= planned.plan.lower_bound_s - 1e-6);
        CHECK(other.visits > 0);
      }
    }
  }

  TEST_CASE("given the hub, law: the order of its file takes minutes longer") {
    CHECK(hub().plan.file_order.longer_s > 60.0);
  }

  TEST_CASE("given two seams of one order, law: the file's order is the one planned") {
    const Plan plan =
        quick_plan(io::read_inputs(repository() / "tests" / "good" / "tee_headstock.xml"));
    int visits = 0;
    for (const plan::PlannedStance& stance : plan.stances) visits += stance.visits;
    CHECK(plan.file_order.longer_s == doctest::Approx(0.0).scale(1.0));
    CHECK(plan.file_order.visits == visits);
    CHECK(plan.greedy_order.visits == visits);
  }

  TEST_CASE("given a weldment without a cell, law: there are no other orders") {
    planner::Inputs inputs = hub().inputs;
    inputs.cell.reset();
    const Plan plan = quick_plan(inputs);
    CHECK(plan.greedy_order.visits == 0);
    CHECK(plan.file_order.visits == 0);
    CHECK(plan.file_order.longer_s == 0.0);
  }
}

}  // namespace seamturn::tests
