// SPDX-License-Identifier: MIT
// Sizes and names in the picture.
#include <algorithm>
#include <cmath>

#include "pass_drawing/picture.hpp"

namespace seamturn::pass_drawing {

using plan_reader::rounded;
using plan_reader::text;

namespace {

const svg::Stroke thin{"none", "#000", 0.8, nullptr};

/// A little more than a box, so that its border lies inside.
Polygon corners_of(const Box& box) {
  return {box.low - Point{1.0, 1.0},
          {box.high.x + 1.0, box.low.y - 1.0},
          box.high + Point{1.0, 1.0},
          {box.low.x - 1.0, box.high.y + 1.0}};
}

}  // namespace

/// Words keep off the weld, its torches and the other side.
void Picture::reserve_weld() {
  labels_.take(view_.page(map_.outline()));
  if (!other_.empty()) labels_.take(view_.page(other_));
  for (const PassData& pass : subject_.passes) {
    labels_.take(box_of({view_.page(pass.aim), tail_of(pass, 36.0)}));
  }
}

void Picture::put_dimension(Point from, Point to, Point aside, const std::string& words) {
  constexpr double off_px = 15.0;
  const Point off = off_px * view_.direction(aside);
  const Point a = view_.page(from) + off;
  const Point b = view_.page(to) + off;
  const Box box = box_of({a, b});
  const Box room{box.low - Point{4.0, 4.0}, box.high + Point{4.0, 4.0}};
  if (!panel_.holds(room)) return;
  pugi::xml_node group = svg::put_group(svg_, "size");
  const auto put_end = [&](Point start, Point end) {
    svg::put_line(group, start + (2.0 / off_px) * off, end + (4.0 / off_px) * off, thin);
    svg::put_line(group, end + Point{-3.0, 3.0}, end + Point{3.0, -3.0}, {"none", "#000", 1.4});
  };
  put_end(view_.page(from), a);
  put_end(view_.page(to), b);
  svg::put_line(group, a, b, thin);
  const Point across{(b - a).y, (a - b).x};
  const Point half = (4.0 / std::max(1.0, length(across))) * across;
  labels_.take(Polygon{a + half, b + half, b - half, a - half});
  labels_.write(group, words, 11.0, corners_of(panel_), 0.5 * (a + b) + off);
}

void Picture::put_fillet_dimensions() {
  const double half = map_.half_angle_rad();
  const std::string tail = subject_.gap_mm > 0.0 ? ", gap counted" : "";
  put_dimension({0.0, 0.0},
                map_.toe_1(),
                {std::cos(half), -std::sin(half)},
                "z1 " + rounded(length(map_.toe_1()), 1) + tail);
  put_dimension({0.0, 0.0},
                map_.toe_2(),
                {-std::cos(half), -std::sin(half)},
                "z2 " + rounded(length(map_.toe_2()), 1) + tail);
}

/// As far from the weld as the picture goes, so that the plate's name fits between.
void Picture::put_thickness() {
  const double top = subject_.surface_mm;
  const double bottom = top - subject_.thickness_2_mm;
  Box welds = box_of(map_.outline());
  for (const Point corner : other_) welds.include(corner);
  constexpr double step_mm = 0.5;
  constexpr double edge_px = 34.0;
  const Box inner{panel_.low + Point{edge_px, 4.0}, panel_.high - Point{edge_px, 4.0}};
  double x = welds.high.x;
  for (double next = x; next < x + 1000.0; next += step_mm) {
    if (!inner.holds(box_of({view_.page({next, top}), view_.page({next, bottom})}))) break;
    x = next;
  }
  put_dimension({x, top}, {x, bottom}, {1.0, 0.0}, "t2 " + rounded(subject_.thickness_2_mm, 1));
}

void Picture::put_dimensions() {
  if (subject_.is_plug) return;
  if (subject_.is_fillet) {
    put_fillet_dimensions();
    return;
  }
  const RootEdges root = root_edges(subject_);
  const double bottom = subject_.surface_mm - size(subject_, "thickness_mm");
  if (subject_.gap_mm > 0.0 && !subject_.has_two_sides) {
    put_dimension({root.first_mm, bottom},
                  {root.second_mm, bottom},
                  {0.0, -1.0},
                  "b " + rounded(subject_.gap_mm, 1));
  }
  put_thickness();
}

/// The bead of a layer at the wall of smaller x.
const BeadShape* Picture::outer_bead(int layer) const {
  const BeadShape* outer = nullptr;
  for (const BeadShape& bead : beads_) {
    if (bead.layer != layer) continue;
    if (outer == nullptr || map_.share_of(bead.middle) < map_.share_of(outer->middle)) {
      outer = &bead;
    }
  }
  return outer;
}

/// The middle of a bead's side at that wall: corners at the wall lie where its share is 0.
Point Picture::wall_of(const BeadShape& bead) const {
  Point sum;
  double count = 0.0;
  for (const Point corner : bead.parts.front()) {
    if (map_.share_of(corner) > 1e-4) continue;
    sum = sum + corner;
    count += 1.0;
  }
  return view_.page(count > 0.0 ? (1.0 / count) * sum : bead.middle);
}

void Picture::put_layer_names() {
  pugi::xml_node group = svg::put_group(svg_, "layers");
  if (subject_.passes.size() < 2) return;
  int named = 0;
  for (const PassData& pass : subject_.passes) {
    const BeadShape* outer = pass.layer > named ? outer_bead(pass.layer) : nullptr;
    if (outer == nullptr) continue;
    named = pass.layer;
    const Point wall = wall_of(*outer);
    const Point wanted = wall + 44.0 * view_.direction({-1.0, 0.0});
    const auto at = labels_.write(
        group, "layer " + std::to_string(pass.layer), 10.0, corners_of(panel_), wanted);
    if (!at) continue;
    const Point end{std::clamp(wall.x, at->low.x, at->high.x),
                    std::clamp(wall.y, at->low.y, at->high.y)};
    svg::put_line(group, end, wall, thin);
  }
}

void Picture::put_plate_names() {
  pugi::xml_node group = svg::put_group(svg_, "plate-names");
  const Box weld = box_of(view_.page(map_.outline()));
  bool named[3] = {false, false, false};
  for (const Plate& plate : plates_of(subject_)) {
    const auto part = static_cast<std::size_t>(plate.part);
    const Polygon region = cut_to(panel_, view_.page(plate.shape));
    if (named[part] || region.size() < 3) continue;
    const std::string number = plate.part == Part::member_1 ? "1" : "2";
    const std::string thickness =
        rounded(number == "1" ? subject_.thickness_1_mm : subject_.thickness_2_mm, 1) + " mm";
    std::vector<std::string> tries = {
        number + ": " + text(subject_.joint, ("member_" + number).c_str()) + ", " + thickness,
        number + ": " + thickness,
        number};
    if (plate.part == Part::backing) tries = {"backing"};
    for (const std::string& words : tries) {
      if (named[part]) break;
      named[part] =
          labels_.write(group, words, 12.0, region, 0.5 * (weld.low + weld.high)).has_value();
    }
  }
}

}  // namespace seamturn::pass_drawing
