// SPDX-License-Identifier: MIT
// Walls beside a nozzle, seen from the torch.
#pragma once

#include <optional>
#include <vector>

#include "seamturn/pass/nozzle_access.hpp"

namespace seamturn::pass {

/// A straight piece of wall; `side` is +1 at x > 0, -1 at x < 0.
struct WallPiece {
  section::Point from;
  section::Point to;
  NozzleWall wall = NozzleWall::left_face;
  double side = 1.0;
};

/// Walls of a section and the plates beyond, the groove's sloping faces opened by a slope: at a
/// height h above its foot a face stands opening x h further out. Upright faces stay.
[[nodiscard]] std::vector<WallPiece> nozzle_walls(const NozzleAccessRequest& request,
                                                  double opening);
/// Angle between the sloping faces, foot to edge, opened by a slope; none without a sloping face.
[[nodiscard]] std::optional<Angle> angle_between_faces(const section::WeldSection& section,
                                                       double opening);

/// A wall piece in the torch's axes: `along` the torch from the aim, `beside` it towards the wall.
struct SeenPoint {
  double along_mm = 0.0;
  double beside_mm = 0.0;
};
struct SeenPiece {
  SeenPoint from;
  SeenPoint to;
};
[[nodiscard]] SeenPiece seen_from_torch(const WallPiece& piece, const Pass& pass);

/// Where the mouth is and how wide the nozzle.
struct Mouth {
  double along_mm = 0.0;
  double half_mm = 0.0;
};

/// The least over a piece of the greater of the distances beside and below the nozzle.
[[nodiscard]] double piece_clearance_mm(const SeenPiece& piece, const Mouth& mouth);
/// Furthest point along the torch of what lies nearer beside than a bound; none when nothing does.
[[nodiscard]] std::optional<double> furthest_along_mm(const SeenPiece& piece, double beside_mm);
/// Nearest beside of what lies further along than a bound; none when nothing does.
[[nodiscard]] std::optional<double> nearest_beside_mm(const SeenPiece& piece, double along_mm);

}  // namespace seamturn::pass
