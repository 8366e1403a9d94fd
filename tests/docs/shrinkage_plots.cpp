// SPDX-License-Identifier: MIT
#include <cmath>
#include <numbers>

#include "docs/method_plots.hpp"
#include "seamturn/shrinkage/rules.hpp"

namespace seamturn::tests {

namespace {

/// A V of 60 deg without cap, gap 2 mm.
shrinkage::ButtWeld v_weld(double thickness_mm) {
  constexpr double gap_mm = 2.0;
  const double area_mm2 =
      gap_mm * thickness_mm + thickness_mm * thickness_mm * std::tan(std::numbers::pi / 6.0);
  return {area_mm2, thickness_mm, gap_mm};
}

}  // namespace

std::vector<NamedPlot> shrinkage_plots() {
  NamedPlot out{"shrinkage.svg",
                {"Shrinkage across a V of 60 deg, gap 2 mm: between the rules lies the band",
                 {"thickness, mm", {5, 10, 15, 20, 25, 30}},
                 {"shrinkage, mm", {0, 1, 2, 3, 4}},
                 std::nullopt,
                 {}}};
  const shrinkage::Band allowed = shrinkage::allowance_across_v().mm;
  out.plot.curves = {
      curve_of("0.2 A/t + 0.05 g",
               5.0,
               30.0,
               25,
               [](double mm) { return shrinkage::butt_by_area_and_gap(v_weld(mm)).mm; }),
      curve_of("allowance, most", 5.0, 30.0, 1, [&](double) { return allowed.high; }),
      curve_of("allowance, least", 5.0, 30.0, 1, [&](double) { return allowed.low; }),
      curve_of("0.1 A/t", 5.0, 30.0, 25, [](double mm) {
        return shrinkage::butt_by_mean_width(v_weld(mm)).mm;
      })};
  return {out};
}

}  // namespace seamturn::tests
