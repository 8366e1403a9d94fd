// SPDX-License-Identifier: MIT
// Cells of preheat and hold tables as printed by codes, and remembered ones marked so.
#pragma once

#include "oracle.hpp"
#include "seamturn/heat/preheat_tables.hpp"

namespace seamturn::tests {

/// [EN-C1] BS EN 1011-2:2001 + A1, table C.1, p. 17: largest combined thickness without preheat,
/// mm.
struct TableC1Row {
  double hydrogen_ml_100g;  ///< inside the band
  const char* band;
  double ce_49_q_1_mm, ce_49_q_2_mm, ce_43_q_1_mm, ce_43_q_2_mm;
};
inline constexpr TableC1Row table_c1_rows[] = {
    {16.0, "> 15 ml/100 g", 25.0, 50.0, 40.0, 80.0},
    {12.0, "> 10 to 15 ml/100 g", 30.0, 55.0, 50.0, 90.0},
    {7.5, "> 5 to 10 ml/100 g", 35.0, 65.0, 60.0, 100.0},
    {4.0, "> 3 to 5 ml/100 g", 50.0, 100.0, 100.0, 100.0},
    {2.0, "up to 3 ml/100 g", 60.0, 100.0, 100.0, 100.0},
};

/// AWS D1.1, prequalified preheat by category, degF: A, B [D11-33] (2015 table 3.3); C, D [D11-CD].
struct CategoryRow {
  double thickness_mm;  ///< inside the band
  double a_f, b_f, c_f, d_f;
  double a_c, b_c;  ///< [D11-33] prints the metric column of A and B too
};
inline constexpr CategoryRow category_rows[] = {
    {12.0, 32.0, 32.0, 50.0, 32.0, 0.0, 0.0},
    {30.0, 150.0, 50.0, 150.0, 32.0, 65.0, 10.0},
    {50.0, 225.0, 150.0, 225.0, 32.0, 110.0, 65.0},
    {80.0, 300.0, 225.0, 300.0, 32.0, 150.0, 110.0},
};

/// EN 1090-2:2008 table 23, hours; 0 is "cooling only". The first column is printed by a national
/// specification too.
struct HoldRow {
  double size_mm, heat_input_kj_mm;
  double s235_to_s420_h, s460_and_above_h;
};
inline constexpr HoldRow hold_rows[] = {
    {5.0, 1.0, 0.0, 24.0},
    {9.0, 2.0, 8.0, 24.0},
    {9.0, 4.0, 16.0, 40.0},
    {20.0, 2.0, 16.0, 40.0},
    {20.0, 4.0, 40.0, 48.0},
};

/// Letters of the hydrogen-control annex, FROM MEMORY: the table's and that of the index at the
/// column's upper end, computed by hand (12 Pcm + log10 H).
struct LetterRow {
  double pcm, hydrogen_ml_100g;
  char table, worse;
  double susceptibility;
};
inline constexpr LetterRow letter_rows[] = {
    {.17, 4.0, 'A', 'A', 2.86},
    {.22, 4.0, 'B', 'B', 3.46},
    {.27, 4.0, 'C', 'D', 4.06},
    {.32, 4.0, 'D', 'E', 4.66},
    {.37, 4.0, 'E', 'F', 5.26},
    {.17, 8.0, 'B', 'B', 3.16},
    {.22, 8.0, 'C', 'C', 3.76},
    {.27, 8.0, 'D', 'D', 4.36},
    {.32, 8.0, 'E', 'E', 4.96},
    {.37, 8.0, 'F', 'G', 5.56},
    {.17, 20.0, 'C', 'C', 3.64},
    {.22, 20.0, 'D', 'D', 4.24},
    {.27, 20.0, 'E', 'E', 4.84},
    {.32, 20.0, 'F', 'F', 5.44},
    {.37, 20.0, 'G', 'G', 6.04},
};

}  // namespace seamturn::tests
