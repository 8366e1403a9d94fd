// SPDX-License-Identifier: MIT
// Where the wire tip is and how the torch stands along a pass.
#pragma once

#include <vector>

#include "seamturn/joint/joint.hpp"
#include "seamturn/pass/pass_stack.hpp"

namespace seamturn::reach {

/// Frame J. `torch` points from the nozzle to the work (unit); `travel` is the welding direction.
struct TorchPose {
  geom::Vec3 point;
  geom::Vec3 torch;
  geom::Vec3 travel;
};

/// The pose at a station of a seam for a pass: aim point of the pass in the section there, torch
/// along the section's y turned by the work angle and leaned back by the push angle.
/// Pre: the seam has a path. reversed: travelled from its end (lines only).
/// Source: docs/methods/torch-pose.md. Tests: reach/torch_pose - closed-form.
[[nodiscard]] TorchPose torch_pose(const joint::Joint& joint, const joint::Seam& seam,
                                   const section::WeldSection& section, const pass::Pass& pass,
                                   double distance_mm, bool reversed);

/// Key points of a pass: both ends of a line; a circle every `step` at most, first and last equal.
[[nodiscard]] std::vector<TorchPose> key_poses(const joint::Joint& joint, const joint::Seam& seam,
                                               const section::WeldSection& section,
                                               const pass::Pass& pass, bool reversed,
                                               joint::Angle step = joint::Angle::deg(30.0));

}  // namespace seamturn::reach
