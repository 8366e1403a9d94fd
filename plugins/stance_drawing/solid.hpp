// SPDX-License-Identifier: MIT
// The parts as simple solids: their edges, and what they hide.
#pragma once

#include <Eigen/Geometry>
#include <string>
#include <variant>
#include <vector>

namespace seamturn::stance_drawing {

using Vec3 = Eigen::Vector3d;
using Pose = Eigen::Isometry3d;
using Line = std::vector<Vec3>;  ///< from point to point, mm

[[nodiscard]] inline double length_of(const Line& line) {
  double length = 0.0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) length += (line[i + 1] - line[i]).norm();
  return length;
}

struct Edge {
  Line line;
  /// The points lie on a curve, what is between them does not: only the points are looked at.
  bool is_curve = false;
};

/// A convex outline in x and y, anticlockwise, drawn out along z from 0.
struct Block {
  std::vector<Eigen::Vector2d> outline;
  double length_mm = 0.0;
};
/// A length of a body of revolution about z.
struct Step {
  double from_mm = 0.0;
  double to_mm = 0.0;
  double from_radius_mm = 0.0;
  double to_radius_mm = 0.0;
};
/// Steps one after another from z 0, one bore right through.
struct Turned {
  std::vector<Step> steps;
  double bore_radius_mm = 0.0;
};

struct Solid {
  std::string id;
  std::variant<Block, Turned> shape;
  Pose X_WS = Pose::Identity();
  bool is_fixture = false;
};

/// The corners of the box about it, along its own axes, frame W.
[[nodiscard]] Line corners_of_box(const Solid& solid);
/// Its edges, and the outline of what is round as seen from there; frame W.
/// Pre: `towards_viewer` is of unit length.
[[nodiscard]] std::vector<Edge> edges(const Solid& solid, const Vec3& towards_viewer);

/// A solid as something in the way of looks in one direction.
class Screen {
 public:
  Screen(const Solid& solid, const Vec3& towards_viewer);
  /// True when its metal stands between the point and the viewer. A look along a face, or from it,
  /// is free.
  [[nodiscard]] bool hides(const Vec3& p_W) const;

 private:
  const Solid& solid_;
  Pose X_SW_;
  Vec3 towards_S_;
};

}  // namespace seamturn::stance_drawing
