// SPDX-License-Identifier: MIT
#include "detail_obstacles.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "seamturn/joint/inside.hpp"

namespace seamturn::planner::detail {

using geom::Vec3;

namespace {

/// Half the width of what must pass, from so far from the weld: nozzle, torch neck, robot's wrist
/// and arm. Common practice of a 22 deg torch; no envelope of a real one.
struct Girth {
  double from_mm;
  double radius_mm;
};
constexpr std::array<Girth, 4> girths = {
    {{30.0, 4.0}, {80.0, 15.0}, {160.0, 35.0}, {420.0, 110.0}}};
constexpr double step_mm = 15.0;

double radius_at_mm(double distance_mm) {
  double radius_mm = 0.0;
  for (const Girth& girth : girths) {
    if (distance_mm >= girth.from_mm) radius_mm = girth.radius_mm;
  }
  return radius_mm;
}

std::vector<joint::Ball> balls_round(const StageWork& stage) {
  std::vector<joint::Ball> balls;
  for (const joint::Member* member : stage.present) balls.push_back(joint::ball_round(*member));
  return balls;
}

}  // namespace

/// Members by the cells of a grid in which a ball grown by the widest girth touches them, so that a
/// point is held against its neighbours and not against the whole part.
class Obstacles::Neighbours {
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

Obstacles::Obstacles(const StageWork& stage, const std::optional<cell::Cell>& cell)
    : stage_(stage), balls_(balls_round(stage)), neighbours_(std::make_unique<Neighbours>(balls_)) {
  if (cell && stage.setup != nullptr) {
    normal_D_ = cell::faceplate_normal_D(cell->positioner.kind);
  }
  for (const joint::Ball& ball : balls_) {
    for_all_mm_ =
        std::max(for_all_mm_, (ball.centre - stage.part_J.centre).norm() + ball.radius_mm);
  }
  if (stage.setup == nullptr) return;
  const Vec3 centre_D = stage.setup->X_DJ.point(stage.part_J.centre);
  for (const joint::SetupSolid& solid : stage.setup->solids) {
    if (!solid.size_mm) continue;
    for_all_mm_ =
        std::max(for_all_mm_, (solid.centre - centre_D).norm() + solid.size_mm->norm() / 2.0);
  }
}

Obstacles::~Obstacles() = default;

std::string_view Obstacles::met_at(const Vec3& point, double radius_mm) const {
  for (const std::size_t i : neighbours_->at(point)) {
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

std::string_view Obstacles::met_on(const Vec3& start, const Vec3& way) const {
  const double far_mm = for_all_mm_ + girths.back().radius_mm;
  for (double s = girths.front().from_mm; (start + s * way - stage_.part_J.centre).norm() < far_mm;
       s += step_mm) {
    const std::string_view met = met_at(start + s * way, radius_at_mm(s));
    if (!met.empty()) return met;
  }
  return {};
}

}  // namespace seamturn::planner::detail
