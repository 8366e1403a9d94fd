// SPDX-License-Identifier: MIT
#include "seamturn/geom/path.hpp"

#include <algorithm>
#include <numbers>

namespace seamturn::geom {

namespace {

Mat3 turned_along(const CirclePath& circle, double distance_mm) {
  return rotation_about(circle.axis, Angle::rad(distance_mm / circle.radius_mm));
}

}  // namespace

double path_length_mm(const Path& path) {
  if (const auto* line = std::get_if<LinePath>(&path)) return (line->to - line->from).norm();
  return 2.0 * std::numbers::pi * std::get<CirclePath>(path).radius_mm;
}

bool is_closed(const Path& path) { return std::holds_alternative<CirclePath>(path); }

Station path_station(const Path& path, double distance_mm) {
  if (const auto* line = std::get_if<LinePath>(&path)) {
    const Vec3 tangent = unit(line->to - line->from);
    const double along = std::clamp(distance_mm, 0.0, path_length_mm(path));
    return Station{line->from + along * tangent, tangent};
  }
  const CirclePath& circle = std::get<CirclePath>(path);
  const Vec3 radial = turned_along(circle, distance_mm) * circle.start;
  return Station{circle.centre + circle.radius_mm * radial, circle.axis.cross(radial)};
}

Vec3 carried_direction(const Path& path, double distance_mm, const Vec3& at_start) {
  if (!is_closed(path)) return at_start;
  return turned_along(std::get<CirclePath>(path), distance_mm) * at_start;
}

Path moved_path(const Pose& X_AB, const Path& path) {
  if (const auto* line = std::get_if<LinePath>(&path)) {
    return LinePath{X_AB.point(line->from), X_AB.point(line->to)};
  }
  const CirclePath& circle = std::get<CirclePath>(path);
  return CirclePath{X_AB.point(circle.centre),
                    X_AB.direction(circle.axis),
                    X_AB.direction(circle.start),
                    circle.radius_mm};
}

Path reversed_path(const Path& path) {
  if (const auto* line = std::get_if<LinePath>(&path)) return LinePath{line->to, line->from};
  CirclePath circle = std::get<CirclePath>(path);
  circle.axis = -circle.axis;
  return circle;
}

}  // namespace seamturn::geom
