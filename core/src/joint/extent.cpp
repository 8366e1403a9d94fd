// SPDX-License-Identifier: MIT
#include "seamturn/joint/extent.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace seamturn::joint {

namespace {

using geom::Vec3;

constexpr double round_above = 0.5;  // a direction is round a wall when it is mostly that

Vec3 radial(const Vec3& p) {
  const Vec3 out(p.x(), p.y(), 0.0);
  return out.norm() > 0.0 ? Vec3(out.normalized()) : Vec3::UnitX();
}

/// From a value inside [low, high] to where a line leaves it.
double to_border_mm(double at, double step, double low, double high) {
  if (std::abs(step) < 1e-12) return std::numeric_limits<double>::infinity();
  return ((step > 0.0 ? high : low) - std::clamp(at, low, high)) / step;
}

double half_round_mm(const Vec3& p) {
  return std::numbers::pi * std::hypot(p.x(), p.y());
}

// One function a solid; point and direction in its own frame.

double extent_of(const Plate& plate, const Vec3& p, const Vec3& d) {
  return std::min(to_border_mm(p.x(), d.x(), 0.0, plate.length_mm),
                  to_border_mm(p.y(), d.y(), 0.0, plate.width_mm));
}

double extent_along(double length_mm, const Vec3& p, const Vec3& d) {
  if (std::abs(d.z()) < round_above) return half_round_mm(p);
  return to_border_mm(p.z(), d.z() > 0.0 ? 1.0 : -1.0, 0.0, length_mm);
}

double extent_of(const Tube& tube, const Vec3& p, const Vec3& d) {
  return extent_along(tube.length_mm, p, d);
}

double extent_of(const Bar& bar, const Vec3& p, const Vec3& d) {
  return extent_along(bar.length_mm, p, d);
}

double extent_of(const Forging& forging, const Vec3& p, const Vec3& d) {
  double length_mm = 0.0;
  for (const ForgingStep& step : forging.steps) length_mm += step.length_mm;
  return extent_along(length_mm, p, d);
}

/// Where a straight line leaves the ring: by its outer edge, or before that by the hole.
double extent_of(const Ring& ring, const Vec3& p, const Vec3& d) {
  const double inner_mm = ring.inner_diameter_mm / 2.0;
  const double outer_mm = ring.outer_diameter_mm / 2.0;
  const double at_mm = std::clamp(std::hypot(p.x(), p.y()), inner_mm, outer_mm);
  const double outward = radial(p).dot(d);
  const double past_mm = at_mm * at_mm * (1.0 - outward * outward);  // squared, of the centre
  const double to_outer_mm =
      std::sqrt(std::max(0.0, outer_mm * outer_mm - past_mm)) - at_mm * outward;
  if (outward >= 0.0 || inner_mm * inner_mm <= past_mm) return to_outer_mm;
  return -at_mm * outward - std::sqrt(inner_mm * inner_mm - past_mm);
}

/// Across the wall, in the part's own frame.
Vec3 wall_normal(const Shape& shape, const Vec3& p) {
  const bool is_flat = std::holds_alternative<Plate>(shape) || std::holds_alternative<Ring>(shape);
  return is_flat ? Vec3(Vec3::UnitZ()) : radial(p);
}

}  // namespace

Vec3 across_wall(const Member& member, const Vec3& p_J, const Vec3& tangent_J) {
  const Vec3 p_M = member.X_JM.rotation.transpose() * (p_J - member.X_JM.translation);
  const Vec3 across = (member.X_JM.rotation * wall_normal(member.shape, p_M)).cross(tangent_J);
  return across.norm() < round_above ? Vec3(Vec3::Zero()) : Vec3(across.normalized());
}

double extent_mm(const Member& member, const Vec3& p_J, const Vec3& direction_J) {
  const Vec3 p_M = member.X_JM.rotation.transpose() * (p_J - member.X_JM.translation);
  const Vec3 d_M = member.X_JM.rotation.transpose() * direction_J;
  return std::visit([&](const auto& solid) { return extent_of(solid, p_M, d_M); }, member.shape);
}

}  // namespace seamturn::joint
