// SPDX-License-Identifier: MIT
// Two parts and their joint, put together by hand for the steps that make heat limits.
#pragma once

#include <memory>

#include "planner/detail_heat.hpp"

namespace seamturn::tests {

/// Owns what a JointWork points at. Not copied: the pointers would stay behind.
struct HandJoint {
  joint::Joint joint;
  joint::Member first;
  joint::Member second;
  material::Steel steel_1;
  material::Steel steel_2;
  process::Wire wire;
  planner::detail::JointWork work;

  HandJoint() {
    joint.id = "J1";
    joint.member_1 = first.id = "first";
    joint.member_2 = second.id = "second";
    steel_1.designation = "STEEL1";
    steel_2.designation = "STEEL2";
    wire.id = "W12";
    wire.cet = 0.25;
    work.joint = &joint;
    work.member_1 = &first;
    work.member_2 = &second;
    work.steel_1 = &steel_1;
    work.steel_2 = &steel_2;
    work.wire = &wire;
  }
  HandJoint(const HandJoint&) = delete;
  HandJoint& operator=(const HandJoint&) = delete;

  void add_line(const geom::Vec3& from, const geom::Vec3& to) {
    joint::Seam seam;
    seam.id = joint.id;
    seam.joint = joint.id;
    seam.path = geom::LinePath{from, to};
    joint.seams.push_back(seam);
  }
  void add_circle(const geom::Vec3& centre, double radius_mm) {
    joint::Seam seam;
    seam.id = joint.id;
    seam.joint = joint.id;
    geom::CirclePath circle;
    circle.centre = centre;
    circle.radius_mm = radius_mm;
    seam.path = circle;
    joint.seams.push_back(seam);
  }
};

/// A plate standing on the x-y plane, its thickness along y from `y_mm`, its foot at `z_mm`.
inline geom::Pose standing_at(double y_mm, double thickness_mm, double z_mm) {
  geom::Mat3 axes;
  axes << geom::Vec3::UnitX(), geom::Vec3::UnitZ(), geom::Vec3(-geom::Vec3::UnitY());
  return geom::Pose{axes, geom::Vec3(0.0, y_mm + thickness_mm, z_mm)};
}

inline bool has_code(const std::vector<base::Finding>& findings, std::string_view code) {
  for (const base::Finding& finding : findings) {
    if (finding.code == code) return true;
  }
  return false;
}

}  // namespace seamturn::tests
