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

double section_area_mm2(const PlannedJoint& joint) {
  double area_mm2 = 0.0;
  for (const section::WeldSection* section : sections_of(joint)) area_mm2 += section->area_mm2;
  return area_mm2;
}

}  // namespace seamturn::plan
