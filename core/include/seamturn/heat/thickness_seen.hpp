// SPDX-License-Identifier: MIT
// The thickness a weld feels: the sum of the paths that carry its heat away.
#pragma once

#include <span>
#include <string>

#include "seamturn/base/figure_card.hpp"

namespace seamturn::heat {

/// How far from the weld line the thickness of a part is averaged.
/// Source: [EN 1011-2] 2001 C.2, from memory.
inline constexpr double averaging_mm = 75.0;

/// One way for the heat to leave the weld.
struct HeatPath {
  std::string member;       ///< the part it runs in, for the sheet
  double average_mm = 0.0;  ///< its thickness, averaged over 75 mm from the weld line
};

/// Combined thickness: sum over the heat paths (butt: two; tee, corner or lap fillet: each path
/// once, the through plate of a tee on both sides), half the sum for two directly opposed fillets
/// made together.
/// Units: mm -> mm.
/// Pre: at least one path, each finite and > 0.
/// Outside: n/a.
/// Source: [EN 1011-2] 2001 C.2, FROM MEMORY.
/// Accuracy: exact; the average over 75 mm is the caller's.
/// Tests: heat/thickness_seen - closed-form, law.
[[nodiscard]] double combined_thickness_mm(std::span<const HeatPath> paths, bool opposed_pair);

/// "20 + 20 + 12 = 52 mm" or "(20 + 20 + 12) / 2 = 26 mm". Pre: as combined_thickness_mm.
[[nodiscard]] std::string combined_thickness_text(std::span<const HeatPath> paths,
                                                  bool opposed_pair);

[[nodiscard]] const base::FigureCard& combined_thickness_card();

}  // namespace seamturn::heat
