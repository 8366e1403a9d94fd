// SPDX-License-Identifier: MIT
#include "seamturn/order/search.hpp"

#include <algorithm>

#include "all_orders.hpp"
#include "jobs.hpp"
#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::tests {

using order::Found;
using order::Job;
using order::SearchParams;
using order::Sequence;

namespace {

/// The n-th of a series of small jobs that differ in all that matters.
Job small_job(int n, base::Random& random) {
  JobMix mix;
  mix.blocks = 3 + n % 4;
  mix.zones = 1 + static_cast<int>(random.below(4));
  mix.stances = 1 + static_cast<int>(random.below(4));
  mix.options_max = mix.blocks < 5 ? 3 : 2;
  mix.passes_max = 1 + n % 3;
  mix.gaps = n % 3 != 0;
  mix.cleaning = n % 2 != 0;
  mix.loose_precedence = n % 5 != 0;
  return random_job(mix, random);
}

SearchParams quick(std::int64_t effort, std::uint64_t seed = 1) {
  SearchParams params;
  params.effort = effort;
  params.seed = seed;
  return params;
}

/// The job with its blocks listed backwards.
Job listed_backwards(const Job& job) {
  Job other = job;
  std::reverse(other.blocks.begin(), other.blocks.end());
  const int last = static_cast<int>(job.blocks.size()) - 1;
  for (order::Block& block : other.blocks) {
    for (int& before : block.after) before = last - before;
    std::reverse(block.options.begin(), block.options.end());
  }
  return other;
}

}  // namespace

TEST_SUITE("order/search") {
  TEST_CASE("given 400 random small jobs, the exact search finds what trying all orders finds") {
    const std::uint64_t seed = base::named_seed(1, "order brute force");
    INFO("seed " << seed);
    base::Random random(seed);
    int with_waits = 0;
    int with_cleaning = 0;
    for (int n = 0; n < 400; ++n) {
      const Job job = small_job(n, random);
      REQUIRE(order::check_job(job).has_value());
      const double best_s = best_of_all_s(job);
      const double bound_s = order::lower_bound_s(job);
      INFO("job " << n << " best " << best_s << " bound " << bound_s);
      CHECK(bound_s <= best_s);
      CHECK(bound_s > 0.3 * best_s);  // a bound of nothing would be valid too
      const Found exact = order::find_order(job, quick(0));  // no local search: exact alone
      CHECK(exact.proved_best);
      CHECK(is_close(exact.cycle_s, best_s));
      CHECK(exact.lower_bound_s == exact.cycle_s);
      CHECK(order::is_valid(job, exact.sequence));
      const auto clock = order::simulate(job, exact.sequence);
      CHECK(clock.now_s() == exact.cycle_s);
      with_waits += clock.total_s(timeline::SecondKind::wait) > 0.0 ? 1 : 0;
      with_cleaning += clock.total_s(timeline::SecondKind::clean) > 0.0 ? 1 : 0;
      SearchParams search_only = quick(20000);
      search_only.exact_states = 0;
      const Found searched = order::find_order(job, search_only);
      CHECK(order::is_valid(job, searched.sequence));
      CHECK(searched.cycle_s >= best_s - 1e-9 * best_s);
      CHECK(searched.lower_bound_s <= best_s * (1.0 + 1e-12));
      if (searched.proved_best) {
        CHECK(is_close(searched.cycle_s, best_s));
      }
    }
    CHECK(with_waits > 50);
    CHECK(with_cleaning > 50);
  }

  TEST_CASE("given a wait that another seam can fill, the search fills it") {
    Job job = whole_number_job();
    job.blocks = {line_block("root", 0, 0.0, 0.0, 30.0),
                  line_block("cap", 0, 0.0, 0.0, 30.0),
                  line_block("other seam", 1, 0.0, 0.0, 70.0)};
    job.blocks[1].passes[0].gap_s = 100.0;
    job.blocks[1].after = {0};
    const Found found = order::find_order(job, SearchParams{});
    check_expected("cycle", found.cycle_s, {130.0, 1e-9, Origin::closed_form, "30 + 70 + 30"});
    CHECK(found.proved_best);
    CHECK(found.sequence == Sequence{{0, 0}, {2, 0}, {1, 0}});
  }

  TEST_CASE("given one block, bound and cycle are the same closed form") {
    Job job = whole_number_job();
    job.retract_mm = 25.0;
    job.blocks = {line_block("a", 0, 100.0, 300.0, 20.0, 1)};
    job.blocks[0].touch_s = 3.0;
    // Turn 10, out 2 + 1, touch 3, arc 20, back 1 + 4.
    const Expected expected{41.0, 1e-8, Origin::closed_form, "worked by hand"};
    check_expected("bound", order::lower_bound_s(job), expected);
    check_expected("cycle", order::find_order(job, SearchParams{}).cycle_s, expected);
  }

  TEST_CASE("given a chain with gaps, the bound counts the waits that nothing can fill") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 0.0, 0.0, 10.0), line_block("b", 0, 0.0, 0.0, 10.0)};
    job.blocks[0].passes.assign(3, {10.0, 40.0, 0.0, 0.0});
    job.blocks[1].passes[0].gap_s = 90.0;
    job.blocks[1].after = {0};
    // Starts at 0, 40, 80, 170, end at 180.
    check_expected(
        "bound", order::lower_bound_s(job), {180.0, 1e-7, Origin::closed_form, "worked by hand"});
  }

  TEST_CASE("for any small job, law: listing its blocks the other way round changes no optimum") {
    const std::uint64_t seed = base::named_seed(1, "order listing");
    INFO("seed " << seed);
    base::Random random(seed);
    for (int n = 0; n < 60; ++n) {
      JobMix mix;
      mix.blocks = 7;
      const Job job = random_job(mix, random);
      const Found one = order::find_order(job, quick(500));
      const Found other = order::find_order(listed_backwards(job), quick(500));
      REQUIRE(one.proved_best);
      REQUIRE(other.proved_best);
      CHECK(is_close(one.cycle_s, other.cycle_s));
    }
  }

  TEST_CASE("for any job, law: greedy is valid, the search no worse, more effort never worse") {
    const std::uint64_t seed = base::named_seed(1, "order effort");
    INFO("seed " << seed);
    base::Random random(seed);
    for (int n = 0; n < 12; ++n) {
      JobMix mix;
      mix.blocks = 30 + 5 * n;
      mix.zones = 10;
      mix.stances = 5;
      const Job job = random_job(mix, random);
      const Sequence greedy = order::greedy_sequence(job);
      REQUIRE(order::is_valid(job, greedy));
      double last_s = order::cycle_time_s(job, greedy);
      const double greedy_s = last_s;
      for (const std::int64_t effort :
           {0, 1000, 5000, 20000, 30000, 60000, 75000, 100000, 170000}) {
        SearchParams params = quick(effort);
        params.exact_states = 0;
        const Found found = order::find_order(job, params);
        CHECK(order::is_valid(job, found.sequence));
        CHECK(found.cycle_s <= last_s);
        CHECK(found.lower_bound_s <= found.cycle_s);
        CHECK(found.cycle_s == order::cycle_time_s(job, found.sequence));
        last_s = found.cycle_s;
      }
      CHECK(last_s < greedy_s);
    }
  }

  TEST_CASE("for any job, law: the same seed gives the same sequence") {
    const std::uint64_t seed = base::named_seed(1, "order repeat");
    INFO("seed " << seed);
    base::Random random(seed);
    JobMix mix;
    mix.blocks = 40;
    mix.zones = 12;
    const Job job = random_job(mix, random);
    const Found one = order::find_order(job, quick(30000, 7));
    const Found again = order::find_order(job, quick(30000, 7));
    CHECK(one.sequence == again.sequence);
    CHECK(one.cycle_s == again.cycle_s);
  }

  TEST_CASE("given a listener, it hears of cycles that never grow") {
    const std::uint64_t seed = base::named_seed(1, "order progress");
    INFO("seed " << seed);
    base::Random random(seed);
    JobMix mix;
    mix.blocks = 60;
    mix.zones = 15;
    std::vector<double> heard_s;
    SearchParams params;
    params.progress = [&heard_s](double best_s) { heard_s.push_back(best_s); };
    const Found found = order::find_order(random_job(mix, random), params);
    CHECK(heard_s.size() > 3);
    CHECK(std::is_sorted(heard_s.rbegin(), heard_s.rend()));
    CHECK(heard_s.back() == found.cycle_s);
  }

  TEST_CASE("given no block, the order is empty and proved") {
    const Found found = order::find_order(Job{}, SearchParams{});
    CHECK(found.sequence.empty());
    CHECK(found.cycle_s == 0.0);
    CHECK(found.lower_bound_s == 0.0);
    CHECK(found.proved_best);
  }

  TEST_CASE("refuses a job that check_job refuses because its order would mean nothing") {
    Job job = whole_number_job();
    job.blocks = {line_block("a", 0, 0.0, 0.0, 10.0)};
    job.blocks[0].options.clear();
    CHECK_THROWS_AS((void)order::find_order(job, SearchParams{}), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
