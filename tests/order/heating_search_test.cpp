// SPDX-License-Identifier: MIT
// Jobs with heating: what the events show, what bound and search may claim.
#include <algorithm>

#include "all_orders.hpp"
#include "jobs.hpp"
#include "oracle.hpp"
#include "order/detail_track.hpp"
#include "order/detail_work.hpp"
#include "seamturn/order/search.hpp"

namespace seamturn::tests {

using order::Found;
using order::Job;
using order::Sequence;
using timeline::Clock;
using timeline::Event;
using timeline::SecondKind;

namespace {

Job heated_job(int blocks, Heaters heaters, base::Random& random) {
  JobMix mix;
  mix.blocks = blocks;
  mix.options_max = blocks < 5 ? 3 : 2;
  Job job = random_job(mix, random);
  add_heating(job, heaters, random);
  REQUIRE(order::check_job(job).has_value());
  return job;
}

/// Blocks as listed, which keeps `after`, with options drawn.
Sequence listed(const Job& job, base::Random& random) {
  Sequence sequence;
  for (std::size_t b = 0; b < job.blocks.size(); ++b) {
    sequence.push_back(
        {static_cast<int>(b), static_cast<int>(random.below(job.blocks[b].options.size()))});
  }
  return sequence;
}

int heatings(const Clock& clock) {
  return static_cast<int>(
      std::count_if(clock.events().begin(), clock.events().end(), [](const Event& event) {
        return event.kind == SecondKind::heat;
      }));
}

/// What the events say of one zone, going through them once.
struct Warmth {
  const Event* heat = nullptr;  ///< last one
  const Event* arc = nullptr;   ///< last one
};

/// Longest time between two arcs over one place, looked at place by place.
double longest_gap_s(const Event& before, const Event& now, bool turned_round) {
  double longest_s = 0.0;
  for (const double place : {0.0, 0.25, 0.5, 0.75, 1.0}) {
    const double mine = turned_round ? 1.0 - place : place;
    longest_s = std::max(longest_s,
                         now.start_s + mine * (now.end_s - now.start_s) - before.start_s -
                             place * (before.end_s - before.start_s));
  }
  return longest_s;
}

}  // namespace

TEST_SUITE("order/heating_search") {
  TEST_CASE("for any sequence, law: no arc on a place that has grown cold, kinds add up") {
    const std::uint64_t seed = base::named_seed(1, "order warm places");
    INFO("seed " << seed);
    base::Random random(seed);
    int heated_again = 0;
    int waited_cold = 0;
    for (int round = 0; round < 300; ++round) {
      Job job = heated_job(10, Heaters::again, random);
      for (order::Block& block : job.blocks) {  // the clock keeps no arc of no length
        for (order::BlockPass& pass : block.passes) pass.arc_s = std::max(pass.arc_s, 1.0);
      }
      const Sequence sequence = listed(job, random);
      const Clock clock = order::simulate(job, sequence);
      CHECK(order::cycle_time_s(job, sequence) == clock.now_s());
      std::vector<Warmth> zones(100);
      const Event* last = nullptr;
      for (const Event& event : clock.events()) {
        if (event.kind == SecondKind::heat || event.kind == SecondKind::arc) {
          const auto item = static_cast<std::size_t>(event.item);
          const order::Block& block = job.blocks[item];
          Warmth& zone = zones[static_cast<std::size_t>(block.zone)];
          if (event.kind == SecondKind::heat) {
            heated_again += zone.heat != nullptr ? 1 : 0;
            CHECK(event.end_s - event.start_s == doctest::Approx(block.heat_s).epsilon(1e-9));
            zone.heat = &event;
          } else if (block.heat_s > 0.0) {
            REQUIRE(zone.heat != nullptr);
            const bool fresh = zone.arc == nullptr || zone.heat->start_s >= zone.arc->end_s;
            const auto heater = static_cast<std::size_t>(zone.heat->item);
            bool warm = event.start_s <= zone.heat->end_s + job.blocks[heater].heat_keep_s + 1e-9;
            warm = warm || (fresh && zone.heat->item == event.item);
            if (!warm && zone.arc != nullptr) {
              const auto before = static_cast<std::size_t>(zone.arc->item);
              const auto option = [&](std::size_t b) {
                return job.blocks[b].options[static_cast<std::size_t>(sequence[b].option)];
              };
              const double gap_s =
                  longest_gap_s(*zone.arc, event, option(before).course != option(item).course);
              const double keep_s =
                  job.blocks[before].passes[static_cast<std::size_t>(zone.arc->pass)].keep_s;
              warm = gap_s <= keep_s + 1e-9;
              if (!warm && last->kind == SecondKind::wait) {  // it had to cool down first
                warm = true;
                ++waited_cold;
              }
            }
            CHECK(warm);
          }
          if (event.kind == SecondKind::arc) zone.arc = &event;
        }
        last = &event;
      }
    }
    CHECK(heated_again > 300);
    CHECK(waited_cold > 30);
  }

  TEST_CASE("given 300 random small jobs with heating, bound and proof hold against all orders") {
    const std::uint64_t seed = base::named_seed(1, "order heated brute force");
    INFO("seed " << seed);
    base::Random random(seed);
    int again = 0;
    int proved_cooling = 0;
    for (int n = 0; n < 300; ++n) {
      const auto heaters = static_cast<Heaters>(n % 3);
      const Job job = heated_job(3 + n / 3 % 3, heaters, random);
      const Sequence best = best_of_all(job);
      const double best_s = order::cycle_time_s(job, best);
      const double bound_s = order::lower_bound_s(job);
      INFO("job " << n << " best " << best_s << " bound " << bound_s);
      CHECK(bound_s <= best_s);
      order::SearchParams params;
      params.effort = 2000;
      const Found found = order::find_order(job, params);
      CHECK(order::is_valid(job, found.sequence));
      CHECK(found.cycle_s == order::cycle_time_s(job, found.sequence));
      CHECK(found.cycle_s >= best_s * (1.0 - 1e-12));
      CHECK(found.lower_bound_s <= best_s * (1.0 + 1e-12));
      if (heaters != Heaters::again) {
        CHECK(bound_s > 0.3 * best_s);
        CHECK(found.proved_best);
      }
      if (found.proved_best) CHECK(is_close(found.cycle_s, best_s));
      if (heaters == Heaters::again) {
        again += heatings(order::simulate(job, best)) > order::number_zones(job).count ? 1 : 0;
        proved_cooling += found.proved_best ? 1 : 0;
      }
    }
    CHECK(again > 10);           // heating again is sometimes the best that can be done
    CHECK(proved_cooling > 0);   // by the bound alone
    CHECK(proved_cooling < 90);  // which seldom is enough
  }

  TEST_CASE("given no local search, heaters that stay on or heat for good are searched exactly") {
    const std::uint64_t seed = base::named_seed(1, "order heated exact");
    INFO("seed " << seed);
    base::Random random(seed);
    order::SearchParams none;
    none.effort = 0;
    for (int n = 0; n < 120; ++n) {
      const Job job =
          heated_job(3 + n % 3, n % 2 == 0 ? Heaters::stay_on : Heaters::for_good, random);
      CHECK_FALSE(order::may_cool_down(job));
      const Found found = order::find_order(job, none);
      CHECK(found.proved_best);
      CHECK(is_close(found.cycle_s, best_of_all_s(job)));
    }
  }

  TEST_CASE("given a wait that would cost another heating, the search leaves it unfilled") {
    // Root 60 s heat + 10 s, cap after a gap of 40 s from the root's start; warm for 60 s. The
    // other seam of 100 s would fill the wait of 30 s, but then the cap must be heated again for 60
    // s.
    Job job = whole_number_job();
    job.blocks = {line_block("root", 0, 0.0, 0.0, 10.0),
                  line_block("cap", 0, 0.0, 0.0, 10.0),
                  line_block("other seam", 1, 0.0, 0.0, 100.0)};
    job.blocks[1].after = {0};
    job.blocks[1].passes[0].gap_s = 40.0;
    for (const std::size_t b : {0U, 1U}) {
      job.blocks[b].heat_s = 60.0;
      job.blocks[b].heat_keep_s = 60.0;
      job.blocks[b].passes[0].keep_s = 60.0;
    }
    CHECK(order::may_cool_down(job));
    check_expected("best",
                   order::find_order(job, order::SearchParams{}).cycle_s,
                   {210.0, 1e-9, Origin::closed_form, "60 + 10 + 30 + 10 + 100"});
    check_expected("filled",
                   order::cycle_time_s(job, {{0, 0}, {2, 0}, {1, 0}}),
                   {240.0, 1e-9, Origin::closed_form, "60 + 10 + 100 + 60 + 10"});
    job.blocks[2].passes[0].arc_s = 30.0;  // now it fits
    check_expected("fits",
                   order::find_order(job, order::SearchParams{}).cycle_s,
                   {110.0, 1e-9, Origin::closed_form, "60 + 10 + 30 + 10"});
  }

  TEST_CASE("for any change, law: the kept clock is the clock from scratch, the floors are below") {
    const std::uint64_t seed = base::named_seed(1, "order heated track");
    INFO("seed " << seed);
    base::Random random(seed);
    int taken = 0;
    for (int round = 0; round < 60; ++round) {
      const Job job = heated_job(14, static_cast<Heaters>(round % 3), random);
      const order::Precedence precedence(job);
      order::Track track(job, precedence, order::greedy_sequence(job));
      CHECK(track.cycle_s() == order::cycle_time_s(job, track.sequence()));
      for (int change = 0; change < 60; ++change) {
        const Sequence before = track.sequence();
        const double before_s = track.cycle_s();
        const std::size_t begin = random.below(before.size() - 1);
        Sequence changed = {before[begin]};
        double floor_s = 0.0;
        if (random.below(2) == 0) {
          if (!track.may_swap(begin, begin + 1, begin + 2)) continue;
          floor_s = track.floor_of_swap_s(begin, begin + 1, begin + 2);
          changed = {before[begin + 1], before[begin]};
        } else {
          const auto block = static_cast<std::size_t>(before[begin].block);
          changed[0].option = static_cast<int>(random.below(job.blocks[block].options.size()));
          floor_s = track.floor_of_change_s(begin, changed);
        }
        const double limit_s = random.below(2) == 0 ? order::never_s : before_s;
        const bool done = track.try_change(begin, changed, limit_s);
        CHECK(track.cycle_s() == order::cycle_time_s(job, track.sequence()));
        CHECK(track.cycle_s() <= limit_s);
        if (done) {
          CHECK(floor_s <= track.cycle_s() * (1.0 + 1e-12));
          ++taken;
        } else {
          CHECK(track.sequence() == before);
          CHECK(track.cycle_s() == before_s);
        }
      }
    }
    CHECK(taken > 500);
  }
}

}  // namespace seamturn::tests
