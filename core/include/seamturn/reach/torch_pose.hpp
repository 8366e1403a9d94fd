// SPDX-License-Identifier: MIT
// Where the wire tip is and how the torch stands along a pass.
#pragma once

#include <string_view>
#include <vector>

#include "seamturn/joint/joint.hpp"
#include "seamturn/pass/pass_stack.hpp"

namespace seamturn::reach {

/// Whether the arc burns when the point is left behind.
enum class Arc { on, burning, off };
[[nodiscard]] std::string_view arc_name(Arc arc);  ///< "on", "burning", "off"

/// Frame J. `torch` points from the nozzle to the work (unit); `travel` is the welding direction.
struct TorchPose {
  geom::Vec3 point;
  geom::Vec3 torch;
  geom::Vec3 travel;
  Arc arc = Arc::burning;  ///< on: it is struck here; off: the crater is filled here
};

/// How a pass runs along its seam.
struct Course {
  bool reversed = false;  ///< travelled from the path's end (open paths only)
  double start_mm = 0.0;  ///< closed paths: the station its stretches count from
};

/// The pose at a station of a seam for a pass: aim point of the pass in the section there, torch
/// along the section's y turned by the work angle and leaned back by the push angle.
/// Pre: the seam has a path. reversed: travelled from its end (open paths only). At a corner: of
/// the leg the path, as written, leaves on or arrives on. Source: docs/methods/torch-pose.md.
/// Tests: reach/torch_pose - closed-form.
[[nodiscard]] TorchPose torch_pose(const joint::Joint& joint,
                                   const joint::Seam& seam,
                                   const section::WeldSection& section,
                                   const pass::Pass& pass,
                                   double distance_mm,
                                   bool reversed,
                                   geom::AtCorner corner = geom::AtCorner::leaving);

/// Key points of a pass, stretch after stretch in the order of travel: both ends of a straight leg;
/// arcs and circles every `step` at most, first and last of a closed path equal. At a corner the
/// torch swings from one leg's direction to the other's in two poses at one point: where the
/// courses of the wire tip along both legs meet.
[[nodiscard]] std::vector<TorchPose> key_poses(const joint::Joint& joint,
                                               const joint::Seam& seam,
                                               const section::WeldSection& section,
                                               const pass::Pass& pass,
                                               const Course& course,
                                               joint::Angle step = joint::Angle::deg(30.0));

}  // namespace seamturn::reach
