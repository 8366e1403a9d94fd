// SPDX-License-Identifier: MIT
#include "order/detail_beam.hpp"

#include <algorithm>

#include "all_orders.hpp"
#include "jobs.hpp"
#include "oracle.hpp"
#include "order/detail_tails.hpp"
#include "seamturn/order/search.hpp"

namespace seamturn::tests {

using order::Job;
using order::Sequence;

namespace {

Job mixed_job(int n, int blocks, base::Random& random) {
  JobMix mix;
  mix.blocks = blocks;
  mix.zones = 1 + n % 4;
  mix.cleaning = n % 2 != 0;
  Job job = random_job(mix, random);
  if (n % 4 == 1) add_heating(job, Heaters::stay_on, random);
  if (n % 4 == 2) add_heating(job, Heaters::again, random);
  if (n % 5 == 3) add_operations(job, random);
  return job;
}

Sequence beam(const Job& job, std::size_t width) {
  return order::beam_sequence(job, order::Precedence(job), width);
}

/// When the first arc of a block starts, or an operation; none when it took no time.
std::optional<double> first_arc_s(const timeline::Clock& clock, int block) {
  for (const timeline::Event& event : clock.events()) {
    const bool works =
        event.kind == timeline::SecondKind::arc || event.kind == timeline::SecondKind::work;
    if (event.item == block && works) return event.start_s;
  }
  return std::nullopt;
}

}  // namespace

TEST_SUITE("order/beam") {
  TEST_CASE("for any job, law: the beam's order is valid, and not above bound and greedy by much") {
    const std::uint64_t seed = base::named_seed(1, "order beam");
    INFO("seed " << seed);
    base::Random random(seed);
    int as_good = 0;
    for (int n = 0; n < 120; ++n) {
      const Job job = mixed_job(n, 12 + n % 30, random);
      const Sequence found = beam(job, 20);
      REQUIRE(order::is_valid(job, found));
      const double cycle_s = order::cycle_time_s(job, found);
      CHECK(order::lower_bound_s(job) <= cycle_s);
      const double greedy_s = order::cycle_time_s(job, order::greedy_sequence(job));
      as_good += cycle_s <= greedy_s ? 1 : 0;
    }
    CHECK(as_good > 80);
  }

  TEST_CASE("given small jobs, a wide beam mostly finds what trying all orders finds") {
    const std::uint64_t seed = base::named_seed(1, "order beam brute force");
    INFO("seed " << seed);
    base::Random random(seed);
    int best = 0;
    for (int n = 0; n < 200; ++n) {
      const Job job = mixed_job(n, 3 + n % 4, random);
      const double best_s = best_of_all_s(job);
      const double cycle_s = order::cycle_time_s(job, beam(job, 200));
      CHECK(cycle_s >= best_s - 1e-9 * best_s);
      best += is_close(cycle_s, best_s) ? 1 : 0;
    }
    CHECK(best > 180);  // of those with the same blocks and last option only the earliest is kept
  }

  TEST_CASE("given a wait that two other seams can fill, the beam fills it") {
    Job job = whole_number_job();
    job.blocks = {line_block("root", 0, 0.0, 0.0, 30.0),
                  line_block("cap", 0, 0.0, 0.0, 30.0),
                  line_block("one", 1, 0.0, 0.0, 40.0),
                  line_block("two", 2, 0.0, 0.0, 30.0)};
    job.blocks[1].passes[0].gap_s = 100.0;
    job.blocks[1].after = {0};
    check_expected("cycle",
                   order::cycle_time_s(job, beam(job, 3)),
                   {130.0, 1e-9, Origin::closed_form, "30 + 40 + 30 + 30"});
  }
}

TEST_SUITE("order/tails") {
  TEST_CASE("for any order of any job, law: after a block's first arc its tail is still to come") {
    const std::uint64_t seed = base::named_seed(1, "order tails");
    INFO("seed " << seed);
    base::Random random(seed);
    std::size_t looked_at = 0;
    for (int n = 0; n < 300; ++n) {
      const Job job = mixed_job(n, 4 + n % 12, random);
      const std::vector<double> tails =
          order::tails_s(job, order::Precedence(job), order::number_zones(job));
      for (const std::size_t width : {1U, 2U, 7U}) {
        const timeline::Clock clock = order::simulate(job, beam(job, width));
        for (std::size_t b = 0; b < job.blocks.size(); ++b) {
          const order::Block& block = job.blocks[b];
          const bool has_event = block.work_s || block.passes.front().arc_s > 0.0;
          if (!has_event) continue;
          const auto start_s = first_arc_s(clock, static_cast<int>(b));
          REQUIRE(start_s.has_value());
          CHECK(tails[b] <= (clock.now_s() - *start_s) * (1.0 + 1e-12) + 1e-9);
          ++looked_at;
        }
      }
    }
    CHECK(looked_at > 5000);
  }

  TEST_CASE("given a chain of layers with gaps, the tail counts its waits") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 0.0, 0.0, 10.0), line_block("b", 0, 0.0, 0.0, 10.0)};
    job.blocks[0].passes.assign(3, {10.0, 40.0, 0.0, 0.0});
    job.blocks[1].passes[0].gap_s = 90.0;
    job.blocks[1].after = {0};
    const auto tails = order::tails_s(job, order::Precedence(job), order::number_zones(job));
    // Arcs start at 0, 40, 80 and 170, the last ends at 180.
    check_expected("of a", tails[0], {180.0, 1e-9, Origin::closed_form, "worked by hand"});
    check_expected("of b", tails[1], {10.0, 1e-9, Origin::closed_form, "worked by hand"});
  }
}

}  // namespace seamturn::tests
