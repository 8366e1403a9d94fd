// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

namespace seamturn::joint {

/// How far the parts of a joint are hindered to shrink. The file knows; medium where it is silent.
enum class Restraint { low, medium, high };
[[nodiscard]] std::string_view restraint_name(Restraint restraint);  ///< "low", "medium", "high"

}  // namespace seamturn::joint
