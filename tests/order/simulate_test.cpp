// SPDX-License-Identifier: MIT
#include "seamturn/order/simulate.hpp"

#include "order/detail_air.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/turn/move_time.hpp"

#include <array>

#include "jobs.hpp"
#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using order::Job;
using order::Sequence;
using timeline::Clock;
using timeline::SecondKind;

namespace {

/// Expected seconds by kind, in the order of SecondKind.
void check_kinds(const Clock& clock, const std::array<double, timeline::second_kinds>& expected_s) {
  double sum_s = 0.0;
  for (std::size_t kind = 0; kind < timeline::second_kinds; ++kind) {
    const auto name = timeline::second_kind_name(static_cast<SecondKind>(kind));
    check_expected(std::string(name),
                   clock.total_s(static_cast<SecondKind>(kind)),
                   {expected_s[kind], 1e-9, Origin::closed_form, "worked by hand"});
    sum_s += expected_s[kind];
  }
  check_expected("cycle", clock.now_s(), {sum_s, 1e-9, Origin::closed_form, "worked by hand"});
}

/// Start of the n-th arc.
double arc_start_s(const Clock& clock, int n) {
  for (const timeline::Event& event : clock.events()) {
    if (event.kind == SecondKind::arc && n-- == 0) {
      return event.start_s;
    }
  }
  return -1.0;
}

}  // namespace

TEST_SUITE("order/simulate") {
  TEST_CASE("given no block, the cycle is 0 s") {
    CHECK(order::simulate(Job{}, {}).now_s() == 0.0);
    CHECK(order::cycle_time_s(Job{}, {}) == 0.0);
  }

  TEST_CASE("given one block, air moves go from home to its start and from its end home") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 100.0, 300.0, 20.0)};
    const Clock clock = order::simulate(job, {{0, 0}});
    // arc, turn, air, touch, clean, wait, other: 2 s to the start, 4 s home.
    check_kinds(clock, {20.0, 0.0, 6.0, 0.0, 0.0, 0.0, 0.0});
    CHECK(arc_start_s(clock, 0) == 2.0);
    const timeline::Event& arc = clock.events()[1];
    CHECK(arc.item == 0);
    CHECK(arc.pass == 0);
    CHECK(arc.stance == 0);
  }

  TEST_CASE("given a retract of 25 mm, every arc start and every arc end adds 1 s") {
    Job job = whole_number_job();
    job.retract_mm = 25.0;
    job.blocks = {line_block("a", 0, 100.0, 300.0, 20.0)};
    job.blocks[0].passes.push_back({10.0, 0.0, 0.0, 0.0});
    // Air: 2 + 1 to the start, 1 + 3 back to the start + 1, 1 + 4 home.
    check_kinds(order::simulate(job, {{0, 0}}), {30.0, 0.0, 13.0, 0.0, 0.0, 0.0, 0.0});
  }

  TEST_CASE("given two stances, the robot goes home before the turn and out again after it") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 100.0, 300.0, 20.0, 0),
                  line_block("b", 1, 200.0, 100.0, 20.0, 1)};
    // There: 2 out, 4 home, turn 10, 3 out, 2 home.
    const Clock there = order::simulate(job, {{0, 0}, {1, 0}});
    check_kinds(there, {40.0, 10.0, 11.0, 0.0, 0.0, 0.0, 0.0});
    CHECK(arc_start_s(there, 1) == 39.0);
    // Back: the first turn finds the robot at home.
    const Clock back = order::simulate(job, {{1, 0}, {0, 0}});
    check_kinds(back, {40.0, 22.0, 11.0, 0.0, 0.0, 0.0, 0.0});
    CHECK(back.events()[0].kind == SecondKind::turn);
    CHECK(back.events()[0].stance == 1);
  }

  TEST_CASE("given one stance, the robot goes straight from end to start") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 100.0, 300.0, 20.0), line_block("b", 1, 200.0, 100.0, 20.0)};
    // 2 out, 100 mm in 2 s, 2 home.
    check_kinds(order::simulate(job, {{0, 0}, {1, 0}}), {40.0, 0.0, 6.0, 0.0, 0.0, 0.0, 0.0});
  }

  TEST_CASE(
      "given touch sensing, a zone is touched once in a stance visit and again after a turn") {
    Job job = whole_number_job();
    job.blocks = {line_block("a1", 0, 0.0, 0.0, 10.0, 0),
                  line_block("a2", 0, 0.0, 0.0, 10.0, 0),
                  line_block("a3", 0, 0.0, 0.0, 10.0, 0),
                  line_block("b", 1, 0.0, 0.0, 10.0, 1)};
    for (order::Block& block : job.blocks) block.touch_s = 5.0;
    const auto touch_s = [&job](const Sequence& sequence) {
      return order::simulate(job, sequence).total_s(SecondKind::touch);
    };
    CHECK(touch_s({{0, 0}, {1, 0}, {2, 0}, {3, 0}}) == 10.0);
    CHECK(touch_s({{0, 0}, {3, 0}, {1, 0}, {2, 0}}) == 15.0);
    job.blocks[0].touch_s = 0.0;  // does not touch, so the next of the zone does
    CHECK(touch_s({{0, 0}, {1, 0}, {2, 0}, {3, 0}}) == 10.0);
  }

  TEST_CASE("given a root to gouge, it is gouged in the block's stance with the robot at home") {
    Job job = whole_number_job();
    job.blocks = {line_block("side 1", 0, 100.0, 300.0, 20.0, 0),
                  line_block("side 2", 0, 200.0, 100.0, 20.0, 1)};
    job.blocks[1].gouge_s = 90.0;
    // 2 out, 4 home, turn 10, gouge 90, 3 out, 2 home: as without gouging, and 90 s more.
    const Clock clock = order::simulate(job, {{0, 0}, {1, 0}});
    check_kinds(clock, {40.0, 10.0, 11.0, 0.0, 0.0, 0.0, 0.0, 90.0});
    CHECK(arc_start_s(clock, 1) == 129.0);
    const timeline::Event& gouge = clock.events()[4];
    CHECK(gouge.kind == SecondKind::gouge);
    CHECK(gouge.stance == 1);
    CHECK(gouge.item == 1);
    // In the stance the robot welds in, it goes home first: 2 out, 4 home, 90, 3 out, 2 home.
    job.blocks[1].options[0].stance = 0;
    check_kinds(order::simulate(job, {{0, 0}, {1, 0}}),
                {40.0, 0.0, 11.0, 0.0, 0.0, 0.0, 0.0, 90.0});
  }

  TEST_CASE(
      "given cleaning every 50 s, the nozzle is cleaned at home before the pass that would "
      "exceed it") {
    Job job = whole_number_job();
    job.clean_every_s = 50.0;
    job.clean_s = 8.0;
    job.blocks = {line_block("a", 0, 100.0, 100.0, 30.0), line_block("b", 1, 100.0, 100.0, 20.0)};
    // 30 + 20 just fits.
    check_kinds(order::simulate(job, {{0, 0}, {1, 0}}), {50.0, 0.0, 4.0, 0.0, 0.0, 0.0, 0.0});
    job.blocks[1].passes[0].arc_s = 20.5;
    // Just does not: 2 out, 2 home, 8 clean, 2 out, 2 home.
    check_kinds(order::simulate(job, {{0, 0}, {1, 0}}), {50.5, 0.0, 8.0, 0.0, 8.0, 0.0, 0.0});
  }

  TEST_CASE(
      "given cleaning every 50 s, it also comes between the passes of a block, but one long "
      "pass is not interrupted") {
    Job job = whole_number_job();
    job.clean_every_s = 50.0;
    job.clean_s = 8.0;
    job.blocks = {line_block("a", 0, 100.0, 100.0, 80.0)};
    CHECK(order::simulate(job, {{0, 0}}).total_s(SecondKind::clean) == 0.0);
    job.blocks[0].passes.push_back({10.0, 0.0, 0.0, 0.0});
    check_kinds(order::simulate(job, {{0, 0}}), {90.0, 0.0, 8.0, 0.0, 8.0, 0.0, 0.0});
  }

  TEST_CASE("given a cleaning, the interval of 50 s begins anew") {
    Job job = whole_number_job();
    job.clean_every_s = 50.0;
    job.clean_s = 8.0;
    job.blocks = {line_block("a", 0, 0.0, 0.0, 30.0),
                  line_block("b", 1, 0.0, 0.0, 30.0),
                  line_block("c", 2, 0.0, 0.0, 15.0)};
    const Sequence sequence = {{0, 0}, {1, 0}, {2, 0}};
    // Cleaned before b; 30 + 15 then fits.
    CHECK(order::simulate(job, sequence).total_s(SecondKind::clean) == 8.0);
  }

  TEST_CASE("given overhead and unwinding, they count as other and as turn") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 0.0, 0.0, 10.0)};
    job.blocks[0].passes = {{10.0, 0.0, 1.5, 6.0}, {10.0, 0.0, 1.5, 6.0}};
    check_kinds(order::simulate(job, {{0, 0}}), {20.0, 12.0, 0.0, 0.0, 0.0, 0.0, 3.0});
  }

  TEST_CASE("given a gap of 100 s, the next pass keeps it at the slower end of the run") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 0.0, 0.0, 30.0), line_block("b", 0, 0.0, 0.0, 20.0)};
    job.blocks[1].passes[0].gap_s = 100.0;
    // Faster second pass: its end, 20 s after its start, must be 100 s after the first's end at 30
    // s.
    const Clock faster = order::simulate(job, {{0, 0}, {1, 0}});
    CHECK(arc_start_s(faster, 1) == 110.0);
    check_kinds(faster, {50.0, 0.0, 0.0, 0.0, 0.0, 80.0, 0.0});
    // Slower second pass: its start must be 100 s after the first's start at 0 s.
    job.blocks[1].passes[0].arc_s = 45.0;
    CHECK(arc_start_s(order::simulate(job, {{0, 0}, {1, 0}}), 1) == 100.0);
    // The other way round: it starts where the first ended at 30 s.
    job.blocks[1].options[0].course = 1;
    CHECK(arc_start_s(order::simulate(job, {{0, 0}, {1, 0}}), 1) == 130.0);
  }

  TEST_CASE("given another seam to weld meanwhile, the wait shrinks by it") {
    Job job = whole_number_job();
    job.blocks = {line_block("root", 0, 0.0, 0.0, 30.0),
                  line_block("cap", 0, 0.0, 0.0, 30.0),
                  line_block("other seam", 1, 0.0, 0.0, 50.0)};
    job.blocks[1].passes[0].gap_s = 100.0;
    CHECK(order::simulate(job, {{0, 0}, {1, 0}, {2, 0}}).total_s(SecondKind::wait) == 70.0);
    CHECK(order::simulate(job, {{0, 0}, {2, 0}, {1, 0}}).total_s(SecondKind::wait) == 20.0);
  }

  TEST_CASE("given gaps inside a block, every pass waits for the one before, the first for none") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 0.0, 0.0, 10.0)};
    job.blocks[0].passes.assign(3, {10.0, 40.0, 0.0, 0.0});
    check_kinds(order::simulate(job, {{0, 0}}), {30.0, 0.0, 0.0, 0.0, 0.0, 60.0, 0.0});
  }

  TEST_CASE("for any sequence, law: kinds add up, and the quick total is the clock's") {
    const std::uint64_t seed = base::named_seed(1, "order kinds add up");
    INFO("seed " << seed);
    base::Random random(seed);
    for (int round = 0; round < 200; ++round) {
      const Job job = random_job({12, 4, 4, 3, 3}, random);
      REQUIRE(order::check_job(job).has_value());
      Sequence sequence;
      for (int b = 0; b < 12; ++b) {  // listed so that `after` is kept
        const auto& options = job.blocks[static_cast<std::size_t>(b)].options;
        sequence.push_back({b, static_cast<int>(random.below(options.size()))});
      }
      REQUIRE(order::is_valid(job, sequence));
      const Clock clock = order::simulate(job, sequence);
      CHECK(order::cycle_time_s(job, sequence) == clock.now_s());
      double sum_s = 0.0;
      for (std::size_t kind = 0; kind < timeline::second_kinds; ++kind) {
        sum_s += clock.total_s(static_cast<SecondKind>(kind));
      }
      CHECK(std::abs(sum_s - clock.now_s()) <= 1e-9 * clock.now_s());
    }
  }

  TEST_CASE("for any sequence, law: the events keep every gap and clean in time") {
    const std::uint64_t seed = base::named_seed(1, "order gaps kept");
    INFO("seed " << seed);
    base::Random random(seed);
    int gaps_met = 0;
    for (int round = 0; round < 100; ++round) {
      const Job job = random_job({10, 3, 3, 3, 3}, random);
      Sequence sequence;
      for (int b = 0; b < 10; ++b) {
        const auto& options = job.blocks[static_cast<std::size_t>(b)].options;
        sequence.push_back({b, static_cast<int>(random.below(options.size()))});
      }
      double arc_s = 0.0;
      int passes = 0;
      std::vector<const timeline::Event*> arcs;
      const Clock clock = order::simulate(job, sequence);
      for (const timeline::Event& event : clock.events()) {
        if (event.kind == SecondKind::clean) {
          arc_s = 0.0;
          passes = 0;
        }
        if (event.kind != SecondKind::arc) continue;
        arc_s += event.end_s - event.start_s;
        ++passes;
        if (job.clean_every_s > 0.0 && passes > 1) CHECK(arc_s <= job.clean_every_s + 1e-9);
        arcs.push_back(&event);
      }
      const auto zone = [&job](const timeline::Event* arc) {
        return job.blocks[static_cast<std::size_t>(arc->item)].zone;
      };
      const auto option_of = [&](const timeline::Event* arc) {
        const auto item = static_cast<std::size_t>(arc->item);
        return job.blocks[item].options[static_cast<std::size_t>(sequence[item].option)];
      };
      for (std::size_t i = 1; i < arcs.size(); ++i) {
        std::size_t before = i;
        while (before-- > 0 && zone(arcs[before]) != zone(arcs[i])) {
        }
        if (before >= i) continue;  // first arc of its zone
        const timeline::Event& last = *arcs[before];
        const timeline::Event& now = *arcs[i];
        const double gap_s = job.blocks[static_cast<std::size_t>(now.item)]
                                 .passes[static_cast<std::size_t>(now.pass)]
                                 .gap_s;
        // Places along the run, 0 where the zone's sense begins, 1 where it ends.
        const auto time_at = [](const timeline::Event& arc, bool reversed, double place) {
          const double part = reversed ? 1.0 - place : place;
          return arc.start_s + part * (arc.end_s - arc.start_s);
        };
        for (const double place : {0.0, 0.3, 0.5, 1.0}) {
          const double found_s = time_at(now, option_of(&now).course == 1, place) -
                                 time_at(last, option_of(&last).course == 1, place);
          CHECK(found_s >= gap_s - 1e-9);
        }
        gaps_met += gap_s > 0.0 ? 1 : 0;
      }
    }
    CHECK(gaps_met > 300);
  }

  TEST_CASE("refuses a sequence that leaves out, repeats or overtakes because it is no order") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 0.0, 0.0, 10.0), line_block("b", 1, 0.0, 0.0, 10.0)};
    job.blocks[1].after = {0};
    CHECK(order::is_valid(job, {{0, 0}, {1, 0}}));
    CHECK_FALSE(order::is_valid(job, {{1, 0}, {0, 0}}));
    CHECK_FALSE(order::is_valid(job, {{0, 0}}));
    CHECK_FALSE(order::is_valid(job, {{0, 0}, {0, 0}}));
    CHECK_FALSE(order::is_valid(job, {{0, 0}, {1, 1}}));
    CHECK_FALSE(order::is_valid(job, {{0, 0}, {2, 0}}));
    CHECK_FALSE(order::is_valid(job, {{0, -1}, {1, 0}}));
    CHECK_THROWS_AS((void)order::simulate(job, {{1, 0}, {0, 0}}), base::ContractViolation);
    CHECK_THROWS_AS((void)order::cycle_time_s(job, {{0, 0}}), base::ContractViolation);
  }

  TEST_CASE("for any distance, law: an air move takes what the turn room's trapezoid says") {
    base::Random random(base::named_seed(20261125, "order/simulate air"));
    order::Job job;
    for (int i = 0; i < 500; ++i) {
      job.air_speed_mm_s = random.between(100.0, 2000.0);
      job.air_acceleration_mm_s2 = random.between(500.0, 5000.0);
      const double distance_mm = random.between(0.0, 3000.0);
      const double expected_s = turn::move_time_s(
          {distance_mm, job.air_speed_mm_s, job.air_acceleration_mm_s2, std::nullopt});
      INFO("distance ", distance_mm);
      CHECK(order::air_s(job, distance_mm) == doctest::Approx(expected_s).epsilon(1e-12));
    }
  }
}

}  // namespace seamturn::tests
