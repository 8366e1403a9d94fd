// SPDX-License-Identifier: MIT
#include <array>
#include <cmath>

#include "detail_figures.hpp"
#include "seamturn/material/carbon_equivalent.hpp"
#include "seamturn/process/deposit.hpp"

namespace seamturn::figures::detail {

namespace {

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

}  // namespace

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
