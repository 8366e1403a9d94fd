// SPDX-License-Identifier: MIT
// The course of a weld: a straight line, a full circle, a part of one, or straight legs with
// corners. Stations run from 0 to the length.
#pragma once

#include <optional>
#include <variant>
#include <vector>

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

/// A part of a turn, right-handed about the axis, from centre + radius * start.
struct ArcPath {
  Vec3 centre = Vec3::Zero();
  Vec3 axis = Vec3::UnitZ();   ///< unit
  Vec3 start = Vec3::UnitX();  ///< unit, across the axis
  double radius_mm = 0.0;
  Angle sweep;  ///< above 0, below 360 deg
};

/// Straight legs from point to point. Neighbours lie apart and no corner turns straight back.
struct PolylinePath {
  std::vector<Vec3> points;  ///< at least two; closed: at least three, the first not repeated
  bool closed = false;       ///< a last leg leads back to the first point; all lie in one plane
};

/// What a circle and an arc share.
struct Round {
  Vec3 centre = Vec3::Zero();
  Vec3 axis = Vec3::UnitZ();
  Vec3 start = Vec3::UnitX();
  double radius_mm = 0.0;
};

using Path = std::variant<LinePath, CirclePath, ArcPath, PolylinePath>;

/// A corner belongs to two legs: seen as the weld leaves it, or as it arrives.
enum class AtCorner { leaving, arriving };

/// A point of a path and the direction of travel there (unit), in the path's frame.
struct Station {
  Vec3 point = Vec3::Zero();
  Vec3 tangent = Vec3::UnitX();
};

/// Units: -> mm. Source: none - geometry. Tests: geom/path - closed-form.
[[nodiscard]] double path_length_mm(const Path& path);
[[nodiscard]] bool is_closed(const Path& path);
/// Nothing for lines and polylines.
[[nodiscard]] std::optional<Round> round_of(const Path& path);
/// A station of a closed course brought into 0 .. below its length. Pre: length > 0.
[[nodiscard]] double wrapped_station_mm(double distance_mm, double length_mm);
/// Between two stations of a closed path, the shorter way round. Pre: length > 0.
[[nodiscard]] double way_round_mm(double a_mm, double b_mm, double length_mm);
/// The station at a distance from the start. Distances outside 0..length run straight on beyond the
/// ends of an open path (tabs lie there) and on round a closed one.
/// Pre: a polyline is as its struct says.
[[nodiscard]] Station path_station(const Path& path,
                                   double distance_mm,
                                   AtCorner corner = AtCorner::leaving);
/// The station half way along.
[[nodiscard]] Station path_middle(const Path& path);
/// A direction attached to the path at its start, carried along to a distance: unchanged on a
/// straight leg, turned about the axis on a circle or arc, and at a corner turned as the travel
/// turns, about the common normal of both legs.
[[nodiscard]] Vec3 carried_direction(const Path& path,
                                     double distance_mm,
                                     const Vec3& at_start,
                                     AtCorner corner = AtCorner::leaving);
/// The same as a rotation, for several directions at one distance.
[[nodiscard]] Mat3 turn_along(const Path& path,
                              double distance_mm,
                              AtCorner corner = AtCorner::leaving);
/// The inverse: a direction found at a distance, carried back to the start.
[[nodiscard]] Vec3 carried_to_start(const Path& path,
                                    double distance_mm,
                                    const Vec3& at_distance,
                                    AtCorner corner = AtCorner::leaving);

/// Where a polyline turns between its ends, and at 0 when it is closed and turns there. Nothing for
/// other paths. A point between two legs in one line is no corner.
[[nodiscard]] std::vector<double> corner_stations_mm(const Path& path);

struct KeyStation {
  double distance_mm = 0.0;
  AtCorner corner = AtCorner::leaving;
};
/// Stations that tell a stretch of a path: its ends; on arcs and circles evenly spaced ones, `step`
/// of turn apart at most; every corner twice, arriving and leaving; and where an open arc goes over
/// into its straight prolongation.
/// Pre: from < to, step > 0. Source: none - geometry. Tests: geom/path - closed-form.
[[nodiscard]] std::vector<KeyStation> key_stations(const Path& path,
                                                   double from_mm,
                                                   double to_mm,
                                                   Angle step = Angle::deg(30.0));

/// The path seen from another frame: X_AB moves it from B to A.
[[nodiscard]] Path moved_path(const Pose& X_AB, const Path& path);
/// The course from one station to another, as an open path; of a closed course also over its start.
/// Stations of the part run from 0 at `from`. Of a polyline the corners between are kept.
/// Pre: from < to, and the part shorter than the course; an open course is not left.
/// Source: none - geometry. Accuracy: to rounding. Tests: geom/path - law.
[[nodiscard]] Path part_of_path(const Path& path, double from_mm, double to_mm);
/// The same course travelled the other way (a closed one keeps its start point).
[[nodiscard]] Path reversed_path(const Path& path);

}  // namespace seamturn::geom
