// SPDX-License-Identifier: MIT
// The words around the picture.
#include <algorithm>
#include <array>
#include <cmath>

#include "pass_drawing/drawing.hpp"

namespace seamturn::pass_drawing {

using plan_reader::number;
using plan_reader::rounded;
using plan_reader::text;

namespace {

constexpr double line_px = 15.0;
constexpr std::size_t letters_across = 92;
constexpr double left_column = page_edge;
constexpr double right_column = 330.0;

std::string joined(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) all += (all.empty() ? "" : ", ") + word;
  return all;
}

std::vector<std::string> ids_of(pugi::xml_node procedure, const char* element) {
  std::vector<std::string> ids;
  for (const pugi::xml_node node : procedure.children(element)) ids.push_back(text(node, "id"));
  return ids;
}

double put_lines(pugi::xml_node parent,
                 double x,
                 double y,
                 const std::vector<std::string>& lines,
                 double letter_size = 11.5) {
  for (const std::string& line : lines) {
    y += line_px;
    svg::put_text(parent, {x, y}, line, {letter_size});
  }
  return y;
}

struct SizeName {
  const char* attribute;
  const char* words;
  const char* unit;
};
constexpr std::array<SizeName, 22> size_names = {{
    {"gap_mm", "gap b", "mm"},
    {"root_face_mm", "root face c", "mm"},
    {"included_angle_deg", "included angle", "deg"},
    {"bevel_angle_deg", "angle of one face", "deg"},
    {"first_face_deg", "of it at member 1", "deg"},
    {"cut_1_mm", "depth of cut, side 1", "mm"},
    {"cut_2_mm", "depth of cut, side 2", "mm"},
    {"radius_mm", "radius", "mm"},
    {"included_angle_2_deg", "included angle, side 2", "deg"},
    {"bevel_angle_2_deg", "angle of one face, side 2", "deg"},
    {"radius_2_mm", "radius, side 2", "mm"},
    {"lower_depth_mm", "lower part, depth", "mm"},
    {"lower_angle_deg", "lower part, included angle", "deg"},
    {"reach_mm", "metal behind the root", "mm"},
    {"width_mm", "width of the hole", "mm"},
    {"length_mm", "length of the hole", "mm"},
    {"fill_mm", "filled to", "mm"},
    {"gouge_depth_mm", "gouged, depth at least", "mm"},
    {"gouge_radius_mm", "gouged, radius at least", "mm"},
    {"gouge_flank_deg", "gouged, flank", "deg"},
    {"cover_leg_mm", "leg of the cover", "mm"},
    {"cap_toe_lap_mm", "cap beyond the edge", "mm"},
}};

void add_size(std::vector<std::string>& lines,
              const std::string& words,
              double value,
              const std::string& unit) {
  lines.push_back(words + ": " + rounded(value, 1) + " " + unit);
}

void add_fillet_sizes(std::vector<std::string>& lines, const Subject& subject) {
  add_size(lines, "leg on member 1", size(subject, "leg_1_mm"), "mm");
  add_size(lines, "leg on member 2", size(subject, "leg_2_mm"), "mm");
  add_size(lines, "throat a", number(section_of(subject, subject.side), "throat_mm"), "mm");
  const double bulge = size(subject, "bulge_mm");
  if (bulge != 0.0)
    add_size(lines, bulge > 0.0 ? "face convex by" : "face hollow by", std::abs(bulge), "mm");
}

std::vector<std::string> size_lines(const Subject& subject) {
  std::vector<std::string> lines;
  add_size(lines, "thickness t1 of member 1", subject.thickness_1_mm, "mm");
  add_size(lines, "thickness t2 of member 2", subject.thickness_2_mm, "mm");
  if (subject.is_fillet) add_fillet_sizes(lines, subject);
  const double depth = size(subject, "depth_mm");
  const bool partial = depth > 0.0 && depth < size(subject, "thickness_mm") - 1e-6;
  if (partial && !subject.is_plug) add_size(lines, "depth of the weld s", depth, "mm");
  for (const SizeName& name : size_names) {
    const bool said = name.attribute == std::string("gap_mm") && !subject.is_fillet;
    const double value = size(subject, name.attribute);
    if (value != 0.0 || (said && !subject.is_plug)) {
      add_size(lines, name.words, value, name.unit);
    }
  }
  if (!subject.is_fillet && !subject.is_plug && size(subject, "cover_leg_mm") == 0.0) {
    add_size(lines, "cap height", size(subject, "cap_height_mm"), "mm");
  }
  const bool square = std::abs(subject.between_deg - 90.0) < 0.05;
  if (!square && subject.between_deg < 179.0) {
    add_size(lines, "angle between the plates", subject.between_deg, "deg");
  }
  add_size(lines, "weld metal", number(section_of(subject, subject.side), "area_mm2"), "mm2");
  return lines;
}

std::string root_words(const Subject& subject) {
  const std::string root = text(subject.preparation, "root");
  if (subject.is_fillet || subject.is_plug) return "";
  if (root == "open") return "root open, nothing behind it";
  if (root == "gouge") return "root gouged from side 2 before side 2 is welded";
  if (root == "both-sides") return "side 2 fuses into side 1, no gouging";
  return root + ", its size is not planned";
}

/// One sample of the legend and its words.
double put_sample(pugi::xml_node group,
                  double y,
                  const svg::Stroke& stroke,
                  const std::string& words) {
  y += line_px + 3.0;
  svg::put_box(group, {{right_column, y - 11.0}, {right_column + 34.0, y + 1.0}}, stroke);
  svg::put_text(group, {right_column + 42.0, y}, words, {11.5});
  return y;
}

bool has_role(const Subject& subject, const std::string& role) {
  return std::any_of(subject.passes.begin(), subject.passes.end(), [&](const PassData& pass) {
    return pass.role == role;
  });
}

double put_legend(pugi::xml_node svg, const Subject& subject, double top) {
  pugi::xml_node group = svg::put_group(svg, "legend");
  double y = top + 4.0;
  svg::put_text(group, {right_column, y += 12.0}, "Legend", {12.0, "start", true});
  for (const RoleStyle& style : role_styles()) {
    if (has_role(subject, style.role)) {
      y = put_sample(group, y, style.stroke, std::string(style.role) + " pass");
    }
  }
  y = put_sample(group, y, style_of(Part::member_1), "member 1");
  y = put_sample(group, y, style_of(Part::member_2), "member 2");
  if (!other_side(subject).empty()) {
    const bool welded = subject.side == 2;
    const bool gouged = size(subject, "gouge_depth_mm") > 0.0;
    y = put_sample(group,
                   y,
                   {welded ? "url(#welded)" : "#fff", "#000", 0.9, "2 3"},
                   welded   ? "side 1, welded before"
                   : gouged ? "side 2 as gouged, welded later"
                            : "side 2, welded later");
  }
  y += line_px + 3.0;
  svg::put_circle(group, {right_column + 17.0, y - 5.0}, 7.5, {"#fff", "#000", 0.8, nullptr});
  svg::put_text(group, {right_column + 17.0, y - 1.6}, "n", {9.5, "middle", true});
  svg::put_text(group, {right_column + 42.0, y}, "number of the pass, in the order laid", {11.5});
  y += line_px + 3.0;
  svg::put_arrow(group, {right_column + 2.0, y - 11.0}, {right_column + 32.0, y + 1.0}, 1.3);
  svg::put_text(group, {right_column + 42.0, y}, "torch at its work angle, tip at the aim", {11.5});
  return y;
}

/// The lean of the torch in words a hand can follow.
std::string lean_words(const Subject& subject, const PassData& pass, double half_angle_deg) {
  if (subject.is_fillet) {
    return rounded(half_angle_deg - pass.work_angle_deg, 1) + " off member 1";
  }
  const std::string lean = rounded(std::abs(pass.work_angle_deg), 1);
  if (lean == "0") return "0, straight in";
  if (subject.is_plug) {
    return lean + (pass.work_angle_deg > 0.0 ? " to the wall" : " to the middle");
  }
  return lean + (pass.work_angle_deg > 0.0 ? " to member 2" : " to member 1");
}

std::vector<std::string> pass_row(const Subject& subject,
                                  const PassData& pass,
                                  double half_angle_deg) {
  return {std::to_string(pass.number),
          pass.role,
          std::to_string(pass.layer) + "." + std::to_string(pass.bead),
          rounded(pass.area_mm2, 1),
          lean_words(subject, pass, half_angle_deg),
          rounded(pass.aim.x, 1),
          rounded(pass.aim.y, 1)};
}

constexpr std::array<double, 7> column_px = {20.0, 64.0, 118.0, 208.0, 304.0, 446.0, 536.0};

std::string up_words(const Subject& subject, const UpDirection& up) {
  if (up.is_planned) {
    return "Drawn the way up that the plan gives seam " + std::string(text(subject.seam, "id")) +
           " at its start.";
  }
  const bool corner = subject.is_fillet || subject.is_corner;
  const std::string lower =
      corner && subject.position == "PB" ? ", member 1 taken as the lower plate" : "";
  return "The plan gives this seam no place: drawn in the plainest case of position " +
         subject.position + lower + ".";
}

/// Passes and outline should hold the same metal.
std::string area_words(const Subject& subject) {
  double planned = 0.0;
  for (const PassData& pass : subject.passes) planned += pass.area_mm2;
  const double held = signed_area(fill_map(subject).outline());
  if (std::abs(planned - held) <= 0.015 * held) return "";
  return "Attention: the passes hold " + rounded(planned, 1) + " mm2, the outline " +
         rounded(held, 1) + " mm2.";
}

std::vector<std::string> notes(const Subject& subject) {
  std::vector<std::string> all = {
      "Bead shapes are schematic, their areas are true to the scale. Toes, penetration and the "
      "shape of the root are not computed.",
      "Work angle across the seam only; push or drag, settings and temperatures stand in the "
      "procedure sheet. Aim: across (x) and out of the root (y), section frame of the plan."};
  if (const std::string words = root_words(subject); !words.empty())
    all.push_back("Root: " + words + ".");
  const UpDirection up = find_up(subject, subject.seam);
  all.push_back(up_words(subject, up));
  if (const auto others = seams_otherwise(subject, up); !others.empty()) {
    all.push_back("Attention: lying otherwise, turn the drawing for them: " + joined(others) + ".");
  }
  if (const std::string words = area_words(subject); !words.empty()) all.push_back(words);
  if (subject.is_corner && std::abs(subject.between_deg - 90.0) > 0.05) {
    all.push_back("The section of this groove is planned as if the plates stood square.");
  }
  if (subject.is_plug) {
    all.push_back(
        "Filled in the drawing: the half right of the hole's middle line (dash-dot); "
        "the passes run round the hole.");
  }
  if (plan_reader::is_true(subject.plan->root().child("weldment"), "invented")) {
    all.push_back("Invented demo data: weld nothing to it.");
  }
  return all;
}

std::string status_line(const Subject& subject) {
  const std::string words = text(subject.procedure, "qualification");
  const std::string preliminary = "preliminary";
  return words.empty() || words.rfind(preliminary, 0) == 0
             ? "preliminary until a qualification record covers it"
             : words;
}

}  // namespace

double put_heading(pugi::xml_node svg, const Subject& subject, double top) {
  pugi::xml_node group = svg::put_group(svg, "heading");
  std::string words = std::string(text(subject.procedure, "id")) + "  " + subject.kind + ", " +
                      subject.type + ", position " + subject.position;
  if (subject.has_two_sides) words += ", side " + std::to_string(subject.side) + " of 2";
  svg::put_text(group, {page_edge, top + 18.0}, words, {17.0, "start", true});
  const pugi::xml_node weldment = subject.plan->root().child("weldment");
  std::vector<std::string> lines = svg::wrapped(plan_reader::title_of(weldment), letters_across);
  for (const std::string& line :
       svg::wrapped("Joints: " + joined(ids_of(subject.procedure, "joint")) +
                        "; seams: " + joined(ids_of(subject.procedure, "seam")),
                    letters_across)) {
    lines.push_back(line);
  }
  double y = put_lines(group, page_edge, top + 20.0, lines) + 18.0;
  svg::put_text(group, {page_edge, y}, status_line(subject), {13.0, "start", true});
  return y;
}

double put_sizes_and_legend(pugi::xml_node svg, const Subject& subject, double top) {
  pugi::xml_node group = svg::put_group(svg, "sizes");
  svg::put_text(group, {left_column, top + 16.0}, "Sizes", {12.0, "start", true});
  const double y = put_lines(group, left_column, top + 18.0, size_lines(subject));
  return std::max(y, put_legend(svg, subject, top));
}

double put_pass_table(pugi::xml_node svg, const Subject& subject, double top) {
  pugi::xml_node group = svg::put_group(svg, "passes");
  const std::vector<std::string> heads = {
      "pass", "role", "layer.bead", "area, mm2", "work angle, deg", "aim x, mm", "aim y, mm"};
  double y = top + 16.0;
  for (std::size_t i = 0; i < heads.size(); ++i) {
    svg::put_text(group, {column_px[i], y}, heads[i], {11.5, "start", true});
  }
  svg::put_line(group, {page_edge, y + 4.0}, {page_width - page_edge, y + 4.0}, {});
  const double half_deg =
      subject.is_fillet ? fill_map(subject).half_angle_rad() * degrees_per_radian : 0.0;
  y += 2.0;
  for (const PassData& pass : subject.passes) {
    y += line_px;
    const std::vector<std::string> row = pass_row(subject, pass, half_deg);
    for (std::size_t i = 0; i < row.size(); ++i) {
      svg::put_text(group, {column_px[i], y}, row[i], {11.5});
    }
  }
  return y;
}

double put_notes(pugi::xml_node svg, const Subject& subject, double top) {
  pugi::xml_node group = svg::put_group(svg, "notes");
  double y = top;
  for (const std::string& note : notes(subject)) {
    y = put_lines(group, page_edge, y, svg::wrapped(note, letters_across));
  }
  return y;
}

}  // namespace seamturn::pass_drawing
