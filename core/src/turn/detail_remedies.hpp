// SPDX-License-Identifier: MIT
// What helps where a positioner does not carry a load: what the cell can do first.
#pragma once

#include <string>
#include <vector>

#include "seamturn/base/angle.hpp"
#include "seamturn/cell/cell.hpp"
#include "seamturn/joint/inertia.hpp"

namespace seamturn::turn::detail {

/// Of an axis that is turned with more than it holds: which lever the weight may have there instead
/// of its own, a balance mass where the axis is the last, and how much weight holds as it sits.
/// Margins are kept. Common practice: what stands in the cell is moved before it is replaced.
/// Pre: a mass above 0 that asks more than the axis holds, settings as the positioner has axes.
[[nodiscard]] std::string help_axis_text(const cell::Positioner& positioner,
                                         std::size_t axis,
                                         const joint::Weight& load_D,
                                         const std::vector<base::Angle>& axes);

/// Of a load beyond the rating at its distance: how near the faceplate it must sit, if that helps.
[[nodiscard]] std::string help_overhung_text(const cell::Positioner& positioner,
                                             const joint::Weight& load_D);

}  // namespace seamturn::turn::detail
