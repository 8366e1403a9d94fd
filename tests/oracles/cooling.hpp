// SPDX-License-Identifier: MIT
// Cooling recorded beside a bead.
#pragma once

namespace seamturn::tests {

/// [VLAB] 2mm_sec.csv and 4mm_sec.csv, three thermocouples, 6 mm mild steel plate, 1589.92 J/s:
/// times at which the running median over 11 points falls through a round temperature. Plate size,
/// support, true efficiency and room temperature are not stated, and that the columns lie 5, 10 and
/// 15 mm from the weld line is taken from the order of their peaks; so this shows the order of
/// magnitude and nothing finer (docs/methods/cooling.md).
struct RecordedCurve {
  double heat_input_kj_mm;
  double distance_mm;   ///< from the weld line
  double arc_passes_s;  ///< read off the rise of the nearest one, about 1 s uncertain
  double falls_s[6];    ///< through recorded_c; 0: not recorded
};
inline constexpr double recorded_plate_c = 25.0;  // assumed
inline constexpr double recorded_thickness_mm = 6.0;
inline constexpr double recorded_c[6] = {300.0, 250.0, 200.0, 175.0, 150.0, 140.0};
inline constexpr RecordedCurve recorded_curves[] = {
    {0.79496, 5.0, 64.0, {116.7, 156.6, 226.2, 283.2, 368.7, 0.0}},
    {0.79496, 10.0, 64.0, {111.3, 154.5, 226.8, 285.9, 374.7, 415.6}},
    {0.79496, 15.0, 64.0, {103.5, 139.5, 199.2, 249.0, 325.8, 364.8}},
    {0.39748, 5.0, 26.2, {41.4, 58.2, 94.2, 122.0, 161.9, 182.9}},
    {0.39748, 10.0, 26.2, {0.0, 0.0, 64.5, 89.4, 120.6, 135.9}},
    {0.39748, 15.0, 26.2, {0.0, 0.0, 0.0, 84.3, 120.0, 138.3}},
};

}  // namespace seamturn::tests
