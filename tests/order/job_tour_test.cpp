// SPDX-License-Identifier: MIT
#include "order/detail_job_tour.hpp"

#include <algorithm>

#include "all_orders.hpp"
#include "jobs.hpp"
#include "oracle.hpp"

namespace seamturn::tests {

using order::Job;
using order::Sequence;
using order::Step;

namespace {

order::JobTour tour_for(const Job& job) {
  return order::job_tour(job, order::Precedence(job), order::number_zones(job));
}

double tour_cycle_s(const order::JobTour& tour, const Sequence& sequence) {
  return tour.always_s + order::tour_cost(tour.problem, order::tour_of(tour, sequence));
}

/// A valid order with options drawn: always a ready block, any of them.
Sequence drawn(const Job& job, base::Random& random) {
  std::vector<bool> done(job.blocks.size(), false);
  Sequence sequence;
  while (sequence.size() < job.blocks.size()) {
    const std::size_t b = random.below(job.blocks.size());
    const auto& after = job.blocks[b].after;
    const bool ready = std::all_of(after.begin(), after.end(), [&](int before) {
      return done[static_cast<std::size_t>(before)];
    });
    if (done[b] || !ready) continue;
    done[b] = true;
    sequence.push_back(
        Step{static_cast<int>(b), static_cast<int>(random.below(job.blocks[b].options.size()))});
  }
  return sequence;
}

Job drawn_job(int n, base::Random& random) {
  JobMix mix;
  mix.blocks = 3 + n % 10;
  mix.zones = 1 + n % 5;
  mix.gaps = n % 3 != 0;
  mix.cleaning = n % 2 != 0;
  Job job = random_job(mix, random);
  if (n % 4 == 1) add_heating(job, Heaters::stay_on, random);
  if (n % 4 == 2) add_heating(job, Heaters::again, random);
  if (n % 5 == 3) add_operations(job, random);
  REQUIRE(order::check_job(job).has_value());
  return job;
}

}  // namespace

TEST_SUITE("order/job_tour") {
  TEST_CASE("for any order of any job, law: the tour without a clock never costs more than it") {
    const std::uint64_t seed = base::named_seed(1, "order job tour");
    INFO("seed " << seed);
    base::Random random(seed);
    for (int n = 0; n < 1500; ++n) {
      const Job job = drawn_job(n, random);
      const order::JobTour tour = tour_for(job);
      const order::TourOrder precedence(tour.problem);
      for (int k = 0; k < 20; ++k) {
        const Sequence sequence = drawn(job, random);
        REQUIRE(order::is_tour(tour.problem, precedence, order::tour_of(tour, sequence)));
        CHECK(order::sequence_of(tour, order::tour_of(tour, sequence)) == sequence);
        const double cycle_s = order::cycle_time_s(job, sequence);
        INFO("job " << n);
        CHECK(tour_cycle_s(tour, sequence) <= cycle_s * (1.0 + 1e-12));
      }
    }
  }

  TEST_CASE("without waits, cleaning, touches and heating, law: tour and clock cost the same") {
    const std::uint64_t seed = base::named_seed(1, "order job tour exact");
    INFO("seed " << seed);
    base::Random random(seed);
    for (int n = 0; n < 200; ++n) {
      JobMix mix;
      mix.blocks = 3 + n % 10;
      mix.zones = 1 + n % 5;
      mix.gaps = false;
      mix.cleaning = false;
      Job job = random_job(mix, random);
      if (n % 5 == 3) add_operations(job, random);
      for (order::Block& block : job.blocks) block.touch_s = 0.0;
      const order::JobTour tour = tour_for(job);
      for (int k = 0; k < 20; ++k) {
        const Sequence sequence = drawn(job, random);
        CHECK(is_close(tour_cycle_s(tour, sequence), order::cycle_time_s(job, sequence)));
      }
    }
  }

  TEST_CASE("given one place welded layer upon layer, touch and waits are in the tour") {
    Job job = whole_number_job();
    job.blocks = {line_block("root", 0, 0.0, 0.0, 30.0),
                  line_block("fill", 0, 0.0, 0.0, 30.0),
                  line_block("cap", 0, 0.0, 0.0, 30.0, 1)};
    for (std::size_t b = 0; b < 3; ++b) {
      job.blocks[b].touch_s = 5.0;
      if (b > 0) job.blocks[b].after = {static_cast<int>(b) - 1};
    }
    job.blocks[1].passes[0].gap_s = 100.0;
    const Sequence sequence = {{0, 0}, {1, 0}, {2, 0}};
    // Touch 5, root at 5, fill at 105 to 135, turn 10, touch 5, cap 30.
    const Expected expected{180.0, 1e-9, Origin::closed_form, "worked by hand"};
    check_expected("tour", tour_cycle_s(tour_for(job), sequence), expected);
    check_expected("clock", order::cycle_time_s(job, sequence), expected);
    job.clean_every_s = 1000.0;
    job.clean_s = 60.0;  // may lie in the wait of 70 s
    check_expected("with cleaning",
                   tour_cycle_s(tour_for(job), sequence),
                   {120.0, 1e-9, Origin::closed_form, "worked by hand"});
  }
}

}  // namespace seamturn::tests
