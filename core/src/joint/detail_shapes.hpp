// SPDX-License-Identifier: MIT
// Members as one of four kinds of solid, in the member's own frame M, and what is asked of each.
#pragma once

#include <vector>

#include "seamturn/joint/member.hpp"

namespace seamturn::joint::detail {

/// Takes the faces of a solid near a point of frame M, one by one.
class FaceSearch {
 public:
  virtual ~FaceSearch() = default;
  explicit FaceSearch(double off_face_mm) : off_face_mm_(off_face_mm) {}
  FaceSearch(const FaceSearch&) = delete;
  FaceSearch& operator=(const FaceSearch&) = delete;

  void offer(const geom::Vec3& normal_M, double distance_mm, bool inside_outline) {
    if (inside_outline && distance_mm <= off_face_mm_) take(normal_M, distance_mm);
  }

 private:
  virtual void take(const geom::Vec3& normal_M, double distance_mm) = 0;
  double off_face_mm_;
};

/// Tube, ring and round bar alike: what lies between two radii, from 0 to height along z.
struct HollowCylinder {
  double outer_radius_mm = 0.0;
  double inner_radius_mm = 0.0;
  double height_mm = 0.0;
};
[[nodiscard]] HollowCylinder cylinder_of(const Tube& tube);
[[nodiscard]] HollowCylinder cylinder_of(const Bar& round);
[[nodiscard]] HollowCylinder cylinder_of(const Ring& ring);

/// A bar with flat sides: a convex outline round the z axis, from 0 to height.
struct Prism {
  struct Side {
    geom::Vec3 normal;       ///< outward, unit, across z
    double offset_mm = 0.0;  ///< of the side from the axis
    double half_mm = 0.0;    ///< half its width
  };
  std::vector<Side> sides;
  double area_mm2 = 0.0;
  double height_mm = 0.0;
};
/// Pre: the bar is not round.
[[nodiscard]] Prism prism_of(const Bar& bar);

/// A body of revolution: the outline of its metal in the half plane (radius, z), walked with the
/// metal on the left.
struct Revolved {
  struct Edge {
    double r0_mm, z0_mm, r1_mm, z1_mm;
  };
  std::vector<Edge> edges;  ///< mantles and bore first, then the flats
  double volume_mm3 = 0.0;
  double centre_z_mm = 0.0;
};
[[nodiscard]] Revolved revolved_of(const Forging& forging);

/// Calls `function` with the plate, or with the cylinder, prism or body of revolution a shape is.
template <class Function>
auto with_solid(const Shape& shape, const Function& function) {
  if (const auto* plate = std::get_if<Plate>(&shape)) return function(*plate);
  if (const auto* tube = std::get_if<Tube>(&shape)) return function(cylinder_of(*tube));
  if (const auto* ring = std::get_if<Ring>(&shape)) return function(cylinder_of(*ring));
  if (const auto* forging = std::get_if<Forging>(&shape)) return function(revolved_of(*forging));
  const Bar& bar = std::get<Bar>(shape);
  if (bar.shape == BarShape::round) return function(cylinder_of(bar));
  return function(prism_of(bar));
}

[[nodiscard]] double volume_of(const Plate& plate);
[[nodiscard]] double volume_of(const HollowCylinder& body);
[[nodiscard]] double volume_of(const Prism& prism);
[[nodiscard]] double volume_of(const Revolved& body);
[[nodiscard]] geom::Vec3 centre_of(const Plate& plate);
[[nodiscard]] geom::Vec3 centre_of(const HollowCylinder& body);
[[nodiscard]] geom::Vec3 centre_of(const Prism& prism);
[[nodiscard]] geom::Vec3 centre_of(const Revolved& body);
void offer_faces(FaceSearch& search, const Prism& prism, const geom::Vec3& p, double beyond_mm);
void offer_faces(FaceSearch& search, const Revolved& body, const geom::Vec3& p, double beyond_mm);
/// Distance of a point from the surface, >= 0, inside or outside.
[[nodiscard]] double surface_distance(const Prism& prism, const geom::Vec3& p);
[[nodiscard]] double surface_distance(const Revolved& body, const geom::Vec3& p);

}  // namespace seamturn::joint::detail
