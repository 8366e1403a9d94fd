// SPDX-License-Identifier: MIT
// Sizes that codes and handbooks print. Status of each table in docs/methods/weld-size.md.
#pragma once

#include "oracle.hpp"
#include "seamturn/joint/imperfection_limits.hpp"
#include "seamturn/process/weld_position.hpp"

namespace seamturn::tests {

/// Least fillet legs by thickness, [AWS-LEAST] quoting [AWS D1.1], inch values; each band is tried
/// at its upper end and just beyond the end before it. The metric column beside it was not seen.
struct LeastLegRow {
  double thickness_in;
  Expected leg_in;
};
inline constexpr const char* least_leg_source = "AWS-LEAST, inch values of AWS D1.1";
inline constexpr LeastLegRow least_leg_rows[] = {
    {0.25, {1.0 / 8.0, 1e-12, Origin::published, least_leg_source}},
    {0.50, {3.0 / 16.0, 1e-12, Origin::published, least_leg_source}},
    {0.75, {1.0 / 4.0, 1e-12, Origin::published, least_leg_source}},
    {0.7501, {5.0 / 16.0, 1e-12, Origin::published, least_leg_source}},
};
struct MetricLegRow {
  double thickness_mm;
  Expected leg_mm;
};
inline constexpr const char* metric_leg_source = "metric column of AWS D1.1, from memory";
inline constexpr MetricLegRow metric_leg_rows[] = {
    {6.0, {3.0, 1e-12, Origin::remembered, metric_leg_source}},
    {6.1, {5.0, 1e-12, Origin::remembered, metric_leg_source}},
    {12.0, {5.0, 1e-12, Origin::remembered, metric_leg_source}},
    {12.1, {6.0, 1e-12, Origin::remembered, metric_leg_source}},
    {20.0, {6.0, 1e-12, Origin::remembered, metric_leg_source}},
    {20.1, {8.0, 1e-12, Origin::remembered, metric_leg_source}},
};

/// Largest leg along an edge.
struct EdgeRow {
  double edge_mm;
  Expected leg_mm;
};
inline constexpr const char* edge_source = "EDGE-THREADS, AWS-DIGEST: below 6 mm t, else t - 2";
inline constexpr EdgeRow edge_rows[] = {
    {5.0, {5.0, 1e-12, Origin::published, edge_source}},
    {6.0, {4.0, 1e-12, Origin::published, edge_source}},
    {12.0, {10.0, 1e-12, Origin::published, edge_source}},
};

/// Share of an end-loaded length. The rule is printed (100 and 300 legs, 1.2 - 0.2 L/(100 z), 180
/// z); 0.90 and 0.80 follow from it by hand.
struct EndLoadedRow {
  double legs;
  Expected share;
};
inline constexpr const char* end_source = "AWS D1.1 2010 2.4.2, end-loaded fillets";
inline constexpr EndLoadedRow end_loaded_rows[] = {
    {100.0, {1.00, 1e-12, Origin::published, end_source}},
    {150.0, {0.90, 1e-12, Origin::published, end_source}},
    {200.0, {0.80, 1e-12, Origin::published, end_source}},
    {300.0, {180.0 / 300.0, 1e-12, Origin::published, end_source}},
    {400.0, {180.0 / 400.0, 1e-12, Origin::published, end_source}},
};

/// Least throat of partial-penetration grooves by the thinner part, at the upper end of each band.
struct PartialThroatRow {
  double thinner_mm;
  Expected throat_mm;
};
inline constexpr const char* partial_source = "STEEL-HANDBOOK table 5.4";
inline constexpr PartialThroatRow partial_throat_rows[] = {
    {6.0, {3.0, 1e-12, Origin::published, partial_source}},
    {13.0, {5.0, 1e-12, Origin::published, partial_source}},
    {19.0, {6.0, 1e-12, Origin::published, partial_source}},
    {38.0, {8.0, 1e-12, Origin::published, partial_source}},
    {57.0, {10.0, 1e-12, Origin::published, partial_source}},
    {150.0, {13.0, 1e-12, Origin::published, partial_source}},
    {150.1, {16.0, 1e-12, Origin::published, partial_source}},
};

/// What counts of a partial-penetration groove 10 mm deep, by process and position.
enum class OracleGroove { v60, bevel45 };
struct DeductionRow {
  OracleGroove groove;
  const char* process;
  process::WeldPosition position;
  Expected deduction_mm;
};
inline constexpr const char* pjp_gas = "AISC-PJP, gas-shielded joints, 1/8 in taken as 3 mm";
inline constexpr const char* pjp_covered = "AISC-PJP, covered electrode, 1/8 in taken as 3 mm";
inline constexpr DeductionRow deduction_rows[] = {
    {OracleGroove::v60, "135", process::WeldPosition::pf, {0.0, 1e-12, Origin::published, pjp_gas}},
    {OracleGroove::bevel45,
     "135",
     process::WeldPosition::pa,
     {0.0, 1e-12, Origin::published, pjp_gas}},
    {OracleGroove::bevel45,
     "138",
     process::WeldPosition::pc,
     {0.0, 1e-12, Origin::published, pjp_gas}},
    {OracleGroove::bevel45,
     "135",
     process::WeldPosition::pf,
     {3.0, 1e-12, Origin::published, pjp_gas}},
    {OracleGroove::bevel45,
     "136",
     process::WeldPosition::pe,
     {3.0, 1e-12, Origin::published, pjp_gas}},
    {OracleGroove::bevel45,
     "111",
     process::WeldPosition::pa,
     {3.0, 1e-12, Origin::published, pjp_covered}},
};

/// Plug holes: least t + 8, largest least + 3 or 2.25 t; 12 mm: 20 to 27 mm worked by hand.
struct PlugRow {
  double plate_mm;
  Expected least_mm;
  Expected largest_mm;
};
inline constexpr const char* plug_source = "AWS D1.1:2000 3.10";
inline constexpr PlugRow plug_rows[] = {
    {12.0,
     {20.0, 1e-12, Origin::published, plug_source},
     {27.0, 1e-12, Origin::published, plug_source}},
    {6.0,
     {14.0, 1e-12, Origin::published, plug_source},
     {17.0, 1e-12, Origin::published, plug_source}},
};

/// Tacks [EN 1011-2] clause 13, quoted by [TACK-PAGE].
struct TackRow {
  double thicker_mm;
  Expected length_mm;
};
inline constexpr TackRow tack_rows[] = {
    {10.0, {40.0, 1e-12, Origin::published, "TACK-PAGE, EN 1011-2 clause 13"}},
    {12.0, {50.0, 1e-12, Origin::published, "TACK-PAGE, EN 1011-2 clause 13"}},
};

/// ISO 5817:2023 no. 5071, 5072 and 617 as [SEAM-DATA] prints them, second-hand: for each level B,
/// C, D a share of the size, an amount beside it and a cap. Tried below and at the cap.
struct LevelRow {
  double size_mm;        // thickness, or actual throat
  Expected limit_mm[3];  // B, C, D
};
inline constexpr const char* plate_source = "SEAM-DATA, ISO 5817:2023 no. 5071";
inline constexpr LevelRow plate_misalignment_rows[] = {
    {2.0,
     {{0.4, 1e-12, Origin::published, plate_source},
      {0.5, 1e-12, Origin::published, plate_source},
      {0.7, 1e-12, Origin::published, plate_source}}},
    {10.0,
     {{1.0, 1e-12, Origin::published, plate_source},
      {1.5, 1e-12, Origin::published, plate_source},
      {2.5, 1e-12, Origin::published, plate_source}}},
    {40.0,
     {{3.0, 1e-12, Origin::published, plate_source},
      {4.0, 1e-12, Origin::published, plate_source},
      {5.0, 1e-12, Origin::published, plate_source}}},
};
inline constexpr const char* tube_source = "SEAM-DATA, ISO 5817:2023 no. 5072";
inline constexpr LevelRow tube_misalignment_rows[] = {
    {10.0,
     {{2.0, 1e-12, Origin::published, tube_source},
      {3.0, 1e-12, Origin::published, tube_source},
      {4.0, 1e-12, Origin::published, tube_source}}},
    {3.0,
     {{1.5, 1e-12, Origin::published, tube_source},
      {1.5, 1e-12, Origin::published, tube_source},
      {1.5, 1e-12, Origin::published, tube_source}}},
};
inline constexpr const char* gap_source = "SEAM-DATA, ISO 5817:2023 no. 617";
/// Plates above 3 mm.
inline constexpr LevelRow fillet_gap_rows[] = {
    {5.0,
     {{1.0, 1e-12, Origin::published, gap_source},
      {1.5, 1e-12, Origin::published, gap_source},
      {2.5, 1e-12, Origin::published, gap_source}}},
    {20.0,
     {{2.0, 1e-12, Origin::published, gap_source},
      {3.0, 1e-12, Origin::published, gap_source},
      {4.0, 1e-12, Origin::published, gap_source}}},
};
/// Sheet of 0.5 to 3 mm.
inline constexpr LevelRow fillet_gap_sheet_rows[] = {
    {2.0,
     {{0.4, 1e-12, Origin::published, gap_source},
      {0.5, 1e-12, Origin::published, gap_source},
      {0.7, 1e-12, Origin::published, gap_source}}},
};

}  // namespace seamturn::tests
