// SPDX-License-Identifier: MIT
// `seamturn figure section`: every preparation from its sizes.
#include "detail_figures.hpp"
#include "detail_preparation.hpp"
#include "seamturn/process/deposit.hpp"

namespace seamturn::figures::detail {

namespace {

using section::WeldSection;

void add_side_values(ResultMaker& result, const std::vector<WeldSection>& sides) {
  if (sides.size() < 2) return;
  result.value("side_1_area_mm2", sides[0].area_mm2, "mm2")
      .value("side_2_area_mm2", sides[1].area_mm2, "mm2")
      .value("opening_2_mm", sides[1].opening_mm, "mm");
}

}  // namespace

Answer section_figure(Arguments& arguments) {
  const section::SectionParams params = section_params(arguments);
  if (!arguments.good()) return FigureResult{};
  const auto sides = sides_of(params);
  if (!sides) return sides.error();
  const WeldSection& first = sides->front();
  double area_mm2 = 0.0;
  double cap_mm2 = 0.0;
  for (const WeldSection& side : *sides) {
    area_mm2 += side.area_mm2;
    cap_mm2 += side.cap_area_mm2;
  }
  ResultMaker result("section");
  if (first.welded_round_mm > 0.0) {
    const double volume_mm3 = area_mm2 * first.welded_round_mm;
    return result.principal(volume_mm3, "mm3")
        .value("area_mm2", area_mm2, "mm2")
        .value("welded_round_mm", first.welded_round_mm, "mm")
        .value("metal_kg", volume_mm3 * process::steel_density_kg_mm3, "kg")
        .done();
  }
  result.principal(area_mm2, "mm2")
      .value("area_mm2", area_mm2, "mm2")
      .value("opening_mm", first.opening_mm, "mm")
      .value("throat_mm", first.throat_mm, "mm");
  if (first.is_fillet) {
    result.value("leg_1_mm", first.leg_1_mm, "mm").value("leg_2_mm", first.leg_2_mm, "mm");
  } else {
    result.value("cap_area_mm2", cap_mm2, "mm2");
  }
  add_side_values(result, *sides);
  return result.value("metal_kg_m", area_mm2 * process::steel_density_kg_mm3 * 1000.0, "kg/m")
      .findings(first.findings)
      .done();
}

}  // namespace seamturn::figures::detail
