// SPDX-License-Identifier: MIT
// Where the layers of a seam start and stop: clear of corners, and not above one another.
#pragma once

#include <vector>

#include "seamturn/base/finding.hpp"
#include "seamturn/geom/path.hpp"
#include "seamturn/joint/weld_length.hpp"

namespace seamturn::joint {

struct StartStopRule {
  double corner_clear_mm = 0.0;  ///< no start or stop nearer than this to a corner
  double stagger_mm = 0.0;       ///< stops of consecutive layers at least this far apart
};

/// What the rule is laid on.
struct StartStopCourse {
  double length_mm = 0.0;
  bool closed = false;
  std::vector<double> corners_mm;  ///< stations, 0..length; of an open seam also its ends, where it
                                   ///< ends at a member's corner
  WeldLength asked;                ///< overlap, tabs and end returns move starts and stops
};
/// Corners of a path; of an open one with its ends when `ends_at_corners`.
[[nodiscard]] StartStopCourse start_stop_course(const geom::Path& path,
                                                const WeldLength& asked,
                                                bool ends_at_corners);

/// Stations of the path where the arc of a layer is struck and put out. On a closed seam in
/// 0..length; below 0 or beyond the length of an open one: on a tab or round the edge.
struct LayerStops {
  int layer = 0;  ///< from 1
  double start_mm = 0.0;
  double stop_mm = 0.0;
  bool reversed = false;  ///< welded from the end of the path (open seams)
};

struct StartStopMap {
  std::vector<LayerStops> layers;
  std::vector<base::Finding> findings;
};

/// Starts and stops of each layer of a seam welded in one go. Closed: the first station going round
/// that is clear of every corner with its start and its stop and has its stop the stagger away from
/// the last layer's; where none is, the one that misses by least, and a finding. Open: from end to
/// end, the direction alternating when a stagger is asked for.
/// Units: mm.
/// Pre: length > 0, layers >= 1, distances >= 0, corners within 0..length; not intermittent.
/// Outside: joint.length.stop_at_corner, joint.length.stops_close (warnings, each once).
/// Source: none - combinatorics; that stops belong apart and off corners is trade practice
///   (docs/methods/lengths.md).
/// Accuracy: closed seams are searched at 720 stations and beside every corner and stop.
/// Tests: joint/start_stop - closed-form, laws.
[[nodiscard]] StartStopMap start_stop_map(const StartStopRule& rule,
                                          const StartStopCourse& course,
                                          int layers);

}  // namespace seamturn::joint
