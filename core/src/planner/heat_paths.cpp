// SPDX-License-Identifier: MIT
#include <algorithm>

#include "detail_heat.hpp"
#include "seamturn/joint/extent.hpp"

namespace seamturn::planner::detail {

namespace {

constexpr double no_path_below_mm = 0.5;  // a rim of metal beside the seam leads nothing away

void add_placed(const joint::Member& member,
                const geom::Station& at,
                std::vector<heat::HeatPath>& paths) {
  const geom::Vec3 across = joint::across_wall(member, at.point, at.tangent);
  for (const geom::Vec3& way : {across, geom::Vec3(-across)}) {
    if (way.norm() < 0.5) continue;
    const double reach_mm =
        std::min(joint::extent_mm(member, at.point, way), heat::averaging_mm);
    const double average_mm =
        joint::wall_thickness_mm(member.shape) * reach_mm / heat::averaging_mm;
    if (average_mm > no_path_below_mm) paths.push_back(heat::HeatPath{member.id, average_mm});
  }
}

std::vector<heat::HeatPath> without_place(const JointWork& work) {
  const double first_mm = joint::wall_thickness_mm(work.member_1->shape);
  const double second_mm = joint::wall_thickness_mm(work.member_2->shape);
  std::vector<heat::HeatPath> paths = {{work.member_1->id, first_mm},
                                       {work.member_2->id, second_mm}};
  const bool passes_through =
      work.joint->type == joint::JointType::tee || work.joint->type == joint::JointType::lap;
  if (passes_through) paths.insert(paths.begin(), heat::HeatPath{work.member_1->id, first_mm});
  return paths;
}

}  // namespace

std::vector<heat::HeatPath> heat_paths(const JointWork& work) {
  const joint::Seam& seam = work.joint->seams.front();
  if (!seam.path) return without_place(work);
  const geom::Station middle =
      geom::path_station(*seam.path, geom::path_length_mm(*seam.path) / 2.0);
  std::vector<heat::HeatPath> paths;
  add_placed(*work.member_1, middle, paths);
  add_placed(*work.member_2, middle, paths);
  return paths.empty() ? without_place(work) : paths;
}

}  // namespace seamturn::planner::detail
