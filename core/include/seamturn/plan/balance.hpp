// SPDX-License-Identifier: MIT
// How evenly the metal grows on both sides of a plate, and on the part as a whole.
#pragma once

#include <string>
#include <string_view>

namespace seamturn::plan {

/// Why two seams belong together.
enum class TwinKind { groove, plate, rings, stated };
/// "sides of one groove", "sides of one plate", "twin rings", "stated".
[[nodiscard]] std::string_view twin_kind_name(TwinKind kind);

/// Two seams that pull the part opposite ways, welded layer by layer unless the file says
/// otherwise.
struct PlannedTwins {
  std::string first;  ///< seam ids
  std::string second;
  TwinKind kind = TwinKind::plate;
  bool keeps_step = true;
  std::string why_not;  ///< the file's reason, or the rule of the file that goes before balance
  double metal_1_mm2 = 0.0;  ///< in the end
  double metal_2_mm2 = 0.0;
  /// Largest difference of the metal laid on one and on the other while they grow, across the weld.
  double ahead_mm2 = 0.0;
  std::string ahead;          ///< seam that is ahead then
  double ahead_from_s = 0.0;  ///< on the clock: since the pass that made it so
  double ahead_kj_mm = 0.0;   ///< the same of the heat put in; not always at the same time
};

/// Largest moment of the shrinkage forces of what is laid so far, about the part's centre of
/// gravity: forces along one axis of the part, each as far off centre as its weld. An order of
/// magnitude to compare orders by, never a forecast of distortion.
struct ShrinkageMoment {
  double largest_nm = 0.0;
  double final_nm = 0.0;  ///< of all welds, on the same axis
  char axis = 'x';        ///< the forces act along it, frame J
  std::string seam;       ///< whose pass made it the largest
  double at_s = 0.0;      ///< end of that pass
};

}  // namespace seamturn::plan
