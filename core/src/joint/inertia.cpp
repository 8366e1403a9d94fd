// SPDX-License-Identifier: MIT
#include "seamturn/joint/inertia.hpp"

#include <cmath>
#include <numbers>

#include "detail_shapes.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/process/deposit.hpp"

namespace seamturn::joint {

namespace {

using geom::Mat3;
using geom::Vec3;

constexpr double m2_per_mm2 = 1e-6;

// Integrals of x x, y y and z z over a solid about its centre. The solids lie evenly about their
// planes, so the mixed ones vanish there. One function a solid.

Vec3 squares_mm5(const detail::HollowCylinder& body) {
  const double outer = body.outer_radius_mm;
  const double inner = body.inner_radius_mm;
  const double across = (outer * outer + inner * inner) / 4.0;
  return detail::volume_of(body) * Vec3(across, across, body.height_mm * body.height_mm / 12.0);
}

Vec3 squares_mm5(const Vec3& size_mm) {
  return size_mm.prod() / 12.0 * size_mm.cwiseAbs2();
}

Vec3 squares_mm5(const Plate& plate) {
  return squares_mm5(Vec3(plate.length_mm, plate.width_mm, plate.thickness_mm));
}

/// Triangles from the axis to every side.
Vec3 squares_mm5(const detail::Prism& prism) {
  Vec3 squares = Vec3::Zero();
  for (const detail::Prism::Side& side : prism.sides) {
    const double area = side.offset_mm * side.half_mm;
    const Vec3 along = Vec3::UnitZ().cross(side.normal);
    squares += area * side.offset_mm * side.offset_mm / 2.0 * side.normal.cwiseAbs2() +
               area * side.half_mm * side.half_mm / 6.0 * along.cwiseAbs2();
  }
  squares *= prism.height_mm;
  squares.z() = detail::volume_of(prism) * prism.height_mm * prism.height_mm / 12.0;
  return squares;
}

/// Frustums between the edges and the axis, those walked downwards taken off.
Vec3 squares_mm5(const detail::Revolved& body) {
  double across = 0.0;
  double along = 0.0;  // about z = 0
  for (const detail::Revolved::Edge& edge : body.edges) {
    const double a = edge.r0_mm;
    const double b = edge.r1_mm;
    const double h = edge.z1_mm - edge.z0_mm;
    const double z = edge.z0_mm;
    constexpr double pi = std::numbers::pi;
    across += pi * h / 20.0 *
              (a * a * a * a + a * a * a * b + a * a * b * b + a * b * b * b + b * b * b * b);
    along += pi * h / 3.0 * z * z * (a * a + a * b + b * b) +
             pi * h * h / 6.0 * z * (a * a + 2.0 * a * b + 3.0 * b * b) +
             pi * h * h * h / 30.0 * (a * a + 3.0 * a * b + 6.0 * b * b);
  }
  return {across, across, along - body.centre_z_mm * body.centre_z_mm * body.volume_mm3};
}

/// Moments of inertia from the second moments: about x what lies in y and z, and so on.
Mat3 tensor(const Vec3& squares) {
  return Mat3(Vec3(squares.y() + squares.z(), squares.z() + squares.x(), squares.x() + squares.y())
                  .asDiagonal());
}

/// Of a mass at an arm: m (r.r 1 - r r^T), kg m2.
Mat3 of_point(double mass_kg, const Vec3& arm_mm) {
  return m2_per_mm2 * mass_kg *
         (arm_mm.squaredNorm() * Mat3::Identity() - arm_mm * arm_mm.transpose());
}

}  // namespace

Body body_of(const Member& member) {
  Body body;
  detail::with_solid(member.shape, [&body](const auto& solid) {
    body.weight.mass_kg = detail::volume_of(solid) * process::steel_density_kg_mm3;
    body.weight.centre = detail::centre_of(solid);
    body.inertia_kg_m2 = m2_per_mm2 * process::steel_density_kg_mm3 * tensor(squares_mm5(solid));
  });
  return moved(member.X_JM, body);
}

Body body_of(const SetupSolid& solid) {
  Body body;
  body.weight = Weight{solid.mass_kg, solid.centre};
  if (solid.size_mm) {
    body.inertia_kg_m2 = m2_per_mm2 * solid.mass_kg / 12.0 * tensor(solid.size_mm->cwiseAbs2());
  }
  return body;
}

Body together(const std::vector<Body>& bodies) {
  Body all;
  for (const Body& body : bodies) {
    all.weight.mass_kg += body.weight.mass_kg;
    all.weight.centre += body.weight.mass_kg * body.weight.centre;
  }
  if (!(all.weight.mass_kg > 0.0)) return Body{};
  all.weight.centre /= all.weight.mass_kg;
  for (const Body& body : bodies) {
    all.inertia_kg_m2 +=
        body.inertia_kg_m2 + of_point(body.weight.mass_kg, body.weight.centre - all.weight.centre);
  }
  return all;
}

Body moved(const geom::Pose& X_AB, const Body& body_B) {
  return {{body_B.weight.mass_kg, X_AB.point(body_B.weight.centre)},
          X_AB.rotation * body_B.inertia_kg_m2 * X_AB.rotation.transpose()};
}

double inertia_about_kg_m2(const Body& body, const Vec3& point, const Vec3& direction) {
  SEAMTURN_REQUIRE(std::abs(direction.norm() - 1.0) < 1e-9, direction.norm());
  const double arm_mm = direction.cross(body.weight.centre - point).norm();
  return direction.dot(body.inertia_kg_m2 * direction) +
         m2_per_mm2 * body.weight.mass_kg * arm_mm * arm_mm;
}

}  // namespace seamturn::joint
