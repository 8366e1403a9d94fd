// SPDX-License-Identifier: MIT
// Stances: settings of the positioner's axes that put a seam where it is wanted.
// Conventions of docs/methods/stance.md: world +Z up; axes as cell::Positioner says.
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

/// Rotation from faceplate directions to world at axis values: the axes' rotations one after
/// another, the axis fixed to the floor last, after the faceplate's own at zero.
/// tilt-rotate: Ry(a) Rz(b); headstock: Rx(turn) with the face normal along +X at 0.
/// Pre: as many values as the positioner has axes. Tests: turn/stance - closed-form, law.
[[nodiscard]] geom::Mat3 rotation_WD(const cell::Positioner& positioner,
                                     const std::vector<Angle>& axes);
/// Pose of the faceplate in the world. Pre and tests as rotation_WD.
[[nodiscard]] geom::Pose pose_WD(const cell::Positioner& positioner,
                                 const std::vector<Angle>& axes);
/// The lines the axes turn about, where those before have carried them. Frame W. Pre: as above.
[[nodiscard]] std::vector<cell::AxisLine> axis_lines_W(const cell::Positioner& positioner,
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
  bool rotate_free = false;  ///< any angle of the last axis does
  Angle residual;            ///< between the wanted sky direction and the sky
  bool first_free = false;   ///< any angle of the first of two axes does: it is upright
};

/// Both branches where two axes reach the direction; otherwise one answer: the best attainable,
/// with its residual. An exchange axis stands at zero. No axis limits.
/// Pre: u unit, frame D; one or two axes beside an exchange, two not parallel.
/// Source: docs/methods/stance.md. Accuracy: exact. Tests: turn/stance, turn/two_axes.
[[nodiscard]] std::vector<StanceAnswer> stances_for_sky(const cell::Positioner& positioner,
                                                        const geom::Vec3& u_D);

/// The answers brought inside the axis limits (whole turns added on limited axes, nearest to zero
/// first; a free axis as near to zero as it may stand); answers that cannot be are dropped.
[[nodiscard]] std::vector<StanceAnswer> within_limits(const cell::Positioner& positioner,
                                                      std::vector<StanceAnswer> answers);

[[nodiscard]] const base::FigureCard& stance_card();

}  // namespace seamturn::turn
