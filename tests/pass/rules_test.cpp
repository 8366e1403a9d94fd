// SPDX-License-Identifier: MIT
// Rules made once, and margins from every limit.
#include <doctest/doctest.h>

#include "pass/grid_case.hpp"

namespace seamturn::tests {

using base::Random;
using process::PassRole;

TEST_SUITE("pass/rules") {
  TEST_CASE(
      "given a margin, a leg that closes at the limit alone is refused with the margin told") {
    Random random(1);
    Case one = random_case(random, process::WeldFamily::fillet);
    one.bench.limits.clear();
    one.bench.section = fillet_section(5.0, 5.0);
    // 12.5 mm2 at 9 m/min: pi/4 x 1.44 x 9000 x 0.95 / 12.5 = 773.6 mm/min.
    one.bench.settings = {settings_row({"row", PassRole::single, 9.0, 30.0, 80.0, 45.0})};
    one.bench.settings.push_back(settings_row({"r", PassRole::root, 9.0, 30.0, 80.0, 45.0}));
    one.bench.settings.push_back(settings_row({"c", PassRole::cap, 9.0, 30.0, 80.0, 45.0}));
    one.margin = 0.03;  // 77.6 cm/min
    CHECK(pass::make_pass_stack(request_for(one, pass::StackAim::preferred_point)).has_value());
    one.margin = 0.05;  // 76.0 cm/min
    const auto stack = pass::make_pass_stack(request_for(one, pass::StackAim::least_arc_time));
    REQUIRE_FALSE(stack.has_value());
    CHECK(stack.error().code == "pass.travel.cannot_close");
    CHECK(stack.error().text.find("row allows 31.5..76.0 cm/min, 1.8 % too fast") !=
          std::string::npos);
    CHECK(stack.error().text.find("with a margin of 5.0 %") != std::string::npos);
  }

  TEST_CASE("given a heat-input maximum and a margin, every pass stays that far below it") {
    Random random(base::named_seed(7, "pass/rules/heat"));
    int laid = 0;
    for (int round = 0; round < 100; ++round) {
      Case one = random_case(random, process::WeldFamily::fillet);
      one.bench.section = fillet_section(10.0, 10.0);
      one.margin = random.between(0.02, 0.2);
      pass::StackRequest request = request_for(one, pass::StackAim::least_arc_time);
      request.heat_input_max_kj_mm = random.between(0.9, 1.6);
      const auto stack = pass::make_pass_stack(request);
      if (!stack) continue;
      ++laid;
      CHECK(stack->heat_input_max_kj_mm <=
            *request.heat_input_max_kj_mm * (1.0 - one.margin) * (1.0 + 1e-8));
    }
    CHECK(laid > 30);
  }

  TEST_CASE("for any section, law: rules made once lay what a request of its own lays") {
    Random random(2);
    Case one = random_case(random, process::WeldFamily::groove);
    const auto rules =
        pass::StackRules::make(request_for(one, pass::StackAim::preferred_point)).value();
    for (const double thickness_mm : {8.0, 12.0, 20.0, 33.0}) {
      one.bench.section = groove_section({thickness_mm, 3.0, 1.0, 25.0, 30.0, 2.0, 1.0});
      const auto own = pass::make_pass_stack(request_for(one, pass::StackAim::preferred_point));
      const auto shared = pass::make_pass_stack(rules, one.bench.section, 500.0);
      REQUIRE(own.has_value() == shared.has_value());
      if (!own) continue;
      REQUIRE(own->passes.size() == shared->passes.size());
      CHECK(own->arc_time_s == shared->arc_time_s);
      CHECK(own->passes.back().settings == shared->passes.back().settings);
    }
  }

  TEST_CASE("requires a margin with the least arc time, and a margin below a half") {
    Random random(3);
    Case one = random_case(random, process::WeldFamily::fillet);
    one.bench.section = fillet_section(8.0, 8.0);
    CHECK_THROWS_AS(
        static_cast<void>(pass::make_pass_stack(request_for(one, pass::StackAim::least_arc_time))),
        base::ContractViolation);
    one.margin = 0.5;
    CHECK_THROWS_AS(
        static_cast<void>(pass::make_pass_stack(request_for(one, pass::StackAim::preferred_point))),
        base::ContractViolation);
  }
}

}  // namespace seamturn::tests
