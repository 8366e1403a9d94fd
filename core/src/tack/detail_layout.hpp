// SPDX-License-Identifier: MIT
// Stations of tacks along a path, before anything is said about them.
#pragma once

#include <optional>
#include <vector>

#include "seamturn/base/outcome.hpp"
#include "seamturn/geom/path.hpp"

namespace seamturn::tack::detail {

struct LayoutRules {
  double tack_mm = 0.0;   ///< length of one
  double pitch_mm = 0.0;  ///< centre to centre, at most
  double clear_mm = 0.0;  ///< of ends and corners, and between two tacks
  std::optional<int> count;
  bool second_side = false;
};

/// Centres, rising; on a circle within 0..length. Outside: tack.seam.too_short, tack.count.no_room.
[[nodiscard]] base::Outcome<std::vector<double>> tack_centres_mm(const geom::Path& path,
                                                                 const LayoutRules& rules);

}  // namespace seamturn::tack::detail
