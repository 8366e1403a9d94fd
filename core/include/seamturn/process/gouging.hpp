// SPDX-License-Identifier: MIT
// How long it takes to gouge a root out before the second side is welded.
#pragma once

#include <string>

#include "seamturn/base/citation.hpp"

namespace seamturn::process {

/// One row of a library: how a shop gouges.
struct Gouging {
  std::string id;
  std::string method;       ///< for people, e.g. "carbon arc by hand, then ground"
  double speed_mm_s = 0.0;  ///< finished groove, ground bright and looked at
  double entry_s = 0.0;     ///< people into the cell and out again, once a seam
  std::string source;
  base::Status status = base::Status::common_practice;
};

/// Time the part is held for it: entry + length / speed.
/// Units: mm -> s.  Frame: none.  Pre: finite, speed > 0, entry and length >= 0.
/// Outside: n/a.
/// Source: none - a rate of the shop times a length; how deep the root lies is in the shop's rate.
/// Accuracy: that of the rate.
/// Tests: process/gouging - closed-form, law.
[[nodiscard]] double gouging_time_s(const Gouging& gouging, double length_mm);

}  // namespace seamturn::process
