// SPDX-License-Identifier: MIT
// Rules of thumb for how much a weld shrinks, bows and tilts steel. They disagree by a factor of
// two and more: take them in pairs, as a band, never one alone.
#pragma once

#include <vector>

#include "seamturn/base/citation.hpp"
#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/base/valid_range.hpp"

namespace seamturn::shrinkage {

/// Of the source of the rules; EN 1993-1-1 takes 210 000, 2 % more. FROM MEMORY.
inline constexpr double youngs_modulus_n_mm2 = 206000.0;

/// What one rule gives.
struct RuleValue {
  double mm = 0.0;
  base::Citation citation;
  std::vector<base::Finding> findings;  ///< outside the rule's range
};
struct Band {
  double low = 0.0;
  double high = 0.0;
  bool operator==(const Band&) const = default;
};
/// A published allowance.
struct Allowance {
  Band mm;
  base::Citation citation;
};

struct ButtWeld {
  double area_mm2 = 0.0;  ///< weld metal
  double thickness_mm = 0.0;
  double gap_mm = 0.0;
};
/// Shrinkage across a butt: S = 0.2 A/t + 0.05 g.
/// Units: mm2, mm -> mm; the coefficients have no unit, any one unit of length serves.
/// Pre: finite, area and thickness > 0, gap >= 0. Outside: no limit stated.
/// Source: [SHRINK-ARTICLE] the rule, verified; its authors from memory.
/// Accuracy: the other coefficient, 0.1, is half of this one: see butt_by_mean_width.
/// Tests: shrinkage/rules - published, law.
[[nodiscard]] RuleValue butt_by_area_and_gap(const ButtWeld& weld);
/// Shrinkage across a butt: S = 0.1 A/t, a tenth of the weld's mean width.
/// Units, Pre, Outside: as above. Source: [SHRINK-STATEMENT] verified; quotes [BLODGETT].
/// Tests: shrinkage/rules - published (ten printed values), law.
[[nodiscard]] RuleValue butt_by_mean_width(const ButtWeld& weld);

struct FilletPair {
  double leg_mm = 0.0;
  double thickness_mm = 0.0;  ///< of the plate that shrinks
};
/// Up to this share of the thickness the published allowance of fillets speaks [TWI-SHRINK].
inline constexpr double leg_share_of_thickness = 0.75;
/// Shrinkage across the bottom plate of a tee with two fillets: 1.02 z/t mm.
/// Units: mm -> mm (1.02 is mm). Pre: finite, > 0.
/// Outside: leg above 3/4 of the thickness: warns shrinkage.fillet.leg.
/// Source: [SHRINK-MEMORY] constant from memory. Tests: shrinkage/rules - computed, law.
[[nodiscard]] RuleValue tee_fillets(const FilletPair& pair);
/// The same of a lap with two fillets: 1.52 z/t mm. Source: [SHRINK-MEMORY] from memory; 1.52 also
/// on a formula page. Tests: shrinkage/rules - computed, law.
[[nodiscard]] RuleValue lap_fillets(const FilletPair& pair);

struct LongButt {
  double current_a = 0.0;
  double length_mm = 0.0;
  double thickness_mm = 0.0;
};
/// "Thin plate" of the rule along a butt: where it ends is our choice, nothing states it.
inline constexpr double thin_plate_mm = 20.0;
/// Shrinkage along a butt in thin plate: 305 I L/t 1e-7 mm.
/// Units: A, mm -> mm. Pre: finite, > 0. Outside: above 20 mm (our choice): warns
/// shrinkage.long_butt.thick. Source: [SHRINK-MEMORY] from memory.
/// Tests: shrinkage/rules - computed, published allowance beside it.
[[nodiscard]] RuleValue along_butt(const LongButt& weld);

struct LongFillet {
  double area_mm2 = 0.0;          ///< weld metal
  double section_area_mm2 = 0.0;  ///< of the whole section
  double length_mm = 0.0;
};
/// Below this share of weld metal in the section the rule along fillets holds.
inline constexpr double weld_share_of_section = 0.05;
/// Shrinkage along fillets: 25 Aw/Ap mm in a metre.
/// Units: mm2, mm -> mm. Pre: finite, > 0.
/// Outside: Aw/Ap of 0.05 or more: refuses with shrinkage.long_fillet.share.
/// Source: [SHRINK-MEMORY] from memory. Tests: shrinkage/rules - computed, law.
[[nodiscard]] base::Outcome<RuleValue> along_fillet(const LongFillet& weld);

/// Shrinkage force of steel, F = 0.2 Q in kN and J/mm, so 200 Q in N.
/// Units: J/mm of heat that reached the steel, summed over the runs -> N. Pre: finite, >= 0.
/// Outside: no limit stated. Source: [SHRINK-FORCE] coefficient from memory.
/// Accuracy: the rule by area is 8 % higher at 38 J/mm for every mm2.
/// Tests: shrinkage/rules - cross (the two rules), computed.
[[nodiscard]] double force_by_heat_n(double net_heat_j_mm);
/// The same by area, F = 0.04 E A: what makes the bowing rule 0.005 A d L2/I a beam under F.
/// Units: mm2 -> N. Pre: finite, >= 0. Source: [BLODGETT] from memory.
/// Tests: shrinkage/rules - cross.
[[nodiscard]] double force_by_area_n(double area_mm2);

struct BowedMember {
  double arm_mm = 0.0;  ///< of the weld from the neutral axis, signed: the bow takes its sign
  double length_mm = 0.0;
  double second_moment_mm4 = 0.0;
};
/// Bow of a member welded along its whole length, middle against ends: 0.005 A d L2/I.
/// Units: mm2, mm, mm4 -> mm; the coefficient has no unit. Pre: finite; length, I > 0; A >= 0.
/// Outside: no limit stated. Source: [BLODGETT] from memory.
/// Tests: shrinkage/rules - computed, cross, law.
[[nodiscard]] RuleValue bow_by_area(double area_mm2, const BowedMember& member);
/// The same as a beam under a force beside its axis: F d L2/(8 E I).
/// Units: N, mm, mm4 -> mm. Source: none - beam theory. Tests: shrinkage/rules - cross, law.
[[nodiscard]] RuleValue bow_by_force(double force_n, const BowedMember& member);
/// Shortening under a force in the axis: F L/(E A). Units: N, mm, mm2 -> mm. Pre: L, A > 0.
/// Source: none - Hooke's law. Tests: shrinkage/rules - computed.
[[nodiscard]] RuleValue shortening_by_force(double force_n,
                                            double length_mm,
                                            double section_area_mm2);

struct TiltedFlange {
  double width_mm = 0.0;
  double leg_mm = 0.0;
  double thickness_mm = 0.0;
};
/// Lift of a flange's edge by the fillets on it: 0.1925 W z^1.3/t2, in inches 0.02 W z^1.3/t2.
/// Units: mm -> mm; the exponents make the coefficient depend on the unit (25.4^0.7).
/// Pre: finite, > 0. Outside: no limit stated. Source: [BLODGETT] from memory.
/// Tests: shrinkage/rules - computed, closed-form (inches), published lean beside it.
[[nodiscard]] RuleValue flange_tilt(const TiltedFlange& flange);

/// The published lean of a single fillet on a tee, and the thickness up to which its plates go.
inline constexpr Band fillet_lean_deg{1.0, 3.0};
inline constexpr double lean_up_to_mm = 12.7;
/// Lean of a plate by one fillet, as lift of an edge `width` away: W tan(1 deg) to W tan(3 deg).
/// Units: mm -> mm. Pre: finite, > 0. Outside: plate above 12.7 mm (1/2 in): refuses with
/// shrinkage.lean.thick. Source: [SHRINK-ARTICLE] verified.
/// Tests: shrinkage/rules - published (2 deg over 6 in).
[[nodiscard]] base::Outcome<Allowance> published_lean(double width_mm, double thickness_mm);

/// Published allowances, mm. Source: [TWI-SHRINK] verified; the first also in [SHRINK-ARTICLE].
/// Pre: finite, > 0. Tests: shrinkage/rules - published.
[[nodiscard]] Allowance allowance_along_fillet(double length_mm);  ///< 0.8 mm in 3 m
[[nodiscard]] Allowance allowance_along_butt(double length_mm);    ///< 3 mm in 3 m
[[nodiscard]] Allowance allowance_across_v();                      ///< 1.5 to 3 mm, V of 60 deg
/// 0.8 mm for every fillet. Outside: leg above 3/4 t: refuses with shrinkage.allowance.leg.
[[nodiscard]] base::Outcome<Allowance> allowance_across_fillet(const FilletPair& weld);

[[nodiscard]] const base::FigureCard& shrinkage_card();

}  // namespace seamturn::shrinkage
