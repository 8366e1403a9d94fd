// SPDX-License-Identifier: MIT
// What the steels of joints/library must say, as read in the documents.
#pragma once

#include "oracle.hpp"
#include "seamturn/material/composition.hpp"

namespace seamturn::tests {

/// A value of every steel of EN 10025-2 whose designation begins so and that is made so thick.
struct ClassRow {
  const char* steel_class;
  double thickness_mm;
  double value;
};

/// [EN 10025-2] 2019 table 5: greatest CEV by thickness. Two web pages print 0.49 for S355 above 63
/// mm and 0.40 for S275 up to 100 mm: wrong, left out.
inline constexpr const char* cev_source = "EN 10025-2:2019 table 5";
inline constexpr ClassRow cev_rows[] = {
    {"S235", 30.0, 0.35},  {"S235", 40.0, 0.35},  {"S235", 150.0, 0.38}, {"S235", 250.0, 0.40},
    {"S235", 400.0, 0.40}, {"S275", 30.0, 0.40},  {"S275", 40.0, 0.40},  {"S275", 60.0, 0.42},
    {"S275", 150.0, 0.42}, {"S275", 250.0, 0.44}, {"S275", 400.0, 0.44}, {"S355", 25.0, 0.45},
    {"S355", 30.0, 0.45},  {"S355", 35.0, 0.47},  {"S355", 40.0, 0.47},  {"S355", 150.0, 0.47},
    {"S355", 200.0, 0.49}, {"S355", 250.0, 0.49}, {"S355", 400.0, 0.49}, {"S460", 30.0, 0.47},
    {"S460", 40.0, 0.49},  {"S460", 150.0, 0.49}, {"S500", 30.0, 0.49},  {"S500", 40.0, 0.49},
    {"S500", 150.0, 0.49},
};

/// [EN 10025-2] table 7 (2004, unchanged in 2019): least yield, MPa.
inline constexpr const char* yield_source = "EN 10025-2 table 7";
inline constexpr ClassRow yield_rows[] = {
    {"S235", 16.0, 235},  {"S235", 40.0, 225},  {"S235", 63.0, 215},  {"S235", 80.0, 215},
    {"S235", 100.0, 215}, {"S235", 150.0, 195}, {"S235", 200.0, 185}, {"S235", 250.0, 175},
    {"S235", 400.0, 165}, {"S275", 16.0, 275},  {"S275", 40.0, 265},  {"S275", 63.0, 255},
    {"S275", 80.0, 245},  {"S275", 100.0, 235}, {"S275", 150.0, 225}, {"S275", 200.0, 215},
    {"S275", 250.0, 205}, {"S275", 400.0, 195}, {"S355", 16.0, 355},  {"S355", 40.0, 345},
    {"S355", 63.0, 335},  {"S355", 80.0, 325},  {"S355", 100.0, 315}, {"S355", 150.0, 295},
    {"S355", 200.0, 285}, {"S355", 250.0, 275}, {"S355", 400.0, 265},
};

/// [EN 10025-2] table 2 of 2004; the carbon of S355 J0, J2, K2 above 30 mm and of S275 J0, J2 is
/// that of 2019.
inline constexpr const char* composition_source = "EN 10025-2 table 2, 2004 and 2019";
inline constexpr ClassRow carbon_rows[] = {
    {"S235JR", 16.0, 0.17},  {"S235JR", 40.0, 0.17}, {"S235JR", 41.0, 0.20},
    {"S235J0", 16.0, 0.17},  {"S235J0", 40.0, 0.17}, {"S235J0", 41.0, 0.17},
    {"S235J2", 16.0, 0.17},  {"S235J2", 40.0, 0.17}, {"S235J2", 41.0, 0.17},
    {"S275JR", 16.0, 0.21},  {"S275JR", 40.0, 0.21}, {"S275JR", 41.0, 0.22},
    {"S275J0", 150.0, 0.18}, {"S275J0", 151.0, .20}, {"S275J2", 150.0, 0.18},
    {"S275J2", 151.0, 0.20}, {"S355JR", 16.0, 0.24}, {"S355JR", 40.0, 0.24},
    {"S355JR", 41.0, 0.24},  {"S355J0", 30.0, 0.20}, {"S355J0", 31.0, 0.22},
    {"S355J2", 30.0, 0.20},  {"S355J2", 31.0, 0.22}, {"S355K2", 30.0, 0.20},
    {"S355K2", 31.0, 0.22},
};

/// Limits that hold for every thickness; 0: the standard has none. Cr, Mo and Ni are those of 2019.
struct LimitRow {
  const char* steel;
  double si, mn, p, s, n, cu;
  double cr = 0.29, mo = 0.11, ni = 0.42;
};
inline constexpr LimitRow limit_rows[] = {
    {"S235JR", 0.0, 1.40, 0.035, 0.035, 0.012, 0.55},
    {"S235J0", 0.0, 1.40, 0.030, 0.030, 0.012, 0.55},
    {"S235J2", 0.0, 1.40, 0.025, 0.025, 0.0, 0.55},
    {"S275JR", 0.0, 1.50, 0.035, 0.035, 0.012, 0.55},
    {"S355JR", 0.55, 1.60, 0.035, 0.035, 0.012, 0.55},
    {"S355J0", 0.55, 1.60, 0.030, 0.030, 0.012, 0.55},
    {"S355J2", 0.55, 1.60, 0.025, 0.025, 0.0, 0.55},
    {"S355K2", 0.55, 1.60, 0.025, 0.025, 0.0, 0.55},
};

/// [WEAR-SHEET] one maker's limits of wear plate of 400 HBW; other makers have others.
inline constexpr material::Composition wear_400_limits = {
    .c = 0.20, .si = 0.80, .mn = 1.50, .cr = 1.00, .mo = 0.50, .b = 0.005};

/// Categories of the preheat table of AWS D1.1, edition data. B: [AWS-ARMY], as an army manual
/// prints the table (that A36 is in A as well is from memory); C: [AWS-MANUAL], an older edition.
struct CategoryRow {
  const char* steel;
  char category;
  const char* source;
};
inline constexpr CategoryRow category_rows[] = {{"A36", 'B', "AWS-ARMY"},
                                                {"A572-50", 'B', "AWS-ARMY"},
                                                {"A588-A", 'B', "AWS-ARMY"},
                                                {"A992", 'B', "AWS-ARMY"},
                                                {"A913-50", 'B', "AWS-ARMY"},
                                                {"A572-60", 'C', "AWS-MANUAL"},
                                                {"A913-65", 'C', "AWS-MANUAL"}};

}  // namespace seamturn::tests
