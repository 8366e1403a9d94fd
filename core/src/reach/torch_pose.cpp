// SPDX-License-Identifier: MIT
#include "seamturn/reach/torch_pose.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"

namespace seamturn::reach {

TorchPose torch_pose(const joint::Joint& joint,
                     const joint::Seam& seam,
                     const section::WeldSection& section,
                     const pass::Pass& pass,
                     double distance_mm,
                     bool reversed) {
  SEAMTURN_REQUIRE(seam.path.has_value(), seam.id);
  SEAMTURN_REQUIRE(!reversed || !geom::is_closed(*seam.path), seam.id);
  const joint::SectionFrame frame = joint::section_frame(joint, seam, distance_mm);

  TorchPose pose;
  pose.point = frame.origin + (pass.aim.x_mm - section.seam_line_x_mm) * frame.x +
               (pass.aim.y_mm - section.seam_line_y_mm) * frame.y;
  // The section stays where it is when the robot comes from the other end; only travel turns.
  pose.travel = reversed ? geom::Vec3(-frame.tangent) : frame.tangent;
  const geom::Vec3 body =
      std::cos(pass.work_angle.rad()) * frame.y + std::sin(pass.work_angle.rad()) * frame.x;
  pose.torch =
      geom::unit(std::sin(pass.push.rad()) * pose.travel - std::cos(pass.push.rad()) * body);
  return pose;
}

std::vector<TorchPose> key_poses(const joint::Joint& joint,
                                 const joint::Seam& seam,
                                 const section::WeldSection& section,
                                 const pass::Pass& pass,
                                 bool reversed,
                                 joint::Angle step) {
  SEAMTURN_REQUIRE(seam.path.has_value() && step > joint::Angle(), seam.id, step.deg());
  const double length = geom::path_length_mm(*seam.path);
  const auto pose_at = [&](double distance_mm) {
    return torch_pose(joint, seam, section, pass, distance_mm, reversed);
  };
  if (!geom::is_closed(*seam.path)) {
    if (reversed) return {pose_at(length), pose_at(0.0)};
    return {pose_at(0.0), pose_at(length)};
  }
  constexpr double rounding = 1e-9;  // 360/30 is twelve steps, not thirteen
  const int steps = static_cast<int>(std::ceil(360.0 / step.deg() - rounding));
  std::vector<TorchPose> poses;
  for (int i = 0; i < steps; ++i) poses.push_back(pose_at(length * i / steps));
  poses.push_back(poses.front());
  return poses;
}

}  // namespace seamturn::reach
