// SPDX-License-Identifier: MIT
// What goes with the heat of a joint: thickness, zone, interpass, hold, soak, hardness, tearing.
#include <algorithm>

#include "detail_figures.hpp"
#include "seamturn/heat/hardness.hpp"
#include "seamturn/heat/heat_input_band.hpp"
#include "seamturn/heat/hold_time.hpp"
#include "seamturn/heat/hydrogen_soak.hpp"
#include "seamturn/heat/interpass.hpp"
#include "seamturn/heat/lamellar_tearing.hpp"
#include "seamturn/heat/preheat_zone.hpp"
#include "seamturn/heat/thickness_seen.hpp"

namespace seamturn::figures::detail {

namespace {

bool yes(Arguments& arguments, std::string_view key) {
  return arguments.has(key) && arguments.choice(key, {"no", "yes"}) == 1;
}

}  // namespace

Answer combined_thickness_figure(Arguments& arguments) {
  arguments.require_positive({"thickness-1", "thickness-2", "thickness-3"});
  const bool opposed = yes(arguments, "opposed");
  if (!arguments.good()) return FigureResult{};
  std::vector<heat::HeatPath> paths;
  for (const char* key : {"thickness-1", "thickness-2", "thickness-3"}) {
    if (const std::optional<double> number = arguments.find_number(key)) {
      paths.push_back({key, *number});
    }
  }
  return ResultMaker("combined-thickness")
      .principal(heat::combined_thickness_mm(paths, opposed), "mm")
      .value("sum", heat::combined_thickness_text(paths, opposed))
      .value("averaged_over_mm", heat::averaging_mm, "mm")
      .done();
}

Answer interpass_figure(Arguments& arguments) {
  std::vector<heat::InterpassLimit> limits;
  for (const char* key : {"steel", "second-steel", "wire", "record", "file"}) {
    if (const std::optional<double> number = arguments.find_number(key)) {
      limits.push_back({*number, key});
    }
  }
  if (arguments.good() && limits.empty()) {
    arguments.add_usage("state at least one limit: steel= second-steel= wire= record= file=");
  }
  if (!arguments.good()) return FigureResult{};
  const std::optional<heat::InterpassLimit> lowest = heat::governing_interpass(limits);
  const std::optional<double> preheat = arguments.find_number("preheat");
  if (preheat && *preheat >= lowest->max_c) {
    return base::Refusal{"heat.preheat.above_interpass",
                         "the preheat is not below the interpass maximum that " +
                             lowest->stated_by +
                             "= states; take lower hydrogen, more heat input, another steel or "
                             "filler"};
  }
  return ResultMaker("interpass")
      .principal(lowest->max_c, "degC")
      .value("governed_by", lowest->stated_by)
      .done();
}

Answer preheat_zone_figure(Arguments& arguments) {
  arguments.require_positive({"thickness"});
  if (!arguments.good()) return FigureResult{};
  const double thickness = arguments.number("thickness");
  return ResultMaker("preheat-zone")
      .principal(heat::zone_width_mm(thickness), "mm")
      .value("measure_distance_mm", heat::measure_distance_mm(thickness), "mm")
      .value("soak_time_s", heat::soak_time_s(thickness), "s")
      .value("where", heat::where_to_measure(thickness))
      .done();
}

Answer hold_time_figure(Arguments& arguments) {
  arguments.require_positive({"size", "heat-input", "yield"});
  if (!arguments.good()) return FigureResult{};
  const heat::HoldTime hold = heat::hold_time(
      {arguments.number("size"), arguments.number("heat-input"), arguments.number("yield")});
  ResultMaker result("hold-time");
  result.principal(hold.hours, "h");
  if (hold.cooling_only) result.value("meaning", std::string("cooling only"));
  return result.value("row", hold.row).value("column", hold.column).findings(hold.findings).done();
}

Answer hydrogen_soak_figure(Arguments& arguments) {
  arguments.require_positive({"thickness"});
  if (!arguments.good()) return FigureResult{};
  const heat::HydrogenSoak soak = heat::hydrogen_soak(arguments.number("thickness"));
  return ResultMaker("hydrogen-soak")
      .principal(soak.hours, "h")
      .value("least_c", soak.least_c, "degC")
      .value("usual_c", soak.usual_c, "degC")
      .value("most_c", soak.most_c, "degC")
      .value("advice", soak.text)
      .done();
}

Answer hardness_figure(Arguments& arguments) {
  arguments.require_positive({"t85"});
  const material::Composition composition = composition_of(arguments);
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<heat::Hardness> hardness =
      heat::hardness({composition, arguments.number("t85")});
  if (!hardness) return hardness.error();
  return ResultMaker("hardness")
      .principal(hardness->highest_hv, "HV")
      .value("estimate", std::string("highest of three; no proof"))
      .value("lowest_hv", hardness->lowest_hv, "HV")
      .value("scatter_hv", heat::hardness_scatter_hv, "HV")
      .value("dueren_hv", hardness->dueren_hv, "HV")
      .value("yurioka_hv", hardness->yurioka_hv, "HV")
      .value("suzuki_hv", hardness->suzuki_hv, "HV")
      .findings(hardness->findings)
      .done();
}

Answer lamellar_tearing_figure(Arguments& arguments) {
  arguments.require_positive({"depth", "through-thickness"});
  heat::TearingParams params;
  params.effective_depth_mm = arguments.number("depth");
  params.through_thickness_mm = arguments.number("through-thickness");
  params.shape = static_cast<heat::TearingShape>(arguments.choice("shape",
                                                                  {"not-in-tension",
                                                                   "bevel-through",
                                                                   "single-run-fillet",
                                                                   "multi-run-fillet",
                                                                   "sequenced-penetration",
                                                                   "penetration",
                                                                   "corner"}));
  params.restraint =
      static_cast<joint::Restraint>(arguments.choice("restraint", {"low", "medium", "high"}));
  params.preheat_c = arguments.number("preheat");
  params.compressed_statically = yes(arguments, "compressed");
  const std::size_t plate = arguments.has("plate-class")
                                ? arguments.choice("plate-class", {"none", "Z15", "Z25", "Z35"})
                                : 0;
  if (!arguments.good()) return FigureResult{};
  const heat::Tearing tearing = heat::lamellar_tearing(params);
  ResultMaker result("lamellar-tearing");
  result.principal(tearing.total, "points")
      .value("za_depth", tearing.za, "points")
      .value("zb_shape", tearing.zb, "points")
      .value("zc_thickness", tearing.zc, "points")
      .value("zd_restraint", tearing.zd, "points")
      .value("ze_preheat", tearing.ze, "points")
      .value("required_class", std::string(heat::z_class_name(tearing.required)));
  if (arguments.has("plate-class")) {
    const auto verdict = heat::compare(tearing.required, static_cast<heat::ZClass>(plate));
    result.value("plate", std::string(heat::tearing_verdict_name(verdict)));
  }
  return result.findings(tearing.findings).done();
}

Answer heat_band_figure(Arguments& arguments) {
  arguments.require_positive({"thickness", "t85-min", "t85-max"});
  heat::BandParams params;
  params.weld = static_cast<heat::CoolingCase>(
      arguments.choice("case", {"run-on-plate", "butt", "fillet-tee", "fillet-corner"}));
  params.thickness_mm = arguments.number("thickness");
  params.coolest_start_c = arguments.number("preheat");
  params.hottest_start_c = arguments.number("interpass");
  params.t85_least_s = arguments.number("t85-min");
  params.t85_most_s = arguments.number("t85-max");
  if (!(params.t85_least_s < params.t85_most_s)) {
    arguments.add_bad_value("t85-min= must be below t85-max=");
  }
  if (params.coolest_start_c > params.hottest_start_c) {
    arguments.add_bad_value("preheat= must not be above interpass=");
  }
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<heat::HeatInputBand> band = heat::heat_input_band(params);
  if (!band) return band.error();
  return ResultMaker("heat-band")
      .principal(band->least_kj_mm, "kJ/mm")
      .value("least_kj_mm", band->least_kj_mm, "kJ/mm")
      .value("least_flow", std::string(heat::heat_flow_name(band->least_flow)))
      .value("most_kj_mm", band->most_kj_mm, "kJ/mm")
      .value("most_flow", std::string(heat::heat_flow_name(band->most_flow)))
      .value("bead_end_ratio", heat::bead_end_ratio, "")
      .findings(band->findings)
      .done();
}

}  // namespace seamturn::figures::detail
