// SPDX-License-Identifier: MIT
// What stands in the cell, put on a panel.
#include <algorithm>

#include "stance_drawing/drawing.hpp"
#include "svg/svg.hpp"

namespace seamturn::stance_drawing {

using plan_reader::text;

namespace {

constexpr double look_every_px = 2.0;
constexpr double name_letter_px = 11.0;

/// Lines of one kind, cut into what is seen and what is hidden.
struct Cut {
  std::vector<svg::Polygon> seen;
  std::vector<svg::Polygon> hidden;

  void add(const Panel& panel, const std::vector<Piece>& pieces) {
    for (const Piece& piece : pieces) {
      (piece.is_seen ? seen : hidden).push_back(panel.page(piece.line));
    }
  }
};

void put_solids(pugi::xml_node svg, const Scene& scene, const Panel& panel, const Sight& sight) {
  Cut metal;
  Cut fixture;
  for (const Solid& solid : scene.solids) {
    Cut& cut = solid.is_fixture ? fixture : metal;
    for (const Edge& edge : edges(solid, panel.view.towards_viewer)) {
      cut.add(panel, sight.pieces(edge));
    }
  }
  pugi::xml_node group = svg::put_group(svg, "solids");
  svg::put_polylines(group, fixture.seen, svg::pen(fixture_colour, 0.8));
  svg::put_polylines(group, metal.seen, svg::pen(metal_colour, 0.9));
}

void put_axes(pugi::xml_node svg, const Scene& scene, const Panel& panel) {
  constexpr double name_px = 36.0;  // from the end of its line
  pugi::xml_node group = svg::put_group(svg, "axes");
  for (const Axis& axis : scene.axes) {
    const Line line = panel.in_field(axis.at, axis.along);
    if (line.empty()) {  // seen end on
      const svg::Point at = panel.page(axis.at);
      svg::put_circle(group, at, 4.0, svg::pen(axis_colour, 0.9));
      svg::put_circle(group, at, 1.0, {axis_colour, nullptr});
      continue;
    }
    const svg::Point from = panel.page(line.front());
    const svg::Point to = panel.page(line.back());
    svg::put_line(group, from, to, svg::pen(axis_colour, 0.7, "14,3,3,3"));
    const svg::Point high = from.y < to.y ? from : to;
    const svg::Point low = from.y < to.y ? to : from;
    const svg::Point along = (1.0 / svg::length(low - high)) * (low - high);
    const svg::Point name = high + name_px * along;
    const bool is_left = name.x < 0.5 * (panel.paper.low.x + panel.paper.high.x);
    const double aside = is_left ? 4.0 : -4.0;
    svg::put_text(
        group, {name.x + aside, name.y + 11.0}, axis.name, {9.5, is_left ? "start" : "end"})
        .append_attribute("fill")
        .set_value(axis_colour);
  }
}

void put_centre(pugi::xml_node svg, const Scene& scene, const Panel& panel) {
  constexpr double radius_px = 6.0;
  const svg::Point at = panel.page(scene.load_centre);
  const svg::Point across{radius_px, 0.0};
  const svg::Point down{0.0, radius_px};
  pugi::xml_node group = svg::put_group(svg, "centre-of-gravity");
  svg::put_circle(group, at, radius_px, {"#ffffff", metal_colour, 1.0, nullptr});
  // Two quarters filled: the usual mark.
  svg::put_outline(group,
                   {{at, at + across, at - 0.7 * (down - across), at - down},
                    {at, at - across, at + 0.7 * (down - across), at + down}},
                   {metal_colour, nullptr});
}

/// Where a seam is shown best: the middle of the longest piece that is seen, else of its path.
svg::Point anchor_of(const Weld& weld, const Cut& cut, const Panel& panel) {
  const svg::Polygon* best = nullptr;
  double longest = 0.0;
  for (const svg::Polygon& piece : cut.seen) {
    double run = 0.0;
    for (std::size_t i = 0; i + 1 < piece.size(); ++i) run += svg::length(piece[i + 1] - piece[i]);
    if (run <= longest) continue;
    longest = run;
    best = &piece;
  }
  if (best == nullptr) {
    const Line& path = weld.path.line;
    return panel.page(path.size() == 2 ? Vec3(0.5 * (path[0] + path[1])) : path[path.size() / 2]);
  }
  if (best->size() == 2) return 0.5 * (best->front() + best->back());
  return (*best)[best->size() / 2];
}

struct Name {
  std::string words;
  svg::Point anchor;
};

/// Names in columns at both edges, each with a line to its seam.
void put_names(pugi::xml_node svg, std::vector<Name> names, const Panel& panel) {
  constexpr double row_px = 15.0;
  constexpr double top_px = 40.0;
  pugi::xml_node group = svg::put_group(svg, "names");
  std::stable_sort(names.begin(), names.end(), [](const Name& a, const Name& b) {
    return a.anchor.y < b.anchor.y;
  });
  const double middle = 0.5 * (panel.paper.low.x + panel.paper.high.x);
  double free_left = panel.paper.low.y + top_px;
  double free_right = free_left;
  for (const Name& name : names) {
    const bool is_left = name.anchor.x < middle;
    double& free = is_left ? free_left : free_right;
    const double y = std::max(free, name.anchor.y);
    free = y + row_px;
    const double x = is_left ? panel.paper.low.x + 6.0 : panel.paper.high.x - 6.0;
    const double width = svg::text_width(name.words, name_letter_px, svg::figures_letter);
    const svg::Point end{is_left ? x + width + 3.0 : x - width - 3.0, y - 4.0};
    svg::put_line(group, end, name.anchor, svg::pen(weld_colour, 0.5));
    svg::put_text(group, {x, y}, name.words, {name_letter_px, is_left ? "start" : "end"});
  }
}

/// A seam seen end on is a dot.
void put_seam(pugi::xml_node group, const Weld& weld, const Cut& cut, const Panel& panel) {
  constexpr double seen_px = 3.0;
  const svg::Box box = svg::box_of(panel.page(weld.path.line));
  if (box.width() + box.height() < seen_px) {
    svg::put_circle(group, 0.5 * (box.low + box.high), seen_px, {weld_colour, nullptr});
    return;
  }
  svg::put_polylines(group, cut.hidden, svg::pen(weld_colour, 1.8, "4,2.5"));
  svg::put_polylines(group, cut.seen, svg::pen(weld_colour, seen_px));
}

void put_torch(pugi::xml_node group, const Torch& torch, const Panel& panel, double scale) {
  const double length_mm = 75.0 * scale / panel.px_per_mm;
  const double travel_mm = 32.0 * scale / panel.px_per_mm;
  const Vec3 tip = torch.tip;
  svg::put_arrow(
      group, panel.page(tip), panel.page(Vec3(tip + travel_mm * torch.travel)), 1.2, weld_colour);
  const bool has_body = torch.body.size() == 3;
  const Vec3 from = has_body ? torch.body[1] : Vec3(tip - length_mm * torch.pointing);
  svg::put_arrow(group, panel.page(from), panel.page(tip), 1.6, torch_colour);
  if (has_body) {
    svg::put_line(group, panel.page(from), panel.page(torch.body[2]), svg::pen(torch_colour, 3.5));
  }
}

void put_welds(
    pugi::xml_node svg, const Scene& scene, const Panel& panel, const Sight& sight, Names names) {
  std::vector<Name> to_name;
  pugi::xml_node seams = svg::put_group(svg, "seams");
  for (const Weld& weld : scene.welds) {
    Cut cut;
    cut.add(panel, sight.pieces(weld.path));
    pugi::xml_node seam = svg::put_group(seams, "seam");
    plan_reader::put(seam, "id", std::string("seam-") + text(weld.seam, "id"));
    put_seam(seam, weld, cut, panel);
    to_name.push_back({std::string(text(weld.seam, "id")) + "  " + text(weld.seam, "position"),
                       anchor_of(weld, cut, panel)});
  }
  pugi::xml_node torches = svg::put_group(svg, "torches");
  for (const Weld& weld : scene.welds) {
    if (weld.torch) put_torch(torches, *weld.torch, panel, names == Names::seams ? 1.0 : 0.6);
  }
  if (names == Names::seams) put_names(svg, to_name, panel);
}

}  // namespace

void put_floor(pugi::xml_node svg, const Panel& panel) {
  const Line line = panel.in_field(Vec3::Zero(), panel.view.right);
  if (line.empty()) return;
  const svg::Point from = panel.page(line.front());
  const svg::Point to = panel.page(line.back());
  pugi::xml_node group = svg::put_group(svg, "floor");
  svg::put_line(group, from, to, svg::pen("#555555", 1.4));
  std::vector<svg::Polygon> hatch;
  constexpr double every_px = 12.0;
  constexpr double deep_px = 6.0;
  for (double x = std::min(from.x, to.x) + every_px; x < std::max(from.x, to.x); x += every_px) {
    hatch.push_back({{x, from.y}, {x - deep_px, from.y + deep_px}});
  }
  svg::put_polylines(group, hatch, svg::pen("#999999", 0.6));
  svg::put_text(group, {panel.paper.low.x + 6.0, from.y - 4.0}, "floor", {9.5});
}

void put_scene(pugi::xml_node svg, const Scene& scene, const Panel& panel, Names names) {
  const Sight sight(scene.solids, panel.view, look_every_px / panel.px_per_mm);
  put_axes(svg, scene, panel);
  put_solids(svg, scene, panel, sight);
  put_welds(svg, scene, panel, sight, names);
  put_centre(svg, scene, panel);
}

}  // namespace seamturn::stance_drawing
