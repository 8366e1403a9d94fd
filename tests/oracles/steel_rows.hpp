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
    {"S275J0", 0.0, 1.50, 0.030, 0.030, 0.012, 0.55},
    {"S275J2", 0.0, 1.50, 0.025, 0.025, 0.0, 0.55},
    {"S355K2", 0.55, 1.60, 0.025, 0.025, 0.0, 0.55},
};

/// [WEAR-SHEET] one maker's limits of wear plate of 400 HBW; other makers have others.
inline constexpr material::Composition wear_400_limits = {
    .c = 0.20, .si = 0.80, .mn = 1.50, .cr = 1.00, .mo = 0.50, .b = 0.005};

/// One band of another steel as a page or sheet shows it: every limit of C, Si, Mn, P, S and the
/// rest that it prints, nothing else; yield 0: not seen there.
struct SeenRow {
  const char* steel;
  double thickness_mm;
  double yield_mpa;
  material::Composition limits;
  const char* source;
};
inline constexpr material::Composition c45_limits = {
    .c = 0.50, .si = 0.40, .mn = 0.80, .p = 0.045, .s = 0.045, .cr = 0.40, .mo = 0.10, .ni = 0.40};
inline constexpr material::Composition c45e_limits = {
    .c = 0.50, .si = 0.40, .mn = 0.80, .p = 0.030, .s = 0.035, .cr = 0.40, .mo = 0.10, .ni = 0.40};
inline constexpr material::Composition crmo_limits = {
    .c = 0.45, .si = 0.40, .mn = 0.90, .p = 0.025, .s = 0.035, .cr = 1.20, .mo = 0.30};
inline constexpr material::Composition mo_limits = {.c = 0.20,
                                                    .si = 0.35,
                                                    .mn = 0.90,
                                                    .p = 0.025,
                                                    .s = 0.010,
                                                    .cr = 0.30,
                                                    .mo = 0.35,
                                                    .ni = 0.30,
                                                    .cu = 0.30,
                                                    .n = 0.012};
inline constexpr material::Composition p355gh_limits = {.c = 0.22,
                                                        .si = 0.60,
                                                        .mn = 1.70,
                                                        .p = 0.025,
                                                        .s = 0.010,
                                                        .cr = 0.30,
                                                        .mo = 0.08,
                                                        .v = 0.02,
                                                        .ni = 0.30,
                                                        .cu = 0.30,
                                                        .nb = 0.02,
                                                        .ti = 0.03,
                                                        .n = 0.012};
inline constexpr SeenRow seen_rows[] = {
    {"C45", 16, 340, c45_limits, "C45-CARD"},
    {"C45", 100, 305, c45_limits, "C45-CARD"},
    {"C45", 250, 275, c45_limits, "C45-CARD"},
    {"C45E", 16, 340, c45e_limits, "C45-CARD"},
    {"C45E", 100, 305, c45e_limits, "C45-CARD"},
    {"C45E", 250, 275, c45e_limits, "C45-CARD"},
    {"42CrMo4", 16, 900, crmo_limits, "42CRMO4-SHEETS"},
    {"42CrMo4", 40, 750, crmo_limits, "42CRMO4-SHEETS"},
    {"42CrMo4", 100, 650, crmo_limits, "42CRMO4-SHEETS"},
    {"42CrMo4", 160, 550, crmo_limits, "42CRMO4-SHEETS"},
    {"42CrMo4", 250, 500, crmo_limits, "42CRMO4-SHEETS"},
    {"16Mo3", 40, 270, mo_limits, "MO-PAGE"},
    {"P355GH", 16, 355, p355gh_limits, "P355GH-SHEET"},
    {"P355GH", 40, 345, p355gh_limits, "P355GH-SHEET"},
    {"P355GH", 60, 335, p355gh_limits, "P355GH-SHEET"},
    {"A36", 20, 250, {.c = 0.25, .si = 0.40, .p = 0.030, .s = 0.030}, "A36-PAGE"},
    {"A36", 40, 250, {.c = 0.25, .si = 0.40, .mn = 1.20, .p = 0.030, .s = 0.030}, "A36-PAGE"},
    {"A36", 65, 250, {.c = 0.26, .si = 0.40, .mn = 1.20, .p = 0.030, .s = 0.030}, "A36-PAGE"},
    {"A36", 100, 250, {.c = 0.27, .si = 0.40, .mn = 1.20, .p = 0.030, .s = 0.030}, "A36-PAGE"},
    {"A36", 200, 250, {.c = 0.29, .si = 0.40, .mn = 1.20, .p = 0.030, .s = 0.030}, "A36-PAGE"},
    {"S235JRH", 40, 0, {.c = .17, .mn = 1.40, .p = .040, .s = .040, .n = .009}, "HOLLOW-PAGE"},
    {"S235JRH", 41, 0, {.c = .20, .mn = 1.40, .p = .040, .s = .040, .n = .009}, "HOLLOW-PAGE"},
    {"S275J0H", 40, 0, {.c = .20, .mn = 1.50, .p = .035, .s = .035, .n = .009}, "HOLLOW-PAGE"},
    {"S275J0H", 41, 0, {.c = .22, .mn = 1.50, .p = .035, .s = .035, .n = .009}, "HOLLOW-PAGE"},
    {"S275J2H", 40, 0, {.c = .20, .mn = 1.50, .p = .030, .s = .030}, "HOLLOW-PAGE"},
    {"S275J2H", 41, 0, {.c = .22, .mn = 1.50, .p = .030, .s = .030}, "HOLLOW-PAGE"},
    {"S355J2H", 40, 0, {.c = .22, .si = .55, .mn = 1.60, .p = .030, .s = .030}, "HOLLOW-PAGE"},
    {"S355J2H", 41, 0, {.c = .22, .si = .55, .mn = 1.60, .p = .030, .s = .030}, "HOLLOW-PAGE"},
};

/// Categories of the preheat table of AWS D1.1, edition data. B: [AWS-ARMY], as an army manual
/// prints the table (that A36 is in A as well is from memory); C: [AWS-MANUAL], an older edition.
struct SteelCategoryRow {
  const char* steel;
  char category;
  const char* source;
};
inline constexpr SteelCategoryRow steel_category_rows[] = {{"A36", 'B', "AWS-ARMY"},
                                                           {"A572-50", 'B', "AWS-ARMY"},
                                                           {"A588-A", 'B', "AWS-ARMY"},
                                                           {"A992", 'B', "AWS-ARMY"},
                                                           {"A913-50", 'B', "AWS-ARMY"},
                                                           {"A572-60", 'C', "AWS-MANUAL"},
                                                           {"A913-65", 'C', "AWS-MANUAL"}};

}  // namespace seamturn::tests
