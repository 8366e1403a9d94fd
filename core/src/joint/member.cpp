// SPDX-License-Identifier: MIT
#include "seamturn/joint/member.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <numbers>

#include "detail_shapes.hpp"
#include "detail_solid.hpp"
#include "seamturn/process/deposit.hpp"

namespace seamturn::joint {

namespace {

using detail::centre_of;
using detail::FaceSearch;
using detail::HollowCylinder;
using detail::offer_faces;
using detail::surface_distance;
using detail::volume_of;
using detail::with_solid;
using geom::Vec3;

bool lies_in(double value, double low, double high, double beyond) {
  return value >= low - beyond && value <= high + beyond;
}

void offer_faces(FaceSearch& search, const Plate& plate, const Vec3& p, double beyond) {
  const Vec3 size(plate.length_mm, plate.width_mm, plate.thickness_mm);
  for (const int axis : {2, 0, 1}) {  // the wide faces come first
    const int side_a = (axis + 1) % 3;
    const int side_b = (axis + 2) % 3;
    const bool inside = lies_in(p[side_a], 0.0, size[side_a], beyond) &&
                        lies_in(p[side_b], 0.0, size[side_b], beyond);
    const Vec3 normal = Vec3::Unit(axis);
    search.offer(normal, std::abs(p[axis] - size[axis]), inside);
    search.offer(-normal, std::abs(p[axis]), inside);
  }
}

void offer_faces(FaceSearch& search, const HollowCylinder& body, const Vec3& p, double beyond) {
  const double radius = p.head<2>().norm();
  constexpr double on_axis_mm = 1e-9;  // no radial direction there
  if (radius > on_axis_mm) {
    const Vec3 radial(p.x() / radius, p.y() / radius, 0.0);
    const bool inside = lies_in(p.z(), 0.0, body.height_mm, beyond);
    search.offer(radial, std::abs(radius - body.outer_radius_mm), inside);
    if (body.inner_radius_mm > 0.0) {
      search.offer(-radial, std::abs(radius - body.inner_radius_mm), inside);
    }
  }
  const bool inside = lies_in(radius, body.inner_radius_mm, body.outer_radius_mm, beyond);
  search.offer(Vec3::UnitZ(), std::abs(p.z() - body.height_mm), inside);
  search.offer(-Vec3::UnitZ(), std::abs(p.z()), inside);
}

double beyond_span(double value, double low, double high) {
  return std::max(low - value, value - high);
}

/// Distance of a point from the surface of a convex product of spans, given how far the point lies
/// beyond each span (negative: inside).
double surface_mm(std::initializer_list<double> beyond) {
  const double deepest = std::max(beyond);
  if (deepest < 0.0) return -deepest;
  double squares = 0.0;
  for (const double d : beyond) squares += std::max(d, 0.0) * std::max(d, 0.0);
  return std::sqrt(squares);
}

double surface_distance(const Plate& plate, const Vec3& p) {
  return surface_mm({beyond_span(p.x(), 0.0, plate.length_mm),
                     beyond_span(p.y(), 0.0, plate.width_mm),
                     beyond_span(p.z(), 0.0, plate.thickness_mm)});
}
double surface_distance(const HollowCylinder& body, const Vec3& p) {
  const double radius = p.head<2>().norm();
  // A solid bar has no bore: let the span run through the axis.
  const double inner = body.inner_radius_mm > 0.0 ? body.inner_radius_mm : -body.outer_radius_mm;
  return surface_mm(
      {beyond_span(radius, inner, body.outer_radius_mm), beyond_span(p.z(), 0.0, body.height_mm)});
}

/// Collects them, the nearest first; normals are turned into J as they come.
class NearFaces : public FaceSearch {
 public:
  NearFaces(const geom::Pose& X_JM, double off_face_mm) : FaceSearch(off_face_mm), X_JM_(X_JM) {}
  std::vector<Face> faces;

 private:
  void take(const Vec3& normal_M, double distance_mm) override {
    constexpr std::size_t most_meet = 4;
    if (faces.empty()) faces.reserve(most_meet);
    // Behind those as near, so that the first offered comes first.
    const auto behind = std::upper_bound(
        faces.begin(), faces.end(), distance_mm, [](double distance, const Face& face) {
          return distance < face.distance_mm;
        });
    faces.insert(behind, Face{X_JM_.direction(normal_M), distance_mm});
  }
  const geom::Pose& X_JM_;
};

/// Whether one of them looks the way that is wanted.
class FaceTowards : public FaceSearch {
 public:
  FaceTowards(const Vec3& wanted_M, double off_face_mm)
      : FaceSearch(off_face_mm), wanted_M_(wanted_M) {}
  bool found = false;

 private:
  void take(const Vec3& normal_M, double) override {
    constexpr double same_surface = 0.9;  // a curved wall turns a little over a probe
    found = found || normal_M.dot(wanted_M_) > same_surface;
  }
  Vec3 wanted_M_;
};

double thickest_mm(const Forging& forging) {
  double diameter_mm = 0.0;
  for (const ForgingStep& step : forging.steps) {
    diameter_mm = std::max({diameter_mm, step.start_diameter_mm, step.end_diameter_mm});
  }
  return forging.bore_mm > 0.0 ? (diameter_mm - forging.bore_mm) / 2.0 : diameter_mm;
}

double shape_distance_mm(const Shape& shape, const Vec3& p) {
  return with_solid(shape, [&](const auto& solid) { return surface_distance(solid, p); });
}

}  // namespace

std::string_view shape_name(const Shape& shape) {
  if (std::holds_alternative<Plate>(shape)) return "plate";
  if (std::holds_alternative<Tube>(shape)) return "tube";
  if (std::holds_alternative<Bar>(shape)) return "bar";
  return std::holds_alternative<Forging>(shape) ? "forging" : "ring";
}

std::string_view bar_shape_name(BarShape shape) {
  switch (shape) {
    case BarShape::round:
      return "round";
    case BarShape::square:
      return "square";
    case BarShape::flat:
      return "flat";
    case BarShape::hexagon:
      return "hexagon";
  }
  return "round";
}

double volume_mm3(const Shape& shape) {
  return with_solid(shape, [](const auto& solid) { return volume_of(solid); });
}

double wall_thickness_mm(const Shape& shape) {
  if (const auto* plate = std::get_if<Plate>(&shape)) return plate->thickness_mm;
  if (const auto* tube = std::get_if<Tube>(&shape)) return tube->wall_mm;
  if (const auto* bar = std::get_if<Bar>(&shape)) return std::min(bar->width_mm, bar->height_mm);
  if (const auto* forging = std::get_if<Forging>(&shape)) return thickest_mm(*forging);
  return std::get<Ring>(shape).thickness_mm;
}

double mass_kg(const Member& member) {
  return volume_mm3(member.shape) * process::steel_density_kg_mm3;
}

geom::Vec3 centre_of_gravity(const Member& member) {
  return member.X_JM.point(
      with_solid(member.shape, [](const auto& solid) { return centre_of(solid); }));
}

Weight total_weight(const std::vector<Member>& members) {
  Weight total;
  Vec3 moment = Vec3::Zero();
  for (const Member& member : members) {
    const double mass = mass_kg(member);
    total.mass_kg += mass;
    moment += mass * centre_of_gravity(member);
  }
  if (total.mass_kg > 0.0) total.centre = moment / total.mass_kg;
  return total;
}

std::vector<Face> faces_at(const Member& member,
                           const geom::Vec3& p_J,
                           double off_face_mm,
                           double beyond_edge_mm) {
  const Vec3 p_M = member.X_JM.point_back(p_J);
  NearFaces search(member.X_JM, off_face_mm);
  with_solid(member.shape, [&](const auto& solid) {
    offer_faces(search, solid, p_M, beyond_edge_mm);
    return 0;
  });
  return std::move(search.faces);
}

bool detail::has_face_towards(const Member& member,
                              const geom::Vec3& p_J,
                              const geom::Vec3& normal_J,
                              double off_face_mm) {
  FaceTowards search(member.X_JM.rotation.transpose() * normal_J, off_face_mm);
  with_solid(member.shape, [&](const auto& solid) {
    offer_faces(search, solid, member.X_JM.point_back(p_J), 0.0);
    return 0;
  });
  return search.found;
}

double detail::distance_to_surface_mm(const Member& member, const geom::Vec3& p_J) {
  const Vec3 p_M = member.X_JM.point_back(p_J);
  return shape_distance_mm(member.shape, p_M);
}

}  // namespace seamturn::joint
