// SPDX-License-Identifier: MIT
// How far the shapes of members reach: places on them that hold every end of a view.
#pragma once

#include <cmath>
#include <vector>

#include "seamturn/joint/member.hpp"

namespace seamturn::tests {

/// Corners of plates and rims of what is round, frame M.
inline std::vector<geom::Vec3> rims(double radius, double z) {
  std::vector<geom::Vec3> places;
  for (int i = 0; i < 720; ++i) {
    const double angle = i * 3.14159265358979 / 360.0;
    places.emplace_back(radius * std::cos(angle), radius * std::sin(angle), z);
  }
  return places;
}
inline std::vector<geom::Vec3> box(const geom::Vec3& low, const geom::Vec3& high) {
  std::vector<geom::Vec3> places;
  for (int i = 0; i < 8; ++i) {
    places.emplace_back((i & 1) != 0 ? high.x() : low.x(),
                        (i & 2) != 0 ? high.y() : low.y(),
                        (i & 4) != 0 ? high.z() : low.z());
  }
  return places;
}

struct OuterPlaces {
  std::vector<geom::Vec3> places;
  void add(const std::vector<geom::Vec3>& more) {
    places.insert(places.end(), more.begin(), more.end());
  }
  void operator()(const joint::Plate& plate) {
    add(box(geom::Vec3::Zero(), {plate.length_mm, plate.width_mm, plate.thickness_mm}));
  }
  void operator()(const joint::Tube& tube) {
    for (const double z : {0.0, tube.length_mm}) add(rims(0.5 * tube.outer_diameter_mm, z));
  }
  void operator()(const joint::Ring& ring) {
    for (const double z : {0.0, ring.thickness_mm}) add(rims(0.5 * ring.outer_diameter_mm, z));
  }
  void operator()(const joint::Bar& bar) {
    const geom::Vec3 half(0.5 * bar.width_mm, 0.5 * bar.height_mm, 0.0);
    if (bar.shape == joint::BarShape::round) {
      for (const double z : {0.0, bar.length_mm}) add(rims(half.x(), z));
    } else if (bar.shape == joint::BarShape::hexagon) {
      // Flats square to x, so corners stand on y.
      const double corner = bar.width_mm / std::sqrt(3.0);
      for (const double z : {0.0, bar.length_mm}) {
        for (const double y : {-1.0, -0.5, 0.5, 1.0}) {
          const double x = std::abs(y) == 1.0 ? 0.0 : half.x();
          places.emplace_back(x, y * corner, z);
          places.emplace_back(-x, y * corner, z);
        }
      }
    } else {
      add(box(-half, half + geom::Vec3(0, 0, bar.length_mm)));
    }
  }
  void operator()(const joint::Forging& forging) {
    double z = 0.0;
    for (const joint::ForgingStep& step : forging.steps) {
      add(rims(0.5 * step.start_diameter_mm, z));
      z += step.length_mm;
      add(rims(0.5 * step.end_diameter_mm, z));
    }
  }
};

}  // namespace seamturn::tests
