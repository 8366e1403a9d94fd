// SPDX-License-Identifier: MIT
#include "seamturn/heat/thickness_seen.hpp"

#include <cmath>
#include <vector>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using heat::combined_thickness_mm;
using heat::HeatPath;

TEST_SUITE("heat/thickness_seen") {
  TEST_CASE("given a butt, a tee and an opposed pair, closed-form: sum and half the sum") {
    // closed-form: sums by hand; the rule itself is remembered (EN 1011-2:2001, C.2).
    const std::vector<HeatPath> butt = {{"a", 20.0}, {"b", 15.0}};
    const std::vector<HeatPath> tee = {{"through", 20.0}, {"through", 20.0}, {"stem", 12.0}};
    CHECK(combined_thickness_mm(butt, false) == doctest::Approx(35.0));
    CHECK(combined_thickness_mm(tee, false) == doctest::Approx(52.0));
    CHECK(combined_thickness_mm(tee, true) == doctest::Approx(26.0));
    CHECK(heat::combined_thickness_text(tee, false) == "20 + 20 + 12 = 52 mm");
    CHECK(heat::combined_thickness_text(tee, true) == "(20 + 20 + 12) / 2 = 26 mm");
    CHECK(heat::averaging_mm == 75.0);  // remembered: EN 1011-2:2001, C.2
  }

  TEST_CASE("for any paths, law: their order does not matter and one more adds itself") {
    std::vector<HeatPath> paths = {{"a", 7.0}, {"b", 31.0}};
    const double two = combined_thickness_mm(paths, false);
    std::swap(paths[0], paths[1]);
    CHECK(combined_thickness_mm(paths, false) == doctest::Approx(two));
    paths.push_back({"c", 9.0});
    CHECK(combined_thickness_mm(paths, false) == doctest::Approx(two + 9.0));
    CHECK(2.0 * combined_thickness_mm(paths, true) == doctest::Approx(two + 9.0));
  }

  TEST_CASE("refuses no path at all and a path of no thickness because they are a caller's bug") {
    CHECK_THROWS_AS((void)combined_thickness_mm({}, false), base::ContractViolation);
    const std::vector<HeatPath> nothing = {{"a", 0.0}};
    CHECK_THROWS_AS((void)combined_thickness_mm(nothing, false), base::ContractViolation);
    const std::vector<HeatPath> no_number = {{"a", std::nan("")}};
    CHECK_THROWS_AS((void)combined_thickness_mm(no_number, false), base::ContractViolation);
  }
}

}  // namespace seamturn::tests
