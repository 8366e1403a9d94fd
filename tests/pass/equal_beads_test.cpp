// SPDX-License-Identifier: MIT
#include "seamturn/pass/equal_beads.hpp"

#include "oracle.hpp"
#include "oracles/pass_limits.hpp"
#include "pass/pass_fixture.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;

TEST_SUITE("pass/equal_beads") {
  TEST_CASE(
      "given the equal-bead rule of 2001 and any V without gap, heights are 1, .7321, .7174, "
      ".7128") {
    for (const double included_deg : {30.0, 60.0, 90.0}) {
      const auto heights =
          pass::equal_bead_layer_heights_mm({20.0, Angle::deg(included_deg), 0.0, 4});
      REQUIRE(heights.size() == 4);
      for (std::size_t i = 0; i < heights.size(); ++i) {
        check_expected("layer " + std::to_string(i + 1),
                       heights[i] / heights[0],
                       {equal_bead_heights[i], 5e-5, Origin::computed, equal_bead_source});
      }
    }
  }

  TEST_CASE("given beads of 20 mm2 in a V of 60 deg, the first layer is 5.886 mm high") {
    // y2 tan 30 = 20: y = sqrt(34.641).
    check_expected("first",
                   pass::equal_bead_layer_heights_mm({20.0, Angle::deg(60.0), 0.0, 1})[0],
                   {5.886, 5e-4, Origin::closed_form, "triangle"});
    // Gap 3: 3 y + 0.57735 y2 = 20 at y = (-3 + sqrt(9 + 46.188)) / 1.1547 = 3.8355.
    check_expected("with gap",
                   pass::equal_bead_layer_heights_mm({20.0, Angle::deg(60.0), 3.0, 1})[0],
                   {3.8355, 5e-5, Origin::closed_form, "trapezium"});
  }

  TEST_CASE(
      "for any V, law: the layers hold n beads each, and far up they thin to 1/sqrt 2 of the "
      "first") {
    base::Random random(base::named_seed(7, "pass/equal_beads"));
    for (int round = 0; round < 200; ++round) {
      INFO("named_seed(7, pass/equal_beads), round " << round);
      const double bead_mm2 = random.between(5.0, 60.0);
      const double half_deg = random.between(5.0, 45.0);
      const double gap_mm = random.between(0.0, 8.0);
      const auto heights =
          pass::equal_bead_layer_heights_mm({bead_mm2, Angle::deg(2.0 * half_deg), gap_mm, 12});
      const double slope = std::tan(half_deg * std::numbers::pi / 180.0);
      double y_mm = 0.0;
      for (std::size_t i = 0; i < heights.size(); ++i) {
        const double middle_mm = y_mm + 0.5 * heights[i];
        const double area_mm2 = heights[i] * (gap_mm + 2.0 * slope * middle_mm);
        CHECK(area_mm2 == doctest::Approx(bead_mm2 * static_cast<double>(i + 1)).epsilon(1e-9));
        y_mm += heights[i];
      }
      const auto sharp =
          pass::equal_bead_layer_heights_mm({bead_mm2, Angle::deg(2.0 * half_deg), 0.0, 200});
      CHECK(sharp.back() / sharp.front() == doctest::Approx(std::sqrt(0.5)).epsilon(1e-5));
    }
  }

  TEST_CASE("requires a bead, an angle and a layer") {
    CHECK_THROWS_AS(
        static_cast<void>(pass::equal_bead_layer_heights_mm({0.0, Angle::deg(60.0), 0.0, 2})),
        base::ContractViolation);
    CHECK_THROWS_AS(
        static_cast<void>(pass::equal_bead_layer_heights_mm({9.0, Angle::deg(180.0), 0.0, 2})),
        base::ContractViolation);
    CHECK_THROWS_AS(
        static_cast<void>(pass::equal_bead_layer_heights_mm({9.0, Angle::deg(60.0), 0.0, 0})),
        base::ContractViolation);
  }
}

}  // namespace seamturn::tests
