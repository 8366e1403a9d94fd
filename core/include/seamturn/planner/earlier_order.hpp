// SPDX-License-Identifier: MIT
// The order of an earlier plan, with which a later search may begin.
#pragma once

#include <string>
#include <vector>

#include "seamturn/base/finding.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::planner {

/// A pass as it was laid, or work of people as it was done.
struct EarlierStep {
  std::string stage;      ///< empty: the earlier plan named none
  std::string seam;       ///< empty: an operation
  std::string operation;  ///< empty: a pass
  int pass = 0;           ///< number of the pass, from 1
  turn::Stance stance;    ///< no axes: at rest
  bool reversed = false;  ///< open seams: welded from the end of the path
};

/// Of a plan of the same weldment or of another revision of it: what is no longer there is passed
/// over, what is new is put in.
struct EarlierOrder {
  std::string file;
  std::vector<EarlierStep> steps;       ///< as they followed one another on the clock
  std::vector<base::Finding> findings;  ///< notes and warnings of reading
};

}  // namespace seamturn::planner
