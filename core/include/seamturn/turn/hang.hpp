// SPDX-License-Identifier: MIT
// How a part hangs from one hook on its slings: which way it leans, what each sling carries.
// Static and rigid. Slings, hooks, lugs and the crane are not chosen or judged here.
#pragma once

#include <optional>
#include <vector>

#include "seamturn/base/angle.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/geom/vector.hpp"

namespace seamturn::turn {

using base::Angle;

/// All points and directions in one frame, as the part is meant to hang. mm.
struct HangParams {
  double mass_kg = 0.0;  ///< with the gear below the hook, where that counts
  geom::Vec3 centre_of_gravity = geom::Vec3::Zero();
  geom::Vec3 hook = geom::Vec3::Zero();
  std::vector<geom::Vec3> lifting_points;  ///< one sling from each to the hook
  geom::Vec3 up = geom::Vec3::UnitZ();     ///< unit: meant to point to the sky
  std::optional<Angle> lean_limit;         ///< the part may hang so much askew
};

struct SlingLoad {
  double share_ratio = 0.0;  ///< of the weight, vertical
  Angle from_vertical;
  double force_n = 0.0;  ///< along the sling
  /// The most it may carry: as above up to three slings; of four and more the most when any three
  /// carry and the others are slack.
  double largest_share_ratio = 0.0;
  double largest_force_n = 0.0;
};

struct Hang {
  geom::Vec3 up_as_hung = geom::Vec3::UnitZ();   ///< unit: to the sky once it hangs
  geom::Vec3 hook_as_hung = geom::Vec3::Zero();  ///< one or two slings: where it swings to
  Angle lean;                                    ///< between `up` and up_as_hung
  /// Two slings: how far the centre of gravity lies off the plane of hook and points as meant.
  double off_plane_mm = 0.0;
  std::vector<SlingLoad> slings;  ///< one a lifting point
  std::vector<base::Finding> findings;
};

/// The slings' pull balances the weight: sum of lambda_i (hook - p_i) = up_as_hung, share_i =
/// lambda_i (hook - p_i) . up_as_hung. One sling: the point comes above the centre of gravity. Two:
/// the part swings about the line of both points until it lies below the hook. Three: up_as_hung
/// points from the centre of gravity to the hook. Four and more: the same; a rigid part leaves the
/// shares open: told are those of least sum of squares, none below 0, and the most when three
/// carry. With points level as hung the shares are the lever rule and the barycentric coordinates.
/// Units: kg, mm, N; one frame.
/// Pre: mass above 0; numbers finite; 1 to 12 points; up unit; lean_limit above 0; hook,
///   points apart from one another and from the hook.
/// Outside: refuses turn.hang.tips (a point that never carries, or one or two points not above the
///   centre of gravity), turn.hang.in_line (three or more points of which no three span a pyramid
///   with the hook, or two in line with it), turn.hang.hook_low (hook not above points or centre of
///   gravity). Findings (warnings): turn.hang.top_heavy, turn.hang.sling_flat (above 60 deg),
///   turn.hang.leans, turn.hang.slack (a sling without load in the least-squares share).
/// Source: none - statics; 60 deg [EN 818-4] from memory.
/// Accuracy: exact for a rigid part at rest on slings that do not stretch; jerks on top.
/// Tests: turn/hang - closed-form, law, cross.
[[nodiscard]] base::Outcome<Hang> hang(const HangParams& params);

}  // namespace seamturn::turn
