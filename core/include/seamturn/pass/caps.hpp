// SPDX-License-Identifier: MIT
// The bounds that bind one pass: the tightest of all rows of a library that match it.
#pragma once

#include <limits>
#include <span>
#include <string_view>

#include "seamturn/process/bead_limits.hpp"

namespace seamturn::pass {

/// One bound and the row it comes from; infinite when no row binds.
struct Bound {
  double value = std::numeric_limits<double>::infinity();
  std::string_view id;
};

/// The tightest bounds of all rows that match a family, role and position.
struct Caps {
  Bound leg_mm;  ///< of a fillet laid in one pass
  Bound area_mm2;
  Bound thickness_mm;  ///< of the layer
  Bound split_mm;      ///< a wider layer takes at least two beads
};

struct CapsKey {
  process::WeldFamily family = process::WeldFamily::fillet;
  process::WeldPosition position = process::WeldPosition::pa;
  process::PassRole role = process::PassRole::fill;
};

/// Units: as the rows. The ids point into `limits`.
/// Source: the rows' own. Tests: pass/rules - law.
[[nodiscard]] Caps find_caps(std::span<const process::BeadLimit> limits, const CapsKey& key);

}  // namespace seamturn::pass
