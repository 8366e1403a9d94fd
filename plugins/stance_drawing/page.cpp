// SPDX-License-Identifier: MIT
// The words around the views.
#include <array>

#include "stance_drawing/drawing.hpp"
#include "svg/svg.hpp"

namespace seamturn::stance_drawing {

using plan_reader::number;
using plan_reader::rounded;
using plan_reader::text;

namespace {

constexpr double line_px = 16.0;
constexpr double letter_px = 11.5;

std::string axis_words(const Scene& scene) {
  std::string words;
  for (const Axis& axis : scene.axes) {
    words += (words.empty() ? "" : ", ") + axis.name + " " + rounded(axis.angle_deg, 1) + " deg";
  }
  return words;
}

std::string load_words(const plan_reader::PlanTree& plan, const Scene& scene) {
  std::string words = "On the table " + rounded(number(scene.stance, "load_kg"), 0) +
                      " kg, centre of gravity marked; held";
  const pugi::xml_node positioner = plan.root().child("cell").child("positioner");
  bool is_first = true;
  for (const pugi::xml_node axis : scene.stance.children("axis")) {
    const pugi::xml_node plate =
        positioner.find_child_by_attribute("axis", "name", text(axis, "name"));
    words += std::string(is_first ? " by " : ", ") + text(axis, "name") + " " +
             rounded(number(axis, "torque_nm"), 0) + " of " +
             rounded(number(plate, "torque_max_nm"), 0) + " N m";
    is_first = false;
  }
  return words;
}

std::string place_words(const Scene& scene) {
  const std::string stage = text(scene.stage, "id");
  return std::string("Set-up ") + text(scene.stance, "setup") +
         (stage.empty() ? "" : ", as in stage " + stage);
}

std::string angle_text(const pugi::xml_node& pass, const char* attribute) {
  return pass.attribute(attribute) ? rounded(number(pass, attribute), 1) : "";
}

std::vector<std::string> row_of(const Weld& weld) {
  const bool rolls = plan_reader::is_true(weld.seam, "rolling");
  return {text(weld.seam, "id"),
          text(weld.seam, "position"),
          text(weld.seam, "procedure"),
          std::to_string(weld.passes),
          angle_text(weld.first_pass, "slope_deg"),
          angle_text(weld.first_pass, "bank_deg"),
          rolls ? "the table rolls it below the torch" : "the torch travels"};
}

}  // namespace

double put_heading(pugi::xml_node svg,
                   const plan_reader::PlanTree& plan,
                   const Scene& scene,
                   double top) {
  pugi::xml_node group = svg::put_group(svg, "heading");
  const std::string title = plan_reader::title_of(plan.root().child("weldment"));
  svg::put_text(group, {page_edge, top + 16.0}, title, {16.0, "start", true});
  svg::put_text(group,
                {page_edge, top + 34.0},
                std::string("Stance ") + text(scene.stance, "id") + ": " + axis_words(scene),
                {13.0, "start", true});
  svg::put_text(group, {page_edge, top + 51.0}, place_words(scene) + ".", {letter_px});
  svg::put_text(group, {page_edge, top + 67.0}, load_words(plan, scene) + ".", {letter_px});
  return top + 67.0;
}

double put_work(pugi::xml_node svg, const Scene& scene, double top) {
  if (scene.work.empty()) return top;
  constexpr std::size_t letters_across = 180;
  std::string words;
  for (const std::string& one : scene.work) words += (words.empty() ? "" : ", ") + one;
  pugi::xml_node group = svg::put_group(svg, "work");
  double y = top;
  for (const std::string& line : svg::wrapped("Work of people here: " + words, letters_across)) {
    svg::put_text(group, {page_edge, y += line_px}, line, {letter_px});
  }
  return y;
}

double put_weld_table(pugi::xml_node svg, const Scene& scene, double top) {
  if (scene.welds.empty()) return top;
  constexpr std::array<const char*, 7> heads = {
      "seam", "position", "sheet", "passes here", "slope, deg", "bank, deg", "motion"};
  constexpr std::array<double, 7> columns_px = {
      page_edge, 150.0, 240.0, 320.0, 420.0, 510.0, 600.0};
  pugi::xml_node group = svg::put_group(svg, "welds");
  double y = top + line_px;
  for (std::size_t i = 0; i < heads.size(); ++i) {
    svg::put_text(group, {columns_px[i], y}, heads[i], {letter_px, "start", true});
  }
  svg::put_line(group, {page_edge, y + 4.0}, {page_width - page_edge, y + 4.0}, {});
  y += 4.0;
  for (const Weld& weld : scene.welds) {
    const std::vector<std::string> row = row_of(weld);
    y += line_px;
    for (std::size_t i = 0; i < row.size(); ++i) {
      svg::put_text(group, {columns_px[i], y}, row[i], {letter_px});
    }
  }
  return y;
}

double put_notes(pugi::xml_node svg, const plan_reader::PlanTree& plan, double top) {
  pugi::xml_node group = svg::put_group(svg, "notes");
  double y = top;
  const auto put_note = [&](const std::string& words) {
    svg::put_text(group, {page_edge, y += line_px}, words, {11.0});
  };
  put_note(
      "Up is up in every view. Thick: seams welded in this stance, dashed where metal hides them; "
      "thin arrow: travel, blue arrow: torch, both where the first pass laid here begins; "
      "slope and bank there.");
  put_note(
      "Drawn of the plan: positioner, robot, clamps and hoses are not; reach is not checked. Turn "
      "only with the robot withdrawn, the first full turn slowly and with nobody near.");
  if (plan_reader::is_true(plan.root().child("weldment"), "invented")) {
    put_note("Invented demo data: weld nothing to it.");
  }
  return y;
}

}  // namespace seamturn::stance_drawing
