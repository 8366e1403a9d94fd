// SPDX-License-Identifier: MIT
#include "stance_drawing/solid.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace seamturn::stance_drawing {

namespace {

constexpr int facets = 120;  // of a drawn circle

Edge circle(double radius_mm, double z_mm) {
  Line line;
  line.reserve(facets + 1);
  for (int i = 0; i <= facets; ++i) {
    const double angle = 2.0 * std::numbers::pi * (i % facets) / facets;
    line.emplace_back(radius_mm * std::cos(angle), radius_mm * std::sin(angle), z_mm);
  }
  return {line, true};
}

Vec3 raised(const Eigen::Vector2d& corner, double z_mm) {
  return Vec3(corner.x(), corner.y(), z_mm);
}

std::vector<Edge> edges_of(const Block& block, const Vec3&) {
  std::vector<Edge> found;
  for (std::size_t i = 0; i < block.outline.size(); ++i) {
    const Eigen::Vector2d& here = block.outline[i];
    const Eigen::Vector2d& next = block.outline[(i + 1) % block.outline.size()];
    found.push_back({{raised(here, 0.0), raised(next, 0.0)}});
    found.push_back({{raised(here, block.length_mm), raised(next, block.length_mm)}});
    found.push_back({{raised(here, 0.0), raised(here, block.length_mm)}});
  }
  return found;
}

/// Where the surface of a step turns away from the viewer: two found, or none when all or nothing
/// of it is seen.
void add_outline(std::vector<Edge>& found, const Step& step, const Vec3& towards) {
  const double rise = (step.to_radius_mm - step.from_radius_mm) / (step.to_mm - step.from_mm);
  const double across = std::hypot(towards.x(), towards.y());
  if (across <= std::abs(rise * towards.z()) || across < 1e-9) return;
  const double middle = std::atan2(towards.y(), towards.x());
  const double half = std::acos(rise * towards.z() / across);
  for (const double angle : {middle - half, middle + half}) {
    const Vec3 out(std::cos(angle), std::sin(angle), 0.0);
    found.push_back({{step.from_radius_mm * out + step.from_mm * Vec3::UnitZ(),
                      step.to_radius_mm * out + step.to_mm * Vec3::UnitZ()}});
  }
}

std::vector<Edge> edges_of(const Turned& turned, const Vec3& towards) {
  std::vector<Edge> found;
  double radius_before = -1.0;
  for (const Step& step : turned.steps) {
    if (step.from_radius_mm != radius_before) {
      found.push_back(circle(step.from_radius_mm, step.from_mm));
    }
    found.push_back(circle(step.to_radius_mm, step.to_mm));
    add_outline(found, step, towards);
    radius_before = step.to_radius_mm;
  }
  if (turned.bore_radius_mm <= 0.0) return found;
  const double end = turned.steps.back().to_mm;
  const double bore = turned.bore_radius_mm;
  found.push_back(circle(bore, 0.0));
  found.push_back(circle(bore, end));
  add_outline(found, {0.0, end, bore, bore}, towards);
  return found;
}

/// A stretch of a look: start + t towards, t from `from` to `to`.
struct Stretch {
  double from = 0.0;
  double to = 0.0;
  [[nodiscard]] bool is_empty() const { return to - from < 1e-9; }
};

/// What of a stretch lies where slope t <= most.
Stretch cut(Stretch stretch, double slope, double most) {
  if (std::abs(slope) < 1e-12) return most < 0.0 ? Stretch{} : stretch;
  const double at = most / slope;
  if (slope > 0.0) {
    stretch.to = std::min(stretch.to, at);
  } else {
    stretch.from = std::max(stretch.from, at);
  }
  return stretch;
}

// So much is taken off every face of a screen: who looks along a face, or stands on it, sees.
constexpr double skin_mm = 0.02;
constexpr double far_mm = 1e7;

bool hides_in(const Block& block, const Vec3& p, const Vec3& d) {
  Stretch look{0.0, far_mm};
  look = cut(look, d.z(), block.length_mm - skin_mm - p.z());
  look = cut(look, -d.z(), p.z() - skin_mm);
  for (std::size_t i = 0; i < block.outline.size() && !look.is_empty(); ++i) {
    const Eigen::Vector2d& here = block.outline[i];
    const Eigen::Vector2d along = block.outline[(i + 1) % block.outline.size()] - here;
    const Eigen::Vector2d out = Eigen::Vector2d(along.y(), -along.x()).normalized();
    look = cut(look, out.dot(d.head<2>()), out.dot(here - p.head<2>()) - skin_mm);
  }
  return !look.is_empty();
}

/// Where a t^2 + 2 b t + c = 0, the smaller first; false when nowhere.
bool roots(double a, double b, double c, double& first, double& second) {
  const double under = b * b - a * c;
  if (std::abs(a) < 1e-14 || under <= 0.0) return false;
  const double root = std::sqrt(under);
  first = (-b - root) / a;
  second = (-b + root) / a;
  if (first > second) std::swap(first, second);
  return true;
}

/// The stretch of a look inside a round hole about z.
Stretch inside_bore(double radius_mm, const Vec3& p, const Vec3& d) {
  const double a = d.head<2>().squaredNorm();
  const double c = p.head<2>().squaredNorm() - radius_mm * radius_mm;
  if (a < 1e-14) return c < 0.0 ? Stretch{-far_mm, far_mm} : Stretch{};
  Stretch inside;
  return roots(a, p.head<2>().dot(d.head<2>()), c, inside.from, inside.to) ? inside : Stretch{};
}

/// The stretch of a look inside a step without its bore: a step is convex, so there is one at most.
Stretch inside_step(const Step& step, Stretch slab, const Vec3& p, const Vec3& d) {
  const double rise = (step.to_radius_mm - step.from_radius_mm) / (step.to_mm - step.from_mm);
  const double radius = step.from_radius_mm - skin_mm + rise * (p.z() - step.from_mm);  // at t 0
  const double a = d.head<2>().squaredNorm() - rise * rise * d.z() * d.z();
  const double b = p.head<2>().dot(d.head<2>()) - radius * rise * d.z();
  const double c = p.head<2>().squaredNorm() - radius * radius;
  double first = 0.0;
  double second = 0.0;
  if (std::abs(a) < 1e-14) return cut(slab, 2.0 * b, -c);
  if (!roots(a, b, c, first, second)) return a > 0.0 ? Stretch{} : slab;
  if (a > 0.0) return {std::max(slab.from, first), std::min(slab.to, second)};
  // Steeper than the cone: inside before the first or behind the second, in one of its two halves.
  const Stretch before{slab.from, std::min(slab.to, first)};
  const Stretch behind{std::max(slab.from, second), slab.to};
  return before.is_empty() ? behind : before;
}

bool hides_in(const Turned& turned, const Vec3& p, const Vec3& d) {
  const double bore = turned.bore_radius_mm;
  const Stretch hole = bore > 0.0 ? inside_bore(bore + skin_mm, p, d) : Stretch{};
  for (const Step& step : turned.steps) {
    const bool is_first = &step == &turned.steps.front();
    const bool is_last = &step == &turned.steps.back();
    Stretch look{0.0, far_mm};
    look = cut(look, d.z(), step.to_mm - (is_last ? skin_mm : 0.0) - p.z());
    look = cut(look, -d.z(), p.z() - step.from_mm - (is_first ? skin_mm : 0.0));
    if (look.is_empty()) continue;
    look = inside_step(step, look, p, d);
    if (look.is_empty()) continue;
    if (hole.is_empty()) return true;
    const Stretch before{look.from, std::min(look.to, hole.from)};
    const Stretch behind{std::max(look.from, hole.to), look.to};
    if (!before.is_empty() || !behind.is_empty()) return true;
  }
  return false;
}

struct LocalBox {
  Vec3 low;
  Vec3 high;
};

LocalBox box_of(const Block& block) {
  LocalBox box{Vec3(far_mm, far_mm, 0.0), Vec3(-far_mm, -far_mm, block.length_mm)};
  for (const Eigen::Vector2d& corner : block.outline) {
    box.low.head<2>() = box.low.head<2>().cwiseMin(corner);
    box.high.head<2>() = box.high.head<2>().cwiseMax(corner);
  }
  return box;
}

LocalBox box_of(const Turned& turned) {
  double radius = 0.0;
  for (const Step& step : turned.steps) {
    radius = std::max({radius, step.from_radius_mm, step.to_radius_mm});
  }
  return {Vec3(-radius, -radius, 0.0), Vec3(radius, radius, turned.steps.back().to_mm)};
}

}  // namespace

Line corners_of_box(const Solid& solid) {
  const LocalBox box = std::visit([](const auto& shape) { return box_of(shape); }, solid.shape);
  Line corners;
  for (const double x : {box.low.x(), box.high.x()}) {
    for (const double y : {box.low.y(), box.high.y()}) {
      for (const double z : {box.low.z(), box.high.z()}) {
        corners.push_back(solid.X_WS * Vec3(x, y, z));
      }
    }
  }
  return corners;
}

std::vector<Edge> edges(const Solid& solid, const Vec3& towards_viewer) {
  const Vec3 towards_S = solid.X_WS.linear().transpose() * towards_viewer;
  std::vector<Edge> found =
      std::visit([&](const auto& shape) { return edges_of(shape, towards_S); }, solid.shape);
  for (Edge& edge : found) {
    for (Vec3& point : edge.line) point = solid.X_WS * point;
  }
  return found;
}

Screen::Screen(const Solid& solid, const Vec3& towards_viewer)
    : solid_(solid), X_SW_(solid.X_WS.inverse()), towards_S_(X_SW_.linear() * towards_viewer) {}

bool Screen::hides(const Vec3& p_W) const {
  const Vec3 p_S = X_SW_ * p_W;
  return std::visit([&](const auto& shape) { return hides_in(shape, p_S, towards_S_); },
                    solid_.shape);
}

}  // namespace seamturn::stance_drawing
