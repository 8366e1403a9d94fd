// SPDX-License-Identifier: MIT
// Turning a direction to the sky about one axis or two, whatever way they stand.
#pragma once

#include <vector>

#include "seamturn/base/angle.hpp"
#include "seamturn/geom/vector.hpp"

namespace seamturn::turn {

using base::Angle;

/// Turn about one axis that brings a direction nearest to the sky.
struct OneTurn {
  Angle turn;
  bool free = false;  ///< axis or direction leaves it open: every turn is as good
  Angle residual;     ///< left between direction and sky: |angle(u, k) - angle(z, k)|
};
/// theta = atan2(-u . (k x z), u . z - (u . k)(z . k)).
/// Units: any frame with +Z up. Pre: both unit. Source: docs/methods/stance.md, computed.
/// Accuracy: exact. Tests: turn/two_axes - closed-form, brute force.
[[nodiscard]] OneTurn one_turn_to_sky(const geom::Vec3& axis, const geom::Vec3& u);

/// Turns a about the first axis after b about the second, so that Rot(first, a) Rot(second, b) u is
/// the sky, or as near to it as can be.
struct TwoTurns {
  Angle first, second;
  bool first_free = false;   ///< the first axis is upright: its turn only changes the heading
  bool second_free = false;  ///< u lies along the second axis
  Angle residual;
};
/// Two answers, one where they fall together or the direction cannot be had. Both axes as they
/// stand at zero. Spherical triangle of first axis, second axis and the place u must come to: its
/// sides are known, half-angle formulas give the turns; where the sides close no triangle, what is
/// missing is the residual.
/// Units: any frame with +Z up. Pre: all unit; axes not parallel (1e-6 rad).
/// Source: docs/methods/stance.md, computed; same answers as [MLS-ROBOTICS] sub-problem 2.
/// Accuracy: exact. Tests: turn/two_axes - computed, law, brute force.
[[nodiscard]] std::vector<TwoTurns> two_turns_to_sky(const geom::Vec3& first,
                                                     const geom::Vec3& second,
                                                     const geom::Vec3& u);

/// How far a seam may lie off, to each side.
struct LieTolerance {
  Angle slope;
  Angle bank;
};
/// The turn about one axis that keeps a seam best within a tolerance: the least of
/// max(|slope - wanted| / slope tolerance, |bank - wanted| / bank tolerance) over a whole turn.
struct TolerantTurn {
  Angle turn;
  double norm = 0.0;  ///< 1: just within
  Angle slope, bank;  ///< as it then lies
};
/// The turn nearest to the sky is not the one best within a tolerance when slope and bank have
/// different limits. Search: a whole turn in steps of 1 deg, the three best refined by golden
/// section. Units: any frame with +Z up, at turn zero.
/// Pre: axis, travel, face unit, face square to travel; tolerances above 0.
/// Accuracy: turn 1e-6 deg in a smooth valley; norm 1e-9. Tests: turn/two_axes - computed (H8),
/// brute force.
[[nodiscard]] TolerantTurn most_tolerant_turn(const geom::Vec3& axis,
                                              const geom::Vec3& travel,
                                              const geom::Vec3& face,
                                              const LieTolerance& tolerance,
                                              Angle slope_wanted = Angle(),
                                              Angle bank_wanted = Angle());

}  // namespace seamturn::turn
