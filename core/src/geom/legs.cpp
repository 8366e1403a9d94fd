// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "detail_legs.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::geom::detail {

namespace {

constexpr double same_place_mm = 1e-9;

/// The smallest turn that takes one unit direction to another.
Mat3 turn_between(const Vec3& from, const Vec3& to) {
  const Vec3 axis = from.cross(to);
  const double sine = axis.norm();
  constexpr double parallel = 1e-12;
  if (sine < parallel) {
    SEAMTURN_REQUIRE(from.dot(to) > 0.0, "a polyline turns straight back");
    return Mat3::Identity();
  }
  return rotation_about(axis, Angle::rad(std::atan2(sine, from.dot(to))));
}

}  // namespace

Legs::Legs(const PolylinePath& path) : closed_(path.closed) {
  const std::size_t least = path.closed ? 3 : 2;
  SEAMTURN_REQUIRE(path.points.size() >= least, path.points.size());
  const std::size_t count = path.closed ? path.points.size() : path.points.size() - 1;
  legs_.reserve(count);
  double end_mm = 0.0;
  for (std::size_t k = 0; k < count; ++k) {
    const Vec3& from = path.points[k];
    const Vec3& to = path.points[(k + 1) % path.points.size()];
    end_mm += (to - from).norm();
    legs_.push_back(Leg{from, unit(to - from), end_mm});
  }
}

bool Legs::turns_after(std::size_t leg) const {
  constexpr double straight = 1e-6;
  return legs_[leg].tangent.cross(legs_[(leg + 1) % legs_.size()].tangent).norm() > straight;
}

Legs::Spot Legs::find(double distance_mm, AtCorner corner) const {
  double at_mm = distance_mm;
  if (closed_) {
    at_mm -= std::floor(distance_mm / length_mm()) * length_mm();
    // Just short of a full course is its start; arriving there is at the end of the last leg.
    if (at_mm > length_mm() - same_place_mm) at_mm = 0.0;
    if (corner == AtCorner::arriving && at_mm < same_place_mm) at_mm = length_mm();
  }
  const double shift_mm = corner == AtCorner::leaving ? same_place_mm : -same_place_mm;
  Spot spot;
  while (spot.leg + 1 < legs_.size() && at_mm + shift_mm >= legs_[spot.leg].end_mm) ++spot.leg;
  spot.along_mm = at_mm - (spot.leg == 0 ? 0.0 : legs_[spot.leg - 1].end_mm);
  return spot;
}

Station Legs::station(double distance_mm, AtCorner corner) const {
  const Spot spot = find(distance_mm, corner);
  const Leg& leg = legs_[spot.leg];
  return Station{leg.start + spot.along_mm * leg.tangent, leg.tangent};
}

Mat3 Legs::carry(double distance_mm, AtCorner corner) const {
  const Spot spot = find(distance_mm, corner);
  Mat3 turned = Mat3::Identity();
  for (std::size_t k = 0; k < spot.leg; ++k) {
    turned = turn_between(legs_[k].tangent, legs_[k + 1].tangent) * turned;
  }
  return turned;
}

std::vector<double> Legs::corners_mm() const {
  std::vector<double> corners;
  const std::size_t last = legs_.size() - 1;
  if (closed_ && turns_after(last)) corners.push_back(0.0);
  for (std::size_t k = 0; k < last; ++k) {
    if (turns_after(k)) corners.push_back(legs_[k].end_mm);
  }
  return corners;
}

std::vector<double> Legs::corners_between_mm(double from_mm, double to_mm) const {
  std::vector<double> found;
  const std::vector<double> once = corners_mm();
  const double first_round = closed_ ? std::floor(from_mm / length_mm()) : 0.0;
  const double last_round = closed_ ? std::floor(to_mm / length_mm()) : 0.0;
  for (double round = first_round; round <= last_round; round += 1.0) {
    for (const double corner_mm : once) {
      const double at_mm = corner_mm + round * length_mm();
      if (at_mm > from_mm + same_place_mm && at_mm < to_mm - same_place_mm) found.push_back(at_mm);
    }
  }
  return found;
}

}  // namespace seamturn::geom::detail
