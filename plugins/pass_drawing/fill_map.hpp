// SPDX-License-Identifier: MIT
// Places in a weld by two numbers: s, across, 0 to 1 in the direction of the section's x, and r,
// from the root (0) to the face. Layers are bands of r, beads are pieces of a band.
#pragma once

#include "pass_drawing/geometry.hpp"

namespace seamturn::pass_drawing {

class FillMap {
 public:
  /// A groove's profile ends at r = 1, its cap at r = 2.
  /// Throws std::runtime_error when the outline encloses nothing.
  [[nodiscard]] static FillMap groove(Polygon outline, double height_mm);
  /// A fillet's face is at r = 1; s runs from the second member's toe to the first's.
  [[nodiscard]] static FillMap fillet(Polygon outline);

  [[nodiscard]] Point at(double s, double r) const;
  /// The r of the finished face.
  [[nodiscard]] double full() const { return full_; }
  /// Where the walls of a groove bend, as r, rising; the foot of its cap among them.
  [[nodiscard]] const std::vector<double>& bends() const { return bends_; }
  /// Share across of a point inside.
  [[nodiscard]] double share_of(Point point) const;
  [[nodiscard]] const Polygon& outline() const { return outline_; }
  /// Metal behind a fillet's root, outside the map; usually empty.
  [[nodiscard]] const Polygon& behind() const { return behind_; }
  /// Half the angle between the plates of a fillet, in radians.
  [[nodiscard]] double half_angle_rad() const { return half_angle_rad_; }
  [[nodiscard]] bool is_fillet() const { return is_fillet_; }
  [[nodiscard]] Point toe_1() const { return toe_1_; }
  [[nodiscard]] Point toe_2() const { return toe_2_; }

 private:
  FillMap() = default;
  [[nodiscard]] Point in_groove(double s, double r) const;

  Polygon outline_;
  Polygon behind_;
  std::vector<double> bends_;
  bool is_fillet_ = false;
  double full_ = 1.0;
  double base_mm_ = 0.0;  ///< where metal begins; root faces that touch hold none
  double height_mm_ = 0.0;
  double cap_left_mm_ = 0.0;
  double cap_right_mm_ = 0.0;
  double half_angle_rad_ = 0.0;
  Point toe_1_;
  Point toe_2_;
};

}  // namespace seamturn::pass_drawing
