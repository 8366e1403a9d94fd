// SPDX-License-Identifier: MIT
#include "seamturn/heat/hydrogen_soak.hpp"

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

TEST_SUITE("heat/hydrogen_soak") {
  TEST_CASE("given 20 and 100 mm, the remembered range, two hours and one per 25 mm") {
    // remembered: EN 1011-2: 200 to 300 degC, at least 2 h. Common practice: 1 h per 25 mm.
    const heat::HydrogenSoak thin = heat::hydrogen_soak(20.0);
    CHECK(thin.least_c == 200.0);
    CHECK(thin.usual_c == 250.0);
    CHECK(thin.most_c == 300.0);
    CHECK(thin.hours == doctest::Approx(2.0));
    CHECK(heat::hydrogen_soak(50.0).hours == doctest::Approx(2.0));
    CHECK(heat::hydrogen_soak(100.0).hours == doctest::Approx(4.0));
    CHECK(thin.status == base::Status::from_memory);
    CHECK(thin.text.find("Advice, no release") != std::string::npos);
    CHECK(heat::hydrogen_soak(100.0).text.find(" 4 h") != std::string::npos);
  }

  TEST_CASE("for any thickness, law: thicker never soaks shorter, nor below the standard's least") {
    double before = 0.0;
    for (double t = 1.0; t < 300.0; t += 3.0) {
      const heat::HydrogenSoak soak = heat::hydrogen_soak(t);
      CHECK(soak.hours >= before);
      CHECK(soak.hours >= soak.least_hours);
      before = soak.hours;
    }
    CHECK_THROWS_AS((void)heat::hydrogen_soak(0.0), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
