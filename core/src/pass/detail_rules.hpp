// SPDX-License-Identifier: MIT
// What a stack is laid by: the request, its settings rows and the bounds by role.
#pragma once

#include <array>

#include "pass/detail_limits.hpp"
#include "pass/detail_rows.hpp"
#include "seamturn/pass/pass_stack.hpp"

namespace seamturn::pass {

struct Rules {
  StackRulesRequest request;
  RowTable rows;
  std::array<Caps, 5> caps;  ///< by role, with the margin
  [[nodiscard]] const Caps& caps_of(process::PassRole role) const {
    return caps[static_cast<std::size_t>(role)];
  }
  [[nodiscard]] bool by_time() const { return request.aim == StackAim::least_arc_time; }
};

/// How good a stack or a part of one is; what counts first depends on the aim.
struct Score {
  int passes = 0;
  double departure = 0.0;  ///< largest, of a travel from its preferred
  double arc_s_mm = 0.0;   ///< arc time of a millimetre of seam
  void add(const RowRange& row, double bead_mm2, int beads) {
    passes += beads;
    departure = std::max(departure, row.departure(bead_mm2));
    arc_s_mm += beads * bead_mm2 / row.laid_mm3_s;
  }
};

/// Fewest passes, then the least departure; for the least arc time that first. Times that differ by
/// rounding only are equal.
[[nodiscard]] bool is_better(const Score& score, const Score& than, bool by_time);

}  // namespace seamturn::pass
