// SPDX-License-Identifier: MIT
#include "seamturn/geom/path.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "detail_legs.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/rounding.hpp"

namespace seamturn::geom {

namespace {

Mat3 turned_along(const Round& round, double distance_mm) {
  return rotation_about(round.axis, Angle::rad(distance_mm / round.radius_mm));
}
Station station_of(const Round& round, double distance_mm) {
  const Vec3 radial = turned_along(round, distance_mm) * round.start;
  return Station{round.centre + round.radius_mm * radial, round.axis.cross(radial)};
}

Round as_round(const CirclePath& circle) {
  return {circle.centre, circle.axis, circle.start, circle.radius_mm};
}
Round as_round(const ArcPath& arc) {
  return {arc.centre, arc.axis, arc.start, arc.radius_mm};
}

double arc_length_mm(const ArcPath& arc) {
  return arc.radius_mm * arc.sweep.rad();
}

/// Evenly spaced distances after `from`, up to and with `to`.
void add_spaced(std::vector<KeyStation>& stations, double from_mm, double to_mm, int pieces) {
  for (int i = 1; i < pieces; ++i) {
    stations.push_back({from_mm + (to_mm - from_mm) * i / pieces, AtCorner::leaving});
  }
  stations.push_back({to_mm, AtCorner::leaving});
}

int pieces_of(double length_mm, double radius_mm, Angle step) {
  constexpr double rounding = 1e-9;  // 360/30 is twelve steps, not thirteen
  const double steps = length_mm / radius_mm / step.rad();
  return std::max(1, static_cast<int>(std::ceil(steps - rounding)));
}

void add_arc(std::vector<KeyStation>& stations,
             const ArcPath& arc,
             double from_mm,
             double to_mm,
             Angle step) {
  const double begin_mm = std::clamp(0.0, from_mm, to_mm);
  const double end_mm = std::clamp(arc_length_mm(arc), from_mm, to_mm);
  if (begin_mm > from_mm) stations.push_back({begin_mm, AtCorner::leaving});
  if (end_mm > begin_mm) {
    add_spaced(stations, begin_mm, end_mm, pieces_of(end_mm - begin_mm, arc.radius_mm, step));
  }
  if (to_mm > end_mm) stations.push_back({to_mm, AtCorner::leaving});
}

}  // namespace

double path_length_mm(const Path& path) {
  if (const auto* line = std::get_if<LinePath>(&path)) return (line->to - line->from).norm();
  if (const auto* arc = std::get_if<ArcPath>(&path)) return arc_length_mm(*arc);
  if (const auto* polyline = std::get_if<PolylinePath>(&path)) {
    return detail::Legs(*polyline).length_mm();
  }
  return 2.0 * std::numbers::pi * std::get<CirclePath>(path).radius_mm;
}

bool is_closed(const Path& path) {
  if (const auto* polyline = std::get_if<PolylinePath>(&path)) return polyline->closed;
  return std::holds_alternative<CirclePath>(path);
}

std::optional<Round> round_of(const Path& path) {
  if (const auto* circle = std::get_if<CirclePath>(&path)) return as_round(*circle);
  if (const auto* arc = std::get_if<ArcPath>(&path)) return as_round(*arc);
  return std::nullopt;
}

double way_round_mm(double a_mm, double b_mm, double length_mm) {
  const double once_mm = std::fmod(std::abs(a_mm - b_mm), length_mm);
  return std::min(once_mm, length_mm - once_mm);
}

double wrapped_station_mm(double distance_mm, double length_mm) {
  return distance_mm - length_mm * std::floor(distance_mm / length_mm);
}

Station path_station(const Path& path, double distance_mm, AtCorner corner) {
  if (const auto* line = std::get_if<LinePath>(&path)) {
    const Vec3 tangent = unit(line->to - line->from);
    return Station{line->from + distance_mm * tangent, tangent};
  }
  if (const auto* arc = std::get_if<ArcPath>(&path)) {
    const double along_mm = std::clamp(distance_mm, 0.0, arc_length_mm(*arc));
    Station station = station_of(as_round(*arc), along_mm);
    station.point += (distance_mm - along_mm) * station.tangent;
    return station;
  }
  if (const auto* polyline = std::get_if<PolylinePath>(&path)) {
    return detail::Legs(*polyline).station(distance_mm, corner);
  }
  return station_of(as_round(std::get<CirclePath>(path)), distance_mm);
}

Station path_middle(const Path& path) {
  return path_station(path, path_length_mm(path) / 2.0);
}

Mat3 turn_along(const Path& path, double distance_mm, AtCorner corner) {
  if (const auto* circle = std::get_if<CirclePath>(&path)) {
    return turned_along(as_round(*circle), distance_mm);
  }
  if (const auto* arc = std::get_if<ArcPath>(&path)) {
    return turned_along(as_round(*arc), std::clamp(distance_mm, 0.0, arc_length_mm(*arc)));
  }
  if (const auto* polyline = std::get_if<PolylinePath>(&path)) {
    return detail::Legs(*polyline).carry(distance_mm, corner);
  }
  return Mat3::Identity();
}

Vec3 carried_direction(const Path& path,
                       double distance_mm,
                       const Vec3& at_start,
                       AtCorner corner) {
  return turn_along(path, distance_mm, corner) * at_start;
}

Vec3 carried_to_start(const Path& path,
                      double distance_mm,
                      const Vec3& at_distance,
                      AtCorner corner) {
  return turn_along(path, distance_mm, corner).transpose() * at_distance;
}

std::vector<double> corner_stations_mm(const Path& path) {
  const auto* polyline = std::get_if<PolylinePath>(&path);
  return polyline == nullptr ? std::vector<double>{} : detail::Legs(*polyline).corners_mm();
}

std::vector<KeyStation> key_stations(const Path& path, double from_mm, double to_mm, Angle step) {
  SEAMTURN_REQUIRE(from_mm < to_mm && step > Angle(), from_mm, to_mm, step.deg());
  std::vector<KeyStation> stations = {{from_mm, AtCorner::leaving}};
  if (const auto* circle = std::get_if<CirclePath>(&path)) {
    add_spaced(stations, from_mm, to_mm, pieces_of(to_mm - from_mm, circle->radius_mm, step));
    return stations;
  }
  if (const auto* arc = std::get_if<ArcPath>(&path)) {
    add_arc(stations, *arc, from_mm, to_mm, step);
    return stations;
  }
  if (const auto* polyline = std::get_if<PolylinePath>(&path)) {
    for (const double corner_mm : detail::Legs(*polyline).corners_between_mm(from_mm, to_mm)) {
      stations.push_back({corner_mm, AtCorner::arriving});
      stations.push_back({corner_mm, AtCorner::leaving});
    }
  }
  stations.push_back({to_mm, AtCorner::arriving});
  return stations;
}

Path moved_path(const Pose& X_AB, const Path& path) {
  if (const auto* line = std::get_if<LinePath>(&path)) {
    return LinePath{X_AB.point(line->from), X_AB.point(line->to)};
  }
  if (const auto* polyline = std::get_if<PolylinePath>(&path)) {
    PolylinePath moved = *polyline;
    for (Vec3& point : moved.points) point = X_AB.point(point);
    return moved;
  }
  const auto move_round = [&](auto moved) {
    moved.centre = X_AB.point(moved.centre);
    moved.axis = X_AB.direction(moved.axis);
    moved.start = X_AB.direction(moved.start);
    return moved;
  };
  if (const auto* arc = std::get_if<ArcPath>(&path)) return move_round(*arc);
  return move_round(std::get<CirclePath>(path));
}

Path part_of_path(const Path& path, double from_mm, double to_mm) {
  using base::rounding_mm;
  const double length_mm = path_length_mm(path);
  const bool closed = is_closed(path);
  SEAMTURN_REQUIRE(from_mm < to_mm && to_mm - from_mm < length_mm + rounding_mm, from_mm, to_mm);
  SEAMTURN_REQUIRE(
      closed || (from_mm > -rounding_mm && to_mm < length_mm + rounding_mm), from_mm, to_mm);
  if (const std::optional<Round> round = round_of(path)) {
    const Vec3 start = turned_along(*round, from_mm) * round->start;
    const Angle sweep = Angle::rad((to_mm - from_mm) / round->radius_mm);
    return ArcPath{round->centre, round->axis, start, round->radius_mm, sweep};
  }
  const auto point = [&](double at_mm) {
    return path_station(path, closed ? wrapped_station_mm(at_mm, length_mm) : at_mm).point;
  };
  if (std::holds_alternative<LinePath>(path)) return LinePath{point(from_mm), point(to_mm)};
  std::vector<Vec3> points = {point(from_mm)};
  for (const double round_mm : {-length_mm, 0.0, length_mm}) {
    if (round_mm != 0.0 && !closed) continue;
    for (const double corner_mm : corner_stations_mm(path)) {
      const double at_mm = corner_mm + round_mm;
      if (at_mm > from_mm + rounding_mm && at_mm < to_mm - rounding_mm) {
        points.push_back(point(at_mm));
      }
    }
  }
  points.push_back(point(to_mm));
  return PolylinePath{std::move(points), false};
}

Path reversed_path(const Path& path) {
  if (const auto* line = std::get_if<LinePath>(&path)) return LinePath{line->to, line->from};
  if (const auto* polyline = std::get_if<PolylinePath>(&path)) {
    PolylinePath back = *polyline;
    std::reverse(back.points.begin() + (back.closed ? 1 : 0), back.points.end());
    return back;
  }
  if (const auto* found = std::get_if<ArcPath>(&path)) {
    ArcPath arc = *found;
    arc.start = rotation_about(arc.axis, arc.sweep) * arc.start;
    arc.axis = -arc.axis;
    return arc;
  }
  CirclePath circle = std::get<CirclePath>(path);
  circle.axis = -circle.axis;
  return circle;
}

}  // namespace seamturn::geom
