// SPDX-License-Identifier: MIT
// Which feed goes with which current: MR = a I + b L I2, the arc's share and the heating of the
// free length of wire. Two trial points fix it exactly for one wire and gas; the coefficients
// without a trial are from memory.
#pragma once

#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/process/consumables.hpp"

namespace seamturn::process {

struct BurnOffLaw {
  double a_kg_h_a = 0.0;          ///< melted by the arc, per ampere
  double b_kg_h_a2_mm = 0.0;      ///< melted by the heated free length, per ampere squared and mm
  double linear_mass_kg_m = 0.0;  ///< turns melt-off into feed
  double current_min_a = 0.0;     ///< what trial or memory covers
  double current_max_a = 0.0;
  double trial_extension_mm = 0.0;  ///< free length of the trial; 0: no trial
  base::Citation citation;
};

/// Coefficients without a trial: pulsed gas-shielded welding with 1.2 mm solid steel wire, scaled
/// by diameter (a stays, b falls with d2). Units: -> kg/h per A, per A2 mm.  Pre: diameter > 0.
/// Outside: refuses process.burn_off.diameter (1.0 to 1.6 mm: below, the scaling is far off),
///   process.burn_off.cored (a cored wire needs a trial).
/// Source: [BURN-OFF] from memory: v [mm/s] = 0.30 I + 5.0e-5 L I2.
/// Accuracy: against remembered data sheets +14 to -10 %; against the fillet conditions of
///   [CO2-FILLET] the feed reads 20 to 40 % above the metal laid. Make a trial.
/// Tests: process/burn_off - remembered.
[[nodiscard]] base::Outcome<BurnOffLaw> remembered_burn_off(const Wire& wire);

/// One trial weld: what the feeder and the ammeter showed.
struct TrialPoint {
  double current_a = 0.0;
  double feed_mm_s = 0.0;
};
/// The law through two trial points of one wire, gas and free length.
/// Units: A, mm/s, mm.  Pre: finite.
/// Outside: refuses process.burn_off.trial (values not above 0; currents less than 10 % apart;
/// points
///   no wire can give: feed per ampere falling, or all heat from the free length).
/// Source: closed form, docs/methods/deposit.md. Accuracy: exact at both points.
/// Tests: process/burn_off - published points between the two, law.
[[nodiscard]] base::Outcome<BurnOffLaw> fit_burn_off(const Wire& wire,
                                                     const TrialPoint& one,
                                                     const TrialPoint& other,
                                                     double extension_mm);

struct BurnOff {
  double current_a = 0.0;
  double melt_off_kg_h = 0.0;
  double feed_mm_s = 0.0;
  std::vector<base::Finding> findings;
};
/// How far beyond the covered currents a value is still given, as a share of them (project choice).
inline constexpr double burn_off_extrapolation_ratio = 0.10;

/// Feed for a current.
/// Units: mm, A.  Pre: extension > 0, current > 0, 0 <= extrapolation < 1.
/// Outside: warns process.burn_off.extrapolated up to `extrapolation_ratio` beyond the covered
///   currents, process.burn_off.extension when the free length is more than a fifth off the
///   trial's; refuses process.burn_off.out_of_range further out.
/// Source: [BURN-OFF] form of the law. Tests: process/burn_off - published, law.
[[nodiscard]] base::Outcome<BurnOff> burn_off_at_current(
    const BurnOffLaw& law,
    double extension_mm,
    double current_a,
    double extrapolation_ratio = burn_off_extrapolation_ratio);
/// Current for a feed; the inverse, with the same limits.
/// Source: as burn_off_at_current. Tests: process/burn_off - law.
[[nodiscard]] base::Outcome<BurnOff> burn_off_at_feed(
    const BurnOffLaw& law,
    double extension_mm,
    double feed_mm_s,
    double extrapolation_ratio = burn_off_extrapolation_ratio);

[[nodiscard]] const base::FigureCard& burn_off_card();

}  // namespace seamturn::process
