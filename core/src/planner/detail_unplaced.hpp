// SPDX-License-Identifier: MIT
// What is said of a seam that no stance holds.
#pragma once

#include <string>
#include <vector>

#include "detail_seam_fit.hpp"
#include "detail_work.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/cell/cell.hpp"

namespace seamturn::planner::detail {

/// What rolling a ring takes of the last axis and what that has: "; rolled, it takes ...".
/// Pre: the seam is a ring of one stretch.
[[nodiscard]] std::string rolling_text(const cell::Positioner& positioner, const SeamWork& ring);

/// A stance the positioner must not be given, and why.
struct BarredStance {
  geom::Mat3 R_WD;
  std::string why;  ///< "tilt 90.0 deg, rotate 0.0 deg: the load ..."
};
/// Of a seam held still: the first barred stance that would hold it, "; one that would is barred,
/// ..."; nothing when none would.
[[nodiscard]] std::string barred_text(const SeamFit& fit, const std::vector<BarredStance>& barred);

/// The first finding of each code, told how many more there are: more would hide what they say.
[[nodiscard]] std::vector<base::Finding> one_of_a_kind(std::vector<base::Finding> findings);

}  // namespace seamturn::planner::detail
