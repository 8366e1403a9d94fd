// SPDX-License-Identifier: MIT
#include "seamturn/timeline/clock.hpp"

#include <limits>
#include <set>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using timeline::Clock;
using timeline::SecondKind;

TEST_SUITE("timeline/clock") {
  TEST_CASE("given stretches of 2 s and 3.5 s, the clock shows 5.5 s and events that touch") {
    Clock clock;
    clock.spend(SecondKind::turn, 2.0, 3, -1);
    clock.spend(SecondKind::arc, 3.5, 3, 7, 1);
    CHECK(clock.now_s() == 5.5);
    REQUIRE(clock.events().size() == 2);
    CHECK(clock.events()[0].kind == SecondKind::turn);
    CHECK(clock.events()[0].stance == 3);
    CHECK(clock.events()[0].item == -1);
    CHECK(clock.events()[1].start_s == clock.events()[0].end_s);
    CHECK(clock.events()[1].end_s == 5.5);
    CHECK(clock.events()[1].item == 7);
    CHECK(clock.events()[1].pass == 1);
    CHECK(clock.total_s(SecondKind::arc) == 3.5);
    CHECK(clock.total_s(SecondKind::wait) == 0.0);
  }

  TEST_CASE("given zero seconds, nothing is appended") {
    Clock clock;
    clock.spend(SecondKind::air, 0.0, 0, 0);
    CHECK(clock.events().empty());
    CHECK(clock.now_s() == 0.0);
  }

  TEST_CASE("for any stretches, law: the totals of the seven kinds add up to the clock") {
    const std::uint64_t seed = base::named_seed(1, "clock adds up");
    INFO("seed " << seed);
    base::Random random(seed);
    Clock clock;
    for (int i = 0; i < 500; ++i) {
      const auto kind = static_cast<SecondKind>(random.below(timeline::second_kinds));
      clock.spend(kind, random.between(0.0, 50.0), 0, i);
    }
    double sum_s = 0.0;
    for (std::size_t kind = 0; kind < timeline::second_kinds; ++kind) {
      sum_s += clock.total_s(static_cast<SecondKind>(kind));
    }
    CHECK(std::abs(sum_s - clock.now_s()) <= 1e-9 * clock.now_s());
    for (std::size_t i = 1; i < clock.events().size(); ++i) {
      CHECK(clock.events()[i].start_s == clock.events()[i - 1].end_s);
    }
  }

  TEST_CASE("for any two kinds, law: their names differ") {
    std::set<std::string_view> names;
    for (std::size_t kind = 0; kind < timeline::second_kinds; ++kind) {
      names.insert(timeline::second_kind_name(static_cast<SecondKind>(kind)));
    }
    CHECK(names.size() == timeline::second_kinds);
    CHECK(names.count("arc") == 1);
    CHECK(names.count("other") == 1);
  }

  TEST_CASE("refuses negative or endless seconds because a clock does not run back") {
    Clock clock;
    const double endless_s = std::numeric_limits<double>::infinity();
    CHECK_THROWS_AS(clock.spend(SecondKind::air, -1e-9, 0, 0), base::ContractViolation);
    CHECK_THROWS_AS(clock.spend(SecondKind::air, endless_s, 0, 0), base::ContractViolation);
    CHECK(clock.now_s() == 0.0);
  }
}

}  // namespace seamturn::tests
