// SPDX-License-Identifier: MIT
#include "seamturn/heat/preheat_zone.hpp"

#include <cmath>
#include <string>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

TEST_SUITE("heat/preheat_zone") {
  TEST_CASE("given thin, middle and thick plate, the remembered distance") {
    // remembered: ISO 13916: up to 50 mm four times the thickness, at most 50 mm; above 75 mm.
    CHECK(heat::measure_distance_mm(8.0) == doctest::Approx(32.0));
    CHECK(heat::measure_distance_mm(12.5) == doctest::Approx(50.0));
    CHECK(heat::measure_distance_mm(50.0) == doctest::Approx(50.0));
    CHECK(heat::measure_distance_mm(50.01) == doctest::Approx(75.0));
    CHECK(heat::soak_time_s(25.0) == doctest::Approx(120.0));
    CHECK(heat::soak_time_s(60.0) == doctest::Approx(288.0));
    // remembered: AWS D1.1: the thickness, at least 3 in.
    CHECK(heat::zone_width_mm(20.0) == doctest::Approx(75.0));
    CHECK(heat::zone_width_mm(90.0) == doctest::Approx(90.0));
    CHECK(heat::single_run_fillet_reduction_k == 60.0);  // remembered: EN 1011-2 C.3
    CHECK(heat::single_run_fillet_condition().find("coordinator") != std::string_view::npos);
  }

  TEST_CASE("for any thickness, law: the heated zone holds the measuring point") {
    for (double t = 1.0; t < 300.0; t += 0.7) {
      CHECK(heat::zone_width_mm(t) >= heat::measure_distance_mm(t));
    }
  }

  TEST_CASE("given 20 and 60 mm, the line names distance, face and wait") {
    CHECK(heat::where_to_measure(20.0) ==
          "measure 50 mm from the groove edge, on the face away from the heat; on the heated face "
          "2 min after the heat is taken away");
    const std::string thick = heat::where_to_measure(60.0);
    CHECK(thick.find("at least 75 mm") != std::string::npos);
    CHECK(thick.find("5 min") != std::string::npos);
  }

  TEST_CASE("refuses no thickness because it is a caller's bug") {
    CHECK_THROWS_AS((void)heat::measure_distance_mm(0.0), base::ContractViolation);
    CHECK_THROWS_AS((void)heat::zone_width_mm(-1.0), base::ContractViolation);
    CHECK_THROWS_AS((void)heat::soak_time_s(std::nan("")), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
