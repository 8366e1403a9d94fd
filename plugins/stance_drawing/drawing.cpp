// SPDX-License-Identifier: MIT
#include "stance_drawing/drawing.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "svg/page.hpp"
#include "svg/svg.hpp"

namespace seamturn::stance_drawing {

namespace {

constexpr double panels_px = 600.0;
constexpr double left_px = 740.0;
constexpr double between_px = 12.0;

/// Level, from the middle of what hangs there towards the robot, in steps of 15 degrees so that
/// what is square to it stays square; -x when it stands right above.
Vec3 robot_side(const plan_reader::PlanTree& plan, const Line& places) {
  constexpr double step = 15.0 * std::numbers::pi / 180.0;
  Vec3 low = places.front();
  Vec3 high = places.front();
  for (const Vec3& place : places) {
    low = low.cwiseMin(place);
    high = high.cwiseMax(place);
  }
  const Vec3 side =
      place_of(plan.root().child("cell").child("robot").child("home")) - 0.5 * (low + high);
  if (std::hypot(side.x(), side.y()) < 1.0) return -Vec3::UnitX();
  const double angle = step * std::round(std::atan2(side.y(), side.x()) / step);
  return Vec3(std::cos(angle), std::sin(angle), 0.0);
}

/// From above and beside the robot; `aside_deg` above 0: to its right.
View over_shoulder(const Vec3& robot, double aside_deg) {
  constexpr double radians = std::numbers::pi / 180.0;
  constexpr double above = 25.0 * radians;
  const Vec3 level = Eigen::AngleAxisd(aside_deg * radians, Vec3::UnitZ()) * robot;
  return view_from(std::cos(above) * level + std::sin(above) * Vec3::UnitZ());
}

/// How much of the seams is seen from there.
double seen_mm(const Scene& scene, const View& view) {
  constexpr double every_mm = 5.0;
  const Sight sight(scene.solids, view, every_mm);
  double seen = 0.0;
  for (const Weld& weld : scene.welds) {
    for (const Piece& piece : sight.pieces(weld.path)) {
      if (piece.is_seen) seen += length_of(piece.line);
    }
  }
  return seen;
}

struct Look {
  View view;
  const char* words;
};

/// Over the shoulder from which more of the seams is seen.
Look main_look(const Scene& scene, const Vec3& robot) {
  constexpr double aside_deg = 35.0;
  const View right = over_shoulder(robot, aside_deg);
  const View left = over_shoulder(robot, -aside_deg);
  if (seen_mm(scene, left) > seen_mm(scene, right) + 1.0) {
    return {left, "Over the robot's left shoulder"};
  }
  return {right, "Over the robot's right shoulder"};
}

/// Whatever hangs there in any stance, so that all pictures of a plan are drawn alike.
Line places_of_all(const plan_reader::PlanTree& plan) {
  Line places;
  for (const pugi::xml_node stance : plan.root().child("stances").children("stance")) {
    for (const Solid& solid : all_solids(plan, stance)) {
      const Line corners = corners_of_box(solid);
      places.insert(places.end(), corners.begin(), corners.end());
    }
  }
  return places;
}

Panel panel_of(const View& view, const svg::Box& seen, const svg::Box& paper, double px_per_mm) {
  return {view, paper, paper, 0.5 * (seen.low + seen.high), px_per_mm};
}

void put_caption(pugi::xml_node group, const svg::Box& paper, const std::string& words) {
  svg::put_box(group, paper, svg::pen("#bbbbbb", 0.6));
  svg::put_text(group, {paper.low.x + 6.0, paper.low.y + 15.0}, words, {11.0, "start", true});
}

void put_side_view(pugi::xml_node svg,
                   const Scene& scene,
                   const Panel& panel,
                   const std::string& words) {
  pugi::xml_node group = svg::put_group(svg, "side-view");
  put_floor(group, panel);
  put_scene(group, scene, panel, Names::none);
  put_caption(group, panel.paper, words);
}

/// Everything that hangs there, and the floor below it.
Line with_floor(Line places) {
  Vec3 below = places.front();
  below.z() = 0.0;
  places.push_back(below);
  return places;
}

void put_main_view(pugi::xml_node svg,
                   const Scene& scene,
                   const Look& look,
                   const Line& places,
                   const svg::Box& paper) {
  constexpr double names_px = 95.0;  // at either side
  const svg::Box seen = seen_box(look.view, places);
  Panel panel = panel_of(look.view, seen, paper, 1.0);
  panel.field.low.x += names_px;
  panel.field.high.x -= names_px;
  panel.px_per_mm = fitting_scale(seen, panel.field);
  pugi::xml_node group = svg::put_group(svg, "main-view");
  put_scene(group, scene, panel, Names::seams);
  put_caption(group, paper, look.words);
}

double put_views(pugi::xml_node svg,
                 const plan_reader::PlanTree& plan,
                 const Scene& scene,
                 double top) {
  const Line places = places_of_all(plan);
  const Vec3 robot = robot_side(plan, places);
  const double right_px = page_edge + left_px + between_px;
  const double half = (panels_px - between_px) / 2.0;
  const svg::Box left{{page_edge, top}, {page_edge + left_px, top + panels_px}};
  const svg::Box upper{{right_px, top}, {page_width - page_edge, top + half}};
  const svg::Box lower{{right_px, top + half + between_px},
                       {page_width - page_edge, top + panels_px}};
  put_main_view(svg, scene, main_look(scene, robot), places, left);

  const Look ahead{view_from(robot), "From the robot"};
  const Look aside{view_from(Vec3::UnitZ().cross(robot)), "From the robot's right hand"};
  const svg::Box seen_ahead = seen_box(ahead.view, with_floor(places));
  const svg::Box seen_aside = seen_box(aside.view, with_floor(places));
  const double scale = std::min(fitting_scale(seen_ahead, upper), fitting_scale(seen_aside, lower));
  put_side_view(svg, scene, panel_of(ahead.view, seen_ahead, upper, scale), ahead.words);
  put_side_view(svg, scene, panel_of(aside.view, seen_aside, lower, scale), aside.words);
  return top + panels_px;
}

}  // namespace

std::string stance_svg(const plan_reader::PlanTree& plan, const std::string& stance) {
  const Scene scene = scene_of(plan, stance);
  svg::Page page(page_width, "Stance " + stance);
  const pugi::xml_node svg = page.root();
  double y = put_heading(svg, plan, scene, 10.0);
  y = put_views(svg, plan, scene, y + 10.0);
  y = put_weld_table(svg, scene, y + 8.0);
  y = put_work(svg, scene, y + 4.0);
  y = put_notes(svg, plan, y + 8.0) + 12.0;
  return page.text(y);
}

}  // namespace seamturn::stance_drawing
