// SPDX-License-Identifier: MIT
// Preheat from the tables of codes: cells as printed, nothing between or beyond them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/base/citation.hpp"
#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/joint/restraint.hpp"

namespace seamturn::heat {

struct TableC1Params {
  double cev = 0.0;               ///< mass-%, CE(IIW)
  double heat_input_kj_mm = 0.0;  ///< with the European k; the lowest the joint may see
  double hydrogen_ml_100g = 0.0;  ///< ISO 3690
};

/// The cell used, and what it permits.
struct TableC1 {
  double listed_cev = 0.0;               ///< 0.43 or 0.49: the next higher listed
  double listed_heat_input_kj_mm = 0.0;  ///< 1 or 2: the next lower listed
  std::string hydrogen_band;             ///< "> 5 to 10 ml/100 g"
  char hydrogen_letter = 'A';            ///< A (worst) to E; letters from memory
  double largest_combined_mm = 0.0;      ///< up to here the table asks for no preheat

  /// True: no preheat by this table. False: the table is silent, consult figure C.2 of the
  /// standard; it never means a temperature. Pre: finite, > 0.
  [[nodiscard]] bool no_preheat(double combined_thickness_mm) const;
};

/// Largest combined thickness weldable without preheat.
/// Units: mass-%, kJ/mm, ml/100 g -> mm.
/// Pre: finite, CEV >= 0, heat input and hydrogen > 0.
/// Outside: refuses heat.table_c1.not_listed above CEV 0.49 or below 1 kJ/mm: consult figure C.2.
///   No interpolation, no extrapolation; nothing is known of yield, restraint or cold plates.
/// Source: [EN-C1] table C.1, all 20 cells verified; letters of the bands from memory.
/// Accuracy: exact cell. The CET method may ask for over 100 K where this table asks for nothing.
/// Tests: heat/preheat_tables - published, law.
[[nodiscard]] base::Outcome<TableC1> table_c1(const TableC1Params& params);
[[nodiscard]] const base::FigureCard& table_c1_card();

struct AwsCategoryParams {
  char category = 'B';                     ///< A to D; which steel is in which is edition data
  double thickness_mm = 0.0;               ///< thickest part at the point of welding
  std::optional<double> hydrogen_ml_100g;  ///< needed for D only
};

struct AwsCategoryPreheat {
  double preheat_f = 0.0;
  double preheat_c = 0.0;         ///< the code's own metric column, not the Fahrenheit converted
  bool heats_cold_plate = false;  ///< the 32 degF cells: below 0 degC warm to 20 degC (memory)
  std::string band;               ///< "> 38 to 65 mm"
  base::Status status_c = base::Status::verified;  ///< of preheat_c: computed for C and D
};

/// Prequalified minimum preheat and interpass temperature by category of steel and filler.
/// Units: mm, ml/100 g -> degC and degF.
/// Pre: thickness finite, > 0; hydrogen finite, > 0 when given.
/// Outside: refuses heat.aws_category.unknown (no such letter), heat.aws_category.thickness below
///   3 mm, heat.aws_category.hydrogen for D with more than 8 ml/100 g or none stated.
/// Source: [D11-33] A and B in both units, [D11-CD] C and D in degF; degC of C and D by analogy.
/// Accuracy: exact cell; edges 20, 38, 65 mm.
/// Tests: heat/preheat_tables - published, law.
[[nodiscard]] base::Outcome<AwsCategoryPreheat> aws_category_preheat(
    const AwsCategoryParams& params);
[[nodiscard]] const base::FigureCard& aws_category_card();

struct AwsHydrogenParams {
  double pcm = 0.0;               ///< mass-%
  double hydrogen_ml_100g = 0.0;  ///< of the deposited metal
  joint::Restraint restraint = joint::Restraint::medium;
  double thickness_mm = 0.0;
};

struct AwsHydrogenPreheat {
  int hydrogen_level = 3;       ///< 1: below 5, 2: below 10, 3: not controlled (30 taken)
  double susceptibility = 0.0;  ///< 12 Pcm + log10 H at the upper ends of the cell
  char table_letter = 'A';      ///< as the recalled table of letters has it
  char index_letter = 'A';      ///< as the recalled bands of the index have it
  char letter = 'A';            ///< the worse of the two
  double preheat_f = 0.0;
  double preheat_c = 0.0;   ///< rounded to 5 as the metric edition does
  bool below_room = false;  ///< the cell says "< 65": 65 degF (20 degC) is more than it asks
  std::string band;         ///< "> 38 to 75 mm"
  bool confirmed = false;   ///< never true: 104 of 105 cells are remembered
  base::Status status = base::Status::from_memory;
  std::vector<base::Finding> findings;  ///< always heat.aws_hydrogen.unconfirmed
};

/// Preheat of the hydrogen-control annex (Pcm, hydrogen level, restraint, thickness). Shown, never
/// governing: it must not alone declare a joint safe.
/// Units: mass-%, ml/100 g, mm -> degC and degF.
/// Pre: finite, Pcm >= 0, hydrogen and thickness > 0.
/// Outside: refuses heat.aws_hydrogen.pcm at or above 0.38 % (no column); warns
///   heat.aws_hydrogen.unconfirmed always, heat.aws_hydrogen.out_of_range above 30 ml/100 g.
/// Source: [AWS D1.1] hydrogen-control annex FROM MEMORY; one cell [AWSF-1].
/// Accuracy: unconfirmed.
/// Tests: heat/preheat_tables - published (one cell), remembered, laws.
[[nodiscard]] base::Outcome<AwsHydrogenPreheat> aws_hydrogen_preheat(
    const AwsHydrogenParams& params);
[[nodiscard]] const base::FigureCard& aws_hydrogen_card();

}  // namespace seamturn::heat
