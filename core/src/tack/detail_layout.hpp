// SPDX-License-Identifier: MIT
// Stations of tacks along a path, before anything is said about them.
#pragma once

#include <optional>
#include <vector>

#include "seamturn/base/outcome.hpp"
#include "seamturn/geom/path.hpp"
#include "seamturn/joint/weld_length.hpp"

namespace seamturn::tack::detail {

struct LayoutRules {
  double tack_mm = 0.0;   ///< length of one
  double pitch_mm = 0.0;  ///< centre to centre, at most
  double clear_mm = 0.0;  ///< of ends and corners, and between two tacks
  std::optional<int> count;
  bool second_side = false;
  std::vector<joint::Stretch> within;  ///< where tacks may lie; empty: everywhere
};

/// Centres, rising; on a closed path from 0 to below its length. Outside: tack.seam.too_short,
/// tack.count.no_room.
[[nodiscard]] base::Outcome<std::vector<double>> tack_centres_mm(const geom::Path& path,
                                                                 const LayoutRules& rules);

/// The same where rules.within names stretches.
[[nodiscard]] base::Outcome<std::vector<double>> centres_within_mm(const geom::Path& path,
                                                                   const LayoutRules& rules);

/// Between corners and ends, an arc is one: clear of both when tacks are laid. None on a circle.
[[nodiscard]] std::vector<joint::Stretch> straight_legs(const geom::Path& path);

/// A seam should have so many.
[[nodiscard]] int least_tacks(const geom::Path& path);

[[nodiscard]] base::Refusal no_room_for(int count, int possible);

}  // namespace seamturn::tack::detail
