// SPDX-License-Identifier: MIT
// Settings of a tilt-and-rotate table and of a headstock for given seams.
#pragma once

#include "oracle.hpp"

namespace seamturn::tests::oracles {

// computed: the closed form worked by script, independent of this code (docs/methods/stance.md).
// The second answer of a table is always -tilt, rotate +- 180 deg.
struct TableRow {
  const char* name;
  double t[3];
  double n[3];  ///< any length
  double slope_deg, bank_deg;
  double tilt_deg, rotate_deg;
  bool rotate_free;
};
inline constexpr double sin60 = 0.86602540378443865;
inline constexpr TableRow table_rows[] = {
    {"T1", {1, 0, 0}, {0, 0, 1}, 0, 0, 0, 0, true},
    {"T2", {0, 0, 1}, {1, 0, 0}, 0, 0, 90, 180, false},
    {"T3", {0, 1, 0}, {1, 0, 1}, 0, 0, 45, 180, false},
    {"T4", {-sin60, 0.5, 0}, {0.5, sin60, 1}, 0, 0, 45, 120, false},
    {"T5", {1, 0, 0}, {0, 0, -1}, 0, 0, 180, 0, true},
    {"T6", {1, -1, 0}, {1, 1, 1}, 0, 0, 54.7356, 135, false},
    {"T7", {0, 1, 0}, {1, 0, 1}, 0, 45, 0, 0, true},
    {"T8", {0, 1, 0}, {1, 0, 1}, 0, -45, 90, 180, false},
    {"T9", {0, 0, 1}, {1, 1, 0}, 0, 0, 90, 135, false},
    {"T10 +45", {0, 0, 1}, {1, 1, 0}, 0, 45, 90, 180, false},
    {"T10 -45", {0, 0, 1}, {1, 1, 0}, 0, -45, 90, 90, false},
    {"T11", {1, 0, 0}, {0, 0, 1}, 10, 0, 10, 180, false},
    {"T12", {0, 1, 0}, {1, 0, 1}, -7, 0, 45.4255, -170.1492, false},
    {"T13", {0.6, 0.64, 0.48}, {0.64, -0.6, 0}, 0, 0, 90, -136.8476, false},
};

struct HeadstockRow {
  const char* name;
  double t[3];
  double n[3];
  double bank_wanted_deg;
  double turn_deg;
  bool free;
  double residual_deg;
  double slope_deg, bank_deg;  ///< where the seam then lies
  char fillet_class;           ///< F, H, V or O
  char groove_class;
};
inline constexpr double sin20 = 0.34202014332566873;
inline constexpr double cos20 = 0.93969262078590838;
inline constexpr HeadstockRow headstock_rows[] = {
    {"H1", {1, 0, 0}, {0, 1, 1}, 0, 45, false, 0, 0, 0, 'F', 'F'},
    {"H2", {1, 0, 0}, {0, 0.1, -1}, 0, 174.2894, false, 0, 0, 0, 'F', 'F'},
    {"H3", {0, 1, 0}, {0, 0, -1}, 0, 180, false, 0, 0, 0, 'F', 'F'},
    {"H4", {0, 1, 0}, {1, 0, 1}, 0, 0, false, 45, 0, 45, 'H', 'H'},
    {"H4b", {0, 1, 0}, {1, 0, 1}, 45, 0, false, 0, 0, 45, 'H', 'H'},
    {"H5", {0, 1, 0}, {sin20, 0, cos20}, 0, 0, false, 20, 0, 20, 'F', 'F'},
    {"H6", {cos20, 0, -sin20}, {sin20, 0, cos20}, 0, 0, false, 20, -20, 0, 'V', 'V'},
    {"H7", {0, 1, 0}, {1, 0, 0}, 0, 0, true, 90, 0, 90, 'O', 'H'},
    {"H8", {0.6, 0.64, 0.48}, {0.64, -0.6, 0}, 0, -90, false, 46.8476, -39.7918, 27.1124, 'V', 'V'},
};

}  // namespace seamturn::tests::oracles
