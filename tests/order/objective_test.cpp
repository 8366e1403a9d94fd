// SPDX-License-Identifier: MIT
// What a shop counts beside seconds: entries of people and turns of the part.
#include "jobs.hpp"
#include "oracle.hpp"
#include "seamturn/order/search.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::tests {

namespace {

order::Block work(const order::Job& job, const char* name, int zone, int stance = 0) {
  order::Block block;
  block.name = name;
  block.zone = zone;
  block.work_s = 30.0;
  order::Option option;
  option.stance = stance;
  option.start_W = option.end_W = job.home_W;
  block.options = {option};
  return block;
}

/// Welds a, b in stance 0, c in stance 1; work v and w in stance 0, x in stance 1.
order::Job job_with_work() {
  order::Job job = whole_number_job();
  job.blocks = {line_block("a", 0, 100.0, 300.0, 20.0),
                line_block("b", 1, 100.0, 300.0, 20.0),
                line_block("c", 2, 100.0, 300.0, 20.0, 1)};
  job.blocks.push_back(work(job, "v", 3));
  job.blocks.push_back(work(job, "w", 4));
  job.blocks.push_back(work(job, "x", 5, 1));
  job.worth = order::Worth{7.0, 3.0};
  return job;
}

order::Sequence in_order(const std::vector<int>& blocks) {
  order::Sequence sequence;
  for (const int block : blocks) sequence.push_back({block, 0});
  return sequence;
}

}  // namespace

TEST_SUITE("order/objective") {
  TEST_CASE("given work in a row it is one entry, and a turn or a weld between makes it two") {
    const order::Job job = job_with_work();
    struct Row {
      std::vector<int> blocks;
      int entries;
      int turns;
    };
    // closed-form, counted by hand: 0 1 welds and 3 4 work in stance 0, 2 weld and 5 work in 1
    for (const Row& row : {Row{{0, 1, 3, 4, 5, 2}, 2, 1},
                           Row{{3, 4, 0, 1, 2, 5}, 2, 1},
                           Row{{3, 0, 4, 1, 2, 5}, 3, 1},
                           Row{{5, 3, 4, 0, 1, 2}, 2, 3},
                           Row{{0, 2, 1, 5, 3, 4}, 2, 4}}) {
      const order::Sequence sequence = in_order(row.blocks);
      const order::Tally counted = order::tally(job, sequence);
      CHECK(counted.entries == row.entries);
      CHECK(counted.turns == row.turns);
      CHECK(order::objective_s(job, sequence) ==
            doctest::Approx(order::cycle_time_s(job, sequence) + 7.0 * row.entries +
                            3.0 * row.turns));
    }
  }

  TEST_CASE("gouging and heating count as entries, cleaning and waits do not") {
    order::Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 0.0, 100.0, 20.0), line_block("b", 0, 0.0, 100.0, 20.0)};
    job.clean_every_s = 30.0;
    job.clean_s = 5.0;
    job.blocks[1].passes[0].gap_s = 200.0;
    const order::Sequence sequence = in_order({0, 1});
    CHECK(order::tally(job, sequence).entries == 0);
    job.blocks[1].gouge_s = 40.0;
    CHECK(order::tally(job, sequence).entries == 1);
    job.blocks[0].heat_s = 40.0;
    CHECK(order::tally(job, sequence).entries == 2);
  }

  TEST_CASE("the way to where the part is left counts as a turn, one of no time does not") {
    order::Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 0.0, 100.0, 20.0, 1)};
    CHECK(order::tally(job, in_order({0})).turns == 1);
    job.end_stance = 0;
    CHECK(order::tally(job, in_order({0})).turns == 2);
    job.turn_s[0][1] = 0.0;
    CHECK(order::tally(job, in_order({0})).turns == 1);
  }

  TEST_CASE("for random jobs, law: what things are worth is on no clock and in no bound") {
    base::Random random(11);
    for (int i = 0; i < 60; ++i) {
      order::Job job = random_job(JobMix{}, random);
      add_operations(job, random);
      const order::Sequence sequence = order::greedy_sequence(job);
      const double plain_s = order::objective_s(job, sequence);
      CHECK(plain_s == doctest::Approx(order::cycle_time_s(job, sequence)));
      order::Job priced = job;
      priced.worth = order::Worth{100.0, 10.0};
      const order::Tally counted = order::tally(priced, sequence);
      CHECK(order::cycle_time_s(priced, sequence) == order::cycle_time_s(job, sequence));
      CHECK(order::lower_bound_s(priced) == order::lower_bound_s(job));
      CHECK(order::objective_s(priced, sequence) ==
            doctest::Approx(plain_s + 100.0 * counted.entries + 10.0 * counted.turns));
    }
  }
}

}  // namespace seamturn::tests
