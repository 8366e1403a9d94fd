// SPDX-License-Identifier: MIT
#include "pass_drawing/plates.hpp"

#include <cmath>

namespace seamturn::pass_drawing {

namespace {

constexpr double far_mm = 3000.0;  // beyond every picture
// Of a backing the plan knows the kind only.
constexpr double backing_height_mm = 5.0;
constexpr double backing_beyond_gap_mm = 9.0;

Polygon block(Point low, Point high) {
  return {low, {high.x, low.y}, high, {low.x, high.y}};
}

std::vector<Plate> fillet_plates(const Subject& subject) {
  const double half = fill_map(subject).half_angle_rad();
  const Point along_1{std::sin(half), std::cos(half)};
  const Point along_2{-std::sin(half), std::cos(half)};
  const Point out_1{-std::cos(half), std::sin(half)};
  const Point out_2{std::cos(half), std::sin(half)};
  const double sine = std::sin(2.0 * half);
  const double t_1 = subject.thickness_1_mm;
  const double t_2 = subject.thickness_2_mm;
  const double start = subject.type == "corner" ? -t_2 / sine : -far_mm;
  const Polygon first = {start * along_1,
                         start * along_1 - t_1 * out_1,
                         far_mm * along_1 - t_1 * out_1,
                         far_mm * along_1};
  const Point foot = (subject.gap_mm / sine) * along_2;
  Polygon second = {
      foot, far_mm * along_2, far_mm * along_2 - t_2 * out_2, foot - (t_2 / sine) * along_1};
  if (subject.type == "lap") {
    const Point top = foot + (t_2 / sine) * along_2;
    second = {foot, top, top - far_mm * along_1, foot - far_mm * along_1};
  }
  return {{Part::member_1, first}, {Part::member_2, second}};
}

/// The weld fills the half right of the hole's middle line.
std::vector<Plate> plug_plates(const Subject& subject) {
  const Box hole = box_of(fill_map(subject).outline());
  const double other_wall = hole.low.x - hole.width();
  const double top = subject.thickness_1_mm;
  return {{Part::member_2, block({-far_mm, -subject.thickness_2_mm}, {far_mm, 0.0})},
          {Part::member_1, block({hole.high.x, 0.0}, {far_mm, top})},
          {Part::member_1, block({-far_mm, 0.0}, {other_wall, top})}};
}

Plate backing(const Subject& subject) {
  const RootEdges root = root_edges(subject);
  const double top = subject.surface_mm - size(subject, "thickness_mm");
  const double left = subject.is_corner ? root.first_mm : root.first_mm - backing_beyond_gap_mm;
  return {Part::backing,
          block({left, top - backing_height_mm}, {root.second_mm + backing_beyond_gap_mm, top})};
}

std::vector<Plate> groove_plates(const Subject& subject) {
  const RootEdges root = root_edges(subject);
  const double surface = subject.surface_mm;
  const double bottom_2 = surface - subject.thickness_2_mm;
  const Polygon second = block({root.second_mm, bottom_2}, {far_mm, surface});
  Polygon first = block({-far_mm, surface - subject.thickness_1_mm}, {root.first_mm, surface});
  if (subject.is_corner) {
    const double end = subject.type == "corner" ? bottom_2 : -far_mm;
    first = block({-subject.thickness_1_mm, end}, {root.first_mm, far_mm});
  } else if (subject.type == "corner") {
    first = block({root.first_mm - subject.thickness_1_mm, -far_mm}, {root.first_mm, surface});
  }
  std::vector<Plate> plates = {{Part::member_1, first}, {Part::member_2, second}};
  const std::string decision = plan_reader::text(subject.preparation, "root");
  if (decision == "steel-backing" || decision == "ceramic-backing") {
    plates.push_back(backing(subject));
  }
  return plates;
}

}  // namespace

RootEdges root_edges(const Subject& subject) {
  const bool one_edge =
      subject.kind.find("bevel") != std::string::npos ||
      (subject.kind.size() > 2 && subject.kind.rfind("-j") == subject.kind.size() - 2);
  if (one_edge || subject.is_corner) return {0.0, subject.gap_mm};
  return {-0.5 * subject.gap_mm, 0.5 * subject.gap_mm};
}

Polygon open_cut(const Subject& subject) {
  if (subject.side != 1 || subject.kind.rfind("double", 0) != 0) return {};
  const bool is_gouged = size(subject, "gouge_depth_mm") > 0.0;
  if (!is_gouged) return other_side(subject);
  const bool is_v = subject.kind == "double-v";
  if (!is_v && subject.kind != "double-bevel") return {};
  const double bottom = subject.surface_mm - size(subject, "thickness_mm");
  // Side 1 fills its own cut and the root face; what is left is the other cut.
  const RootEdges root = root_edges(subject);
  const double lean_deg =
      is_v ? 0.5 * size(subject, "included_angle_2_deg") : size(subject, "bevel_angle_2_deg");
  const double out = -bottom * std::tan(lean_deg / degrees_per_radian);
  return {{root.first_mm, 0.0},
          {is_v ? root.first_mm - out : root.first_mm, bottom},
          {root.second_mm + out, bottom},
          {root.second_mm, 0.0}};
}

std::vector<Plate> plates_of(const Subject& subject) {
  if (subject.is_fillet) return fillet_plates(subject);
  if (subject.is_plug) return plug_plates(subject);
  return groove_plates(subject);
}

}  // namespace seamturn::pass_drawing
