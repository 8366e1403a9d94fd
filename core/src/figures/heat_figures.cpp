// SPDX-License-Identifier: MIT
#include "detail_figures.hpp"
#include "seamturn/heat/cooling_time.hpp"
#include "seamturn/heat/heat_input.hpp"

namespace seamturn::figures::detail {

namespace {

heat::ArcParams arc_of(Arguments& arguments) {
  const heat::ArcParams arc{
      arguments.number("voltage"), arguments.number("current"), arguments.number("travel")};
  if (!(arc.voltage_v > 0.0 && arc.current_a > 0.0 && arc.travel_mm_s > 0.0)) {
    arguments.add_bad_value("voltage, current and travel must be above zero");
  }
  return arc;
}

}  // namespace

Answer arc_energy_figure(Arguments& arguments) {
  const heat::ArcParams arc = arc_of(arguments);
  if (!arguments.good()) return FigureResult{};
  return ResultMaker("arc-energy").principal(heat::arc_energy_kj_mm(arc), "kJ/mm").done();
}

Answer heat_input_figure(Arguments& arguments) {
  const heat::ArcParams arc = arc_of(arguments);
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<double> factor = heat::arc_efficiency_ratio(arguments.text("process"));
  const base::Outcome<double> heat = heat::heat_input_kj_mm(arguments.text("process"), arc);
  if (!heat) return heat.error();
  return ResultMaker("heat-input")
      .principal(heat.value(), "kJ/mm")
      .value("arc_energy_kj_mm", heat::arc_energy_kj_mm(arc), "kJ/mm")
      .value("k_ratio", factor.value(), "")
      .done();
}

Answer cooling_time_figure(Arguments& arguments) {
  heat::CoolingParams params;
  params.weld = static_cast<heat::CoolingCase>(
      arguments.choice("case", {"run-on-plate", "butt", "fillet-tee", "fillet-corner"}));
  params.heat_input_kj_mm = arguments.number("heat-input");
  params.thickness_mm = arguments.number("thickness");
  params.start_c = arguments.number("start");
  if (!(params.heat_input_kj_mm > 0.0 && params.thickness_mm > 0.0)) {
    arguments.add_bad_value("heat-input and thickness must be above zero");
  }
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<heat::CoolingTime> time = heat::cooling_time(params);
  if (!time) return time.error();
  ResultMaker result("cooling-time");
  result.principal(time->t85_s, "s")
      .value("flow", std::string(heat::heat_flow_name(time->flow)))
      .value("transition_thickness_mm", time->transition_thickness_mm, "mm")
      .value("t85_3d_s", time->t85_3d_s, "s")
      .value("t85_2d_s", time->t85_2d_s, "s")
      .value("factor_2d", time->factor_2d, "")
      .value("factor_3d", time->factor_3d, "");
  if (time->t85_2d_long_s > time->t85_2d_s) result.value("t85_2d_long_s", time->t85_2d_long_s, "s");
  return result.findings(time->findings).done();
}

}  // namespace seamturn::figures::detail
