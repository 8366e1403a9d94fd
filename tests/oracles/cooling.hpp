// SPDX-License-Identifier: MIT
// Cooling recorded beside a bead.
#pragma once

namespace seamturn::tests {

/// [VLAB] 2mm_sec.csv and 4mm_sec.csv, thermocouple 5 mm from the weld line, 6 mm mild steel plate,
/// 1589.92 J/s: times at which the running median over 11 points falls through a round temperature,
/// less the arc's passage at 64.0 s and 26.2 s (read off the rise, about 1 s uncertain). Only 30 to
/// 130 s after the arc. Plate size, support, true efficiency and room temperature are not stated,
/// so this shows the order of magnitude and nothing finer (docs/methods/cooling.md).
struct RecordedPoint {
  double heat_input_kj_mm;
  double after_arc_s;
  double measured_c;
};
inline constexpr double recorded_plate_c = 25.0;  // assumed
inline constexpr RecordedPoint recorded_points[] = {
    {0.79496, 116.7 - 64.0, 300.0},
    {0.79496, 156.6 - 64.0, 250.0},
    {0.39748, 58.2 - 26.2, 250.0},
    {0.39748, 94.2 - 26.2, 200.0},
    {0.39748, 122.0 - 26.2, 175.0},
};

}  // namespace seamturn::tests
