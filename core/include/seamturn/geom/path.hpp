// SPDX-License-Identifier: MIT
// The course of a weld: a straight line or a full circle. Stations run from 0 to the length.
#pragma once

#include <variant>

#include "seamturn/geom/vector.hpp"

namespace seamturn::geom {

/// A straight run; frame J, mm.
struct LinePath {
  Vec3 from = Vec3::Zero();
  Vec3 to = Vec3::Zero();
};

/// A full turn, right-handed about the axis, from centre + radius * start and back to it.
struct CirclePath {
  Vec3 centre = Vec3::Zero();
  Vec3 axis = Vec3::UnitZ();   ///< unit
  Vec3 start = Vec3::UnitX();  ///< unit, across the axis
  double radius_mm = 0.0;
};

using Path = std::variant<LinePath, CirclePath>;

/// A point of a path and the direction of travel there (unit), in the path's frame.
struct Station {
  Vec3 point = Vec3::Zero();
  Vec3 tangent = Vec3::UnitX();
};

/// Units: -> mm. Source: none - geometry. Tests: geom/path - closed-form.
[[nodiscard]] double path_length_mm(const Path& path);
[[nodiscard]] bool is_closed(const Path& path);
/// The station at a distance from the start; distances outside 0..length are clamped on a line
/// and run on round a circle.
[[nodiscard]] Station path_station(const Path& path, double distance_mm);
/// A direction attached to the path at its start, carried along to a distance: unchanged on a line,
/// turned about the axis on a circle.
[[nodiscard]] Vec3 carried_direction(const Path& path, double distance_mm, const Vec3& at_start);
/// The path seen from another frame: X_AB moves it from B to A.
[[nodiscard]] Path moved_path(const Pose& X_AB, const Path& path);
/// The same course travelled the other way (a circle keeps its start point).
[[nodiscard]] Path reversed_path(const Path& path);

}  // namespace seamturn::geom
