// SPDX-License-Identifier: MIT
// Shrinkage and general tolerances as printed, and remembered ones marked so.
#pragma once

#include "oracle.hpp"

namespace seamturn::tests {

/// [SHRINK-STATEMENT] single bevels, 45 deg, gap 2, face 2, by S = 0.1 A/t. The areas behind the
/// prints are 2T + (T-2)^2 + (T+2): the whole square, not its half that the bevel is. The rows
/// check the coefficient, not the geometry.
struct BevelShrinkRow {
  double thickness_mm;
  double shrinkage_mm;
};
inline constexpr BevelShrinkRow bevel_shrink_rows[] = {
    {10, 0.96},
    {12, 1.15},
    {13, 1.25},
    {15, 1.44},
    {17, 1.64},
    {19, 1.83},
    {20, 1.93},
    {25, 2.42},
    {30, 2.92},
    {32, 3.12},
};

/// [TWI-SHRINK] allowances: along a fillet and a butt in 3 m, across a fillet, across a V.
inline constexpr double allowed_length_mm = 3000.0;
inline constexpr double allowances_mm[] = {0.8, 3.0, 0.8, 1.5, 3.0};
/// [SHRINK-ARTICLE] along a fillet 1/32 in in 10 ft, a twin of the first; 1/16 in for a butt in
/// plate of 1/4 to 1/2 in; lean of 2 deg of a tee 6 in wide: 0.2 in. Plausibility, not counted.
inline constexpr double allowance_twin_mm = 25.4 / 32.0;
inline constexpr double allowance_twin_length_mm = 3048.0;
inline constexpr double usual_butt_mm = 25.4 / 16.0;
inline constexpr double lean_lift_mm = 0.2 * 25.4;

/// [ISO 13920] 1996, one size inside each column.
inline constexpr double column_sizes_mm[] = {
    20, 100, 300, 700, 1500, 3000, 6000, 10000, 15000, 18000, 25000};
struct ToleranceRow {
  char name;
  double mm[11];     ///< linear: from 2 mm on; form: the first is 0, no cell
  std::size_t seen;  ///< cells from the left whose print was read under its size
};
inline constexpr ToleranceRow linear_rows[] = {
    {'A', {1, 1, 1, 2, 3, 4, 5, 6, 7, 8, 9}, 11},
    {'B', {1, 2, 2, 3, 4, 6, 8, 10, 12, 14, 16}, 0},
    {'C', {1, 3, 4, 6, 8, 11, 14, 18, 21, 24, 27}, 0},
    {'D', {1, 4, 7, 9, 12, 16, 21, 27, 32, 36, 40}, 0},
};
inline constexpr ToleranceRow form_rows[] = {
    {'E', {0, 0.5, 1, 1.5, 2, 3, 4, 5, 6, 7, 8}, 10},
    {'F', {0, 1, 1.5, 3, 4.5, 6, 8, 10, 12, 14, 16}, 10},
    {'G', {0, 1.5, 3, 5.5, 9, 11, 16, 20, 22, 25, 25}, 1},
    {'H', {0, 2.5, 5, 9, 14, 18, 26, 32, 36, 40, 40}, 0},
};
/// Shorter leg up to 400 mm, to 1 m, above: degrees and minutes, and the mm/m printed beside them.
struct AngleRow {
  char name;
  double minutes[3];
  double mm_per_m[3];
};
inline constexpr double leg_sizes_mm[] = {400, 1000, 1001};
inline constexpr AngleRow angle_rows[] = {
    {'A', {20, 15, 10}, {6, 4.5, 3}},
    {'B', {45, 30, 20}, {13, 9, 6}},
    {'C', {60 + 0, 45, 30}, {18, 13, 9}},
    {'D', {60 + 30, 60 + 15, 60 + 0}, {26, 22, 18}},
};

}  // namespace seamturn::tests
