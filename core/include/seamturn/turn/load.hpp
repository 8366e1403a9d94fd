// SPDX-License-Identifier: MIT
// What the positioner has to carry and hold at a stance.
#pragma once

#include <string>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/cell/cell.hpp"
#include "seamturn/joint/member.hpp"

namespace seamturn::turn {

using base::Angle;

/// Static torque about each axis: axis . (r x W). Sign: about the axis' positive direction.
/// Units: kg, mm -> N m.      Frame: load in D.
/// Pre: axes as many as the positioner has.
/// Source: statics; tilt and rotation rule [POSITIONER-SIZING]. Accuracy: exact for the stated
/// masses. Tests: turn/load - published rule values, independent statics.
[[nodiscard]] std::vector<double> axis_torques_nm(const cell::Positioner& positioner,
                                                  const joint::Weight& load_D,
                                                  const std::vector<Angle>& axes);

/// Load allowed at a distance of the centre of gravity from the faceplate (derating).
[[nodiscard]] double load_allowed_kg(const cell::Positioner& positioner, double distance_mm);

/// Weight beyond the plate (turn.load.too_heavy), torque beyond an axis (turn.load.torque), each
/// with the number, the limit and the axis.
[[nodiscard]] std::vector<base::Finding> check_load(const cell::Positioner& positioner,
                                                    const joint::Weight& load_D,
                                                    const std::vector<Angle>& axes,
                                                    const std::string& stance_name);

/// Sum of two weights given in one frame.
[[nodiscard]] joint::Weight combined_weight(const joint::Weight& a, const joint::Weight& b);

/// Tilt and rotation torque by the sizing rule W (overhang + offset), W eccentricity.
struct SizingTorque {
  double tilt_nm = 0.0;
  double rotate_nm = 0.0;
};
[[nodiscard]] SizingTorque sizing_torque(double mass_kg,
                                         double overhang_mm,
                                         double offset_mm,
                                         double eccentricity_mm);
[[nodiscard]] const base::FigureCard& torque_card();

}  // namespace seamturn::turn
