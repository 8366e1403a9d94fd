// SPDX-License-Identifier: MIT
// How far a spool of wire reaches and how often it is changed.
#pragma once

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/outcome.hpp"

namespace seamturn::process {

/// Usual wire on a basket or plastic spool of 300 mm, and in a drum. Source: [ISO 544] from memory.
inline constexpr double usual_spool_kg = 15.0;
inline constexpr double usual_drum_kg = 250.0;
/// Wire left when a spool is taken off: what hangs between spool and torch. Project choice.
inline constexpr double usual_leftover_m = 10.0;

struct SpoolUse {
  double wire_needed_kg = 0.0;  ///< bought wire: spatter and stubs included
  double linear_mass_kg_m = 0.0;
  double spool_kg = usual_spool_kg;  ///< wire on a full spool, without the body
  double leftover_m = usual_leftover_m;
  double started_m = 0.0;  ///< wire on the spool at the start; 0: a full one
};

/// Left-over rule: a spool gives all but `leftover_m`, which is thrown away when the next one goes
/// on; the last spool's rest stays on the machine. A job that ends with the spool needs no change.
struct SpoolPlan {
  double spool_m = 0.0;  ///< on a full spool
  double needed_m = 0.0;
  long long changes = 0;  ///< during the job
  double rest_m = 0.0;    ///< on the spool at the end
  double thrown_m = 0.0;  ///< left-overs of the spools changed
};
/// Units: kg, kg/m, m -> m, count.  Pre: finite.
/// Outside: refuses process.spool.value (needed below 0, mass per metre or spool not above 0,
/// left-over
///   below 0, more on the first spool than fits), process.spool.leftover (nothing usable on a
///   spool), process.spool.count (over a million changes: a slip of unit).
/// Source: [MASS] metres = mass / mass per metre; counting.
/// Tests: process/spool - closed-form, law.
[[nodiscard]] base::Outcome<SpoolPlan> plan_spools(const SpoolUse& use);
[[nodiscard]] const base::FigureCard& spool_card();

}  // namespace seamturn::process
