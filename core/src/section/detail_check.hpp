// SPDX-License-Identifier: MIT
// What a section refuses, all at once, and the depths its sizes lead to.
#pragma once

#include <optional>

#include "seamturn/section/weld_section.hpp"

namespace seamturn::section::detail {

/// Depths of the cut parts of the edges, without the root face; single: side 2 has none.
struct CutDepths {
  double side_1_mm = 0.0;
  double side_2_mm = 0.0;
};
/// As stated; else what the root face leaves, in a double groove halved or what the other leaves.
[[nodiscard]] CutDepths cut_depths(const joint::Groove& groove, double thickness_mm);

/// Depth that is welded from the side asked for: as stated, else all of it (side 1 takes the root
/// face along). A gouged side has a profile of its own and is not asked here.
[[nodiscard]] double welded_depth_mm(const joint::Groove& groove, const SectionParams& params);

/// Everything that is wrong with the sizes, in one refusal under the first code; none: sound.
/// Pre: finite values.
[[nodiscard]] std::optional<base::Refusal> check_params(const SectionParams& params);

/// Refusal of an opening no weld has (an angle close to 180 deg).
[[nodiscard]] std::optional<base::Refusal> check_opening(double opening_mm);

}  // namespace seamturn::section::detail
