// SPDX-License-Identifier: MIT
#include "seamturn/reach/torch_pose.hpp"

#include <algorithm>
#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/joint/end_returns.hpp"
#include "seamturn/joint/segments.hpp"

namespace seamturn::reach {

namespace {

/// Along both legs the wire tip runs beside the seam's line; at a corner the two courses meet where
/// they cross, not where each stands square to the corner.
void meet_at_corner(const geom::Path& path, double distance_mm, TorchPose& in, TorchPose& out) {
  const geom::Station before = path_station(path, distance_mm, geom::AtCorner::arriving);
  const geom::Station after = path_station(path, distance_mm, geom::AtCorner::leaving);
  const geom::Vec3 turn_axis = geom::unit(before.tangent.cross(after.tangent));
  const double half_turn_rad = 0.5 * geom::angle_between(before.tangent, after.tangent).rad();
  const double shortening = std::cos(half_turn_rad) * std::cos(half_turn_rad);
  const geom::Vec3 mean = 0.5 * (in.point + out.point) - before.point;
  const geom::Vec3 along_axis = mean.dot(turn_axis) * turn_axis;
  in.point = before.point + along_axis + (mean - along_axis) / shortening;
  out.point = in.point;
}

template <class PoseAt>
std::vector<TorchPose> stretch_poses(const geom::Path& path,
                                     double from_mm,
                                     double to_mm,
                                     joint::Angle step,
                                     const PoseAt& pose_at) {
  std::vector<TorchPose> poses;
  double before_mm = from_mm - 1.0;
  for (const geom::KeyStation& key : geom::key_stations(path, from_mm, to_mm, step)) {
    poses.push_back(pose_at(key));
    if (key.distance_mm == before_mm) {
      meet_at_corner(path, key.distance_mm, poses[poses.size() - 2], poses.back());
    }
    before_mm = key.distance_mm;
  }
  // Once round a circle ends where it began, to the last digit.
  const bool once_round = std::holds_alternative<geom::CirclePath>(path) &&
                          std::abs(to_mm - from_mm - geom::path_length_mm(path)) < 1e-9;
  if (once_round) poses.back() = poses.front();
  return poses;
}

}  // namespace

TorchPose torch_pose(const joint::Joint& joint,
                     const joint::Seam& seam,
                     const section::WeldSection& section,
                     const pass::Pass& pass,
                     double distance_mm,
                     bool reversed,
                     geom::AtCorner corner) {
  SEAMTURN_REQUIRE(seam.path.has_value(), seam.id);
  SEAMTURN_REQUIRE(!reversed || !geom::is_closed(*seam.path), seam.id);
  const joint::SectionFrame frame = joint::section_frame(joint, seam, distance_mm, corner);

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

std::string_view arc_name(Arc arc) {
  switch (arc) {
    case Arc::on:
      return "on";
    case Arc::burning:
      return "burning";
    case Arc::off:
      return "off";
  }
  return "off";
}

std::vector<TorchPose> key_poses(const joint::Joint& joint,
                                 const joint::Seam& described,
                                 const section::WeldSection& section,
                                 const pass::Pass& pass,
                                 const Course& course,
                                 joint::Angle step) {
  SEAMTURN_REQUIRE(described.path.has_value() && step > joint::Angle(), described.id, step.deg());
  const joint::Seam seam = joint::with_end_returns(described);
  SEAMTURN_REQUIRE(course.start_mm == 0.0 || geom::is_closed(*seam.path), course.start_mm);
  const auto pose_at = [&](const geom::KeyStation& key) {
    return torch_pose(joint, seam, section, pass, key.distance_mm, course.reversed, key.corner);
  };
  std::vector<TorchPose> poses;
  std::vector<joint::Stretch> stretches = joint::layer_stretches(seam, pass.layer);
  if (course.reversed) std::reverse(stretches.begin(), stretches.end());
  for (const joint::Stretch& stretch : stretches) {
    std::vector<TorchPose> own = stretch_poses(*seam.path,
                                               course.start_mm + stretch.from_mm,
                                               course.start_mm + stretch.to_mm,
                                               step,
                                               pose_at);
    if (course.reversed) std::reverse(own.begin(), own.end());
    own.front().arc = Arc::on;
    own.back().arc = Arc::off;
    poses.insert(poses.end(), own.begin(), own.end());
  }
  return poses;
}

}  // namespace seamturn::reach
