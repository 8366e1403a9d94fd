// SPDX-License-Identifier: MIT
// What a section refuses, all at once.
#pragma once

#include <optional>

#include "seamturn/section/weld_section.hpp"

namespace seamturn::section::detail {

/// Depth of the groove that is welded: as stated, else the thickness.
[[nodiscard]] double welded_depth_mm(const SectionParams& params);

/// Everything that is wrong with the sizes, in one refusal under the first code; none: sound.
/// Pre: finite values.
[[nodiscard]] std::optional<base::Refusal> check_params(const SectionParams& params);

/// Refusal of an opening no weld has (an angle close to 180 deg).
[[nodiscard]] std::optional<base::Refusal> check_opening(double opening_mm);

}  // namespace seamturn::section::detail
