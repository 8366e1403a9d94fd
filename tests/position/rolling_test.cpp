// SPDX-License-Identifier: MIT
#include "seamturn/position/rolling.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using position::RollingLead;
using process::PassRole;

namespace {

RollingLead by_length(double over_mm, std::optional<double> up_to_mm, double lead_mm) {
  RollingLead row;
  row.process = "121";
  row.over_mm = over_mm;
  row.up_to_mm = up_to_mm;
  row.lead_mm = lead_mm;
  return row;
}

RollingLead by_angle(std::vector<PassRole> roles, double deg) {
  RollingLead row;
  row.process = "135";
  row.roles = std::move(roles);
  row.lead = Angle::deg(deg);
  return row;
}

double lead_deg(const std::vector<RollingLead>& rows, const position::LeadKey& key) {
  return position::rolling_lead(rows, key).deg();
}

}  // namespace

TEST_SUITE("position/rolling") {
  TEST_CASE("given published leads by outside diameter, angles are length over radius") {
    // published: TWI-SAW-RING, table of leads (submerged arc). Angles computed, last digit printed.
    const std::vector<RollingLead> rows = {by_length(25, 75, 12),
                                           by_length(75, 450, 22),
                                           by_length(450, 900, 34),
                                           by_length(900, 1050, 40),
                                           by_length(1050, 1200, 50),
                                           by_length(1200, 1800, 55),
                                           by_length(1800, std::nullopt, 75)};
    struct Row {
      double outside_mm, angle_deg;
    };
    const Row expected[] = {
        {300, 8.40}, {600, 6.49}, {1000, 4.58}, {1200, 4.77}, {1500, 4.20}, {2500, 3.44}};
    for (const Row& row : expected) {
      check_expected("outside " + std::to_string(row.outside_mm),
                     lead_deg(rows, {"121", PassRole::fill, row.outside_mm}),
                     {row.angle_deg, 0.005, Origin::computed, "TWI-SAW-RING lead over radius"});
    }
    // computed: 12 mm on 50 mm outside are 27.5 deg, beyond PA, so cut off at its border.
    check_expected("outside 50",
                   lead_deg(rows, {"121", PassRole::fill, 50.0}),
                   {15.0, 1e-9, Origin::computed, "ISO 6947, remembered: PA to 15 deg"});
    // closed form: 22 mm are 15 deg at a radius of 22 / 0.2618 = 84.03 mm.
    CHECK(lead_deg(rows, {"121", PassRole::fill, 168.0}) == doctest::Approx(15.0));
    CHECK(lead_deg(rows, {"121", PassRole::fill, 168.2}) < 15.0);
    // A diameter on a border belongs to the smaller rings; below the table nothing is known.
    CHECK(lead_deg(rows, {"121", PassRole::fill, 450.0}) == doctest::Approx(5.602).epsilon(1e-3));
    CHECK(lead_deg(rows, {"121", PassRole::fill, 450.1}) == doctest::Approx(8.654).epsilon(1e-3));
    CHECK(lead_deg(rows, {"121", PassRole::fill, 25.0}) == 0.0);
    CHECK(lead_deg(rows, {"135", PassRole::fill, 300.0}) == 0.0);
  }

  TEST_CASE("for rows by role, the one that names the role goes before the one for all") {
    const std::vector<RollingLead> rows = {by_angle({}, 5.0),
                                           by_angle({PassRole::root}, 2.0),
                                           by_angle({PassRole::root, PassRole::cap}, 9.0)};
    CHECK(lead_deg(rows, {"135", PassRole::root, 200.0}) == doctest::Approx(2.0));
    CHECK(lead_deg(rows, {"135", PassRole::cap, 200.0}) == doctest::Approx(9.0));
    CHECK(lead_deg(rows, {"135", PassRole::fill, 200.0}) == doctest::Approx(5.0));
  }

  TEST_CASE("given five travels and radii, turning speed and time of a turn are as in the table") {
    struct Row {
      double travel_mm_s, radius_mm, deg_s, rpm, turn_s;
    };
    // computed by script: omega = v / r, docs/methods/stance.md.
    const Row rows[] = {{8, 250, 1.8335, 0.3056, 196.35},
                        {10, 500, 1.1459, 0.1910, 314.16},
                        {6, 100, 3.4377, 0.5730, 104.72},
                        {12, 1000, 0.6875, 0.1146, 523.60},
                        {5, 57.15, 5.0128, 0.8355, 71.82}};
    for (const Row& row : rows) {
      const double rad_s = position::rolling_speed_rad_s(row.travel_mm_s, row.radius_mm);
      const std::string name = "radius " + std::to_string(row.radius_mm);
      check_expected(name, Angle::rad(rad_s).deg(), {row.deg_s, 5e-5, Origin::computed, "v / r"});
      check_expected(name,
                     Angle::rad(60.0 * rad_s).deg() / 360.0,
                     {row.rpm, 5e-5, Origin::computed, "60 v / (2 pi r)"});
      check_expected(name,
                     position::rolling_time_s(row.travel_mm_s, row.radius_mm, Angle::deg(360.0)),
                     {row.turn_s, 5e-3, Origin::computed, "2 pi r / v"});
    }
  }

  TEST_CASE(
      "for a layer 10 mm farther out on 100 mm, the same turning speed is 10 percent faster") {
    const double drawn_rad_s = position::rolling_speed_rad_s(8.0, 100.0);
    const double layer_rad_s = position::rolling_speed_rad_s(8.0, 110.0);
    check_expected("travel at the drawn speed",
                   drawn_rad_s * 110.0,
                   {8.8, 1e-12, Origin::closed_form, "v r' / r"});
    CHECK(layer_rad_s * 110.0 == doctest::Approx(8.0));
  }

  TEST_CASE("given an overlap, closed form: a pass takes its length round and the overlap") {
    const double round_rad = 2.0 * std::acos(-1.0) + 20.0 / 250.0;
    check_expected("20 mm of overlap on 250 mm at 8 mm/s",
                   position::rolling_time_s(8.0, 250.0, Angle::rad(round_rad)),
                   {198.85, 5e-3, Origin::closed_form, "(2 pi r + l) / v"});
  }

  TEST_CASE("refuses a ring without a diameter because no arc has an angle there") {
    CHECK_THROWS_AS(static_cast<void>(position::lead_angle(by_angle({}, 5.0), 0.0)),
                    base::ContractViolation);
    CHECK_THROWS_AS(static_cast<void>(position::rolling_speed_rad_s(8.0, 0.0)),
                    base::ContractViolation);
  }
}

}  // namespace seamturn::tests
