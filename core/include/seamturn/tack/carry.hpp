// SPDX-License-Identifier: MIT
// Do the tacks carry the part? A rigid part on tacks that all give alike, in every attitude of the
// turn. A simple rule, never a release.
#pragma once

#include <cstddef>
#include <vector>

#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/geom/vector.hpp"
#include "seamturn/tack/tack_plan.hpp"

namespace seamturn::tack {

/// A straight tack. Frame J, mm.
struct HeldTack {
  geom::Vec3 centre = geom::Vec3::Zero();
  geom::Vec3 direction = geom::Vec3::UnitX();  ///< unit
  double length_mm = 0.0;
  double throat_mm = 0.0;
};
/// The tacks of a plan as carry wants them.
[[nodiscard]] std::vector<HeldTack> held_tacks(const TackPlan& plan);

/// What hangs on the tacks.
struct CarriedPart {
  double mass_kg = 0.0;
  geom::Vec3 centre_of_gravity = geom::Vec3::Zero();  ///< frame J, mm
  /// Unit, frame J: down, in every attitude to be judged.
  std::vector<geom::Vec3> gravity_directions;
  /// From 1, from the file: jerks of crane and turning table, and the partial factor on loads.
  double site_factor = 0.0;
  PermittedStress permitted;
};

/// One tack in the worst attitude.
struct TackLoad {
  geom::Vec3 force_n = geom::Vec3::Zero();  ///< what the part does to the tack; frame J
  double stress_mpa = 0.0;                  ///< at its worse end
};

struct Carry {
  double utilisation_ratio = 0.0;  ///< stress over permitted stress; above 1: does not hold
  double stress_mpa = 0.0;         ///< the worst
  PermittedStress permitted;
  std::size_t worst_attitude = 0;  ///< index of gravity_directions
  std::size_t worst_tack = 0;
  /// The worst that any attitude could bring, also one not listed.
  double any_attitude_stress_mpa = 0.0;
  std::vector<TackLoad> loads;  ///< in the worst attitude, one a tack
  std::vector<base::Finding> findings;
};

/// Stress on the throats: force per area W/A + omega x r about the centroid of all throats, with
/// sum of A (r^2 I - r r^T) omega = M; each tack's own length counts, its throat's width does not.
/// Judged at both ends of every tack: the stress is linear along it.
/// Units: kg, mm, N, MPa; frame J.
/// Pre: at least one tack and one direction; numbers finite; directions unit; mass, lengths and
///   throats above 0; site_factor from 1; permitted stress above 0.
/// Outside: refuses tack.carry.hinge: all tacks in one line hold no turning about it (their throats
///   would be bent about the root). Findings: tack.carry.overloaded (warning, above 1) or
///   tack.carry.not_released (note: holds by this rule).
/// Source: none - statics of a rigid part on equal springs; the comparison with the permitted
///   stress is that of [EN 1993-1-8] 4.5.3.3, from memory.
/// Accuracy: exact for its model. Parts press on one another, plates give: not counted.
/// Tests: tack/carry - closed-form, law, cross.
[[nodiscard]] base::Outcome<Carry> carry(const std::vector<HeldTack>& tacks,
                                         const CarriedPart& part);

struct MoreTacks {
  int more = 0;
  std::vector<TackPlan> plans;  ///< one a seam, with the tacks that hold
  Carry carry;
};

/// Tacks laid anew, one more at a time, on the seam where they lie furthest apart, until they hold
/// by this rule.
/// Pre: as plan_tacks and carry; at least one seam; most >= 0.
/// Outside: refuses as plan_tacks and carry; tack.carry.not_by_more when `most` more do not hold,
/// or
///   no seam has room: longer or thicker tacks, or other means, must.
/// Source and accuracy: as carry. Tests: tack/carry - law.
[[nodiscard]] base::Outcome<MoreTacks> more_tacks_needed(const std::vector<TackSeam>& seams,
                                                         const TackRules& rules,
                                                         const CarriedPart& part,
                                                         int most = 50);

}  // namespace seamturn::tack
