// SPDX-License-Identifier: MIT
// Stacks of lighter beads, for stances that hold a seam off its nominal position.
#include <algorithm>

#include "detail_joints.hpp"
#include "seamturn/pass/caps.hpp"

namespace seamturn::planner::detail {

namespace {

const std::vector<process::BeadLimit>& limits_of(const Inputs& inputs, const SeamWork& seam) {
  return seam.limits.empty() ? inputs.library.bead_limits : seam.limits;
}

/// What is left of the largest bead where slope and bank are both at their limits, by the strictest
/// row of a position.
double least_share(const Library& library, process::WeldPosition position) {
  double edge = 1.0;
  for (const position::WorkingTolerance& row : library.tolerances) {
    if (row.position == position) edge = std::min(edge, row.bead_at_edge_ratio);
  }
  return 1.0 - 2.0 * (1.0 - edge);
}

bool keeps_share(const Inputs& inputs,
                 const JointWork& work,
                 const SeamWork& seam,
                 const StackChoice& choice,
                 double share) {
  const auto& passes = choice.stack.passes;
  return std::all_of(passes.begin(), passes.end(), [&](const pass::Pass& pass) {
    return pass.area_mm2 <=
           share * largest_bead_mm2(inputs, work, seam, choice.position, pass.role);
  });
}

std::optional<StackChoice> lighter(const Inputs& inputs,
                                   const JointWork& work,
                                   const SeamWork& seam,
                                   process::WeldPosition position,
                                   double share) {
  SeamWork light = seam;
  light.limits = limits_of(inputs, seam);
  for (process::BeadLimit& limit : light.limits) {
    if (!limit.area_max_mm2) continue;
    limit.id += "-off-nominal";
    *limit.area_max_mm2 *= share;
  }
  pass::StackRequest request = stack_request(inputs, work, light, position);
  // Preheat was found with the lowest heat input of the full stacks: none may be colder.
  request.heat_input_min_kj_mm =
      std::max(request.heat_input_min_kj_mm.value_or(0.0), work.heat.lowest_heat_input_kj_mm);
  base::Outcome<pass::PassStack> stack = pass::make_pass_stack(request);
  if (!stack) return std::nullopt;
  // The rows are copies that end here; a pass keeps their name as text.
  return StackChoice{position, std::move(stack).value(), {}};
}

}  // namespace

double largest_bead_mm2(const Inputs& inputs,
                        const JointWork& work,
                        const SeamWork& seam,
                        process::WeldPosition position,
                        process::PassRole role) {
  const std::vector<process::BeadLimit>& limits = limits_of(inputs, seam);
  return pass::find_caps(limits, {bead_family(*work.joint), position, role}).area_mm2.value;
}

void add_light_stacks(const Inputs& inputs, const JointWork& work, SeamWork& seam) {
  // A reduced preheat holds for single runs only.
  if (work.joint->heat.single_run_reduction) return;
  const std::size_t full = seam.stacks.size();
  for (std::size_t i = 0; i < full; ++i) {
    const process::WeldPosition position = seam.stacks[i].position;
    const double share = least_share(inputs.library, position);
    if (share <= 0.0 || share >= 1.0 || keeps_share(inputs, work, seam, seam.stacks[i], share)) {
      continue;
    }
    if (auto light = lighter(inputs, work, seam, position, share)) {
      seam.stacks.push_back(std::move(*light));
    }
  }
}

}  // namespace seamturn::planner::detail
