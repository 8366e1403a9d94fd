// SPDX-License-Identifier: MIT
// Vectors and poses. Lengths in mm. Frames: W cell floor, P positioner base, D faceplate,
// J workpiece (the weldment file's frame), S seam. X_AB is the pose of B in A; R_AB its rotation;
// p_AB_C the position from A's origin to B expressed in C. World: +Z up.
#pragma once

#include <Eigen/Geometry>

#include "seamturn/base/angle.hpp"

namespace seamturn::geom {

using Vec3 = Eigen::Vector3d;
using Mat3 = Eigen::Matrix3d;
using base::Angle;

/// A rigid transform: x_A = R_AB * x_B + p_AB.
struct Pose {
  Mat3 rotation = Mat3::Identity();
  Vec3 translation = Vec3::Zero();
  [[nodiscard]] Vec3 point(const Vec3& p) const { return rotation * p + translation; }
  [[nodiscard]] Vec3 direction(const Vec3& d) const { return rotation * d; }
  /// A point of A in B, the way back.
  [[nodiscard]] Vec3 point_back(const Vec3& p) const {
    return rotation.transpose() * (p - translation);
  }
};

/// X_AC = X_AB * X_BC.
[[nodiscard]] Pose operator*(const Pose& X_AB, const Pose& X_BC);
/// X_BA from X_AB.
[[nodiscard]] Pose inverse(const Pose& X_AB);

/// Right-handed rotation about an axis through the origin.
/// Units: Angle -> 3x3. Pre: axis is not zero.
/// Source: none - Rodrigues' formula. Tests: geom/vector - closed-form, law.
[[nodiscard]] Mat3 rotation_about(const Vec3& axis, Angle angle);

/// Unit vector; Pre: length > 1e-12, otherwise ContractViolation.
[[nodiscard]] Vec3 unit(const Vec3& v);

/// Angle between two directions, 0..180 deg, accurate also near 0 and 180.
[[nodiscard]] Angle angle_between(const Vec3& a, const Vec3& b);

/// Angle from a to b about the axis (right-handed), in (-180, 180] deg, both projected across it.
[[nodiscard]] Angle signed_angle(const Vec3& axis, const Vec3& a, const Vec3& b);

/// Any unit vector across v, chosen the same way every time.
[[nodiscard]] Vec3 any_normal_to(const Vec3& v);

}  // namespace seamturn::geom
