// SPDX-License-Identifier: MIT
// Carbon equivalents printed elsewhere, with the analysis they belong to.
#pragma once

#include "oracle.hpp"
#include "seamturn/material/carbon_equivalent.hpp"

namespace seamturn::tests {

/// Heats with full analysis and printed Ceq: [NIMS] low-alloy steel property data. 19 of the 21
/// prints are cut off after three decimals, not rounded, so a computed value lies between
/// printed - 0.0001 and printed + 0.0011 (docs/methods/carbon-equivalent.md).
struct PrintedCeq {
  const char* heat;
  material::Composition analysis;
  double printed;
};
inline constexpr double ceq_below_print = 0.0001;
inline constexpr double ceq_above_print = 0.0011;
inline constexpr PrintedCeq jis_heats[] = {
    {"CbA",
     {.c = 0.15, .si = 0.3, .mn = 1.14, .cr = 0.2, .mo = 0.08, .v = 0.0, .ni = 0.31, .cu = 0.14},
     0.42},
    {"CbB",
     {.c = 0.15,
      .si = 0.28,
      .mn = 1.32,
      .cr = 0.053,
      .mo = 0.008,
      .v = 0.07,
      .ni = 0.077,
      .cu = 0.08},
     0.401},
    {"CbC",
     {.c = 0.16, .si = 0.28, .mn = 1.14, .cr = 0.24, .mo = 0.08, .v = 0.0, .ni = 0.33, .cu = 0.13},
     0.437},
    {"CbD",
     {.c = 0.16, .si = 0.48, .mn = 1.21, .cr = 0.02, .mo = 0.1, .v = 0.05, .ni = 0.02, .cu = 0.02},
     0.414},
    {"CbE",
     {.c = 0.13,
      .si = 0.33,
      .mn = 1.23,
      .cr = 0.04,
      .mo = 0.076,
      .v = 0.04,
      .ni = 0.44,
      .cu = 0.04},
     0.389},
    {"CbF",
     {.c = 0.14, .si = 0.3, .mn = 1.09, .cr = 0.12, .mo = 0.09, .v = 0.0, .ni = 0.39, .cu = 0.17},
     0.39},
    {"CbG",
     {.c = 0.14, .si = 0.21, .mn = 1.29, .cr = 0.02, .mo = 0.06, .v = 0.03, .ni = 0.21, .cu = 0.09},
     0.39},
    {"CbH",
     {.c = 0.148,
      .si = 0.49,
      .mn = 1.27,
      .cr = 0.19,
      .mo = 0.02,
      .v = 0.07,
      .ni = 0.04,
      .cu = 0.03},
     0.429},
    {"CbJ",
     {.c = 0.17, .si = 0.52, .mn = 1.27, .cr = 0.02, .mo = 0.1, .v = 0.05, .ni = 0.02, .cu = 0.02},
     0.436},
    {"CbL",
     {.c = 0.12, .si = 0.33, .mn = 1.37, .cr = 0.03, .mo = 0.01, .v = 0.08, .ni = 0.19, .cu = 0.03},
     0.381},
    {"CbM",
     {.c = 0.13,
      .si = 0.34,
      .mn = 1.23,
      .cr = 0.03,
      .mo = 0.072,
      .v = 0.042,
      .ni = 0.46,
      .cu = 0.02},
     0.387},
    {"CbN",
     {.c = 0.12, .si = 0.37, .mn = 1.32, .cr = 0.03, .mo = 0.07, .v = 0.04, .ni = 0.22, .cu = 0.07},
     0.387},
    {"CbR",
     {.c = 0.16,
      .si = 0.29,
      .mn = 1.42,
      .cr = 0.054,
      .mo = 0.011,
      .v = 0.079,
      .ni = 0.041,
      .cu = 0.08},
     0.429},
    {"CbS",
     {.c = 0.123, .si = 0.44, .mn = 1.19, .cr = 0.2, .mo = 0.02, .v = 0.07, .ni = 0.05, .cu = 0.03},
     0.39},
    {"CbT",
     {.c = 0.14,
      .si = 0.38,
      .mn = 1.24,
      .cr = 0.03,
      .mo = 0.084,
      .v = 0.043,
      .ni = 0.43,
      .cu = 0.05},
     0.403},
    {"CbU",
     {.c = 0.14, .si = 0.33, .mn = 1.45, .cr = 0.03, .mo = 0.01, .v = 0.06, .ni = 0.18, .cu = 0.02},
     0.412},
    {"CbV",
     {.c = 0.15,
      .si = 0.25,
      .mn = 1.38,
      .cr = 0.041,
      .mo = 0.006,
      .v = 0.088,
      .ni = 0.04,
      .cu = 0.08},
     0.407},
    {"CbW",
     {.c = 0.143, .si = 0.5, .mn = 1.2, .cr = 0.17, .mo = 0.02, .v = 0.07, .ni = 0.06, .cu = 0.02},
     0.409},
    {"CbX",
     {.c = 0.17, .si = 0.49, .mn = 1.26, .cr = 0.02, .mo = 0.09, .v = 0.04, .ni = 0.01, .cu = 0.02},
     0.429},
    {"CbY",
     {.c = 0.13, .si = 0.42, .mn = 1.28, .cr = 0.22, .mo = 0.05, .v = 0.03, .ni = 0.21, .cu = 0.04},
     0.424},
    {"CbZ",
     {.c = 0.16, .si = 0.41, .mn = 1.48, .cr = 0.02, .mo = 0.01, .v = 0.08, .ni = 0.02, .cu = 0.03},
     0.436},
};

struct CarbonRow {
  const char* item;
  material::CarbonFormula formula;
  material::Composition analysis;
  Expected expected;
};

using material::CarbonFormula;

inline constexpr const char* certificate_note =
    "sample certificates: agreement only; for V-1 sister files print another value";
inline constexpr CarbonRow published_carbon_rows[] = {
    {"CE-2",
     CarbonFormula::iiw,
     {.c = 0.20, .mn = 1.20},
     {0.40, 1e-9, Origin::published, "CHX, worked example", "printed as the exact 0.40"}},
    {"CE-3",
     CarbonFormula::iiw,
     {.c = 0.25, .mn = 1.40, .cr = 0.50, .mo = 0.25, .v = 0.05, .ni = 0.50, .cu = 0.40},
     {0.70, 0.005, Origin::published, "ACEQ, worked example", "weak: source rounds each term"}},
    {"V-1",
     CarbonFormula::iiw,
     {.c = 0.15,
      .si = 0.005,
      .mn = 1.00,
      .cr = 0.02,
      .mo = 0.002,
      .v = 0.002,
      .ni = 0.009,
      .cu = 0.01},
     {0.3227,
      0.00005,
      Origin::published,
      "CERT, EN 10168 v0.4.1, files 4 and 7",
      certificate_note}},
    {"V-2",
     CarbonFormula::iiw,
     {.c = 0.18, .mn = 1.45},
     {0.42, 0.005, Origin::published, "CERT, metals v0.0.1", "two digits, residuals absent"}},
    {"V-3",
     CarbonFormula::iiw,
     {.c = 0.16, .mn = 1.48},
     {0.41, 0.005, Origin::published, "CERT, metals v0.0.1", "two digits, residuals absent"}},
    {"V-4",
     CarbonFormula::iiw,
     {.c = 0.17, .mn = 1.47},
     {0.42,
      0.005000001,
      Origin::published,
      "CERT, metals v0.0.1",
      "two digits; 0.4150 lies on the half and was rounded up"}},
    {"V-5",
     CarbonFormula::iiw,
     {.c = 0.16, .mn = 1.38, .v = 0.034},
     {0.40, 0.005, Origin::published, "CERT, metals v0.0.1", "two digits, residuals absent"}},
    {"L-1",
     CarbonFormula::cet,
     {.c = 0.18, .mn = 1.40, .cr = 0.20, .mo = 0.05, .ni = 0.10, .cu = 0.15},
     {0.345,
      0.0005,
      Origin::published,
      "TEACH-DE, exercise on CET",
      "weak: teaching exercise of unnamed author"}},
};

/// Invented analyses; the values were computed from the printed formulas by a separate script, so
/// they guard against slips of typing and prove nothing else.
struct ComputedCarbonRow {
  const char* item;
  material::Composition analysis;
  double iiw;  ///< 0: carbon above the range, refused
  double cet;
  double pcm;  ///< 0: refused
  double cen;
};
inline constexpr ComputedCarbonRow computed_carbon_rows[] = {
    {"plain 355 MPa",
     {.c = .17,
      .si = .35,
      .mn = 1.45,
      .cr = .05,
      .mo = .01,
      .v = .005,
      .ni = .05,
      .cu = .05,
      .nb = .02},
     .4313,
     .3222,
     .2612,
     .4324},
    {"quenched 690 MPa",
     {.c = .16,
      .si = .30,
      .mn = 1.20,
      .cr = .50,
      .mo = .40,
      .v = .03,
      .ni = .10,
      .cu = .10,
      .nb = .02,
      .b = .002},
     .5593,
     .3525,
     .3013,
     .5485},
    {"quenched 960 MPa",
     {.c = .17,
      .si = .30,
      .mn = 1.20,
      .cr = .50,
      .mo = .60,
      .v = .05,
      .ni = 1.0,
      .cu = .10,
      .nb = .02,
      .b = .002},
     .6733,
     .4050,
     .3417,
     .6526},
    {"wear 400 HB",
     {.c = .15, .si = .40, .mn = 1.40, .cr = .30, .mo = .10, .ni = .10, .cu = .05, .b = .002},
     .4733,
     .3200,
     .2692,
     .4580},
    {"wear 500 HB",
     {.c = .27, .si = .40, .mn = 1.30, .cr = .80, .mo = .25, .ni = .25, .cu = .10, .b = .002},
     0.0,
     .4763,
     0.0,
     .7419},
    {"thermomechanical",
     {.c = .08, .si = .20, .mn = 1.50, .cr = .03, .mo = .01, .ni = .30, .cu = .20, .nb = .02},
     .3713,
     .2500,
     .1788,
     .2544},
};

/// The accommodation factor as a Canadian line-pipe rule tabulates it, FROM MEMORY; the tanh
/// expression stays within 0.006 of it. Above 0.21 % the table says 1.00.
struct FactorRow {
  double carbon_percent;
  double factor_ratio;
};
inline constexpr FactorRow remembered_factors[] = {
    {.06, .54},
    {.07, .56},
    {.08, .58},
    {.09, .62},
    {.10, .66},
    {.11, .70},
    {.12, .75},
    {.13, .80},
    {.14, .85},
    {.15, .88},
    {.16, .92},
    {.17, .94},
    {.18, .96},
    {.19, .97},
    {.20, .98},
    {.21, .99},
};

/// [CSA]: CEN of this analysis is printed as 0.5077833333 with the factor f = 1.
inline constexpr material::Composition csa_analysis = {.c = .25,
                                                       .si = .29,
                                                       .mn = 1.28,
                                                       .cr = .05,
                                                       .mo = .034,
                                                       .v = .004,
                                                       .ni = .06,
                                                       .cu = .109,
                                                       .b = .0009};
inline constexpr double csa_cen_with_factor_1 = 0.5077833333;

}  // namespace seamturn::tests
