// SPDX-License-Identifier: MIT
// Seams a torch finds no way to: straight ways out of the joint, wider the farther from the weld.
#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "detail_stages.hpp"
#include "seamturn/joint/bounds.hpp"
#include "seamturn/joint/inside.hpp"

namespace seamturn::planner::detail {

namespace {

using geom::Vec3;

/// Half the width of what must pass, from so far from the weld: nozzle, torch neck, robot's wrist
/// and arm. Common practice of a 22 deg torch; no envelope of a real one.
struct Girth {
  double from_mm;
  double radius_mm;
};
constexpr std::array<Girth, 4> girths = {
    {{30.0, 4.0}, {80.0, 15.0}, {160.0, 35.0}, {420.0, 110.0}}};
constexpr double step_mm = 15.0;
constexpr int stations = 8;

double radius_at_mm(double distance_mm) {
  double radius_mm = 0.0;
  for (const Girth& girth : girths) {
    if (distance_mm >= girth.from_mm) radius_mm = girth.radius_mm;
  }
  return radius_mm;
}

/// Members by the cells of a grid in which a ball grown by the widest girth touches them, so that a
/// point is held against its neighbours and not against the whole part.
class Neighbours {
 public:
  explicit Neighbours(const std::vector<joint::Ball>& balls) {
    if (balls.empty()) return;
    Vec3 high = balls.front().centre;
    low_ = high;
    for (const joint::Ball& ball : balls) {
      const Vec3 reach = Vec3::Constant(reach_mm(ball));
      low_ = low_.cwiseMin(ball.centre - reach);
      high = high.cwiseMax(ball.centre + reach);
    }
    // About eight cells a member: cells hold few, and the widest members do not fill too many.
    const double cells = 8.0 * static_cast<double>(balls.size());
    const Vec3 size = high - low_;
    cell_mm_ = std::max(std::cbrt(size.x() * size.y() * size.z() / cells), size.maxCoeff() / 256.0);
    for (int i = 0; i < 3; ++i) count_[i] = static_cast<int>(size[i] / cell_mm_) + 1;
    cells_.resize(static_cast<std::size_t>(count_[0]) * static_cast<std::size_t>(count_[1]) *
                  static_cast<std::size_t>(count_[2]));
    for (std::size_t i = 0; i < balls.size(); ++i) add(i, balls[i]);
  }

  /// In the order of the file.
  [[nodiscard]] const std::vector<std::size_t>& at(const Vec3& point) const {
    static const std::vector<std::size_t> none;
    return cells_.empty() ? none : cells_[index(along(point, 0), along(point, 1), along(point, 2))];
  }

 private:
  static double reach_mm(const joint::Ball& ball) {
    return ball.radius_mm + girths.back().radius_mm;
  }
  void add(std::size_t member, const joint::Ball& ball) {
    const Vec3 reach = Vec3::Constant(reach_mm(ball));
    const Vec3 from = ball.centre - reach;
    const Vec3 to = ball.centre + reach;
    for (int x = along(from, 0); x <= along(to, 0); ++x) {
      for (int y = along(from, 1); y <= along(to, 1); ++y) {
        for (int z = along(from, 2); z <= along(to, 2); ++z) {
          cells_[index(x, y, z)].push_back(member);
        }
      }
    }
  }
  /// Points beyond the grid belong to its outermost cells.
  [[nodiscard]] int along(const Vec3& point, int axis) const {
    const double cell = std::floor((point[axis] - low_[axis]) / cell_mm_);
    return static_cast<int>(std::clamp(cell, 0.0, static_cast<double>(count_[axis] - 1)));
  }
  [[nodiscard]] std::size_t index(int x, int y, int z) const {
    return (static_cast<std::size_t>(x) * static_cast<std::size_t>(count_[1]) +
            static_cast<std::size_t>(y)) *
               static_cast<std::size_t>(count_[2]) +
           static_cast<std::size_t>(z);
  }

  Vec3 low_ = Vec3::Zero();
  double cell_mm_ = 1.0;
  std::array<int, 3> count_{};
  std::vector<std::vector<std::size_t>> cells_;
};

std::vector<joint::Ball> balls_round(const StageWork& stage) {
  std::vector<joint::Ball> balls;
  for (const joint::Member* member : stage.present) balls.push_back(joint::ball_round(*member));
  return balls;
}

/// What stands in the way: members of the stage, and boxes bolted on the faceplate.
class Obstacles {
 public:
  Obstacles(const StageWork& stage, const std::optional<cell::Cell>& cell)
      : stage_(stage), balls_(balls_round(stage)), neighbours_(balls_) {
    if (cell && stage.setup != nullptr) {
      normal_D_ = cell::faceplate_normal_D(cell->positioner.kind);
    }
    for (const joint::Ball& ball : balls_) {
      for_all_ = std::max(for_all_, (ball.centre - stage.part_J.centre).norm() + ball.radius_mm);
    }
    if (stage.setup == nullptr) return;
    const Vec3 centre_D = stage.setup->X_DJ.point(stage.part_J.centre);
    for (const joint::SetupSolid& solid : stage.setup->solids) {
      if (!solid.size_mm) continue;
      for_all_ = std::max(for_all_, (solid.centre - centre_D).norm() + solid.size_mm->norm() / 2.0);
    }
  }

  /// Farther than this from the part's centre of gravity there is nothing.
  [[nodiscard]] double far_mm() const { return for_all_; }

  /// Name of what a point, grown to a ball, touches; empty: free.
  [[nodiscard]] std::string_view at(const Vec3& point, double radius_mm) const {
    for (const std::size_t i : neighbours_.at(point)) {
      const double near_mm = balls_[i].radius_mm + radius_mm;
      if ((point - balls_[i].centre).squaredNorm() > near_mm * near_mm) continue;
      if (joint::is_inside(*stage_.present[i], point, radius_mm)) return stage_.present[i]->id;
    }
    if (stage_.setup == nullptr) return {};
    const Vec3 p_D = stage_.setup->X_DJ.point(point);
    if (normal_D_ && p_D.dot(*normal_D_) < radius_mm) return "faceplate";
    for (const joint::SetupSolid& solid : stage_.setup->solids) {
      if (!solid.size_mm) continue;
      const Vec3 off = (p_D - solid.centre).cwiseAbs() - *solid.size_mm / 2.0;
      if (off.maxCoeff() < radius_mm) return solid.kind;
    }
    return {};
  }

 private:
  const StageWork& stage_;
  std::optional<Vec3> normal_D_;    ///< of the faceplate: behind it there is the positioner
  std::vector<joint::Ball> balls_;  ///< to leave out most members quickly
  Neighbours neighbours_;
  double for_all_ = 0.0;
};

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

/// What stops a way; empty when it leads out.
std::string_view stopped_by(const Obstacles& obstacles,
                            const Vec3& centre,
                            const Vec3& start,
                            const Vec3& way) {
  for (double s = girths.front().from_mm;
       (start + s * way - centre).norm() < obstacles.far_mm() + girths.back().radius_mm;
       s += step_mm) {
    const std::string_view met = obstacles.at(start + s * way, radius_at_mm(s));
    if (!met.empty()) return met;
  }
  return {};
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
    const std::string_view met = stopped_by(obstacles, stage.part_J.centre, start, way);
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
