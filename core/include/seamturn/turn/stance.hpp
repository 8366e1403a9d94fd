// SPDX-License-Identifier: MIT
// Stances: settings of the positioner's axes that put a seam where it is wanted.
// Conventions of docs/methods/stance.md: world +Z up; tilt about +Y, turn about the face normal.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/cell/cell.hpp"
#include "seamturn/geom/vector.hpp"
#include "seamturn/process/weld_position.hpp"

namespace seamturn::turn {

using base::Angle;

/// Axis values, one per axis of the positioner.
struct Stance {
  std::vector<Angle> axes;
  bool rolling = false;  ///< the last axis turns while welding; its value is where the turn starts
};

/// Rotation from faceplate directions to world at axis values.
/// tilt-rotate: Ry(a) Rz(b); headstock: Rx(turn) with the face normal along +X at 0.
[[nodiscard]] geom::Mat3 rotation_WD(cell::PositionerKind kind, const std::vector<Angle>& axes);
/// Pose of the faceplate in the world.
[[nodiscard]] geom::Pose pose_WD(const cell::Positioner& positioner,
                                 const std::vector<Angle>& axes);

/// The direction (frame of t and n) that must point to the sky for a slope and bank:
/// u = sin S t + cos S (cos phi n + sin phi s), s = n x t.
/// Pre: t, n unit and square. Tests: turn/stance - computed (T and H cases).
[[nodiscard]] geom::Vec3 sky_direction(const geom::Vec3& t,
                                       const geom::Vec3& n,
                                       Angle slope,
                                       Angle bank);

/// One answer of the closed form.
struct StanceAnswer {
  std::vector<Angle> axes;   ///< as in Stance
  bool rotate_free = false;  ///< table level: any turn angle does
  Angle residual;            ///< between the wanted sky direction and the sky
};

/// Both branches of the tilt-and-rotate table, or the best attainable of a headstock (one answer).
/// No axis limits. Pre: u unit, frame D.
/// Source: docs/methods/stance.md. Accuracy: exact. Tests: turn/stance.
[[nodiscard]] std::vector<StanceAnswer> stances_for_sky(cell::PositionerKind kind,
                                                        const geom::Vec3& u_D);

/// The answers brought inside the axis limits (whole turns added on limited axes, nearest to zero
/// first); answers that cannot be are dropped.
[[nodiscard]] std::vector<StanceAnswer> within_limits(const cell::Positioner& positioner,
                                                      std::vector<StanceAnswer> answers);

[[nodiscard]] const base::FigureCard& stance_card();

}  // namespace seamturn::turn
