// SPDX-License-Identifier: MIT
// What the tests of tacks, hooks and duties share.
#pragma once

#include <string>
#include <vector>

#include "planned_demos.hpp"

namespace seamturn::tests {

/// Its seams are short: tacks of 20 mm find room on them.
inline planner::Inputs tee_in_stages() {
  planner::Inputs inputs = io::read_inputs(repository() / "tests/good/stages.xml");
  inputs.library.tack_rules.length_min_mm = {20.0, base::Status::proposed, "a test"};
  inputs.library.tack_rules.long_factor.value = 1.0;
  return inputs;
}

inline std::vector<const base::Finding*> findings_of(const Plan& plan, const std::string& code) {
  std::vector<const base::Finding*> found;
  for (const base::Finding& finding : plan.findings) {
    if (finding.code == code) found.push_back(&finding);
  }
  return found;
}

}  // namespace seamturn::tests
