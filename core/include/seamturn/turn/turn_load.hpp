// SPDX-License-Identifier: MIT
// What a loaded positioner's axes have to hold along a turn: at rest anywhere on the way, while
// speeding up, and at an emergency stop.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/base/finding.hpp"
#include "seamturn/cell/cell.hpp"
#include "seamturn/joint/inertia.hpp"

namespace seamturn::turn {

using base::Angle;

/// The largest value about an axis on the way of a turn, and where.
struct Peak {
  double torque_nm = 0.0;  ///< with its sign
  double at_ratio = 0.0;   ///< of the way
};

struct TurnPeaks {
  std::vector<Peak> still;     ///< per axis, static, with the positioner's margin
  std::vector<Peak> speeding;  ///< per axis: |static| + J acceleration where it moves
  /// Per axis: |static| + J stop where it moves. None: the cell states no slowing down for it.
  std::vector<std::optional<Peak>> stopping;
};

/// All axes in proportion from one setting to another, endless ones the short way round. J is taken
/// about the axis where the later ones have it, m raised by the margin; axes that brake or speed up
/// at once do not help one another. The full acceleration is taken though a slower axis holds back.
/// Units: kg, kg m2 -> N m. Frame: load in D. Pre: settings as the positioner has axes.
/// Source: docs/methods/load.md, mechanics (computed). Search: steps of 2 deg of the widest axis,
/// the best refined by golden section; between two steps a torque of one axis is a sine of at most
/// twice that. Accuracy: 1e-6 of the largest torque.
/// Tests: turn/turn_load - computed, closed-form, brute force.
[[nodiscard]] TurnPeaks turn_peaks(const cell::Positioner& positioner,
                                   const joint::Body& load_D,
                                   const std::vector<Angle>& from,
                                   const std::vector<Angle>& to);

/// Moment of inertia of a load about every axis at a setting: k . I k + m |k x r|^2, of what hangs
/// on the faceplate alone; the positioner's own moving parts come on top.
/// Units: kg m2. Tests: turn/turn_load - closed-form.
[[nodiscard]] std::vector<double> axis_inertias_kg_m2(const cell::Positioner& positioner,
                                                      const joint::Body& load_D,
                                                      const std::vector<Angle>& axes);

/// m g e + (J + m e^2) alpha: a horizontal axis, the centre of gravity level with it, J about the
/// centre of gravity. Units: kg, mm, kg m2, rad/s2 -> N m. Source: mechanics.
/// Tests: turn/turn_load - computed.
[[nodiscard]] double speeding_torque_nm(double mass_kg,
                                        double eccentricity_mm,
                                        double inertia_kg_m2,
                                        double acceleration_rad_s2);

/// Beyond the plate on the way (turn.load.turn, an error), while speeding up
/// (turn.load.speeding_up) or at an emergency stop (turn.load.stop), both warnings, with number,
/// limit, axis and, for the last two, what would do. Pre: peaks are those of the turn.
[[nodiscard]] std::vector<base::Finding> check_turn_load(const cell::Positioner& positioner,
                                                         const joint::Body& load_D,
                                                         const std::vector<Angle>& from,
                                                         const std::vector<Angle>& to,
                                                         const TurnPeaks& peaks,
                                                         const std::string& turn_name);

}  // namespace seamturn::turn
