// SPDX-License-Identifier: MIT
#include "seamturn/joint/inside.hpp"

#include <algorithm>
#include <cmath>

#include "detail_shapes.hpp"
#include "detail_solid.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::joint {

namespace {

using geom::Vec3;

constexpr double on_face_mm = 1e-9;  // a point computed to lie on a face lies on it

bool between(double value, double low, double high) {
  return value >= low - on_face_mm && value <= high + on_face_mm;
}

bool holds(const Plate& plate, const Vec3& p) {
  return between(p.x(), 0.0, plate.length_mm) && between(p.y(), 0.0, plate.width_mm) &&
         between(p.z(), 0.0, plate.thickness_mm);
}

bool holds(const Tube& tube, const Vec3& p) {
  const double outer_mm = tube.outer_diameter_mm / 2.0;
  return between(std::hypot(p.x(), p.y()), outer_mm - tube.wall_mm, outer_mm) &&
         between(p.z(), 0.0, tube.length_mm);
}

bool holds(const Ring& ring, const Vec3& p) {
  return between(std::hypot(p.x(), p.y()),
                 ring.inner_diameter_mm / 2.0,
                 ring.outer_diameter_mm / 2.0) &&
         between(p.z(), 0.0, ring.thickness_mm);
}

bool holds(const Bar& bar, const Vec3& p) {
  if (!between(p.z(), 0.0, bar.length_mm)) return false;
  if (bar.shape == BarShape::round) {
    return between(std::hypot(p.x(), p.y()), 0.0, bar.width_mm / 2.0);
  }
  const detail::Prism prism = detail::prism_of(bar);
  return std::all_of(prism.sides.begin(), prism.sides.end(), [&](const auto& side) {
    return side.normal.dot(p) <= side.offset_mm + on_face_mm;
  });
}

bool holds(const Forging& forging, const Vec3& p) {
  const double radius_mm = std::hypot(p.x(), p.y());
  if (radius_mm < forging.bore_mm / 2.0 - on_face_mm) return false;
  double z_mm = 0.0;
  for (const ForgingStep& step : forging.steps) {
    if (between(p.z(), z_mm, z_mm + step.length_mm)) {
      const double share = std::clamp((p.z() - z_mm) / step.length_mm, 0.0, 1.0);
      const double diameter_mm = std::lerp(step.start_diameter_mm, step.end_diameter_mm, share);
      if (radius_mm <= diameter_mm / 2.0 + on_face_mm) return true;
    }
    z_mm += step.length_mm;
  }
  return false;
}

}  // namespace

bool is_inside(const Member& member, const geom::Vec3& p_J, double grown_mm) {
  SEAMTURN_REQUIRE(p_J.allFinite(), p_J.x(), p_J.y(), p_J.z());
  SEAMTURN_REQUIRE(base::is_amount(grown_mm), grown_mm);
  const Vec3 p_M = member.X_JM.point_back(p_J);
  if (std::visit([&](const auto& shape) { return holds(shape, p_M); }, member.shape)) return true;
  return grown_mm > 0.0 && detail::distance_to_surface_mm(member, p_J) <= grown_mm + on_face_mm;
}

}  // namespace seamturn::joint
