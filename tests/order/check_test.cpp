// SPDX-License-Identifier: MIT
// Jobs the order refuses. Origin of what is expected: law, written beside each case: what makes a
// job impossible by its own meaning. The codes are our own, listed in docs/findings.md.
#include <limits>

#include "jobs.hpp"
#include "oracle.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::tests {

using order::check_job;
using order::Job;

namespace {

Job two_blocks() {
  Job job = whole_number_job();
  job.blocks = {line_block("root", 0, 0.0, 0.0, 10.0), line_block("cap", 0, 0.0, 0.0, 10.0)};
  return job;
}

std::string code_of(const Job& job) {
  const auto checked = check_job(job);
  return checked.has_value() ? "accepted" : checked.error().code;
}

bool mentions(const Job& job, const std::string& words) {
  const auto checked = check_job(job);
  return !checked.has_value() && checked.error().text.find(words) != std::string::npos;
}

}  // namespace

TEST_SUITE("order/check") {
  TEST_CASE("given a sound job or an empty one, it is accepted") {
    // law: two blocks in one stance, none waiting, can be welded one after the other; so can none.
    CHECK(code_of(two_blocks()) == "accepted");
    CHECK(code_of(Job{}) == "accepted");
  }

  TEST_CASE("refuses blocks that wait for one another because none can be first") {
    // law: a partial order has no cycle; an element waits for none of its own followers.
    Job job = two_blocks();
    job.blocks.push_back(line_block("apart", 1, 0.0, 0.0, 10.0));
    job.blocks[0].after = {1};
    job.blocks[1].after = {0};
    job.blocks[2].after = {1};
    CHECK(code_of(job) == "order.cycle");
    CHECK(mentions(job, "'root'"));
    CHECK(mentions(job, "'cap'"));
    CHECK_FALSE(mentions(job, "'apart'"));  // waits for the cycle, is not part of it
    job.blocks[0].after = {};
    CHECK(code_of(job) == "accepted");
    job.blocks[0].after = {0};
    CHECK(code_of(job) == "order.cycle");
  }

  TEST_CASE("given a reason for a link of the cycle, the message names it beside the link") {
    // law: a is told to wait for b and b for a; both rules stand in the text, in that order.
    Job job = two_blocks();
    job.blocks[0].after = {1};
    job.blocks[1].after = {0};
    job.reasons = {{0, 1, "joint R after joint C"}, {1, 0, "order by hand"}, {1, 1, "no link"}};
    CHECK(mentions(job,
                   "block 'root' after block 'cap' (joint R after joint C) after block 'root' "
                   "(order by hand)"));
    CHECK_FALSE(mentions(job, "no link"));
    job.reasons.pop_back();
    job.reasons.pop_back();
    CHECK(mentions(job, "(joint R after joint C) after block 'root'"));
    CHECK_FALSE(mentions(job, "order by hand"));
  }

  TEST_CASE("refuses a block without option or pass because it cannot be welded") {
    // law: a tour visits one option of every block; a block without options has no tour.
    Job job = two_blocks();
    job.blocks[1].options.clear();
    CHECK(code_of(job) == "order.block.no_option");
    CHECK(mentions(job, "'cap'"));
    job = two_blocks();
    job.blocks[0].passes.clear();
    CHECK(code_of(job) == "order.block.no_pass");
  }

  TEST_CASE("refuses indices that point nowhere because a guess would weld something else") {
    // law: two stances are numbered 0 and 1, two blocks 0 and 1; a table of two has two columns.
    Job job = two_blocks();
    job.blocks[0].options[0].stance = 2;
    CHECK(code_of(job) == "order.index");
    job = two_blocks();
    job.blocks[0].options[0].stance = -1;
    CHECK(code_of(job) == "order.index");
    job = two_blocks();
    job.blocks[1].after = {2};
    CHECK(code_of(job) == "order.index");
    job = two_blocks();
    job.start_stance = 2;
    CHECK(code_of(job) == "order.index");
    job = two_blocks();
    job.turn_s[1].pop_back();
    CHECK(code_of(job) == "order.index");
  }

  TEST_CASE("refuses times that are negative or not finite because no clock can run them") {
    // law: durations are finite and not below 0, and a way at speed 0 never ends.
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    Job job = two_blocks();
    job.blocks[0].passes[0].arc_s = -1.0;
    CHECK(code_of(job) == "order.value");
    job = two_blocks();
    job.blocks[0].passes[0].gap_s = nan;
    CHECK(code_of(job) == "order.value");
    job = two_blocks();
    job.blocks[0].touch_s = inf;
    CHECK(code_of(job) == "order.value");
    job = two_blocks();
    job.blocks[0].gouge_s = -1.0;
    CHECK(code_of(job) == "order.value");
    job = two_blocks();
    job.blocks[0].options[0].end_W.x() = nan;
    CHECK(code_of(job) == "order.value");
    job = two_blocks();
    job.turn_s[0][1] = inf;
    CHECK(code_of(job) == "order.value");
    job = two_blocks();
    job.air_speed_mm_s = 0.0;
    CHECK(code_of(job) == "order.value");
    job = two_blocks();
    job.clean_every_s = -1.0;
    CHECK(code_of(job) == "order.value");
    job = two_blocks();
    job.worth.entry_s = -1.0;
    CHECK(code_of(job) == "order.value");
    job = two_blocks();
    job.worth.stance_s = nan;
    CHECK(code_of(job) == "order.value");
  }

  TEST_CASE("given several faults, all of them are told at once") {
    // law: faults of different blocks do not hide each other.
    Job job = two_blocks();
    job.blocks[0].options.clear();
    job.blocks[1].passes.clear();
    job.start_stance = 9;
    CHECK(mentions(job, "'root' has no option"));
    CHECK(mentions(job, "'cap' has no pass"));
    CHECK(mentions(job, "start stance 9"));
  }
}

}  // namespace seamturn::tests
