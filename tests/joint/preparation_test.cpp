// SPDX-License-Identifier: MIT
#include "seamturn/joint/preparation.hpp"

#include <string>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

using base::Angle;
using joint::leg_from_throat_mm;

TEST_SUITE("joint/preparation") {
  TEST_CASE("given throat 5 mm between plates at 60 to 135 deg, the leg along the plate is known") {
    struct Row {
      double psi_deg;
      Expected leg;
    };
    // computed: triangle of plate, throat and leg, skew table of docs/methods/section.md.
    const Row rows[] = {
        {60.0, {5.77, 0.005, Origin::computed, "docs/methods/section.md, skew table"}},
        {75.0, {6.30, 0.005, Origin::computed, "docs/methods/section.md, skew table"}},
        {90.0, {7.07, 0.005, Origin::computed, "docs/methods/section.md, skew table"}},
        {105.0, {8.21, 0.005, Origin::computed, "docs/methods/section.md, skew table"}},
        {120.0, {10.00, 0.005, Origin::computed, "docs/methods/section.md, skew table"}},
        {135.0, {13.07, 0.005, Origin::computed, "docs/methods/section.md, skew table"}},
    };
    for (const Row& row : rows) {
      check_expected(std::to_string(row.psi_deg) + " deg",
                     leg_from_throat_mm(5.0, Angle::deg(row.psi_deg)),
                     row.leg);
    }
  }

  TEST_CASE("given 120 deg between plates, the leg is twice the throat") {
    check_expected("throat 4 mm",
                   leg_from_throat_mm(4.0, Angle::deg(120.0)),
                   {8.0, 1e-12, Origin::closed_form, "half of an equilateral triangle"});
  }

  TEST_CASE("for any throat, law: the leg grows in proportion and is longer than the throat") {
    for (double psi_deg = 1.0; psi_deg < 180.0; psi_deg += 7.0) {
      INFO(psi_deg);
      const double leg = leg_from_throat_mm(3.0, Angle::deg(psi_deg));
      CHECK(leg > 3.0);
      CHECK(leg_from_throat_mm(6.0, Angle::deg(psi_deg)) ==
            doctest::Approx(2.0 * leg).epsilon(1e-12));
    }
  }

  TEST_CASE(
      "refuses a throat or an angle that encloses no triangle because that is a caller's bug") {
    CHECK_THROWS_AS((void)leg_from_throat_mm(0.0, Angle::deg(90.0)), base::ContractViolation);
    CHECK_THROWS_AS((void)leg_from_throat_mm(-1.0, Angle::deg(90.0)), base::ContractViolation);
    CHECK_THROWS_AS((void)leg_from_throat_mm(5.0, Angle::deg(0.0)), base::ContractViolation);
    CHECK_THROWS_AS((void)leg_from_throat_mm(5.0, Angle::deg(180.0)), base::ContractViolation);
    CHECK(leg_from_throat_mm(5.0, Angle::deg(179.0)) > 500.0);
    CHECK(leg_from_throat_mm(5.0, Angle::deg(0.1)) < 5.001);
  }

  TEST_CASE("given each preparation, its name is the element of the weldment file") {
    CHECK(joint::preparation_name(joint::Fillet{}) == "fillet");
    CHECK(joint::preparation_name(joint::square_butt(0.0)) == "square");
    CHECK(joint::preparation_name(joint::single_v({}, {})) == "single-v");
    CHECK(joint::preparation_name(joint::single_bevel({}, {})) == "single-bevel");
    CHECK(joint::is_fillet(joint::Fillet{}));
    CHECK_FALSE(joint::is_fillet(joint::square_butt(0.0)));
    CHECK_FALSE(joint::is_fillet(joint::single_v({}, {})));
    CHECK_FALSE(joint::is_fillet(joint::single_bevel({}, {})));
  }
}

}  // namespace seamturn::tests
