// SPDX-License-Identifier: MIT
#include "seamturn/plan/plan.hpp"

namespace seamturn::plan {

std::vector<const section::WeldSection*> sections_of(const PlannedJoint& joint) {
  std::vector<const section::WeldSection*> sections;
  for (const PlannedSeam& seam : joint.seams) {
    const bool known = seam.side <= static_cast<int>(sections.size());
    if (!known) sections.push_back(&seam.section);
  }
  return sections;
}

}  // namespace seamturn::plan
