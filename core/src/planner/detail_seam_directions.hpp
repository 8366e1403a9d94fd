// SPDX-License-Identifier: MIT
// A seam as the positioner sees it: directions in the faceplate's frame D, and the skies that lay
// it as wanted.
#pragma once

#include <optional>
#include <vector>

#include "detail_work.hpp"

namespace seamturn::planner::detail {

/// Directions of a seam at one of its stations, frame D.
struct StationInD {
  geom::Vec3 travel, face, wall_1, wall_2;
};

struct SeamInD {
  const joint::Seam* seam = nullptr;
  std::vector<StationInD> stations;  ///< those that tell its course; one for a line
  StationInD middle;                 ///< half way along
  bool ring = false;                 ///< a full circle
  std::optional<geom::Vec3> axis;    ///< of rings and arcs, or about which a polyline's legs turn
};

/// Pre: the seam has a path.
[[nodiscard]] SeamInD seam_in_D(const joint::Setup& setup, const joint::Seam& seam);

/// Nominal bank for PB: one plate level, or as near as PB lets (the face halves the corner, so
/// either plate will do).
[[nodiscard]] Angle level_bank(const SeamInD& seam);

/// Rings welded in one stretch about the last axis. Arcs and polylines are held still.
[[nodiscard]] bool can_roll(const cell::Positioner& positioner, const SeamInD& seam);

/// Sky directions that lay a seam exactly, or as well as one that turns allows: face up, or one of
/// its plates level; along the axis it turns about; half way of an arc or open polyline; where a
/// stack is for another position (the library gives leave), the face level or the travel upright.
[[nodiscard]] std::vector<geom::Vec3> wanted_skies(const cell::Positioner& positioner,
                                                   const SeamInD& seam,
                                                   const SeamWork& work);

}  // namespace seamturn::planner::detail
