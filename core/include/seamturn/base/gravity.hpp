// SPDX-License-Identifier: MIT
// Weight of a mass.
#pragma once

namespace seamturn::base {

/// Standard gravity. Source: 3rd CGPM 1901, declaration on mass and weight; exact.
inline constexpr double gravity_m_s2 = 9.80665;

}  // namespace seamturn::base
