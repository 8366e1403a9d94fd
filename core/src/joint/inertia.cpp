// SPDX-License-Identifier: MIT
#include "seamturn/joint/inertia.hpp"

#include <cmath>
#include <numbers>

#include "seamturn/base/error.hpp"
#include "seamturn/process/deposit.hpp"

namespace seamturn::joint {

namespace {

using geom::Mat3;
using geom::Vec3;

constexpr double m2_per_mm2 = 1e-6;

/// Second moments of a volume about its origin: integrals of x x, y y, z z. The shapes lie evenly
/// about their planes, so the mixed ones vanish about the centre.
struct Spread {
  double volume_mm3 = 0.0;
  Vec3 centre = Vec3::Zero();
  Vec3 squares_mm5 = Vec3::Zero();  ///< about the centre
};

Spread box_spread(const Vec3& size_mm) {
  Spread out;
  out.volume_mm3 = size_mm.prod();
  out.squares_mm5 = out.volume_mm3 / 12.0 * size_mm.cwiseAbs2();
  return out;
}

/// Round about z, from z = 0: a frustum, its spread about its own start.
struct Turned {
  double volume_mm3 = 0.0;
  double first_mm4 = 0.0;   ///< integral of z
  double second_mm5 = 0.0;  ///< integral of z z
  double across_mm5 = 0.0;  ///< integral of x x, and of y y
};

Turned frustum(double start_radius_mm, double end_radius_mm, double length_mm) {
  const double a = start_radius_mm;
  const double b = end_radius_mm;
  const double h = length_mm;
  constexpr double pi = std::numbers::pi;
  return {pi * h / 3.0 * (a * a + a * b + b * b),
          pi * h * h / 12.0 * (a * a + 2.0 * a * b + 3.0 * b * b),
          pi * h * h * h / 30.0 * (a * a + 3.0 * a * b + 6.0 * b * b),
          pi * h / 20.0 *
              (a * a * a * a + a * a * a * b + a * a * b * b + a * b * b * b + b * b * b * b)};
}

void add(Turned& all, const Turned& one, double from_mm, double sign) {
  all.volume_mm3 += sign * one.volume_mm3;
  all.first_mm4 += sign * (one.first_mm4 + from_mm * one.volume_mm3);
  all.second_mm5 +=
      sign * (one.second_mm5 + 2.0 * from_mm * one.first_mm4 + from_mm * from_mm * one.volume_mm3);
  all.across_mm5 += sign * one.across_mm5;
}

Spread spread_of(const Turned& turned) {
  Spread out;
  out.volume_mm3 = turned.volume_mm3;
  const double centre_mm = turned.first_mm4 / turned.volume_mm3;
  out.centre = Vec3(0.0, 0.0, centre_mm);
  out.squares_mm5 = Vec3(turned.across_mm5,
                         turned.across_mm5,
                         turned.second_mm5 - centre_mm * centre_mm * turned.volume_mm3);
  return out;
}

Spread hollow(double outer_mm, double inner_mm, double length_mm) {
  Turned all = frustum(outer_mm / 2.0, outer_mm / 2.0, length_mm);
  if (inner_mm > 0.0) add(all, frustum(inner_mm / 2.0, inner_mm / 2.0, length_mm), 0.0, -1.0);
  return spread_of(all);
}

// One function a solid, in its own frame M.

Spread spread_of(const Plate& plate) {
  Spread out = box_spread(Vec3(plate.length_mm, plate.width_mm, plate.thickness_mm));
  out.centre = Vec3(plate.length_mm, plate.width_mm, plate.thickness_mm) / 2.0;
  return out;
}
Spread spread_of(const Tube& tube) {
  return hollow(
      tube.outer_diameter_mm, tube.outer_diameter_mm - 2.0 * tube.wall_mm, tube.length_mm);
}
Spread spread_of(const Ring& ring) {
  return hollow(ring.outer_diameter_mm, ring.inner_diameter_mm, ring.thickness_mm);
}
Spread spread_of(const Bar& bar) {
  if (bar.shape == BarShape::round) return hollow(bar.width_mm, 0.0, bar.length_mm);
  Spread out = box_spread(Vec3(bar.width_mm, bar.height_mm, bar.length_mm));
  if (bar.shape == BarShape::hexagon) {
    // A regular hexagon of side s: area 3 sqrt3/2 s^2, both second moments 5 sqrt3/16 s^4.
    const double side_mm = bar.width_mm / std::numbers::sqrt3;
    const double s2 = side_mm * side_mm;
    out.volume_mm3 = 1.5 * std::numbers::sqrt3 * s2 * bar.length_mm;
    const double across = 5.0 * std::numbers::sqrt3 / 16.0 * s2 * s2 * bar.length_mm;
    out.squares_mm5 = Vec3(across, across, out.volume_mm3 * bar.length_mm * bar.length_mm / 12.0);
  }
  out.centre = Vec3(0.0, 0.0, bar.length_mm / 2.0);
  return out;
}
Spread spread_of(const Forging& forging) {
  Turned all;
  double at_mm = 0.0;
  for (const ForgingStep& step : forging.steps) {
    add(all,
        frustum(step.start_diameter_mm / 2.0, step.end_diameter_mm / 2.0, step.length_mm),
        at_mm,
        1.0);
    at_mm += step.length_mm;
  }
  const double bore_mm = forging.bore_mm / 2.0;
  if (bore_mm > 0.0) add(all, frustum(bore_mm, bore_mm, at_mm), 0.0, -1.0);
  return spread_of(all);
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
  const Spread spread =
      std::visit([](const auto& solid) { return spread_of(solid); }, member.shape);
  Body body;
  body.weight.mass_kg = spread.volume_mm3 * process::steel_density_kg_mm3;
  body.weight.centre = spread.centre;
  body.inertia_kg_m2 = m2_per_mm2 * process::steel_density_kg_mm3 * tensor(spread.squares_mm5);
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
