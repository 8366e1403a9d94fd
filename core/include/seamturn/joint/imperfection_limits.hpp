// SPDX-License-Identifier: MIT
// How far the shape of a weld and the fit of its parts may be off: excess metal, convexity, gap
// under a fillet, misalignment, by quality level of ISO 5817, and the like of other codes. Plain
// numbers.
#pragma once

#include <optional>
#include <string_view>

#include "seamturn/base/citation.hpp"
#include "seamturn/base/outcome.hpp"

namespace seamturn::joint {

/// Quality levels of ISO 5817, B the strictest.
enum class QualityLevel { b, c, d };
/// "B", "C", "D".
[[nodiscard]] std::string_view quality_name(QualityLevel level);
[[nodiscard]] std::optional<QualityLevel> find_quality(std::string_view name);

struct ImperfectionLimit {
  double limit_mm = 0.0;
  base::Citation citation;
};

/// Excess metal on a butt of a width: B 1 + 0.10 w up to 5, C 1 + 0.15 w up to 7, D 1 + 0.25 w up
/// to 10 mm. Units: mm -> mm. Pre: width > 0. Source: [ISO 5817] no. 502, from memory. Tests:
/// joint/imperfection_limits - remembered.
[[nodiscard]] ImperfectionLimit excess_metal_limit(QualityLevel level, double width_mm);

/// Convexity of a fillet by the width of its face: B 1 + 0.10 w up to 3, C 1 + 0.15 w up to 4, D
/// 1 + 0.25 w up to 5 mm. Pre: width > 0. Source: [ISO 5817] no. 503, from memory.
/// Tests: joint/imperfection_limits - remembered.
[[nodiscard]] ImperfectionLimit convexity_limit(QualityLevel level, double face_width_mm);
/// The US code's: face up to 8 mm 2, below 25 mm 3, beyond 5 mm. Pre: width > 0.
/// Source: [AWS D1.1] from memory. Tests: joint/imperfection_limits - remembered.
[[nodiscard]] ImperfectionLimit convexity_limit_aws(double face_width_mm);

/// Gap between the parts of a fillet (no. 617) by thickness and ACTUAL throat.
/// Units: mm -> mm. Pre: finite.
/// Outside: refuses joint.quality.value (throat not above 0), joint.quality.thickness (under 0.5
/// mm:
///   the standard gives no limit).
/// Source: [SEAM-DATA] rows read from ISO 5817:2023, second-hand.
/// Tests: joint/imperfection_limits - published.
[[nodiscard]] base::Outcome<ImperfectionLimit> fillet_gap_limit(QualityLevel level,
                                                                double thickness_mm,
                                                                double actual_throat_mm);

/// Misalignment of plates (no. 5071). Units: mm -> mm. Pre: finite.
/// Outside: refuses joint.quality.thickness (under 0.5 mm). Source: as fillet_gap_limit.
/// Tests: joint/imperfection_limits - published.
[[nodiscard]] base::Outcome<ImperfectionLimit> plate_misalignment_limit(QualityLevel level,
                                                                        double thickness_mm);
/// Misalignment of tubes all round (no. 5072): half the thickness, at most B 2, C 3, D 4 mm.
/// Outside and Source: as plate_misalignment_limit. Tests: joint/imperfection_limits - published.
[[nodiscard]] base::Outcome<ImperfectionLimit> tube_misalignment_limit(QualityLevel level,
                                                                       double thickness_mm);

/// Leg beyond the drawn one that passes: below 12 mm 3, from 12 mm on 4 mm (manual and
/// gas-shielded). Pre: leg > 0. Source: [GB/T 10854] 4.3 to 4.7. Tests: joint/imperfection_limits -
/// published.
[[nodiscard]] ImperfectionLimit leg_excess_limit(double drawn_leg_mm);

/// Cap height that passes: 3 mm flat, 4 mm in other positions; width of the cap over the opening of
/// the groove 4 to 8 mm (both toes together, manual and gas-shielded).
/// Source: [GB/T 10854] 4.3 to 4.7. Tests: joint/imperfection_limits - published.
[[nodiscard]] ImperfectionLimit cap_height_limit(bool flat_position);
struct CapLap {
  double least_mm = 0.0;  ///< both sides together
  double largest_mm = 0.0;
  base::Citation citation;
};
[[nodiscard]] CapLap cap_lap_over_opening();

}  // namespace seamturn::joint
