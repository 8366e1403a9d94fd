// SPDX-License-Identifier: MIT
#include "seamturn/position/sky_caps.hpp"

#include <algorithm>
#include <cmath>

#include "seamturn/base/error.hpp"

namespace seamturn::position {

namespace {

using geom::Vec3;

constexpr double slack_rad = 2e-8;  ///< 1e-6 degree

Angle half_angle(const SkyCap& cap) {
  return Angle::rad(std::acos(std::clamp(cap.least, -1.0, 1.0)));
}

/// Direction across t that a face lies at, so far banked.
Vec3 banked(const Vec3& t, const Vec3& n, double bank_rad) {
  return std::cos(bank_rad) * n + std::sin(bank_rad) * n.cross(t);
}

}  // namespace

bool is_in(const SkyCap& cap, const geom::Vec3& u) {
  const double inside = cap.axis.dot(u) - cap.least;
  if (inside >= 0.0) return true;
  if (inside < -2.0 * slack_rad) return false;
  return geom::angle_between(cap.axis, u).rad() <= half_angle(cap).rad() + slack_rad;
}

bool is_in(const SkyPatch& patch, const geom::Vec3& u) {
  return std::all_of(
      patch.caps.begin(), patch.caps.end(), [&](const SkyCap& cap) { return is_in(cap, u); });
}

Angle depth(const SkyPatch& patch, const geom::Vec3& u) {
  SEAMTURN_REQUIRE(!patch.caps.empty(), patch.caps.size());
  Angle least = Angle::deg(180.0);
  for (const SkyCap& cap : patch.caps) {
    least = std::min(least, half_angle(cap) - geom::angle_between(cap.axis, u));
  }
  return least;
}

std::vector<geom::Vec3> border_crossings(const SkyCap& a, const SkyCap& b) {
  constexpr double parallel = 1e-18;  // axes within 1e-9 rad: one border, or none in common
  const Vec3 across = a.axis.cross(b.axis);
  const double sine2 = across.squaredNorm();
  if (sine2 < parallel) return {};
  const double cosine = a.axis.dot(b.axis);
  const double alpha = (a.least - cosine * b.least) / sine2;
  const double beta = (b.least - cosine * a.least) / sine2;
  const Vec3 foot = alpha * a.axis + beta * b.axis;
  const double rest = (1.0 - foot.squaredNorm()) / sine2;
  constexpr double touching = 1e-15;  // the root of it is the 3e-8 rad that a touch may be off
  if (rest < -touching) return {};
  if (rest < touching) return {geom::unit(foot)};
  const Vec3 off = std::sqrt(rest) * across;
  return {geom::unit(foot + off), geom::unit(foot - off)};
}

SkyPatch attitude_patch(const geom::Vec3& t,
                        const geom::Vec3& n,
                        const Attitude& nominal,
                        const Slack& slack) {
  constexpr double tolerance = 1e-6;
  SEAMTURN_REQUIRE(std::abs(t.dot(n)) < tolerance && std::abs(t.norm() - 1.0) < tolerance &&
                       std::abs(n.norm() - 1.0) < tolerance,
                   t.norm(),
                   n.norm(),
                   t.dot(n));
  const Angle quarter = Angle::deg(90.0);
  SEAMTURN_REQUIRE(
      slack.bank < quarter && slack.bank >= Angle() && std::abs(nominal.slope.deg()) < 90.0,
      slack.bank.deg(),
      nominal.slope.deg());
  const Angle lowest = std::max(nominal.slope - slack.downhill, -quarter);
  const Angle highest = std::min(nominal.slope + slack.uphill, quarter);
  const double right_rad = (nominal.bank + slack.bank - quarter).rad();
  const double left_rad = (nominal.bank - slack.bank + quarter).rad();
  SkyPatch patch;
  const double slope_rad = nominal.slope.rad();
  patch.centre =
      geom::unit(std::sin(slope_rad) * t + std::cos(slope_rad) * banked(t, n, nominal.bank.rad()));
  patch.caps = {SkyCap{t, std::sin(lowest.rad())},
                SkyCap{-t, -std::sin(highest.rad())},
                SkyCap{geom::unit(banked(t, n, right_rad)), 0.0},
                SkyCap{geom::unit(banked(t, n, left_rad)), 0.0}};
  return patch;
}

std::optional<SkyPatch> inner_cap(const geom::Vec3& centre, const std::vector<SkyPatch>& all) {
  Angle room = Angle::deg(180.0);
  for (const SkyPatch& patch : all) {
    if (!is_in(patch, centre)) return std::nullopt;
    room = std::min(room, depth(patch, centre));
  }
  return SkyPatch{centre, {SkyCap{centre, std::cos(std::max(0.0, room.rad()))}}};
}

}  // namespace seamturn::position
