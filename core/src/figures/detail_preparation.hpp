// SPDX-License-Identifier: MIT
// A preparation from the sizes of a figure call: the keys of section::section_card.
#pragma once

#include <vector>

#include "detail_arguments.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/section/weld_section.hpp"

namespace seamturn::figures::detail {

/// What the call describes; keys that are missing or too many become usage.
[[nodiscard]] section::SectionParams section_params(Arguments& arguments);
/// Both sides where there are two, side 1 first. Refuses as weld_section.
[[nodiscard]] base::Outcome<std::vector<section::WeldSection>> sides_of(
    section::SectionParams params);

/// side= of the call, 1 when absent; a side that is not welded becomes usage.
[[nodiscard]] int side_of_call(Arguments& arguments, const section::SectionParams& params);

}  // namespace seamturn::figures::detail
