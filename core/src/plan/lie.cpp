// SPDX-License-Identifier: MIT
#include "seamturn/plan/lie.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <variant>
#include <vector>

#include "seamturn/base/error.hpp"
#include "seamturn/geom/path.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::plan {

namespace {

/// A straight stretch of a polyline, from a station on.
struct Leg {
  geom::Vec3 from, to;
  double begins_mm = 0.0;
};

std::vector<Leg> legs_of(const geom::PolylinePath& line) {
  std::vector<Leg> legs;
  double begins_mm = 0.0;
  const std::size_t count = line.points.size() - (line.closed ? 0 : 1);
  for (std::size_t i = 0; i < count; ++i) {
    legs.push_back({line.points[i], line.points[(i + 1) % line.points.size()], begins_mm});
    begins_mm += (legs.back().to - legs.back().from).norm();
  }
  return legs;
}

/// The station nearest to a torch, on a leg that runs its way: beside a corner both legs are near.
double station_on_legs_mm(const geom::PolylinePath& line,
                          const geom::Vec3& torch,
                          const geom::Vec3& along) {
  double best_mm = 0.0;
  double least_mm = std::numeric_limits<double>::infinity();
  for (const Leg& leg : legs_of(line)) {
    const geom::Vec3 way = leg.to - leg.from;
    const double length_mm = way.norm();
    const double on_mm = std::clamp((torch - leg.from).dot(way) / length_mm, 0.0, length_mm);
    const double off_mm = (torch - leg.from - on_mm / length_mm * way).norm();
    const bool against = way.dot(along) < 0.9 * length_mm;
    const double counted_mm = off_mm + (against ? path_length_mm(line) : 0.0);
    if (counted_mm >= least_mm) continue;
    least_mm = counted_mm;
    best_mm = leg.begins_mm + on_mm;
  }
  return best_mm;
}

/// Beyond both ends of an arc: the nearer of them.
double station_round_mm(const geom::Path& path, const geom::Round& round, const geom::Vec3& torch) {
  const double turn_mm = 2.0 * std::numbers::pi * round.radius_mm;
  const geom::Angle turned = geom::signed_angle(round.axis, round.start, torch - round.centre);
  const double on_mm = geom::wrapped_station_mm(turned.rad() * round.radius_mm, turn_mm);
  const double length_mm = geom::path_length_mm(path);
  if (geom::is_closed(path) || on_mm <= length_mm) return on_mm;
  return turn_mm - on_mm < on_mm - length_mm ? 0.0 : length_mm;
}

}  // namespace

double start_station_mm(const joint::Seam& seam, const PlannedPass& pass) {
  SEAMTURN_REQUIRE(seam.path.has_value(), seam.id);
  const double drawn_start_mm =
      pass.reversed && !geom::is_closed(*seam.path) ? geom::path_length_mm(*seam.path) : 0.0;
  if (pass.points.empty()) return drawn_start_mm;
  const reach::TorchPose& first = pass.points.front();
  if (const auto* line = std::get_if<geom::PolylinePath>(&*seam.path)) {
    return station_on_legs_mm(*line, first.point, (pass.reversed ? -1.0 : 1.0) * first.travel);
  }
  const std::optional<geom::Round> round = geom::round_of(*seam.path);
  return round ? station_round_mm(*seam.path, *round, first.point) : drawn_start_mm;
}

geom::Mat3 rotation_WJ(const Plan& plan, const PlannedPass& pass) {
  const auto index = static_cast<std::size_t>(pass.stance);
  SEAMTURN_REQUIRE(pass.stance >= 0 && index < plan.stances.size() && plan.cell, pass.stance);
  const PlannedStance& stance = plan.stances[index];
  std::vector<base::Angle> axes = stance.stance.axes;
  if (pass.roll_from) axes.back() = *pass.roll_from;
  return turn::rotation_WD(plan.cell->positioner, axes) * setup_of(plan, stance).X_DJ.rotation;
}

std::optional<position::Attitude> lie_at_start(const Plan& plan,
                                               const joint::Joint& joint,
                                               const joint::Seam& seam,
                                               const PlannedPass& pass) {
  if (pass.stance < 0 || !seam.path || !plan.cell) return std::nullopt;
  const geom::Mat3 R_WJ = rotation_WJ(plan, pass);
  const joint::SectionFrame frame = joint::section_frame(joint, seam, start_station_mm(seam, pass));
  const geom::Vec3 travel_W = (pass.reversed ? -1.0 : 1.0) * (R_WJ * frame.tangent);
  const auto lies = position::attitude(travel_W, R_WJ * frame.face, geom::Vec3::UnitZ());
  if (!lies) return std::nullopt;
  return *lies;
}

}  // namespace seamturn::plan
