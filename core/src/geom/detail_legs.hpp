// SPDX-License-Identifier: MIT
// A polyline as legs with stations, tangents and the turns between them.
#pragma once

#include <vector>

#include "seamturn/geom/path.hpp"

namespace seamturn::geom::detail {

class Legs {
 public:
  /// Pre: at least two points (closed: three), neighbours apart, no corner turns straight back.
  explicit Legs(const PolylinePath& path);

  [[nodiscard]] double length_mm() const { return legs_.back().end_mm; }
  [[nodiscard]] Station station(double distance_mm, AtCorner corner) const;
  [[nodiscard]] Mat3 carry(double distance_mm, AtCorner corner) const;
  /// Where the travel turns within one course; a closed one may turn at 0.
  [[nodiscard]] std::vector<double> corners_mm() const;
  /// Corners strictly between two distances; a closed course is run round as often as needed.
  [[nodiscard]] std::vector<double> corners_between_mm(double from_mm, double to_mm) const;

 private:
  struct Spot {
    std::size_t leg = 0;
    double along_mm = 0.0;
  };
  [[nodiscard]] bool turns_after(std::size_t leg) const;
  [[nodiscard]] Spot find(double distance_mm, AtCorner corner) const;

  struct Leg {
    Vec3 start;
    Vec3 tangent;
    double end_mm = 0.0;  ///< station
  };
  std::vector<Leg> legs_;
  bool closed_;
};

}  // namespace seamturn::geom::detail
