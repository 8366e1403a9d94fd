// SPDX-License-Identifier: MIT
#include <array>
#include <cmath>

#include "detail_figures.hpp"
#include "seamturn/material/carbon_equivalent.hpp"
#include "seamturn/process/deposit.hpp"
#include "seamturn/section/weld_section.hpp"

namespace seamturn::figures::detail {

namespace {

using base::Angle;

material::Composition composition_of(Arguments& arguments) {
  material::Composition out;
  const std::array<std::pair<std::string_view, double*>, 15> elements = {{
      {"C", &out.c},
      {"Si", &out.si},
      {"Mn", &out.mn},
      {"P", &out.p},
      {"S", &out.s},
      {"Cr", &out.cr},
      {"Mo", &out.mo},
      {"V", &out.v},
      {"Ni", &out.ni},
      {"Cu", &out.cu},
      {"Nb", &out.nb},
      {"Ti", &out.ti},
      {"Al", &out.al},
      {"B", &out.b},
      {"N", &out.n},
  }};
  for (const auto& [symbol, target] : elements) {
    *target = arguments.number(symbol);
    if (*target < 0.0 || *target > 100.0) {
      arguments.add_bad_value("key " + std::string(symbol) + "=: mass-% lies between 0 and 100");
    }
  }
  return out;
}

process::Wire wire_of(Arguments& arguments) {
  process::Wire wire;
  wire.diameter_mm = arguments.number("wire");
  wire.efficiency_ratio = arguments.number("efficiency");
  wire.linear_mass_kg_m = arguments.find_number("linear-mass");
  if (!(wire.diameter_mm > 0.0)) arguments.add_bad_value("wire must be above zero");
  if (!(wire.efficiency_ratio > 0.0 && wire.efficiency_ratio <= 1.0)) {
    arguments.add_bad_value("efficiency lies above 0 and up to 1 (100 %)");
  }
  if (wire.linear_mass_kg_m && !(*wire.linear_mass_kg_m > 0.0)) {
    arguments.add_bad_value("linear-mass must be above zero");
  }
  if (!(arguments.number("feed") > 0.0)) arguments.add_bad_value("feed must be above zero");
  return wire;
}

/// Keys a preparation needs beyond its name; the card cannot know them all.
void require_keys(Arguments& arguments, std::initializer_list<std::string_view> keys) {
  for (const std::string_view key : keys) {
    if (!arguments.has(key)) {
      arguments.add_usage("preparation " + arguments.text("preparation") + " needs " +
                          std::string(key) + "=");
    }
  }
}

joint::Fillet fillet_of(Arguments& arguments, Angle between) {
  const int ways = (arguments.has("leg") ? 1 : 0) + (arguments.has("throat") ? 1 : 0) +
                   (arguments.has("leg-1") || arguments.has("leg-2") ? 1 : 0);
  if (ways != 1 || arguments.has("leg-1") != arguments.has("leg-2")) {
    arguments.add_usage("a fillet takes exactly one of leg=, throat=, or leg-1= with leg-2=");
    return joint::Fillet{};
  }
  if (arguments.has("leg-1")) {
    return joint::Fillet{arguments.number("leg-1"), arguments.number("leg-2")};
  }
  if (arguments.has("leg")) return joint::Fillet{arguments.number("leg"), arguments.number("leg")};
  const double throat = arguments.number("throat");
  const bool sane = throat > 0.0 && between.rad() > 0.0 && between < Angle::deg(180.0);
  // Refused with its reason by the calculation; a leg of the same sign stands in until then.
  const double leg = sane ? joint::leg_from_throat_mm(throat, between) : throat;
  return joint::Fillet{leg, leg};
}

section::SectionParams section_params(Arguments& arguments) {
  section::SectionParams params;
  const std::size_t kind =
      arguments.choice("preparation", {"fillet", "square", "single-v", "single-bevel"});
  params.thickness_mm = arguments.number("thickness");
  params.depth_mm = arguments.number("depth");
  params.cap.height_mm = arguments.number("cap-height");
  params.cap.toe_lap_mm = arguments.number("toe-lap");
  const double gap = arguments.number("gap");
  const double root_face = arguments.number("root-face");
  const Angle angle = Angle::rad(arguments.number("angle", Angle::deg(90.0).rad()));
  if (kind == 0) {
    params.between_plates = angle;
    params.preparation = fillet_of(arguments, angle);
  } else if (kind == 1) {
    require_keys(arguments, {"thickness", "gap"});
    params.preparation = joint::SquareButt{gap};
  } else if (kind == 2) {
    require_keys(arguments, {"thickness", "gap", "root-face", "angle"});
    params.preparation = joint::SingleV{gap, root_face, angle};
  } else {
    require_keys(arguments, {"thickness", "gap", "root-face", "angle"});
    params.preparation = joint::SingleBevel{gap, root_face, angle};
  }
  return params;
}

}  // namespace

Answer carbon_equivalent_figure(Arguments& arguments) {
  const std::size_t formula = arguments.choice("method", {"iiw", "cet", "pcm", "cen", "jis"});
  const material::Composition composition = composition_of(arguments);
  if (!arguments.good()) return FigureResult{};
  const auto equivalent =
      material::carbon_equivalent(static_cast<material::CarbonFormula>(formula), composition);
  if (!equivalent) return equivalent.error();
  return ResultMaker("carbon-equivalent")
      .principal(equivalent->value, "mass-%")
      .findings(equivalent->findings)
      .done();
}

Answer section_figure(Arguments& arguments) {
  const section::SectionParams params = section_params(arguments);
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<section::WeldSection> section = section::weld_section(params);
  if (!section) return section.error();
  ResultMaker result("section");
  result.principal(section->area_mm2, "mm2")
      .value("area_mm2", section->area_mm2, "mm2")
      .value("opening_mm", section->opening_mm, "mm")
      .value("throat_mm", section->throat_mm, "mm");
  if (section->is_fillet) {
    result.value("leg_1_mm", section->leg_1_mm, "mm").value("leg_2_mm", section->leg_2_mm, "mm");
  } else {
    result.value("cap_area_mm2", section->cap_area_mm2, "mm2");
  }
  return result
      .value("metal_kg_m", section->area_mm2 * process::steel_density_kg_mm3 * 1000.0, "kg/m")
      .findings(section->findings)
      .done();
}

Answer deposit_figure(Arguments& arguments) {
  const process::Wire wire = wire_of(arguments);
  if (!arguments.good()) return FigureResult{};
  const process::Deposit deposit = process::deposit_rate(wire, arguments.number("feed"));
  return ResultMaker("deposit")
      .principal(deposit.deposit_kg_h, "kg/h")
      .value("melt_off_kg_h", deposit.melt_off_kg_h, "kg/h")
      .value("wire_m_kg", deposit.wire_m_kg, "m/kg")
      .done();
}

Answer bead_figure(Arguments& arguments) {
  const process::Wire wire = wire_of(arguments);
  const double travel = arguments.number("travel");
  if (!(travel > 0.0)) arguments.add_bad_value("travel must be above zero");
  if (!arguments.good()) return FigureResult{};
  const double area = process::bead_area_mm2(wire, arguments.number("feed"), travel);
  return ResultMaker("bead")
      .principal(area, "mm2")
      .value("flat_fillet_leg_mm", std::sqrt(2.0 * area), "mm")
      .value("deposit_kg_h",
             process::deposit_rate(wire, arguments.number("feed")).deposit_kg_h,
             "kg/h")
      .done();
}

}  // namespace seamturn::figures::detail
