// SPDX-License-Identifier: MIT
// Preheat belongs to a place of the part: what lies within the heated zone of a joint is as warm as
// that joint asks for.
#include <algorithm>
#include <cmath>
#include <limits>

#include "detail_heat.hpp"

namespace seamturn::planner::detail {

namespace {

constexpr double sample_mm = 25.0;
constexpr std::size_t most_samples = 200;

/// Straight pieces along a joint's seams and the box around them.
struct Piece {
  geom::Vec3 from;
  geom::Vec3 to;
};
struct Course {
  std::vector<Piece> pieces;
  geom::Vec3 low = geom::Vec3::Constant(std::numeric_limits<double>::infinity());
  geom::Vec3 high = geom::Vec3::Constant(-std::numeric_limits<double>::infinity());
};

Course course_of(const joint::Joint& joint) {
  Course course;
  for (const joint::Seam& seam : joint.seams) {
    if (!seam.path) continue;
    const double length_mm = geom::path_length_mm(*seam.path);
    const auto steps =
        std::clamp(static_cast<std::size_t>(length_mm / sample_mm), std::size_t{1}, most_samples);
    geom::Vec3 last = geom::path_station(*seam.path, 0.0).point;
    for (std::size_t i = 1; i <= steps; ++i) {
      const double at_mm = length_mm * static_cast<double>(i) / static_cast<double>(steps);
      const geom::Vec3 next = geom::path_station(*seam.path, at_mm).point;
      course.pieces.push_back(Piece{last, next});
      course.low = course.low.cwiseMin(last).cwiseMin(next);
      course.high = course.high.cwiseMax(last).cwiseMax(next);
      last = next;
    }
  }
  return course;
}

double distance_mm(const geom::Vec3& p, const Piece& piece) {
  const geom::Vec3 along = piece.to - piece.from;
  const double square = along.squaredNorm();
  const double t = square > 0.0 ? std::clamp((p - piece.from).dot(along) / square, 0.0, 1.0) : 0.0;
  return (p - piece.from - t * along).norm();
}

/// Nearest from an end of one to the other. Pieces that cross in the air come out too far by less
/// than 1 mm at the widths of heated zones.
double distance_mm(const Piece& a, const Piece& b) {
  return std::min(
      {distance_mm(a.from, b), distance_mm(a.to, b), distance_mm(b.from, a), distance_mm(b.to, a)});
}

bool lies_within(const Course& a, const Course& b, double reach_mm) {
  const geom::Vec3 apart = (a.low - b.high).cwiseMax(b.low - a.high).cwiseMax(0.0);
  if (a.pieces.empty() || b.pieces.empty() || apart.norm() > reach_mm) return false;
  for (const Piece& p : a.pieces) {
    for (const Piece& q : b.pieces) {
      if (distance_mm(p, q) <= reach_mm) return true;
    }
  }
  return false;
}

bool shares_member(const joint::Joint& a, const joint::Joint& b) {
  return joint::joins(a, b.member_1) || joint::joins(a, b.member_2);
}

}  // namespace

void share_zones(const Inputs& inputs, std::vector<JointWork>& joints) {
  std::vector<Course> courses;
  for (const JointWork& work : joints) courses.push_back(course_of(*work.joint));
  for (std::size_t i = 0; i < joints.size(); ++i) {
    procedure::HeatLimits& mine = joints[i].heat;
    for (std::size_t j = 0; j < joints.size(); ++j) {
      const procedure::HeatLimits& other = joints[j].heat;
      if (i == j || other.own_preheat_c <= mine.preheat_c) continue;
      if (!shares_member(*joints[i].joint, *joints[j].joint) ||
          !lies_within(courses[i], courses[j], other.zone_width_mm)) {
        continue;
      }
      mine.preheat_c = other.own_preheat_c;
      mine.neighbour = joints[j].joint->id;
    }
    if (mine.neighbour.empty()) continue;
    mine.needs_heating = mine.preheat_c > inputs.weldment.ambient_c;
    mine.preheat_basis =
        "heated zone of joint " + mine.neighbour + " beside it; on its own: " + mine.preheat_basis;
  }
}

}  // namespace seamturn::planner::detail
