// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "detail_shapes.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::joint::detail {

namespace {

using geom::Vec3;

/// Where a point of the half plane lies beside an edge.
struct Beside {
  double along_mm = 0.0;   ///< from the edge's start
  double length_mm = 0.0;  ///< of the edge
  double off_mm = 0.0;     ///< from its line, >= 0
};

Beside beside(const Revolved::Edge& edge, double r_mm, double z_mm) {
  const double dr = edge.r1_mm - edge.r0_mm;
  const double dz = edge.z1_mm - edge.z0_mm;
  Beside found;
  found.length_mm = std::hypot(dr, dz);
  const double pr = r_mm - edge.r0_mm;
  const double pz = z_mm - edge.z0_mm;
  found.along_mm = (pr * dr + pz * dz) / found.length_mm;
  found.off_mm = std::abs(pr * dz - pz * dr) / found.length_mm;
  return found;
}

/// Frustum of a solid cone: volume, and moment of the volume about its start.
void add_step(const ForgingStep& step, double z_mm, Revolved& body, double& moment_mm4) {
  const double a = step.start_diameter_mm;
  const double b = step.end_diameter_mm;
  const double h = step.length_mm;
  const double volume_mm3 = std::numbers::pi / 12.0 * h * (a * a + a * b + b * b);
  const double own_moment_mm4 =
      std::numbers::pi / 48.0 * h * h * (a * a + 2.0 * a * b + 3.0 * b * b);
  body.volume_mm3 += volume_mm3;
  moment_mm4 += volume_mm3 * z_mm + own_moment_mm4;
}

}  // namespace

Revolved revolved_of(const Forging& forging) {
  SEAMTURN_REQUIRE(!forging.steps.empty() && forging.bore_mm >= 0.0, forging.bore_mm);
  Revolved body;
  std::vector<Revolved::Edge> flats;
  double moment_mm4 = 0.0;
  const double bore_mm = forging.bore_mm / 2.0;
  double r_mm = bore_mm;
  double z_mm = 0.0;
  for (const ForgingStep& step : forging.steps) {
    const double start_mm = step.start_diameter_mm / 2.0;
    const double end_mm = step.end_diameter_mm / 2.0;
    SEAMTURN_REQUIRE(std::min(start_mm, end_mm) > bore_mm && step.length_mm > 0.0, start_mm);
    if (start_mm != r_mm) flats.push_back({r_mm, z_mm, start_mm, z_mm});
    body.edges.push_back({start_mm, z_mm, end_mm, z_mm + step.length_mm});
    add_step(step, z_mm, body, moment_mm4);
    z_mm += step.length_mm;
    r_mm = end_mm;
  }
  flats.push_back({r_mm, z_mm, bore_mm, z_mm});
  if (bore_mm > 0.0) {
    body.edges.push_back({bore_mm, z_mm, bore_mm, 0.0});
    const double bore_mm3 = std::numbers::pi * bore_mm * bore_mm * z_mm;
    body.volume_mm3 -= bore_mm3;
    moment_mm4 -= bore_mm3 * z_mm / 2.0;
  }
  body.edges.insert(body.edges.end(), flats.begin(), flats.end());
  body.centre_z_mm = moment_mm4 / body.volume_mm3;
  return body;
}

double volume_of(const Revolved& body) {
  return body.volume_mm3;
}

Vec3 centre_of(const Revolved& body) {
  return {0.0, 0.0, body.centre_z_mm};
}

void offer_faces(FaceSearch& search, const Revolved& body, const Vec3& p, double beyond_mm) {
  const double radius_mm = std::hypot(p.x(), p.y());
  constexpr double on_axis_mm = 1e-9;  // no radial direction there
  for (const Revolved::Edge& edge : body.edges) {
    const double out_r = edge.z1_mm - edge.z0_mm;  // the metal lies left of the walk
    const double out_z = edge.r0_mm - edge.r1_mm;
    if (out_r != 0.0 && radius_mm <= on_axis_mm) continue;
    const Vec3 radial = radius_mm > on_axis_mm ? Vec3(p.x() / radius_mm, p.y() / radius_mm, 0.0)
                                               : Vec3(Vec3::Zero());
    const Beside found = beside(edge, radius_mm, p.z());
    const bool inside =
        found.along_mm >= -beyond_mm && found.along_mm <= found.length_mm + beyond_mm;
    search.offer(geom::unit(out_r * radial + out_z * Vec3(Vec3::UnitZ())), found.off_mm, inside);
  }
}

double surface_distance(const Revolved& body, const Vec3& p) {
  const double radius_mm = std::hypot(p.x(), p.y());
  double nearest_mm = std::numeric_limits<double>::infinity();
  for (const Revolved::Edge& edge : body.edges) {
    const Beside found = beside(edge, radius_mm, p.z());
    const double past_mm = std::max({0.0, -found.along_mm, found.along_mm - found.length_mm});
    nearest_mm = std::min(nearest_mm, std::hypot(found.off_mm, past_mm));
  }
  return nearest_mm;
}

}  // namespace seamturn::joint::detail
