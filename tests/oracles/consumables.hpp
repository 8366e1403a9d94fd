// SPDX-License-Identifier: MIT
// Efficiencies, feeds at currents and machine settings printed elsewhere.
#pragma once

#include "oracle.hpp"

namespace seamturn::tests {

/// Deposition efficiencies as printed, percent. Rows of [FMH-1] are left out: their numbers were
/// read, their names not.
struct TypicalEfficiencyRow {
  const char* what;
  const char* key;
  Expected least_percent;
  Expected most_percent;
};
inline constexpr TypicalEfficiencyRow typical_efficiency_rows[] = {
    {"solid wire",
     "JWC",
     {95.0, 1e-9, Origin::published, "JWC, consumption tables"},
     {95.0, 1e-9, Origin::published, "JWC, consumption tables"}},
    {"flux-cored",
     "JWC",
     {90.0, 1e-9, Origin::published, "JWC, consumption tables"},
     {90.0, 1e-9, Origin::published, "JWC, consumption tables"}},
    {"solid wire",
     "GMAW-GUIDE",
     {93.0, 1e-9, Origin::published, "GMAW-GUIDE, electrodes"},
     {98.0, 1e-9, Origin::published, "GMAW-GUIDE, electrodes"}},
    {"E70T-1, E70T-2",
     "AWTC-9",
     {83.0, 1e-9, Origin::published, "AWTC-9, p. 8"},
     {88.0, 1e-9, Origin::published, "AWTC-9, p. 8"}},
    {"E70T-5",
     "AWTC-9",
     {85.0, 1e-9, Origin::published, "AWTC-9, p. 8"},
     {90.0, 1e-9, Origin::published, "AWTC-9, p. 8"}},
    {"E70T-5, Ar-25CO2",
     "AWTC-9",
     {92.0, 1e-9, Origin::published, "AWTC-9, p. 8"},
     {92.0, 1e-9, Origin::published, "AWTC-9, p. 8"}},
    {"E70T-4",
     "AWTC-9",
     {81.0, 1e-9, Origin::published, "AWTC-9, p. 8"},
     {86.0, 1e-9, Origin::published, "AWTC-9, p. 8"}},
    {"75-95 % Ar, rest CO2",
     "MCW",
     {88.0, 1e-9, Origin::published, "MCW, efficiency column"},
     {92.0, 1e-9, Origin::published, "MCW, efficiency column"}},
};

/// [MCW] feed at a current, metal-cored wire. The law is fitted through the two rows marked
/// `trial`; the rows between are predicted. 90 A of 1.1 mm lies below the trial: short arc, 13 %
/// off in the reference's own fit, kept and shown to be refused.
struct FeedRow {
  double diameter_mm;
  double linear_mass_g_m;
  double current_a;
  double feed_in_min;
  bool trial;
  bool outside;
};
inline constexpr double feed_tolerance_ratio = 0.04;
inline constexpr const char* feed_why = "4 %: feed and current are printed to 2 or 3 digits";
inline constexpr FeedRow feed_rows[] = {
    {1.1, 7.5, 90.0, 110.0, false, true},
    {1.1, 7.5, 120.0, 135.0, true, false},
    {1.1, 7.5, 150.0, 185.0, false, false},
    {1.1, 7.5, 180.0, 250.0, false, false},
    {1.1, 7.5, 275.0, 450.0, false, false},
    {1.1, 7.5, 340.0, 650.0, true, false},
    {1.6, 13.7, 145.0, 70.0, true, false},
    {1.6, 13.7, 160.0, 80.0, false, false},
    {1.6, 13.7, 170.0, 90.0, false, false},
    {1.6, 13.7, 235.0, 150.0, false, false},
    {1.6, 13.7, 325.0, 250.0, false, false},
    {1.6, 13.7, 400.0, 350.0, false, false},
    {1.6, 13.7, 460.0, 450.0, true, false},
};

/// [CO2-FILLET] conditions of a power source for 1.2 mm solid wire in CO2, single pass. NOT counted
/// as outside checks: the table says how fast and how hot, not how much is laid; here it only has
/// to be possible. The larger leg goes with the slower speed. PA 12 mm would need 24 to 26 g/(A h),
/// which no wire gives in one pass: kept, and shown to be impossible.
struct ConditionRow {
  const char* item;
  double leg_mm[2];
  double current_a[2];
  double travel_cm_min[2];  // fast with the small leg, slow with the large one
  bool possible;
};
inline constexpr ConditionRow condition_rows[] = {
    {"PB 3.2 mm", {3.0, 4.0}, {130.0, 170.0}, {55.0, 45.0}, true},
    {"PB 4.5 mm", {4.0, 4.5}, {190.0, 230.0}, {55.0, 45.0}, true},
    {"PB 6 mm", {5.0, 6.0}, {250.0, 280.0}, {50.0, 40.0}, true},
    {"PB 9 mm", {6.0, 7.0}, {280.0, 300.0}, {40.0, 35.0}, true},
    {"PB 12 mm", {7.0, 8.0}, {300.0, 340.0}, {35.0, 30.0}, true},
    {"PA 4.5 mm", {4.0, 4.5}, {200.0, 250.0}, {55.0, 45.0}, true},
    {"PA 6 mm", {5.0, 6.0}, {280.0, 300.0}, {50.0, 40.0}, true},
    {"PA 9 mm", {6.0, 8.0}, {300.0, 350.0}, {45.0, 40.0}, true},
    {"PA 12 mm", {10.0, 12.0}, {320.0, 350.0}, {35.0, 25.0}, false},
};
inline constexpr double co2_efficiency_ratio = 0.93;
inline constexpr double most_deposit_g_a_h = 20.0;  // MCW: 10 to 20 g/(A h) measured

}  // namespace seamturn::tests
