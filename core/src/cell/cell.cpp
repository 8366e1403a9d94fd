// SPDX-License-Identifier: MIT
#include "seamturn/cell/cell.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"

namespace seamturn::cell {

namespace {

using geom::Vec3;

bool is_headstock(PositionerKind kind) {
  return kind == PositionerKind::headstock || kind == PositionerKind::station_changer;
}

Vec3 first_direction(PositionerKind kind) {
  switch (kind) {
    case PositionerKind::tilt_rotate:
    case PositionerKind::inclined:
      return Vec3::UnitY();
    case PositionerKind::headstock:
    case PositionerKind::roll_arm:
      return Vec3::UnitX();
    case PositionerKind::station_changer:
      return Vec3::UnitZ();
  }
  return Vec3::UnitY();
}

Vec3 last_direction(const Positioner& positioner) {
  if (is_headstock(positioner.kind)) return Vec3::UnitX();
  if (positioner.kind != PositionerKind::inclined) return Vec3::UnitZ();
  const double between_rad = positioner.between.rad();
  return Vec3(0.0, std::cos(between_rad), std::sin(between_rad));
}

/// The least turn that takes one direction to another.
geom::Mat3 least_turn(const Vec3& from, const Vec3& to) {
  constexpr double opposite = 1e-9;
  if (from == to) return geom::Mat3::Identity();
  const Vec3 about = from.cross(to);
  if (about.norm() > opposite) {
    return geom::rotation_about(about, geom::angle_between(from, to));
  }
  if (from.dot(to) > 0.0) return geom::Mat3::Identity();
  return geom::rotation_about(geom::any_normal_to(from), Angle::deg(180.0));
}

}  // namespace

std::string_view positioner_kind_name(PositionerKind kind) {
  switch (kind) {
    case PositionerKind::tilt_rotate:
      return "tilt-rotate";
    case PositionerKind::headstock:
      return "headstock";
    case PositionerKind::inclined:
      return "inclined";
    case PositionerKind::roll_arm:
      return "roll-arm";
    case PositionerKind::station_changer:
      return "station-changer";
  }
  return "tilt-rotate";
}

geom::Vec3 faceplate_normal_D(PositionerKind kind) {
  return is_headstock(kind) ? Vec3(Vec3::UnitX()) : Vec3(Vec3::UnitZ());
}

AxisLine axis_line(const Positioner& positioner, std::size_t index) {
  SEAMTURN_REQUIRE(index < positioner.axes.size(), index, positioner.axes.size());
  const Axis& axis = positioner.axes[index];
  if (axis.line) return *axis.line;
  const bool last = index + 1 == positioner.axes.size();
  if (is_exchange(positioner, index)) return {Vec3::UnitZ(), positioner.exchange_centre};
  return {last ? last_direction(positioner) : first_direction(positioner.kind),
          positioner.tilt_centre};
}

geom::Pose faceplate_at_zero(const Positioner& positioner) {
  SEAMTURN_REQUIRE(!positioner.axes.empty(), positioner.id);
  const AxisLine line = axis_line(positioner, positioner.axes.size() - 1);
  return {least_turn(faceplate_normal_D(positioner.kind), line.along),
          line.at + positioner.overhang_mm * line.along};
}

bool is_exchange(const Positioner& positioner, std::size_t index) {
  return positioner.kind == PositionerKind::station_changer && index == 0;
}

}  // namespace seamturn::cell
