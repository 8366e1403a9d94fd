// SPDX-License-Identifier: MIT
// What a search may spend and what it is to prefer.
#include <algorithm>

#include "all_orders.hpp"
#include "jobs.hpp"
#include "oracle.hpp"
#include "seamturn/order/search.hpp"

namespace seamturn::tests {

using order::Found;
using order::Job;
using order::SearchParams;
using order::Sequence;

namespace {

/// Best of all orders by seconds and worth together; shares nothing with the search.
double best_objective_s(const Job& job) {
  double best_s = order::never_s;
  std::vector<int> blocks(job.blocks.size());
  std::iota(blocks.begin(), blocks.end(), 0);
  do {
    Sequence sequence;
    for (const int block : blocks) sequence.push_back({block, 0});
    if (!order::is_valid(job, sequence)) continue;
    for (std::size_t digit = 0; digit < sequence.size();) {
      best_s = std::min(best_s, order::objective_s(job, sequence));
      for (digit = 0; digit < sequence.size(); ++digit) {
        const auto block = static_cast<std::size_t>(sequence[digit].block);
        const auto options = job.blocks[block].options.size();
        if (static_cast<std::size_t>(++sequence[digit].option) < options) break;
        sequence[digit].option = 0;
      }
    }
  } while (std::next_permutation(blocks.begin(), blocks.end()));
  return best_s;
}

Job valued_job(int n, base::Random& random) {
  JobMix mix;
  mix.blocks = 3 + n % 3;
  mix.cleaning = n % 2 == 0;
  Job job = random_job(mix, random);
  if (n % 3 == 1) add_operations(job, random);
  job.worth.stance_s = random.below(4) == 0 ? 0.0 : random.between(1.0, 200.0);
  job.worth.entry_s = random.below(3) == 0 ? 0.0 : random.between(1.0, 200.0);
  return job;
}

Job large_job(std::uint64_t seed, int blocks) {
  base::Random random(seed);
  JobMix mix;
  mix.blocks = blocks;
  mix.zones = blocks / 3;
  mix.stances = 6;
  return random_job(mix, random);
}

}  // namespace

TEST_SUITE("order/effort") {
  TEST_CASE(
      "given 200 small jobs whose turns and entries are worth seconds, the exact search is "
      "the best of all orders by both") {
    const std::uint64_t seed = base::named_seed(1, "order worth");
    INFO("seed " << seed);
    base::Random random(seed);
    int longer = 0;
    for (int n = 0; n < 200; ++n) {
      const Job job = valued_job(n, random);
      SearchParams params;
      params.effort = n % 2 == 0 ? 0 : 3000;
      const Found found = order::find_order(job, params);
      INFO("job " << n);
      REQUIRE(found.proved_best);
      CHECK(is_close(order::objective_s(job, found.sequence), best_objective_s(job)));
      CHECK(found.cycle_s == order::cycle_time_s(job, found.sequence));
      const double shortest_s = best_of_all_s(job);
      CHECK(found.lower_bound_s <= shortest_s * (1.0 + 1e-12));
      longer += found.cycle_s > shortest_s * (1.0 + 1e-9) ? 1 : 0;
    }
    CHECK(longer > 10);  // else the worth would have changed nothing
  }

  TEST_CASE("for any job, law: two cores find what one finds") {
    for (const std::uint64_t seed : {1U, 2U, 3U}) {
      const Job job = large_job(seed, 60);
      SearchParams params;
      params.effort = 200000;
      params.exact_states = 0;
      const Found one = order::find_order(job, params);
      params.two_cores = true;
      const Found two = order::find_order(job, params);
      CHECK(one.sequence == two.sequence);
      CHECK(one.cycle_s == two.cycle_s);
      CHECK(one.lower_bound_s == two.lower_bound_s);
    }
  }

  TEST_CASE(
      "given the order of an earlier search, law: the new one is no worse, even at no effort") {
    for (const std::uint64_t seed : {4U, 5U, 6U}) {
      const Job job = large_job(seed, 50);
      SearchParams params;
      params.effort = 100000;
      params.exact_states = 0;
      const Found earlier = order::find_order(job, params);
      SearchParams none;
      none.effort = 0;
      none.exact_states = 0;
      none.start = earlier.sequence;
      CHECK(order::find_order(job, none).cycle_s <= earlier.cycle_s);
      CHECK(order::cycle_time_s(job, order::greedy_sequence(job)) > earlier.cycle_s);
    }
  }

  TEST_CASE("given 300 small jobs without a search, no bound is above the best of all orders") {
    const std::uint64_t seed = base::named_seed(1, "order bound without clock");
    INFO("seed " << seed);
    base::Random random(seed);
    int told = 0;
    for (int n = 0; n < 300; ++n) {
      JobMix mix;
      mix.blocks = 4 + n % 3;
      mix.gaps = n % 3 == 0;
      mix.cleaning = n % 4 == 0;
      Job job = random_job(mix, random);
      if (n % 5 == 1) add_heating(job, Heaters::stay_on, random);
      if (n % 5 == 2) add_operations(job, random);
      SearchParams params;  // greedy, and as little of all else as can be
      params.effort = 0;
      params.exact_states = 0;
      params.bound_work = 300'000;  // 2'000'000 gives each of these jobs the same bound
      params.tour_states = n % 2 == 0 ? 0 : 5000;
      const Found found = order::find_order(job, params);
      const double best_s = best_of_all_s(job);
      INFO("job " << n << " best " << best_s << " cycle " << found.cycle_s);
      CHECK(found.lower_bound_s <= best_s * (1.0 + 1e-9));
      if (found.proved_best) CHECK(is_close(found.cycle_s, best_s));
      told += found.cycle_s > best_s * 1.02 && found.lower_bound_s > 0.97 * best_s ? 1 : 0;
    }
    CHECK(told > 20);  // close below it, with room above
  }

  TEST_CASE("for any job, law: work on the bound only raises it, and never above the cycle") {
    int raised = 0;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
      const Job job = large_job(seed, 20);
      SearchParams params;
      params.effort = 20000;
      params.exact_states = 0;
      const Found plain = order::find_order(job, params);
      params.bound_work = 3'000'000;
      const Found priced = order::find_order(job, params);
      CHECK(priced.lower_bound_s >= plain.lower_bound_s);
      CHECK(priced.lower_bound_s <= priced.cycle_s);
      CHECK(priced.cycle_s <= plain.cycle_s);
      raised += priced.lower_bound_s > plain.lower_bound_s * 1.001 ? 1 : 0;
    }
    CHECK(raised > 4);
  }

  TEST_CASE("given the words of the command line, each is more work than the one before") {
    REQUIRE(order::effort_names().size() == 3);
    CHECK(order::effort_names()[2] == "long");
    const SearchParams quick = order::search_params(order::Effort::quick);
    const SearchParams normal = order::search_params(order::Effort::normal);
    const SearchParams lengthy = order::search_params(order::Effort::lengthy);
    CHECK(quick.effort < normal.effort);
    CHECK(normal.effort < lengthy.effort);
    CHECK(quick.bound_work < normal.bound_work);
    CHECK(normal.bound_work < lengthy.bound_work);
  }
}

}  // namespace seamturn::tests
