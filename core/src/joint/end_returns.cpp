// SPDX-License-Identifier: MIT
#include "seamturn/joint/end_returns.hpp"

namespace seamturn::joint {

namespace {

std::optional<std::vector<geom::Vec3>> open_points(const geom::Path& path) {
  if (const auto* line = std::get_if<geom::LinePath>(&path)) return {{line->from, line->to}};
  const auto* polyline = std::get_if<geom::PolylinePath>(&path);
  if (polyline == nullptr || polyline->closed) return std::nullopt;
  return polyline->points;
}

/// Behind the second member, in the first one's surface.
geom::Vec3 round_the_edge(const Seam& seam, double distance_mm) {
  const geom::Vec3 wall_1 = geom::carried_direction(*seam.path, distance_mm, seam.wall_1);
  const geom::Vec3 wall_2 = geom::carried_direction(*seam.path, distance_mm, seam.wall_2);
  return -geom::unit(wall_2 - wall_2.dot(wall_1) * wall_1);
}

}  // namespace

Seam with_end_returns(const Seam& seam) {
  const double return_mm = seam.asked.end_return_mm;
  if (!(return_mm > 0.0) || !seam.path) return seam;
  std::optional<std::vector<geom::Vec3>> points = open_points(*seam.path);
  if (!points) return seam;
  const double length_mm = geom::path_length_mm(*seam.path);
  const bool at_start = !seam.segment || seam.segment->at_start;
  const bool at_end = !seam.segment || seam.segment->at_end;
  const double before_mm = at_start ? return_mm : 0.0;
  if (at_start) {
    points->insert(points->begin(), points->front() + return_mm * round_the_edge(seam, 0.0));
  }
  if (at_end) points->push_back(points->back() + return_mm * round_the_edge(seam, length_mm));
  Seam out = seam;
  out.path = geom::PolylinePath{*points, false};
  for (geom::Vec3* direction : {&out.wall_1, &out.wall_2, &out.face}) {
    *direction = geom::carried_to_start(*out.path, before_mm, *direction);
  }
  out.asked.end_return_mm = 0.0;
  out.length_mm = geom::path_length_mm(*out.path);
  out.welded = {};
  if (seam.segment) {
    const Stretch& own = seam.welded.stretches.front();
    out.welded.stretches = {{0.0, before_mm + own.to_mm + (at_end ? return_mm : 0.0)}};
  }
  return out;
}

}  // namespace seamturn::joint
