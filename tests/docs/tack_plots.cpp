// SPDX-License-Identifier: MIT
#include "docs/method_plots.hpp"
#include "seamturn/tack/carry.hpp"

namespace seamturn::tests {

namespace {

using geom::Vec3;

/// The plate of docs/methods/tacks.md, so many tacks on each side, so high.
tack::Carry plate_carry(int tacks_a_side, double height_mm) {
  std::vector<tack::HeldTack> tacks;
  for (const double y : {-20.0, 20.0}) {
    tack::TackSeam seam;
    seam.path = geom::LinePath{Vec3(0.0, y, 0.0), Vec3(1000.0, y, 0.0)};
    seam.thicker_mm = 40.0;
    seam.yield_mpa = 355.0;
    seam.weld_throat_mm = 6.0;
    seam.root_run_mm = 4.0;
    seam.count = tacks_a_side;
    for (const tack::HeldTack& one : tack::held_tacks(*tack::plan_tacks(seam, {}))) {
      tacks.push_back(one);
    }
  }
  tack::CarriedPart plate;
  plate.mass_kg = 1000.0 * height_mm * 40.0 * 7.85e-6;
  plate.site_factor = 2.0;
  plate.centre_of_gravity = Vec3(500.0, 0.0, 0.5 * height_mm);
  plate.gravity_directions = {Vec3::UnitY()};
  plate.permitted = *tack::permitted_stress(470.0, 355.0, {});
  return *tack::carry(tacks, plate);
}

}  // namespace

std::vector<NamedPlot> tack_plots() {
  NamedPlot out{"tack-stress.svg",
                {"Stress on tacks of 50 x 4 mm: plate 40 mm, 1000 mm long, lying on its side, "
                 "site factor 2",
                 {"tacks on each side", {2, 4, 6, 8, 10, 12}},
                 {"worst stress, MPa", {0, 50, 100, 150, 200, 250, 300}},
                 std::nullopt,
                 {}}};
  for (const double height_mm : {300.0, 600.0, 1200.0}) {
    out.plot.curves.push_back(
        curve_of(base::digits_text(height_mm) + " mm high", 2.0, 12.0, 10, [&](double count) {
          return plate_carry(static_cast<int>(count + 0.5), height_mm).stress_mpa;
        }));
  }
  out.plot.curves.push_back(curve_of("permitted, from memory", 2.0, 12.0, 1, [](double) {
    return plate_carry(2, 300.0).permitted.stress_mpa;
  }));
  out.plot.curves.back().dashed = true;
  return {out};
}

}  // namespace seamturn::tests
