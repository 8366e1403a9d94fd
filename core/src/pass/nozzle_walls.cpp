// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "pass/detail_nozzle.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::pass {
namespace {

using section::Point;
using section::Slice;

// Plates are looked at so far beyond the edge: as far as a nozzle and its neck reach.
constexpr double plate_mm = 150.0;

[[nodiscard]] Point beyond(const Point& edge, double side, Angle rise) {
  return {edge.x_mm + side * plate_mm * std::cos(rise.rad()),
          edge.y_mm + plate_mm * std::sin(rise.rad())};
}

[[nodiscard]] double wall_x_mm(const Slice& slice, double side) {
  return side > 0.0 ? slice.right_mm : slice.left_mm;
}

/// Index of the last slice before the wall leans outwards; the last of all when it never does.
[[nodiscard]] std::size_t foot_of(const std::vector<Slice>& profile, double side) {
  std::size_t i = 0;
  while (i + 1 < profile.size() &&
         side * (wall_x_mm(profile[i + 1], side) - wall_x_mm(profile[i], side)) <= 0.0) {
    ++i;
  }
  return i;
}

void add_groove_side(std::vector<WallPiece>& pieces,
                     const NozzleAccessRequest& request,
                     double side,
                     double opening) {
  const std::vector<Slice>& profile = request.section->profile;
  const bool right = side > 0.0;
  const double foot_mm = profile[foot_of(profile, side)].y_mm;
  const auto at = [&](const Slice& slice) {
    const double above_mm = std::max(0.0, slice.y_mm - foot_mm);
    return Point{wall_x_mm(slice, side) + side * opening * above_mm, slice.y_mm};
  };
  for (std::size_t i = 1; i < profile.size(); ++i) {
    pieces.push_back({at(profile[i - 1]),
                      at(profile[i]),
                      right ? NozzleWall::right_face : NozzleWall::left_face,
                      side});
  }
  const Point edge = at(profile.back());
  pieces.push_back({edge,
                    beyond(edge, side, right ? request.right_rise : request.left_rise),
                    right ? NozzleWall::right_plate : NozzleWall::left_plate,
                    side});
}

/// The plates of a fillet run from the root along the walls of its lowest slices.
void add_fillet_plate(std::vector<WallPiece>& pieces,
                      const section::WeldSection& section,
                      double side) {
  const Slice& low = section.profile[0];
  const Slice& high = section.profile[1];
  const Point root{wall_x_mm(low, side), low.y_mm};
  const double x_mm = wall_x_mm(high, side) - root.x_mm;
  const double y_mm = high.y_mm - root.y_mm;
  const double scale = plate_mm / std::hypot(x_mm, y_mm);
  pieces.push_back({root,
                    {root.x_mm + scale * x_mm, root.y_mm + scale * y_mm},
                    side > 0.0 ? NozzleWall::right_plate : NozzleWall::left_plate,
                    side});
}

/// Clips a piece to where a function, linear along it, is at most a bound.
struct Clip {
  double from = 0.0;
  double to = 1.0;
  [[nodiscard]] bool is_empty() const { return from > to; }
};
[[nodiscard]] Clip clip_at_most(double at_from, double at_to, double bound) {
  if (at_from <= bound && at_to <= bound) return {};
  if (at_from > bound && at_to > bound) return {1.0, 0.0};
  const double cut = (bound - at_from) / (at_to - at_from);
  return at_from <= bound ? Clip{0.0, cut} : Clip{cut, 1.0};
}

[[nodiscard]] SeenPoint point_at(const SeenPiece& piece, double t) {
  return {(1.0 - t) * piece.from.along_mm + t * piece.to.along_mm,
          (1.0 - t) * piece.from.beside_mm + t * piece.to.beside_mm};
}

}  // namespace

std::vector<WallPiece> nozzle_walls(const NozzleAccessRequest& request, double opening) {
  SEAMTURN_REQUIRE(request.section->profile.size() >= 2, request.section->profile.size());
  std::vector<WallPiece> pieces;
  for (const double side : {-1.0, 1.0}) {
    if (request.section->is_fillet) {
      add_fillet_plate(pieces, *request.section, side);
    } else {
      add_groove_side(pieces, request, side, opening);
    }
  }
  return pieces;
}

std::optional<Angle> angle_between_faces(const section::WeldSection& section, double opening) {
  const std::vector<Slice>& profile = section.profile;
  std::optional<Angle> sum;
  for (const double side : {-1.0, 1.0}) {
    const Slice& foot = profile[foot_of(profile, side)];
    const double rise_mm = profile.back().y_mm - foot.y_mm;
    if (section.is_fillet || rise_mm <= 0.0) continue;
    const double run_mm = side * (wall_x_mm(profile.back(), side) - wall_x_mm(foot, side));
    sum = sum.value_or(Angle()) + Angle::rad(std::atan(run_mm / rise_mm + opening));
  }
  return sum;
}

SeenPiece seen_from_torch(const WallPiece& piece, const Pass& pass) {
  const double sine = std::sin(pass.work_angle.rad());
  const double cosine = std::cos(pass.work_angle.rad());
  const auto seen = [&](const Point& point) {
    const double x_mm = point.x_mm - pass.aim.x_mm;
    const double y_mm = point.y_mm - pass.aim.y_mm;
    return SeenPoint{x_mm * sine + y_mm * cosine, piece.side * (x_mm * cosine - y_mm * sine)};
  };
  return {seen(piece.from), seen(piece.to)};
}

double piece_clearance_mm(const SeenPiece& piece, const Mouth& mouth) {
  // The greater of two functions linear along the piece: least at an end or where they are equal.
  const auto beside = [&](const SeenPoint& point) { return point.beside_mm - mouth.half_mm; };
  const auto below = [&](const SeenPoint& point) { return mouth.along_mm - point.along_mm; };
  const auto clearance = [&](const SeenPoint& point) {
    return std::max(beside(point), below(point));
  };
  double least = std::min(clearance(piece.from), clearance(piece.to));
  const double lead_from = beside(piece.from) - below(piece.from);
  const double lead_to = beside(piece.to) - below(piece.to);
  if (lead_from * lead_to < 0.0) {
    least = std::min(least, clearance(point_at(piece, lead_from / (lead_from - lead_to))));
  }
  return least;
}

std::optional<double> furthest_along_mm(const SeenPiece& piece, double beside_mm) {
  const Clip clip = clip_at_most(piece.from.beside_mm, piece.to.beside_mm, beside_mm);
  if (clip.is_empty()) return std::nullopt;
  return std::max(point_at(piece, clip.from).along_mm, point_at(piece, clip.to).along_mm);
}

std::optional<double> nearest_beside_mm(const SeenPiece& piece, double along_mm) {
  const Clip clip = clip_at_most(-piece.from.along_mm, -piece.to.along_mm, -along_mm);
  if (clip.is_empty()) return std::nullopt;
  return std::min(point_at(piece, clip.from).beside_mm, point_at(piece, clip.to).beside_mm);
}

}  // namespace seamturn::pass
