// SPDX-License-Identifier: MIT
// Does the nozzle find room between the walls, pass by pass, in the position planned?
#include <string>
#include <vector>

#include "detail_assemble.hpp"
#include "seamturn/pass/nozzle_access.hpp"

namespace seamturn::planner::detail {

namespace {

constexpr Angle right_angle = Angle::deg(90.0);

/// Grooves of one weld: in a tee the first member stands upright beside the square wall.
pass::NozzleAccessRequest request_of(const plan::PlannedSeam& seam, const joint::Joint& joint) {
  pass::NozzleAccessRequest request;
  request.section = &seam.section;
  request.passes = seam.stack.passes;
  const bool groove = !seam.section.is_fillet;
  if (groove && joint.type == joint::JointType::tee) request.left_rise = right_angle;
  return request;
}

/// The same of several seams is said once.
struct Told {
  base::Finding finding;
  std::string seams;
};

void note(std::vector<Told>& told,
          const base::Finding& finding,
          const std::string& seam,
          const base::Place& place) {
  for (Told& one : told) {
    if (one.finding.text != finding.text) continue;
    one.seams += ", " + seam;
    return;
  }
  told.push_back(Told{finding, "seam " + seam});
  told.back().finding.place = place;
}

}  // namespace

void check_nozzle(const Inputs& inputs, plan::Plan& plan) {
  if (!inputs.cell || !inputs.cell->torch.nozzle_recess_mm) return;
  std::vector<Told> told;
  for (const plan::PlannedJoint& joint : plan.joints) {
    const joint::Joint& described = *joint::find_joint(plan.weldment, joint.id);
    if (std::holds_alternative<joint::Plug>(described.preparation)) continue;
    for (const plan::PlannedSeam& seam : joint.seams) {
      pass::NozzleAccessRequest request = request_of(seam, described);
      request.nozzle.outer_diameter_mm = inputs.cell->torch.nozzle_diameter_mm;
      request.nozzle.recess_mm = *inputs.cell->torch.nozzle_recess_mm;
      // Each row states the stick-out it was proved with: nothing else is asked of the nozzle.
      request.nozzle.stick_out_max_mm = 1000.0;
      for (const base::Finding& finding : pass::find_nozzle_access(request).findings) {
        note(told, finding, seam.id, place_of(inputs.weldment, "joint/" + joint.id));
      }
    }
  }
  for (Told& one : told) {
    one.finding.text = one.seams + ": " + one.finding.text;
    plan.findings.push_back(std::move(one.finding));
  }
}

}  // namespace seamturn::planner::detail
