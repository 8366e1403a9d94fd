// SPDX-License-Identifier: MIT
// Operations of people between the welds, and a part that must be left as it is hung.
#include "all_orders.hpp"
#include "jobs.hpp"
#include "oracle.hpp"
#include "seamturn/order/search.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::tests {

using order::Job;
using timeline::SecondKind;

namespace {

order::Block operation(const Job& job, const std::string& name, int zone, double work_s) {
  order::Block block;
  block.name = name;
  block.zone = zone;
  block.work_s = work_s;
  order::Option option;
  option.start_W = job.home_W;
  option.end_W = job.home_W;
  block.options = {option};
  return block;
}

Job job_with_operations(int n, base::Random& random) {
  JobMix mix;
  mix.blocks = 5 + n % 2;
  mix.zones = 3;
  mix.options_max = 2;
  Job job = random_job(mix, random);
  if (n % 3 == 0) add_heating(job, Heaters::stay_on, random);
  add_operations(job, random);
  return job;
}

}  // namespace

TEST_SUITE("order/operations") {
  TEST_CASE("given an operation between two welds, the robot goes home for it and people work") {
    Job job = whole_number_job();
    job.blocks = {line_block("root", 0, 100.0, 200.0, 20.0),
                  operation(job, "visual test", 1, 60.0),
                  line_block("cap", 0, 100.0, 100.0, 20.0)};
    job.blocks[1].after = {0};
    job.blocks[2].after = {1};
    const auto clock = order::simulate(job, {{0, 0}, {1, 0}, {2, 0}});
    // Out 2, arc 20, home 3, test 60, out 2, arc 20, home 2.
    check_expected("cycle", clock.now_s(), {109.0, 1e-9, Origin::closed_form, "worked by hand"});
    check_expected("work",
                   clock.total_s(SecondKind::work),
                   {60.0, 1e-9, Origin::closed_form, "worked by hand"});
    check_expected(
        "air", clock.total_s(SecondKind::air), {9.0, 1e-9, Origin::closed_form, "worked by hand"});
    const order::Found found = order::find_order(job, {});
    CHECK(found.proved_best);
    check_expected("found", found.cycle_s, {109.0, 1e-9, Origin::closed_form, "one order only"});
  }

  TEST_CASE("given an operation in any stance, the search does it without a turn of its own") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 0.0, 0.0, 20.0, 1), operation(job, "hold", 1, 5.0)};
    job.blocks[1].options.push_back(job.blocks[1].options.front());
    job.blocks[1].options[1].stance = 1;
    // Turn 10, arc 20, and 5 before or after.
    check_expected("cycle",
                   order::find_order(job, {}).cycle_s,
                   {35.0, 1e-8, Origin::closed_form, "worked by hand"});
    job.blocks[1].options.resize(1);  // in stance 0 only: before the turn
    const order::Found found = order::find_order(job, {});
    check_expected("cycle", found.cycle_s, {35.0, 1e-8, Origin::closed_form, "worked by hand"});
    CHECK(found.sequence.front().block == 1);
    job.blocks[1].after = {0};  // after it: one more turn
    check_expected("cycle",
                   order::find_order(job, {}).cycle_s,
                   {47.0, 1e-8, Origin::closed_form, "worked by hand"});
  }

  TEST_CASE("given a stance the part must be left in, the last turn is on the clock") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 100.0, 100.0, 20.0, 1)};
    job.end_stance = 0;
    const order::Found found = order::find_order(job, {});
    // Turn 10, out 2, arc 20, home 2, back 12.
    check_expected("cycle", found.cycle_s, {46.0, 1e-8, Origin::closed_form, "worked by hand"});
    const auto clock = order::simulate(job, found.sequence);
    CHECK(clock.events().back().kind == SecondKind::turn);
    CHECK(clock.events().back().stance == 0);
  }

  TEST_CASE("for 300 small jobs, law: the search is exact and the bound below all orders") {
    const std::uint64_t seed = base::named_seed(1, "order operations");
    INFO("seed " << seed);
    base::Random random(seed);
    int with_operations = 0;
    for (int n = 0; n < 300; ++n) {
      const Job job = job_with_operations(n, random);
      REQUIRE(order::check_job(job).has_value());
      const double best_s = best_of_all_s(job);
      INFO("job " << n << " best " << best_s);
      CHECK(order::lower_bound_s(job) <= best_s);
      order::SearchParams exact;
      exact.effort = 0;
      const order::Found found = order::find_order(job, exact);
      CHECK(found.proved_best);
      CHECK(is_close(found.cycle_s, best_s));
      const auto clock = order::simulate(job, found.sequence);
      with_operations += clock.total_s(SecondKind::work) > 0.0 ? 1 : 0;
      order::SearchParams search;
      search.effort = 20000;
      search.exact_states = 0;
      const order::Found searched = order::find_order(job, search);
      CHECK(searched.cycle_s >= best_s - 1e-9 * best_s);
      CHECK(order::cycle_time_s(job, searched.sequence) == searched.cycle_s);
    }
    CHECK(with_operations > 200);
  }

  TEST_CASE("refuses passes in an operation, a robot at work beside it, a last stance unknown") {
    Job job = whole_number_job();
    job.blocks = {operation(job, "hold", 1, 5.0)};
    job.blocks[0].passes.resize(1);
    CHECK(order::check_job(job).error().code == "order.block.no_pass");
    job.blocks[0].passes.clear();
    job.blocks[0].options[0].start_W = geom::Vec3(1.0, 0.0, 0.0);
    CHECK(order::check_job(job).error().code == "order.value");
    job.blocks[0].options[0].start_W = job.home_W;
    CHECK(order::check_job(job).has_value());
    job.end_stance = 2;
    CHECK(order::check_job(job).error().code == "order.index");
  }
}

}  // namespace seamturn::tests
