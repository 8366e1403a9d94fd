// SPDX-License-Identifier: MIT
#include <algorithm>

#include "detail_heat.hpp"
#include "seamturn/joint/extent.hpp"

namespace seamturn::planner::detail {

namespace {

constexpr double no_path_below_mm = 0.5;  // a rim of metal beside the seam leads nothing away
constexpr double station_shares[] = {0.5, 0.1, 0.2, 0.3, 0.4, 0.6, 0.7, 0.8, 0.9};  // middle first

/// A body without a wall that heat could run along.
bool is_solid(const joint::Shape& shape) {
  const auto* tube = std::get_if<joint::Tube>(&shape);
  const bool is_round = tube != nullptr && tube->wall_mm >= tube->outer_diameter_mm / 2.0;
  return is_round || std::holds_alternative<joint::Bar>(shape) ||
         std::holds_alternative<joint::Forging>(shape);
}

/// In how many ways a part leads heat away where only the kind of joint is known.
int ways_by_type(const JointWork& work, const joint::Member& member) {
  const bool has_through =
      work.joint->type == joint::JointType::tee || work.joint->type == joint::JointType::lap;
  return has_through && &member == work.member_1 ? 2 : 1;
}

void add_whole(const JointWork& work,
               const joint::Member& member,
               std::vector<heat::HeatPath>& paths) {
  for (int way = 0; way < ways_by_type(work, member); ++way) {
    paths.push_back(heat::HeatPath{member.id, joint::wall_thickness_mm(member.shape)});
  }
}

void add_placed(const JointWork& work,
                const joint::Member& member,
                const geom::Station& at,
                std::vector<heat::HeatPath>& paths) {
  const std::size_t before = paths.size();
  const geom::Vec3 across = joint::across_wall(member, at.point, at.tangent);
  const bool has_wall = !is_solid(member.shape) && across.norm() > 0.5;
  for (const geom::Vec3& way : {across, geom::Vec3(-across)}) {
    if (!has_wall) break;
    const double reach_mm = std::min(joint::extent_mm(member, at.point, way), heat::averaging_mm);
    const double average_mm =
        joint::wall_thickness_mm(member.shape) * reach_mm / heat::averaging_mm;
    if (average_mm > no_path_below_mm) paths.push_back(heat::HeatPath{member.id, average_mm});
  }
  if (paths.size() == before) add_whole(work, member, paths);
}

std::vector<heat::HeatPath> paths_at(const JointWork& work, const geom::Station& at) {
  std::vector<heat::HeatPath> paths;
  add_placed(work, *work.member_1, at, paths);
  add_placed(work, *work.member_2, at, paths);
  return paths;
}

double sum_mm(const std::vector<heat::HeatPath>& paths) {
  return paths.empty() ? 0.0 : heat::combined_thickness_mm(paths, false);
}

}  // namespace

std::vector<heat::HeatPath> heat_paths(const JointWork& work) {
  std::vector<heat::HeatPath> most;
  for (const joint::Seam& seam : work.joint->seams) {
    if (!seam.path) continue;
    const double length_mm = geom::path_length_mm(*seam.path);
    for (const double share : station_shares) {
      std::vector<heat::HeatPath> here =
          paths_at(work, geom::path_station(*seam.path, share * length_mm));
      if (sum_mm(here) > sum_mm(most) + 1e-9) most = std::move(here);
    }
  }
  if (most.empty()) {
    add_whole(work, *work.member_1, most);
    add_whole(work, *work.member_2, most);
  }
  return most;
}

}  // namespace seamturn::planner::detail
