// SPDX-License-Identifier: MIT
// Cooling of whole parts, and the heat of steel.
#include "detail_figures.hpp"
#include "seamturn/cooling/part_cooling.hpp"
#include "seamturn/cooling/steel_heat.hpp"

namespace seamturn::figures::detail {

Answer part_cooling_figure(Arguments& arguments) {
  constexpr double absolute_zero_c = -273.15;
  arguments.require_positive({"thickness", "face-loss", "emissivity"});
  cooling::PartCooling part;
  part.thickness_mm = arguments.number("thickness");
  part.from_c = arguments.number("from");
  part.to_c = arguments.number("to");
  part.ambient_c = arguments.number("ambient", part.ambient_c);
  part.face_loss_w_m2_k = arguments.number("face-loss", part.face_loss_w_m2_k);
  part.emissivity = arguments.number("emissivity");
  if (arguments.has("emissivity") && !arguments.has("face-loss")) {
    arguments.add_usage(
        "emissivity= needs face-loss= of the air alone, about 5 in still air: the usual 15 holds "
        "radiation already");
  }
  if (part.emissivity > 1.0) arguments.add_bad_value("emissivity= must not be above 1");
  if (!(part.from_c > part.to_c)) arguments.add_bad_value("from= must be above to=");
  for (const char* key : {"from", "to", "ambient"}) {
    if (arguments.number(key) <= absolute_zero_c) {
      arguments.add_bad_value(std::string(key) + "= must be above absolute zero");
    }
  }
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<cooling::PartCoolingTime> cooled = cooling::part_cooling(part);
  if (!cooled) return cooled.error();
  return ResultMaker("part-cooling")
      .principal(cooled->time_s, "s")
      .value("biot", cooled->biot, "1")
      .value("hottest_loss_w_m2_k", cooled->hottest_loss_w_m2_k, "W/m2 K")
      .value("holds_for", std::string("a part warm all through, not beside a fresh bead"))
      .done();
}

Answer steel_heat_figure(Arguments& arguments) {
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<cooling::SteelHeat> heat =
      cooling::steel_heat(arguments.number("temperature"));
  if (!heat) return heat.error();
  return ResultMaker("steel-heat")
      .principal(heat->specific_heat_j_kg_k, "J/kg K")
      .value("conductivity_w_m_k", heat->conductivity_w_m_k, "W/m K")
      .done();
}

}  // namespace seamturn::figures::detail
