// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "pass_drawing/picture.hpp"

namespace seamturn::pass_drawing {

using plan_reader::put;
using plan_reader::rounded;
using plan_reader::text;

namespace {

constexpr double most_px_per_mm = 22.0;
constexpr double most_height_px = 400.0;
constexpr double least_height_px = 250.0;
constexpr double radians_per_degree = 0.017453292519943295;

}  // namespace

Picture::Picture(pugi::xml_node svg, const Subject& subject, double top)
    : svg_(svg),
      subject_(subject),
      map_(fill_map(subject)),
      other_(other_side(subject)),
      beads_(bead_shapes(map_, subject.passes)),
      up_(find_up(subject, subject.seam)),
      view_(upright(subject, up_), 1.0),
      labels_(panel_) {
  fit(top);
}

double Picture::draw() {
  put_plates();
  put_other_side();
  put_weld();
  put_torches();
  put_numbers();
  put_gravity();
  put_scale();
  reserve_weld();
  put_dimensions();
  put_layer_names();
  put_plate_names();
  svg::put_box(svg_, panel_, {"none", "#888", 0.6, nullptr});
  return panel_.high.y;
}

/// Edges of the plates are shown when they are near enough not to make the weld small.
void Picture::include_plate_edges(Box& box, double reach) const {
  const auto include = [&](Point point) { box.include(view_.turned(point)); };
  const double t_1 = subject_.thickness_1_mm;
  const double t_2 = subject_.thickness_2_mm;
  if (subject_.is_fillet) {
    const double half = map_.half_angle_rad();
    if (t_1 < 1.3 * reach) include({t_1 * std::cos(half), -t_1 * std::sin(half)});
    if (t_2 < 1.3 * reach) include({-t_2 * std::sin(half), -t_2 * std::cos(half)});
    return;
  }
  const RootEdges root = root_edges(subject_);
  const double t = subject_.is_plug ? subject_.thickness_2_mm : size(subject_, "thickness_mm");
  const double bottom = subject_.is_plug ? -t : subject_.surface_mm - t;
  if (t < 2.5 * reach) include({root.second_mm, bottom});
  if (subject_.is_corner && t_1 < 1.3 * reach) include({-t_1, 0.0});
}

Box Picture::window() const {
  Polygon corners;
  for (const Polygon& polygon : {map_.outline(), other_}) {
    for (const Point corner : polygon) corners.push_back(view_.turned(corner));
  }
  Box box = box_of(corners);
  const double reach = std::max(box.width(), box.height());
  include_plate_edges(box, reach);
  const double margin = 2.0 + 0.16 * std::max(box.width(), box.height());
  box.low = box.low - Point{margin, margin};
  box.high = box.high + Point{margin, margin};
  return box;
}

void Picture::fit(double top) {
  const Box box = window();
  const double wide = page_width - 2.0 * page_edge;
  // Room for gravity and scale at the left edge.
  constexpr double side_px = 70.0;
  const double scale = std::min(
      {(wide - 2.0 * side_px) / box.width(), most_height_px / box.height(), most_px_per_mm});
  const double high = std::max(least_height_px, scale * box.height());
  panel_ = {{page_edge, top}, {page_edge + wide, top + high}};
  labels_ = Labels(panel_);
  view_ = View(upright(subject_, up_), scale);
  view_.put(0.5 * (box.low + box.high), 0.5 * (panel_.low + panel_.high));
}

void Picture::put_plates() {
  pugi::xml_node group = svg::put_group(svg_, "plates");
  for (const Plate& plate : plates_of(subject_)) {
    svg::put_outline(group, {cut_to(panel_, view_.page(plate.shape))}, style_of(plate.part));
  }
  if (!subject_.is_plug) return;
  const Box hole = box_of(map_.outline());
  svg::put_line(group,
                view_.page({hole.low.x, hole.low.y - 3.0}),
                view_.page({hole.low.x, hole.high.y + 3.0}),
                {"none", "#000", 0.8, "10 3 2 3"});
}

/// Open while side 1 is welded; welded, and gouged from behind, while side 2 is.
void Picture::put_other_side() {
  if (other_.empty()) return;
  pugi::xml_node group = svg::put_group(svg_, "other-side");
  if (subject_.side == 2) {
    svg::put_outline(group, {view_.page(other_)}, {"url(#welded)", "#000", 0.9, "2 3"});
  } else {
    svg::put_outline(group, {view_.page(open_cut(subject_))}, {"#fff", "#000", 1.0, nullptr});
  }
}

void Picture::put_weld() {
  pugi::xml_node clip = svg_.append_child("clipPath");
  put(clip, "id", "weld");
  svg::put_outline(clip, {view_.page(map_.outline())}, {"#000", nullptr});
  pugi::xml_node group = svg::put_group(svg_, "beads");
  svg::put_outline(group, {view_.page(map_.outline())}, {"#fff", nullptr});
  pugi::xml_node clipped = group.append_child("g");
  put(clipped, "clip-path", "url(#weld)");
  for (const BeadShape& bead : beads_) {
    std::vector<Polygon> parts;
    for (const Polygon& part : bead.parts) parts.push_back(view_.page(part));
    pugi::xml_node path = svg::put_outline(clipped, parts, style_of(bead.role));
    put(path, "class", "bead-" + std::to_string(bead.number));
  }
  svg::put_outline(group, {view_.page(map_.outline())}, {"none", "#000", 2.2, nullptr});
  if (subject_.side == 1 && !other_.empty()) {
    svg::put_outline(group, {view_.page(other_)}, {"none", "#000", 0.9, "2 3"});
  }
}

Point Picture::tail_of(const PassData& pass, double long_px) const {
  const double lean = pass.work_angle_deg * radians_per_degree;
  return view_.page(pass.aim) + long_px * view_.direction({std::sin(lean), std::cos(lean)});
}

void Picture::put_torches() {
  constexpr double long_px = 34.0;
  pugi::xml_node group = svg::put_group(svg_, "torches");
  for (const PassData& pass : subject_.passes) {
    const Point aim = view_.page(pass.aim);
    const Point tail = tail_of(pass, long_px);
    svg::put_line(group, tail, aim, {"none", "#fff", 3.6, nullptr});
    svg::put_arrow(group, tail, aim, 1.3);
  }
}

double Picture::number_radius() const {
  double least = 1e9;
  for (const PassData& pass : subject_.passes) least = std::min(least, pass.area_mm2);
  return std::clamp(0.3 * std::sqrt(least) * view_.px_per_mm(), 5.5, 9.5);
}

void Picture::put_numbers() {
  pugi::xml_node group = svg::put_group(svg_, "numbers");
  const double radius = number_radius();
  for (const BeadShape& bead : beads_) {
    const std::string words = std::to_string(bead.number);
    const double letters = (words.size() > 1 ? 1.15 : 1.35) * radius;
    const Point at = view_.page(bead.middle);
    svg::put_circle(group, at, radius, {"#fff", "#000", 0.8, nullptr});
    pugi::xml_node node =
        svg::put_text(group, {at.x, at.y + 0.36 * letters}, words, {letters, "middle", true});
    put(node, "class", "pass-number");
  }
}

void Picture::put_gravity() {
  pugi::xml_node group = svg::put_group(svg_, "gravity");
  const Point middle{panel_.low.x + 36.0, panel_.low.y + 34.0};
  const Box room{panel_.low, panel_.low + Point{72.0, 88.0}};
  svg::put_box(group, room, {"#fff", "#888", 0.6, nullptr});
  svg::put_text(group, {middle.x, room.high.y - 6.0}, subject_.position, {14.0, "middle", true});
  if (up_.is_steep) {
    svg::put_circle(group, middle, 9.0, {"#fff", "#000", 1.6, nullptr});
    svg::put_line(group, middle - Point{6.4, 6.4}, middle + Point{6.4, 6.4}, {"none", "#000", 1.6});
    svg::put_line(
        group, middle - Point{6.4, -6.4}, middle + Point{6.4, -6.4}, {"none", "#000", 1.6});
    svg::put_text(group, {middle.x, middle.y + 24.0}, "gravity along", {9.0, "middle"});
    svg::put_text(group, {middle.x, middle.y + 34.0}, "the seam", {9.0, "middle"});
  } else {
    const Point down = -1.0 * view_.direction(up_.up);
    svg::put_arrow(group, middle - 22.0 * down, middle + 22.0 * down, 2.0);
    svg::put_text(group, {middle.x, middle.y + 34.0}, "gravity", {10.0, "middle"});
  }
  labels_.take(room);
}

void Picture::put_scale() {
  pugi::xml_node group = svg::put_group(svg_, "scale");
  double bar_mm = 1.0;
  for (const double candidate : {2.0, 5.0, 10.0, 20.0, 50.0}) {
    if (candidate * view_.px_per_mm() <= 60.0) bar_mm = candidate;
  }
  const double wide = bar_mm * view_.px_per_mm();
  const Box room{{panel_.low.x, panel_.high.y - 30.0}, {panel_.low.x + 72.0, panel_.high.y}};
  svg::put_box(group, room, {"#fff", "#888", 0.6, nullptr});
  const Point from{panel_.low.x + 0.5 * (72.0 - wide), panel_.high.y - 8.0};
  const Point to = from + Point{wide, 0.0};
  svg::put_line(group, from, to, {"none", "#000", 2.0, nullptr});
  for (const Point end : {from, to}) {
    svg::put_line(group, end - Point{0.0, 4.0}, end + Point{0.0, 4.0}, {"none", "#000", 1.2});
  }
  svg::put_text(group,
                {panel_.low.x + 36.0, panel_.high.y - 16.0},
                rounded(bar_mm, 0) + " mm",
                {10.0, "middle"});
  labels_.take(room);
}

double put_picture(pugi::xml_node svg, const Subject& subject, double top) {
  return Picture(svg, subject, top).draw();
}

}  // namespace seamturn::pass_drawing
