// SPDX-License-Identifier: MIT
// The interpass maximum: the lowest limit anybody stated. There is no blanket default.
#pragma once

#include <optional>
#include <span>
#include <string>

#include "seamturn/base/citation.hpp"
#include "seamturn/base/figure_card.hpp"

namespace seamturn::heat {

struct InterpassLimit {
  double max_c = 0.0;
  std::string stated_by;  ///< "steel S355J2", "wire G3Si1-1.2", "weldment file", ...
  base::Status status = base::Status::from_memory;
};

/// The lowest of several limits (ties: the first); nothing when none was stated.
/// Units: degC. Source: each limit's own. Tests: heat/interpass - law.
[[nodiscard]] std::optional<InterpassLimit> governing_interpass(
    std::span<const InterpassLimit> limits);
[[nodiscard]] const base::FigureCard& interpass_card();

}  // namespace seamturn::heat
