// SPDX-License-Identifier: MIT
#include "docs/method_plots.hpp"
#include "seamturn/heat/cooling_time.hpp"
#include "seamturn/heat/hardness.hpp"
#include "seamturn/heat/heat_input.hpp"
#include "seamturn/heat/heat_input_band.hpp"
#include "seamturn/heat/hold_time.hpp"
#include "seamturn/heat/hydrogen_soak.hpp"
#include "seamturn/heat/lamellar_tearing.hpp"
#include "seamturn/material/carbon_equivalent.hpp"

namespace seamturn::tests {

namespace {

NamedPlot carbon_plot() {
  NamedPlot out{"carbon-equivalent.svg",
                {"Carbon equivalents of C steel with 1.4 % Mn and 0.3 % Si",
                 {"carbon, %", {0.05, 0.10, 0.15, 0.20, 0.25}},
                 {"carbon equivalent, %", {0.1, 0.2, 0.3, 0.4, 0.5, 0.6}},
                 std::nullopt,
                 {}}};
  using material::CarbonFormula;
  const auto add = [&out](CarbonFormula formula, double to) {
    out.plot.curves.push_back(
        curve_of(std::string(material::formula_name(formula)), 0.07, to, 30, [formula](double c) {
          material::Composition steel;
          steel.c = c, steel.mn = 1.4, steel.si = 0.3;
          return material::carbon_equivalent(formula, steel)->value;
        }));
  };
  add(CarbonFormula::iiw, 0.25);
  add(CarbonFormula::jis, 0.25);
  add(CarbonFormula::cen, 0.25);
  add(CarbonFormula::cet, 0.25);
  add(CarbonFormula::pcm, 0.22);
  return out;
}

NamedPlot heat_input_plot() {
  NamedPlot out{"heat-input.svg",
                {"Heat input at 28 V, 280 A",
                 {"travel speed, mm/min", {150, 300, 450, 600, 750, 900}},
                 {"heat input, kJ/mm", {0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5}},
                 std::nullopt,
                 {}}};
  for (const char* process : {"121", "135", "141"}) {
    const std::string k = base::digits_text(*heat::arc_efficiency_ratio(process));
    out.plot.curves.push_back(curve_of(
        std::string("process ") + process + ", k " + k, 150.0, 900.0, 30, [process](double mm_min) {
          return *heat::heat_input_kj_mm(process, {28.0, 280.0, mm_min / 60.0});
        }));
  }
  return out;
}

NamedPlot cooling_plot() {
  NamedPlot out{"cooling-time.svg",
                {"t8/5 of a run on plate, 1 kJ/mm; flat parts are 3-D flow",
                 {"thickness, mm", {5, 10, 15, 20, 25, 30}},
                 {"t8/5, s", {0, 20, 40, 60, 80, 100, 120}},
                 std::nullopt,
                 {}}};
  for (const double start_c : {200.0, 150.0, 100.0, 20.0}) {
    out.plot.curves.push_back(curve_of(
        "start " + base::digits_text(start_c) + " degC", 5.0, 30.0, 50, [start_c](double mm) {
          return heat::cooling_time({heat::CoolingCase::run_on_plate, 1.0, mm, start_c})->t85_s;
        }));
  }
  return out;
}

NamedPlot band_plot() {
  NamedPlot out{"heat-band.svg",
                {"Heat input for t8/5 of 5 to 20 s, butt, 100 degC to 200 degC",
                 {"thickness, mm", {6, 10, 15, 20, 25, 30}},
                 {"heat input, kJ/mm", {0, 0.5, 1, 1.5, 2, 2.5}},
                 std::nullopt,
                 {}}};
  const auto band = [](double mm) {
    return *heat::heat_input_band({heat::CoolingCase::butt, mm, 100.0, 200.0, 5.0, 20.0});
  };
  out.plot.curves.push_back(curve_of(
      "most, 20 s at 200 degC", 6.0, 30.0, 48, [&band](double mm) { return band(mm).most_kj_mm; }));
  out.plot.curves.push_back(curve_of("least, 5 s at 100 degC", 6.0, 30.0, 48, [&band](double mm) {
    return band(mm).least_kj_mm;
  }));
  return out;
}

NamedPlot hardness_plot() {
  NamedPlot out{"hardness.svg",
                {"Estimated hardness: C .17 Si .35 Mn 1.45, an S355 kind; scatter 56 HV",
                 {"t8/5, s", {1, 2, 5, 10, 20, 50, 100}, true},
                 {"HV", {100, 200, 300, 400, 500, 600}},
                 std::pair(heat::hardness_t85_s.least, heat::hardness_t85_s.largest),
                 {}}};
  const auto guess = [](double t85_s) {
    material::Composition steel;
    steel.c = .17, steel.si = .35, steel.mn = 1.45;
    return *heat::hardness({steel, t85_s});
  };
  const auto add = [&out](const char* name, const std::function<double(double)>& hv, bool dashed) {
    out.plot.curves.push_back(curve_of(name, 2.0, 100.0, 40, hv, true));
    out.plot.curves.back().dashed = dashed;
  };
  const double scatter = heat::hardness_scatter_hv;
  add(
      "highest + scatter", [&](double t) { return guess(t).highest_hv + scatter; }, true);
  add(
      "Yurioka 1987", [&](double t) { return guess(t).yurioka_hv; }, false);
  add(
      "Dueren and Lorenz", [&](double t) { return guess(t).dueren_hv; }, false);
  add(
      "Suzuki", [&](double t) { return guess(t).suzuki_hv; }, false);
  add(
      "lowest - scatter", [&](double t) { return guess(t).lowest_hv - scatter; }, true);
  return out;
}

NamedPlot hold_plot() {
  NamedPlot out{"hold-time.svg",
                {"Hold before final testing, EN 1090-2:2008 table 23; 0: once cold",
                 {"weld size, mm", {0, 6, 12, 20, 30}},
                 {"hold, h", {0, 8, 16, 24, 40, 48}},
                 std::nullopt,
                 {}}};
  struct Case {
    const char* name;
    double heat_input_kj_mm, yield_mpa;
  };
  for (const Case one : {Case{"S460 up, above 3 kJ/mm", 4.0, 460.0},
                         Case{"S460 up, to 3 kJ/mm", 2.0, 460.0},
                         Case{"to S420, above 3 kJ/mm", 4.0, 355.0},
                         Case{"to S420, to 3 kJ/mm", 2.0, 355.0}}) {
    out.plot.curves.push_back(stairs_of(one.name, 0.0, {6.0, 12.0, 30.0}, [one](double size_mm) {
      return heat::hold_time({size_mm, one.heat_input_kj_mm, one.yield_mpa}).hours;
    }));
    out.plot.curves.back().dashed = one.yield_mpa < 400.0;
  }
  return out;
}

NamedPlot soak_plot() {
  NamedPlot out{"hydrogen-soak.svg",
                {"Hydrogen soak at 200 to 300 degC (advice)",
                 {"thickness, mm", {0, 25, 50, 75, 100, 125}},
                 {"time, h", {0, 1, 2, 3, 4, 5}},
                 std::nullopt,
                 {}}};
  out.plot.curves.push_back(
      curve_of("soak", 1.0, 125.0, 124, [](double mm) { return heat::hydrogen_soak(mm).hours; }));
  return out;
}

NamedPlot tearing_plot() {
  NamedPlot out{"lamellar-tearing.svg",
                {"Z_Ed of a penetration weld as deep as the plate is thick, medium restraint",
                 {"plate thickness, mm", {5, 10, 20, 30, 40, 50, 60, 80}},
                 {"Z_Ed, points", {0, 10, 20, 30, 40, 50}},
                 std::nullopt,
                 {}}};
  const std::vector<double> edges = {7, 10, 20, 30, 40, 50, 60, 80};
  const auto add = [&](const char* name, heat::TearingShape shape, double preheat_c) {
    out.plot.curves.push_back(stairs_of(name, 5.0, edges, [shape, preheat_c](double mm) {
      return heat::lamellar_tearing({mm, shape, mm, false, joint::Restraint::medium, preheat_c})
          .total;
    }));
    out.plot.curves.back().dashed = preheat_c > 100.0;
  };
  add("corner", heat::TearingShape::corner, 20.0);
  add("penetration", heat::TearingShape::penetration, 20.0);
  add("multi-run fillet", heat::TearingShape::multi_run_fillet, 20.0);
  add("penetration, preheated", heat::TearingShape::penetration, 120.0);
  return out;
}

}  // namespace

std::vector<NamedPlot> heat_plots() {
  return {carbon_plot(),
          heat_input_plot(),
          cooling_plot(),
          band_plot(),
          hardness_plot(),
          hold_plot(),
          soak_plot(),
          tearing_plot()};
}

}  // namespace seamturn::tests
