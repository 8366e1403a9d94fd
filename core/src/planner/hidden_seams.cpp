// SPDX-License-Identifier: MIT
// Seams a torch finds no way to: straight ways out of the joint, wider the farther from the weld.
#include <algorithm>
#include <cmath>
#include <map>

#include "detail_obstacles.hpp"

namespace seamturn::planner::detail {

namespace {

using geom::Vec3;

constexpr int stations = 8;

/// Directions about the weld's face, the face itself first, up to 60 degrees from it.
std::vector<Vec3> ways_out(const Vec3& face, const Vec3& tangent) {
  std::vector<Vec3> ways = {face};
  const Vec3 across = face.cross(tangent);
  for (const double lean_deg : {20.0, 40.0, 60.0}) {
    const double lean = base::Angle::deg(lean_deg).rad();
    for (int k = 0; k < 12; ++k) {
      const double round = base::Angle::deg(30.0 * k).rad();
      ways.push_back(std::cos(lean) * face +
                     std::sin(lean) * (std::cos(round) * across + std::sin(round) * tangent));
    }
  }
  return ways;
}

/// What closes a station off: of what the stage fits the member that stops most ways, else of all
/// that is there. Empty when some way is free.
std::string closed_by(const Obstacles& obstacles,
                      const StageWork& stage,
                      const joint::Joint& joint,
                      const Vec3& start,
                      const std::vector<Vec3>& ways) {
  std::map<std::string_view, int> stops;
  for (const Vec3& way : ways) {
    const std::string_view met = obstacles.met_on(start, way);
    if (met.empty()) return {};
    ++stops[met];
  }
  const std::vector<std::string> fitted =
      stage.stage == nullptr ? std::vector<std::string>() : joint::fitted_members(*stage.stage);
  std::string_view most;
  std::pair<int, int> most_weight;  // fitted now, ways stopped
  for (const auto& [name, count] : stops) {
    if (name == joint.member_1 || name == joint.member_2) continue;
    const bool is_new = std::find(fitted.begin(), fitted.end(), name) != fitted.end();
    const std::pair weight(is_new ? 1 : 0, count);
    if (weight <= most_weight) continue;
    most = name;
    most_weight = weight;
  }
  return most.empty() ? std::string(stops.begin()->first) : std::string(most);
}

}  // namespace

std::vector<HiddenSeam> find_hidden_seams(const Inputs& inputs, const StageWork& stage) {
  std::vector<HiddenSeam> hidden;
  const Obstacles obstacles(stage, inputs.cell);
  for (const joint::Joint& joint : inputs.weldment.joints) {
    if (joint.reach_proved || !stage.has(joint.member_1) || !stage.has(joint.member_2)) continue;
    for (const joint::Seam& seam : joint.seams) {
      if (!seam.path) continue;
      const double length_mm = geom::path_length_mm(*seam.path);
      for (int i = 0; i < stations; ++i) {
        const double at_mm = length_mm * (i + 0.5) / stations;
        const Vec3 face = geom::carried_direction(*seam.path, at_mm, seam.face);
        const geom::Station here = geom::path_station(*seam.path, at_mm);
        const std::string by =
            closed_by(obstacles, stage, joint, here.point, ways_out(face, here.tangent));
        if (by.empty()) continue;
        hidden.push_back({&joint, &seam, by});
        break;
      }
    }
  }
  return hidden;
}

}  // namespace seamturn::planner::detail
