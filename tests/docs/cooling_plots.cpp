// SPDX-License-Identifier: MIT
#include "docs/method_plots.hpp"
#include "seamturn/cooling/part_cooling.hpp"
#include "seamturn/cooling/warm_strip.hpp"
#include "seamturn/heat/preheat_zone.hpp"

namespace seamturn::tests {

namespace {

constexpr double min_s = 60.0;

NamedPlot strip_plot() {
  NamedPlot out{"warm-strip.svg",
                {"What is left of a preheat at the weld line, strip of 76 mm on each side",
                 {"time after heating, min", {0, 5, 10, 15, 20, 25, 30}},
                 {"rise left, %", {0, 20, 40, 60, 80, 100}},
                 std::nullopt,
                 {}}};
  for (const double thickness_mm : {60.0, 20.0, 10.0}) {
    cooling::WarmStrip strip;
    strip.thickness_mm = thickness_mm;
    strip.half_width_mm = heat::zone_width_mm(thickness_mm);
    const std::string mm = base::digits_text(thickness_mm) + " mm";
    out.plot.curves.push_back(curve_of(mm + ", heated through", 0.01, 30.0, 60, [&](double t) {
      return 100.0 * cooling::heated_through_left_ratio(strip, t * min_s);
    }));
    out.plot.curves.back().dashed = true;
    out.plot.curves.push_back(curve_of(mm + ", strip only", 0.01, 30.0, 60, [&](double t) {
      return 100.0 * cooling::strip_left_ratio(strip, t * min_s);
    }));
  }
  return out;
}

NamedPlot pass_plot() {
  NamedPlot out{"tail-and-lump.svg",
                {"Rise after one pass of 1.5 kJ/mm on 12 mm plate",
                 {"time after the arc, s", {30, 100, 300, 1000}, true},
                 {"rise, K", {0, 100, 200, 300, 400, 500}},
                 std::nullopt,
                 {}}};
  cooling::CoolingPlate plate;
  plate.thickness_mm = 12.0;
  for (const double width_mm : {100.0, 200.0, 400.0}) {
    plate.width_mm = width_mm;
    out.plot.curves.push_back(curve_of(
        "lump, " + base::digits_text(width_mm) + " mm wide",
        30.0,
        1000.0,
        60,
        [&plate](double t) { return cooling::lump_rise_k(plate, 1.5, t); },
        true));
    out.plot.curves.back().dashed = true;
  }
  out.plot.curves.push_back(curve_of(
      "tail",
      30.0,
      1000.0,
      60,
      [&plate](double t) { return cooling::tail_rise_k(plate, 1.5, t); },
      true));
  return out;
}

/// The other way round, by halving.
double temperature_after_c(cooling::PartCooling part, double time_s) {
  double low_c = part.ambient_c, high_c = part.from_c;
  for (int i = 0; i < 40; ++i) {
    part.to_c = 0.5 * (low_c + high_c);
    (cooling::part_cooling(part)->time_s > time_s ? low_c : high_c) = part.to_c;
  }
  return high_c;
}

NamedPlot part_plot() {
  NamedPlot out{
      "part-cooling.svg",
      {"Part warm all through, from 250 degC in air of 20 degC; radiation: emissivity 0.8",
       {"time, h", {0, 0.5, 1, 1.5, 2}},
       {"temperature, degC", {0, 50, 100, 150, 200, 250}},
       std::nullopt,
       {}}};
  for (const double thickness_mm : {60.0, 40.0, 20.0}) {
    const std::string mm = base::digits_text(thickness_mm) + " mm";
    const auto add = [&](const std::string& how, const cooling::PartCooling& part) {
      out.plot.curves.push_back(curve_of(mm + how, 0.01, 2.0, 40, [&part](double hours) {
        return temperature_after_c(part, 60.0 * min_s * hours);
      }));
    };
    add(", h 15", {thickness_mm, 250.0, 0.0, 20.0, 15.0, 0.0});
    add(", h 5 + radiation", {thickness_mm, 250.0, 0.0, 20.0, 5.0, 0.8});
    out.plot.curves.back().dashed = true;
  }
  return out;
}

}  // namespace

std::vector<NamedPlot> cooling_plots() {
  return {strip_plot(), pass_plot(), part_plot()};
}

}  // namespace seamturn::tests
