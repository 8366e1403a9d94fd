// SPDX-License-Identifier: MIT
// Powers of ten and clock between units, where a formula needs both. All exact by definition.
#pragma once

namespace seamturn::base {

inline constexpr double mm_per_m = 1e3;
inline constexpr double m_per_mm = 1e-3;
inline constexpr double mm2_per_m2 = 1e6;
inline constexpr double l_per_m3 = 1e3;
inline constexpr double j_per_kj = 1e3;
inline constexpr double j_per_kwh = 3.6e6;
inline constexpr double s_per_min = 60.0;
inline constexpr double s_per_h = 3600.0;

}  // namespace seamturn::base
