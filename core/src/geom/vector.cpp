// SPDX-License-Identifier: MIT
#include "seamturn/geom/vector.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"

namespace seamturn::geom {

Pose operator*(const Pose& X_AB, const Pose& X_BC) {
  return Pose{X_AB.rotation * X_BC.rotation, X_AB.point(X_BC.translation)};
}

Pose inverse(const Pose& X_AB) {
  const Mat3 back = X_AB.rotation.transpose();
  return Pose{back, -(back * X_AB.translation)};
}

Mat3 rotation_about(const Vec3& axis, Angle angle) {
  return Eigen::AngleAxisd(angle.rad(), unit(axis)).toRotationMatrix();
}

Vec3 unit(const Vec3& v) {
  const double length = v.norm();
  SEAMTURN_REQUIRE(length > 1e-12, v.x(), v.y(), v.z());
  return v / length;
}

Angle angle_between(const Vec3& a, const Vec3& b) {
  return Angle::rad(std::atan2(a.cross(b).norm(), a.dot(b)));
}

Angle signed_angle(const Vec3& axis, const Vec3& a, const Vec3& b) {
  const Vec3 k = unit(axis);
  const Vec3 across_a = a - a.dot(k) * k;
  const Vec3 across_b = b - b.dot(k) * k;
  return Angle::rad(std::atan2(across_a.cross(across_b).dot(k), across_a.dot(across_b)));
}

Vec3 any_normal_to(const Vec3& v) {
  const Vec3 size = v.cwiseAbs();
  Vec3 helper = Vec3::UnitX();
  if (size.y() < size.x() && size.y() <= size.z()) helper = Vec3::UnitY();
  if (size.z() < size.x() && size.z() < size.y()) helper = Vec3::UnitZ();
  return unit(v.cross(helper));
}

}  // namespace seamturn::geom
