// SPDX-License-Identifier: MIT
// What stands in the way of a torch in a stage.
#pragma once

#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include "detail_stages.hpp"
#include "seamturn/joint/bounds.hpp"

namespace seamturn::planner::detail {

/// Members of a stage, boxes bolted on the faceplate, and the faceplate. Frame J.
/// Pre: the stage outlives it.
class Obstacles {
 public:
  Obstacles(const StageWork& stage, const std::optional<cell::Cell>& cell);
  ~Obstacles();

  /// Name of the member, solid of the set-up or "faceplate" a point grown to a ball touches; empty:
  /// none. Pre: a radius of 110 mm at most, as far as members are filed.
  [[nodiscard]] std::string_view met_at(const geom::Vec3& point, double radius_mm) const;
  /// What a torch meets first on a straight way off the weld: a body narrow there and wider the
  /// farther from it, looked at every 15 mm from 30 mm on. Empty: the way leads out. Pre: `way` is
  /// of unit length.
  [[nodiscard]] std::string_view met_on(const geom::Vec3& start, const geom::Vec3& way) const;

 private:
  class Neighbours;

  const StageWork& stage_;
  std::optional<geom::Vec3> normal_D_;  ///< of the faceplate: behind it there is the positioner
  std::vector<joint::Ball> balls_;      ///< to leave out most members quickly
  std::unique_ptr<Neighbours> neighbours_;
  double for_all_mm_ = 0.0;  ///< farther than this from the part's centre of gravity: nothing
};

}  // namespace seamturn::planner::detail
