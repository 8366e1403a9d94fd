// SPDX-License-Identifier: MIT
// The sources of a figure card as text.
#pragma once

#include <string>

#include "seamturn/base/figure_card.hpp"

namespace seamturn::cli {

/// All sources with their locators, separated by "; ".
[[nodiscard]] std::string source_text(const base::FigureCard& card);
/// The weakest status of all sources: a chain is as strong as its weakest link.
[[nodiscard]] std::string status_text(const base::FigureCard& card);

}  // namespace seamturn::cli
