// SPDX-License-Identifier: MIT
#include "seamturn/joint/joint.hpp"

#include <array>
#include <iterator>

#include "seamturn/base/error.hpp"

namespace seamturn::joint {

namespace {

/// Walls closer to parallel than this enclose no corner: the weld lies flush, as in a butt.
constexpr double parallel_sine = 1e-6;

geom::Vec3 across(const geom::Vec3& v, const geom::Vec3& direction) {
  return v - v.dot(direction) * direction;
}

}  // namespace

std::string_view joint_type_name(JointType type) {
  switch (type) {
    case JointType::butt:
      return "butt";
    case JointType::tee:
      return "tee";
    case JointType::corner:
      return "corner";
    case JointType::lap:
      return "lap";
  }
  return "tee";
}

std::string_view root_decision_name(RootDecision root) {
  switch (root) {
    case RootDecision::open:
      return "open";
    case RootDecision::steel_backing:
      return "steel-backing";
    case RootDecision::ceramic_backing:
      return "ceramic-backing";
    case RootDecision::gouge:
      return "gouge";
    case RootDecision::both_sides:
      return "both-sides";
  }
  return "open";
}

std::span<const std::string_view> duty_names() {
  static constexpr std::array<std::string_view, 5> names = {
      "strength", "tight", "seal", "buttering", "build-up"};
  return names;
}

std::string_view duty_name(Duty duty) {
  return duty_names()[static_cast<std::size_t>(duty)];
}

double welded_length_mm(const Seam& seam) {
  return seam.welded.stretches.empty() ? seam.length_mm : welded_mm(seam.welded);
}

std::vector<Stretch> stretches_of(const Seam& seam) {
  if (!seam.welded.stretches.empty()) return seam.welded.stretches;
  return {Stretch{0.0, seam.path ? geom::path_length_mm(*seam.path) : seam.length_mm}};
}

std::string_view restraint_name(Restraint restraint) {
  constexpr std::string_view names[] = {"low", "medium", "high"};
  const auto index = static_cast<std::size_t>(restraint);
  SEAMTURN_REQUIRE(index < std::size(names), index);
  return names[index];
}

bool runs_against(const Seam& second, const Seam& first) {
  if (!first.path || !second.path) return false;
  const auto* one = std::get_if<geom::CirclePath>(&*first.path);
  const auto* other = std::get_if<geom::CirclePath>(&*second.path);
  if (one != nullptr && other != nullptr) return one->axis.dot(other->axis) < 0.0;
  if (geom::is_closed(*first.path)) return false;
  const auto point = [](const Seam& seam, double distance_mm) {
    return geom::path_station(*seam.path, distance_mm).point;
  };
  const geom::Vec3 start = point(second, 0.0);
  const double length_mm = geom::path_length_mm(*first.path);
  return (start - point(first, length_mm)).norm() < (start - point(first, 0.0)).norm();
}

bool joins(const Joint& joint, std::string_view member) {
  return joint.member_1 == member || joint.member_2 == member;
}

bool has_two_sides(const Joint& joint) {
  return is_double(joint.preparation) || joint.root == RootDecision::gouge;
}

double first_share_of(const Joint& joint) {
  SEAMTURN_REQUIRE(has_two_sides(joint), joint.id);
  return joint.first_share.value_or(is_double(joint.preparation) ? usual_first_share : 1.0);
}

process::WeldFamily position_family(const Joint& joint) {
  const bool fillet = std::holds_alternative<Fillet>(joint.preparation);
  return joint.type == JointType::butt && !fillet ? process::WeldFamily::groove
                                                  : process::WeldFamily::fillet;
}

SectionFrame section_frame(const Joint& joint,
                           const Seam& seam,
                           double distance_mm,
                           geom::AtCorner corner) {
  SEAMTURN_REQUIRE(seam.path.has_value(), seam.id);
  const geom::Station station = geom::path_station(*seam.path, distance_mm, corner);
  const auto carried = [&](const geom::Vec3& at_start) {
    return geom::unit(geom::carried_direction(*seam.path, distance_mm, at_start, corner));
  };
  SectionFrame frame;
  frame.origin = station.point;
  frame.tangent = station.tangent;
  frame.face = carried(seam.face);
  frame.y = frame.face;
  frame.x = (seam.second_on_left ? 1.0 : -1.0) * frame.face.cross(frame.tangent);
  const geom::Vec3 wall_1 = carried(seam.wall_1);
  const geom::Vec3 wall_2 = carried(seam.wall_2);
  const bool flush = joint.type == JointType::butt || wall_1.cross(wall_2).norm() < parallel_sine;
  if (flush) return frame;
  if (std::holds_alternative<Fillet>(joint.preparation)) {
    const geom::Vec3 first_leg = geom::unit(across(wall_2, wall_1));
    frame.x = geom::unit(across(first_leg, frame.y));
  } else {
    frame.y = wall_2;
    frame.x = geom::unit(across(wall_1, wall_2));
  }
  return frame;
}

}  // namespace seamturn::joint
