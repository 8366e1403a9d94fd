// SPDX-License-Identifier: MIT
// What one pass may be: limits of codes and shop practice by weld family, role and position.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/base/citation.hpp"
#include "seamturn/process/weld_position.hpp"

namespace seamturn::process {

/// One row; a limit that is absent does not bind. The tightest of all matching rows governs.
struct BeadLimit {
  std::string id;  ///< named as the governing limit of a pass
  WeldFamily family = WeldFamily::fillet;
  std::vector<PassRole> roles;             ///< empty: every role
  std::vector<WeldPosition> positions;     ///< empty: every position
  std::optional<double> leg_max_mm;        ///< single-pass fillet leg
  std::optional<double> area_max_mm2;      ///< deposited section of one pass
  std::optional<double> thickness_max_mm;  ///< layer height of one pass
  std::optional<double> split_width_mm;    ///< wider layers take at least two beads
  base::Status status = base::Status::from_memory;
  std::string source;
};

}  // namespace seamturn::process
