// SPDX-License-Identifier: MIT
#include "seamturn/pass/sides.hpp"

#include <doctest/doctest.h>

#include "pass/pass_fixture.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {
namespace {

using base::Random;
using pass::SideStep;
using pass::SideWork;

std::vector<SideStep> order_of(const std::vector<double>& side_1_mm2,
                               const std::vector<double>& side_2_mm2,
                               bool is_gouged = true,
                               double first_share = 1.0 / 3.0) {
  pass::SidesRequest request;
  request.side_1_mm2 = side_1_mm2;
  request.side_2_mm2 = side_2_mm2;
  request.is_gouged = is_gouged;
  request.first_share = first_share;
  return pass::alternate_sides(request);
}

/// "1a 1b G 2a ..." as a welder would note it.
std::string text_of(const std::vector<SideStep>& steps) {
  std::string text;
  for (const SideStep& step : steps) {
    if (!text.empty()) text += ' ';
    text +=
        step.work == SideWork::gouge
            ? std::string("G")
            : std::to_string(step.side) + std::string(1, static_cast<char>('a' + step.layer - 1));
  }
  return text;
}

std::vector<double> random_layers(Random& random) {
  std::vector<double> layers(1 + random.below(12));
  for (double& layer : layers) layer = random.between(10.0, 120.0);
  return layers;
}

double sum_of(const std::vector<double>& values) {
  double sum = 0.0;
  for (const double value : values) sum += value;
  return sum;
}

}  // namespace

TEST_SUITE("pass/sides") {
  TEST_CASE("given six equal layers a side, side 1 lies to a third, then two by two") {
    const std::vector<double> equal(6, 30.0);
    // 2 of 6 are a third. Side 2 goes on to 3, one ahead; side 1 to 4, one ahead; and so on.
    CHECK(text_of(order_of(equal, equal)) == "1a 1b G 2a 2b 2c 1c 1d 2d 2e 1e 1f 2f");
  }

  TEST_CASE("given no gouging, the order is the same without the mark") {
    const std::vector<double> equal(3, 30.0);
    CHECK(text_of(order_of(equal, equal)) == "1a G 2a 2b 1b 1c 2c");
    CHECK(text_of(order_of(equal, equal, false)) == "1a 2a 2b 1b 1c 2c");
  }

  TEST_CASE("given a first share of all, side 1 is finished before side 2 is gouged and begun") {
    CHECK(text_of(order_of({20.0, 40.0, 60.0}, {20.0, 40.0}, true, 1.0)) == "1a 1b 1c G 2a 2b");
    CHECK(text_of(order_of({20.0, 40.0, 60.0}, {20.0}, true, 0.0)) == "1a G 2a 1b 1c");
  }

  TEST_CASE("for any two sides, laws: each layer once and in turn, gouge first, balance kept") {
    Random random(base::named_seed(7, "pass/sides"));
    for (int round = 0; round < 1000; ++round) {
      INFO("named_seed(7, pass/sides), round " << round);
      const std::vector<double> sides[] = {random_layers(random), random_layers(random)};
      const double first_share = random.unit();
      const auto steps = order_of(sides[0], sides[1], true, first_share);
      const double all[] = {sum_of(sides[0]), sum_of(sides[1])};
      double most = 0.0;
      for (int side : {0, 1}) {
        for (const double layer : sides[side]) most = std::max(most, layer / all[side]);
      }
      double laid[] = {0.0, 0.0};
      std::size_t next[] = {0, 0};
      bool is_gouged = false;
      bool is_balanced = false;
      for (const SideStep& step : steps) {
        if (step.work == SideWork::gouge) {
          CHECK_FALSE(is_gouged);
          CHECK(next[0] > 0);
          CHECK(next[1] == 0);
          CHECK(laid[0] / all[0] >= first_share - 1e-9);
          is_gouged = true;
          continue;
        }
        const int side = step.side - 1;
        CHECK((side == 0 || is_gouged));
        REQUIRE(next[side] < sides[side].size());
        CHECK(step.layer == static_cast<int>(next[side]) + 1);
        laid[side] += sides[side][next[side]++];
        const double ahead = laid[0] / all[0] - laid[1] / all[1];
        is_balanced = is_balanced || (is_gouged && ahead <= most);
        if (is_balanced) CHECK(std::abs(ahead) <= most + 2e-9);
        if (is_gouged && !is_balanced) CHECK(side == 1);
      }
      CHECK(is_gouged);
      CHECK(next[0] == sides[0].size());
      CHECK(next[1] == sides[1].size());
    }
  }

  TEST_CASE("for any stack, law: the areas of its layers add up to the section") {
    Bench bench;
    bench.family = process::WeldFamily::groove;
    bench.section = groove_section({25.0, 3.0, 1.0, 30.0, 30.0, 2.0, 1.0});
    bench.settings = any_travel();
    process::BeadLimit limit;
    limit.family = process::WeldFamily::groove;
    limit.thickness_max_mm = 5.0;
    bench.limits = {limit};
    const auto stack = bench.lay().value();
    const auto areas = pass::layer_areas_mm2(stack);
    CHECK(static_cast<int>(areas.size()) == stack.layers);
    CHECK(sum_of(areas) == doctest::Approx(bench.section.area_mm2).epsilon(1e-9));
  }

  TEST_CASE("requires layers on both sides and a share within 0 to 1") {
    CHECK_THROWS_AS(static_cast<void>(order_of({}, {20.0})), base::ContractViolation);
    CHECK_THROWS_AS(static_cast<void>(order_of({20.0}, {0.0})), base::ContractViolation);
    CHECK_THROWS_AS(static_cast<void>(order_of({20.0}, {20.0}, true, 1.1)),
                    base::ContractViolation);
  }
}

}  // namespace seamturn::tests
