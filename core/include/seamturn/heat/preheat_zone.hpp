// SPDX-License-Identifier: MIT
// Where preheat is put in and where it is measured, and when less may do.
#pragma once

#include <string>
#include <string_view>

#include "seamturn/base/figure_card.hpp"

namespace seamturn::heat {

/// Distance of the measuring point from the groove edge (longitudinal edge of the weld): up to 50
/// mm thick 4 t, at most 50 mm; above 75 mm.
/// Units: mm -> mm. Pre: finite, > 0. Outside: n/a.
/// Source: [ISO 13916] from memory.
/// Tests: heat/preheat_zone - remembered, law.
[[nodiscard]] double measure_distance_mm(double thickness_mm);

/// Width to be heated, each side of the weld line and ahead of it: the thickness, at least 75 mm.
/// It always holds the measuring point.
/// Units: mm -> mm. Pre: finite, > 0. Outside: n/a.
/// Source: [AWS D1.1] preheat clause, from memory; European shops often heat 4 t or 100 mm (common
///   practice).
/// Tests: heat/preheat_zone - remembered, law.
[[nodiscard]] double zone_width_mm(double thickness_mm);

/// Wait after the heat is taken away, when only the heated face can be measured: 2 min per 25 mm.
/// Units: mm -> s. Pre: finite, > 0. Outside: n/a.
/// Source: [ISO 13916] from memory.
/// Tests: heat/preheat_zone - remembered, law.
[[nodiscard]] double soak_time_s(double thickness_mm);

/// One line for the sheet: face, distance, and the wait on the heated face.
[[nodiscard]] std::string where_to_measure(double thickness_mm);

/// Less preheat for a single-run fillet. Off until a welding coordinator asks for it.
/// Source: [EN 1011-2] 2001 C.3, from memory.
inline constexpr double single_run_fillet_reduction_k = 60.0;
[[nodiscard]] std::string_view single_run_fillet_condition();  ///< when it may be taken

[[nodiscard]] const base::FigureCard& preheat_zone_card();

}  // namespace seamturn::heat
