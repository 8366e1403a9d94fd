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

/// The same on the safe side: what it may be, at most, when mass and centre of gravity are off by
/// the positioner's margin, (1 + mass)(|T| + m g centre |k x z|), with the sign of T. As above
/// where there is no margin.
[[nodiscard]] std::vector<double> safe_torques_nm(const cell::Positioner& positioner,
                                                  const joint::Weight& load_D,
                                                  const std::vector<Angle>& axes);

/// Of a headstock with tailstock what each bears: W (L - x)/L and W x/L, x from the faceplate.
struct EndShares {
  double head_kg = 0.0;
  double tail_kg = 0.0;  ///< below 0: the load lies behind the faceplate and lifts the tail
};
/// Pre: span above 0. Source: statics, lever rule. Accuracy: exact for level rigid ends that float.
/// Tests: turn/load - closed-form.
[[nodiscard]] EndShares end_shares(double mass_kg, double from_head_mm, double span_mm);

/// What a positioner carries at all: its plate, with a tailstock both ends together.
[[nodiscard]] double load_most_kg(const cell::Positioner& positioner);
/// Load allowed at a distance of the centre of gravity from the faceplate (derating). An overhang
/// below 0 counts as 0. Not for a load that a tailstock shares.
[[nodiscard]] double load_allowed_kg(const cell::Positioner& positioner, double distance_mm);

/// Weight beyond the plate (turn.load.too_heavy), one end with more than it bears
/// (turn.load.end), torque beyond an axis (turn.load.torque), each with the number, the limit and
/// the axis; all with the positioner's margin on the safe side.
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
