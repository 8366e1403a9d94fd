// SPDX-License-Identifier: MIT
// Heating on the clock: sequences worked by hand, and laws over random jobs.
#include <array>
#include <limits>

#include "jobs.hpp"
#include "oracle.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::tests {

using order::Job;
using order::Sequence;
using timeline::Clock;
using timeline::Event;
using timeline::SecondKind;

namespace {

struct Worked {
  double arc_s = 0.0, air_s = 0.0, wait_s = 0.0, heat_s = 0.0;
};

void check_worked(const Clock& clock, const Worked& expected) {
  const auto check = [&clock](SecondKind kind, double value) {
    check_expected(std::string(timeline::second_kind_name(kind)),
                   clock.total_s(kind),
                   {value, 1e-9, Origin::closed_form, "worked by hand"});
  };
  check(SecondKind::arc, expected.arc_s);
  check(SecondKind::air, expected.air_s);
  check(SecondKind::wait, expected.wait_s);
  check(SecondKind::heat, expected.heat_s);
  check_expected("cycle",
                 clock.now_s(),
                 {expected.arc_s + expected.air_s + expected.wait_s + expected.heat_s,
                  1e-9,
                  Origin::closed_form,
                  "worked by hand"});
}

/// A root heated for 60 s and welded in 10 s, another seam, a cap; all at one point, so that no
/// air move is made: the root's arc starts at 60 s and ends at 70 s.
Job root_other_cap(double other_s) {
  Job job = whole_number_job();
  job.blocks = {line_block("root", 0, 0.0, 0.0, 10.0),
                line_block("other seam", 1, 0.0, 0.0, other_s),
                line_block("cap", 0, 0.0, 0.0, 10.0)};
  for (const std::size_t b : {0U, 2U}) {
    job.blocks[b].heat_s = 60.0;
    job.blocks[b].heat_keep_s = 0.0;
    job.blocks[b].passes[0].keep_s = 0.0;
  }
  return job;
}

/// Seconds of heating when the blocks are welded as they are listed.
double heat_s(const Job& job) {
  Sequence sequence;
  for (std::size_t b = 0; b < job.blocks.size(); ++b) sequence.push_back({static_cast<int>(b), 0});
  return order::simulate(job, sequence).total_s(SecondKind::heat);
}

}  // namespace

TEST_SUITE("order/heating") {
  TEST_CASE("given heaters that stay on, all is heated once, before the first that needs it") {
    Job job = whole_number_job();
    job.heat_once_s = 300.0;
    job.blocks = {line_block("cold", 0, 100.0, 300.0, 20.0),
                  line_block("warm", 1, 200.0, 100.0, 20.0),
                  line_block("warm too", 2, 100.0, 100.0, 30.0)};
    job.blocks[1].heat_s = job.blocks[2].heat_s = 200.0;
    job.blocks[1].passes[0].keep_s = 0.0;  // they stay on: nothing cools
    // 2 out, 4 home, heat, 3 out, straight on, 2 home.
    const Clock clock = order::simulate(job, {{0, 0}, {1, 0}, {2, 0}});
    check_worked(clock, {70.0, 11.0, 0.0, 300.0});
    const Event& heat = clock.events()[3];
    CHECK(heat.kind == SecondKind::heat);
    CHECK(heat.start_s == 26.0);
    CHECK(heat.item == 1);
    // The cold one last: the robot is at home when they are switched on. 3 out, 4 home.
    check_worked(order::simulate(job, {{1, 0}, {2, 0}, {0, 0}}), {70.0, 7.0, 0.0, 300.0});
    job.blocks[1].heat_s = job.blocks[2].heat_s = 0.0;
    check_worked(order::simulate(job, {{0, 0}, {1, 0}, {2, 0}}), {70.0, 6.0, 0.0, 0.0});
  }

  TEST_CASE("given a torch, each place is heated before its first pass, the robot at home") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 100.0, 300.0, 20.0), line_block("b", 1, 200.0, 100.0, 20.0)};
    job.blocks[0].heat_s = 90.0;
    job.blocks[1].heat_s = 70.0;
    // Heat, 2 out, 4 home, heat, 3 out, 2 home.
    const Clock clock = order::simulate(job, {{0, 0}, {1, 0}});
    check_worked(clock, {40.0, 11.0, 0.0, 160.0});
    CHECK(clock.events()[0].kind == SecondKind::heat);
    CHECK(clock.events()[4].kind == SecondKind::heat);
    CHECK(clock.events()[4].item == 1);
    // One zone: it is warm already, and the robot goes straight on, 2 + 2 + 2.
    job.blocks[1].zone = 0;
    check_worked(order::simulate(job, {{0, 0}, {1, 0}}), {40.0, 6.0, 0.0, 90.0});
  }

  TEST_CASE("given 100 s of warmth after heating, an arc at 100 s needs none, one later does") {
    // Heated until 60 s: warm until 160 s, and the cap starts at 70 s + the other seam.
    Job job = root_other_cap(90.0);
    job.blocks[0].heat_keep_s = 100.0;
    CHECK(heat_s(job) == 60.0);
    job.blocks[1].passes[0].arc_s = 90.5;
    CHECK(heat_s(job) == 120.0);
    job.blocks[0].heat_keep_s = order::never_s;
    CHECK(heat_s(job) == 60.0);
  }

  TEST_CASE("given 50 s of warmth after a pass, an arc 50 s after it needs none, one later does") {
    // Root's arc from 60 s: warm until 110 s.
    Job job = root_other_cap(40.0);
    job.blocks[0].passes[0].keep_s = 50.0;
    CHECK(heat_s(job) == 60.0);
    job.blocks[1].passes[0].arc_s = 40.5;
    CHECK(heat_s(job) == 120.0);
    // The cap's own warmth is that after the cap.
    job.blocks[2].passes[0].keep_s = 1000.0;
    CHECK(heat_s(job) == 120.0);
  }

  TEST_CASE("given a slower cap, its last place counts: there the root came 10 s earlier") {
    // Cap of 20 s over a root of 10 s: at the end 20 s after its start, 10 s after the root's.
    Job job = root_other_cap(30.0);
    job.blocks[0].passes[0].keep_s = 50.0;
    job.blocks[2].passes[0].arc_s = 20.0;
    CHECK(heat_s(job) == 60.0);
    job.blocks[1].passes[0].arc_s = 30.5;
    CHECK(heat_s(job) == 120.0);
  }

  TEST_CASE("given another course, the cap's last place is where the root began") {
    // Cap of 20 s the other way: it ends at the root's start, welded at 60 s: start by 90 s.
    Job job = root_other_cap(20.0);
    job.blocks[0].passes[0].keep_s = 50.0;
    job.blocks[2].passes[0].arc_s = 20.0;
    job.blocks[2].options[0].course = 1;
    CHECK(heat_s(job) == 60.0);
    job.blocks[1].passes[0].arc_s = 20.5;
    CHECK(heat_s(job) == 120.0);
  }

  TEST_CASE("given overhead and touching before the arc, they count towards the arc's start") {
    // The cap's arc would start at 70 + 20 + 4 + 5 = 99 s.
    Job job = root_other_cap(20.0);
    job.blocks[2].passes[0].overhead_s = 4.0;
    job.blocks[2].touch_s = 5.0;
    job.blocks[0].heat_keep_s = 39.0;
    CHECK(heat_s(job) == 60.0);
    job.blocks[0].heat_keep_s = 38.5;
    CHECK(heat_s(job) == 120.0);
    // Out to 100 mm takes 2 s more, and the retract of 25 mm 1 s; the root's own two take 2 s.
    job.blocks[2].options[0].start_W = geom::Vec3(100.0, 0.0, 0.0);
    job.retract_mm = 25.0;
    // Heat to 60, root's arc 61 to 71, other seam 73 to 93, then 1 + 2 + 1 + 5 + 4: 106 s.
    job.blocks[0].heat_keep_s = 46.0;
    CHECK(heat_s(job) == 60.0);
    job.blocks[0].heat_keep_s = 45.5;
    CHECK(heat_s(job) == 120.0);
  }

  TEST_CASE("given models that contradict each other, waiting wins: no heat while it is too hot") {
    // Too hot for 100 s after the root's start at 60 s, and by the other model cold at once.
    Job job = root_other_cap(0.0);
    job.blocks[2].passes[0].gap_s = 100.0;
    check_worked(order::simulate(job, {{0, 0}, {1, 0}, {2, 0}}), {20.0, 0.0, 90.0, 60.0});
    job.blocks[1].passes[0].arc_s = 90.0;  // the cap's arc could start at 160 s: just cool enough
    check_worked(order::simulate(job, {{0, 0}, {1, 0}, {2, 0}}), {110.0, 0.0, 0.0, 60.0});
    job.blocks[1].passes[0].arc_s = 90.5;
    check_worked(order::simulate(job, {{0, 0}, {1, 0}, {2, 0}}), {110.5, 0.0, 0.0, 120.0});
  }

  TEST_CASE("given passes of one block that grow cold between, the robot goes home to heat") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 100.0, 300.0, 20.0)};
    job.blocks[0].passes.assign(2, job.blocks[0].passes[0]);
    job.blocks[0].heat_s = 60.0;
    job.blocks[0].heat_keep_s = 10.0;
    // Warm at the first arc, 62 s; the second would come 20 + 3 s later.
    job.blocks[0].passes[0].keep_s = 23.0;
    check_worked(order::simulate(job, {{0, 0}}), {40.0, 9.0, 0.0, 60.0});
    job.blocks[0].passes[0].keep_s = 22.5;
    // 2 out, 4 home, heat, 2 out, 4 home.
    check_worked(order::simulate(job, {{0, 0}}), {40.0, 12.0, 0.0, 120.0});
  }

  TEST_CASE("given a first layer that needs no heat, the next one is heated all the same") {
    Job job = root_other_cap(0.0);
    job.blocks[0].heat_s = 0.0;
    job.blocks[0].passes[0].keep_s = order::never_s;
    CHECK(heat_s(job) == 60.0);
  }

  TEST_CASE("refuses heating times that are none, and permits warmth for ever") {
    // law: a duration is neither negative nor no number; for ever is a limit that is never met.
    const Job good = root_other_cap(10.0);
    const auto refused = [&good](auto spoil) {
      Job job = good;
      spoil(job);
      const auto checked = order::check_job(job);
      return !checked.has_value() && checked.error().code == "order.value";
    };
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_FALSE(refused([](Job& job) { job.blocks[0].heat_keep_s = order::never_s; }));
    CHECK_FALSE(refused([](Job& job) { job.blocks[0].passes[0].keep_s = order::never_s; }));
    CHECK(refused([](Job& job) { job.blocks[0].heat_s = -1.0; }));
    CHECK(refused([](Job& job) { job.blocks[0].heat_s = order::never_s; }));
    CHECK(refused([](Job& job) { job.blocks[0].heat_keep_s = -1.0; }));
    CHECK(refused([](Job& job) { job.blocks[0].heat_keep_s = nan; }));
    CHECK(refused([](Job& job) { job.blocks[0].passes[0].keep_s = -1.0; }));
    CHECK(refused([](Job& job) { job.blocks[0].passes[0].keep_s = nan; }));
    CHECK(refused([](Job& job) { job.heat_once_s = -1.0; }));
    CHECK(refused([](Job& job) { job.heat_once_s = order::never_s; }));
  }
}

}  // namespace seamturn::tests
