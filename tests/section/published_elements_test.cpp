// SPDX-License-Identifier: MIT
// Doubles, single elements and known misprints of the printed weights.
#include <cmath>
#include <string>

#include "oracles/elements.hpp"
#include "seamturn/process/deposit.hpp"
#include "seamturn/section/weld_section.hpp"

namespace seamturn::tests {

using base::Angle;

namespace {

section::WeldSection made(const joint::Preparation& preparation, double thickness_mm) {
  section::SectionParams params;
  params.preparation = preparation;
  params.thickness_mm = thickness_mm;
  const auto got = section::weld_section(params);
  REQUIRE(got.has_value());
  return *got;
}

double element_area_mm2(double thickness_in, double gap_in, double angle_deg) {
  const joint::Preparation element =
      angle_deg > 0.0 ? joint::Preparation(joint::single_bevel({}, Angle::deg(angle_deg)))
                      : joint::Preparation(joint::square_butt(gap_in * inch_mm));
  return made(element, thickness_in * inch_mm).area_mm2;
}

}  // namespace

TEST_SUITE("section/published_elements") {
  TEST_CASE("given FMH-9 elements summed, double V and double bevel weigh what is printed") {
    for (const DoubleGrooveRow& row : double_groove_rows) {
      double area_mm2 = 0.0;
      for (const double depth_in : row.depth_in) {
        const double gap_mm = row.gap_in * inch_mm;
        const Angle angle = Angle::deg(row.angle_deg);
        const joint::Preparation half =
            row.is_v ? joint::Preparation(joint::single_v({gap_mm, 0.0}, angle))
                     : joint::Preparation(joint::single_bevel({gap_mm, 0.0}, angle));
        area_mm2 += made(half, depth_in * inch_mm).area_mm2;
      }
      check_expected(row.item, element_lb_ft(area_mm2), row.lb_ft);
    }
  }

  TEST_CASE("given FMH-9 single elements, they weigh what is printed") {
    for (const ElementRow& row : element_rows) {
      check_expected(row.item,
                     element_lb_ft(element_area_mm2(row.thickness_in, row.gap_in, row.angle_deg)),
                     row.lb_ft);
    }
  }

  TEST_CASE("given FMH-9 misprints, the section is what was meant and the print is off") {
    for (const MisprintRow& row : misprint_rows) {
      INFO(row.item);
      const double area_mm2 = element_area_mm2(row.thickness_in, row.gap_in, row.angle_deg);
      CHECK(std::abs(element_lb_ft(area_mm2) - row.printed_lb_ft) > 0.0015);
      CHECK(std::abs(element_lb_ft(area_mm2) - row.meant_lb_ft) <= 0.0005);
      if (row.printed_kg_m > 0.0) {
        CHECK(std::abs(element_kg_m(area_mm2) - row.printed_kg_m) > 0.0015);
        // The metric twin converts the misprint.
        CHECK(row.printed_kg_m == doctest::Approx(row.printed_lb_ft * 1.48816).epsilon(1e-3));
      }
    }
    const double weight_kg_m = misprinted_volume_cm3_m * process::steel_density_kg_mm3 * 1000.0;
    CHECK(weight_kg_m == doctest::Approx(0.192).epsilon(2e-3));
    CHECK(std::abs(weight_kg_m - misprinted_weight_kg_m) > 0.02);
  }

  TEST_CASE("given JWC fillets by covered electrode, a metre uses what is printed") {
    for (const CoveredConsumptionRow& row : covered_consumption_rows) {
      const double area_mm2 = made(joint::Fillet{row.leg_mm, row.leg_mm}, 0.0).area_mm2;
      check_expected("leg " + std::to_string(row.leg_mm),
                     1.2 * area_mm2 * process::steel_density_kg_mm3 * 1000.0 / 0.55,
                     row.kg_m);
    }
  }

  TEST_CASE("given the opening rule of GB/T 10854, a V opens as it says") {
    for (const OpeningRow& row : opening_rows) {
      const joint::Groove v =
          joint::single_v({row.gap_mm, row.root_face_mm}, Angle::deg(row.included_deg));
      check_expected(row.item, made(v, row.thickness_mm).opening_mm, row.opening_mm);
    }
  }
}

}  // namespace seamturn::tests
