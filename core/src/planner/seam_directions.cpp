// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "detail_seam_directions.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::planner::detail {

namespace {

using geom::Vec3;
using process::WeldPosition;

std::optional<Vec3> turning_axis(const geom::Path& path) {
  if (const auto round = geom::round_of(path)) return round->axis;
  const std::vector<double> corners_mm = geom::corner_stations_mm(path);
  if (corners_mm.empty()) return std::nullopt;
  const auto tangent = [&](geom::AtCorner corner) {
    return geom::path_station(path, corners_mm.back(), corner).tangent;
  };
  return geom::unit(tangent(geom::AtCorner::arriving).cross(tangent(geom::AtCorner::leaving)));
}

StationInD station_in_D(const joint::Setup& setup,
                        const joint::Seam& seam,
                        const geom::KeyStation& key) {
  const auto there = [&](const Vec3& at_start) {
    return Vec3(setup.X_DJ.direction(
        geom::carried_direction(*seam.path, key.distance_mm, at_start, key.corner)));
  };
  const Vec3 tangent = geom::path_station(*seam.path, key.distance_mm, key.corner).tangent;
  return {Vec3(setup.X_DJ.direction(tangent)),
          there(seam.face),
          there(seam.wall_1),
          there(seam.wall_2)};
}

/// Bank of the face when a plate lies level.
Angle plate_bank(const StationInD& at) {
  return geom::angle_between(at.face, at.wall_1);
}

/// With one plate level a corner far from square is no PB any more: the sky nearest to that.
void add_near_level(const StationInD& at, std::vector<Vec3>& skies) {
  const Angle bank = position::pb_bank_near(plate_bank(at));
  if (bank == plate_bank(at)) return;
  const Vec3 face = geom::unit(at.face - at.face.dot(at.travel) * at.travel);
  for (const Angle way : {bank, -bank}) {
    skies.push_back(turn::sky_direction(geom::unit(at.travel), face, Angle(), way));
  }
}

/// Positions only a library's leave allows: the sky across the face, under it, or along the travel.
void add_by_leave(const StationInD& at, WeldPosition position, std::vector<Vec3>& skies) {
  const bool upright = position == WeldPosition::pf || position == WeldPosition::pg;
  if (upright) {
    skies.insert(skies.end(), {at.travel, -at.travel});
  } else if (position != WeldPosition::pa && position != WeldPosition::pb) {
    const Vec3 face = geom::unit(at.face - at.face.dot(at.travel) * at.travel);
    const Angle bank = position::nominal_attitude(position, Angle()).bank;
    for (const Angle way : {bank, -bank}) {
      skies.push_back(turn::sky_direction(geom::unit(at.travel), face, Angle(), way));
    }
  }
}

}  // namespace

SeamInD seam_in_D(const joint::Setup& setup, const joint::Seam& seam) {
  const geom::Path& path = *seam.path;
  const Angle step = Angle::deg(10.0);  // far below any working tolerance lies between two steps
  SeamInD out;
  out.seam = &seam;
  out.ring = std::holds_alternative<geom::CirclePath>(path);
  if (const auto axis = turning_axis(path)) out.axis = setup.X_DJ.direction(*axis);
  for (const geom::KeyStation& key :
       geom::key_stations(path, 0.0, geom::path_length_mm(path), step)) {
    out.stations.push_back(station_in_D(setup, seam, key));
    if (std::holds_alternative<geom::LinePath>(path)) break;  // alike all along
  }
  out.middle = station_in_D(setup, seam, {geom::path_length_mm(path) / 2.0});
  return out;
}

Angle level_bank(const SeamInD& seam) {
  return position::pb_bank_near(plate_bank(seam.stations.front()));
}

bool can_roll(const cell::Positioner& positioner, const SeamInD& seam) {
  constexpr double parallel = 1e-6;
  const bool in_one_go = joint::stretches_of(*seam.seam).size() == 1;
  return seam.ring && in_one_go &&
         seam.axis->cross(cell::faceplate_normal_D(positioner.kind)).norm() < parallel;
}

std::vector<geom::Vec3> wanted_skies(const cell::Positioner& positioner,
                                     const SeamInD& seam,
                                     const SeamWork& work) {
  std::vector<Vec3> skies;
  const auto want = [&](const StationInD& at) {
    skies.insert(skies.end(), {at.face, at.wall_1, at.wall_2});
    for (const StackChoice& choice : work.stacks) {
      if (choice.position == WeldPosition::pb) add_near_level(at, skies);
      add_by_leave(at, choice.position, skies);
    }
  };
  if (seam.axis && !can_roll(positioner, seam)) {
    skies = {*seam.axis, -*seam.axis};
    if (seam.ring) return skies;
    want(seam.middle);
  }
  want(seam.stations.front());
  return skies;
}

}  // namespace seamturn::planner::detail
