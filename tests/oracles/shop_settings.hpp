// SPDX-License-Identifier: MIT
// What printed tables say settings may be: currents, speeds, beads, deposit of cored wires.
#pragma once

#include "oracle.hpp"

namespace seamturn::tests {

/// [FCAW-FILLET] conditions of horizontal fillets, flux-cored wire in CO2: leg, current, voltage,
/// travel. The table is not mass-consistent, so only heat (k U I / v) is taken from it.
struct FilletCondition {
  double leg_mm;
  double diameter_mm;
  double current_a;
  double voltage_v;
  double travel_cm_min;
};
inline constexpr FilletCondition fillet_conditions[] = {
    {4.0, 1.2, 250.0, 27.0, 50.0},
    {5.0, 1.2, 270.0, 29.0, 50.0},
    {6.0, 1.2, 270.0, 29.0, 45.0},
    {7.0, 1.2, 280.0, 30.0, 40.0},
    {8.0, 1.2, 300.0, 31.0, 30.0},
    {9.0, 1.2, 320.0, 32.0, 30.0},
    {4.0, 1.6, 350.0, 31.0, 105.0},
    {5.0, 1.6, 370.0, 33.0, 90.0},
    {6.0, 1.6, 380.0, 34.0, 80.0},
    {7.0, 1.6, 380.0, 34.0, 65.0},
    {8.0, 1.6, 380.0, 34.0, 52.0},
    {9.0, 1.6, 380.0, 34.0, 40.0},
};

/// [TEXTBOOK-CORED] figure 8-20, gas-shielded flux-cored wire.
struct CoredCurrents {
  double diameter_mm;
  double least_a;
  double most_a;
};
inline constexpr CoredCurrents cored_currents[] = {{1.2, 150.0, 250.0}, {1.6, 225.0, 375.0}};
inline constexpr double cored_least_v = 25.0;
inline constexpr double cored_most_v = 30.0;

/// [WELD-COST-SHEET] E71T-1 of 1.6 mm: 300 A, 10.2 lb/h deposited, 87 %.
inline constexpr double cored_sheet_current_a = 300.0;
inline constexpr double cored_sheet_deposit_lb_h = 10.2;
inline constexpr double cored_sheet_efficiency_ratio = 0.87;

/// [MCW] current and voltage beside the feeds of cored_wire_rows, same order; volts as printed,
/// from and to.
struct CoredArc {
  double current_a;
  double least_v;
  double most_v;
};
inline constexpr CoredArc cored_arcs[] = {
    {90.0, 15.0, 15.0},
    {120.0, 16.0, 16.0},
    {150.0, 17.0, 17.0},
    {180.0, 28.0, 30.0},
    {275.0, 31.0, 34.0},
    {340.0, 35.0, 38.0},
    {145.0, 15.0, 15.0},
    {160.0, 16.0, 16.0},
    {170.0, 18.0, 18.0},
    {235.0, 25.0, 26.0},
    {325.0, 29.0, 32.0},
    {400.0, 34.0, 37.0},
    {460.0, 36.0, 38.0},
};

/// [AWS D1.1] 2020 table 5.1, largest single-pass fillet leg: flat 12, horizontal 10, vertical 12
/// mm; the area of a flat fillet of that leg.
inline constexpr double most_flat_mm2 = 72.0;
inline constexpr double most_horizontal_mm2 = 50.0;
inline constexpr double most_vertical_mm2 = 72.0;
/// [FCAW-FILLET] smallest leg 4 mm, flat.
inline constexpr double least_fillet_mm2 = 8.0;
/// [VTAB] first run of a V above 12 mm, flat, and above 8 mm, vertical: 0.15 kg/m.
inline constexpr double first_run_mm2 = 0.15e-3 / 7.85e-6;
/// [CO2-FILLET] solid wire from 9 g/(A h); [MCW] cored wire 10 to 20 g/(A h), both from printed
/// columns.
inline constexpr double least_solid_g_a_h = 9.0;
inline constexpr double least_cored_g_a_h = 10.0;
inline constexpr double most_g_a_h = 20.0;

}  // namespace seamturn::tests
