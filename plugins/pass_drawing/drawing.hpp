// SPDX-License-Identifier: MIT
// One procedure of a plan as a picture: the joint in section, each bead with its number.
#pragma once

#include <string>

#include "pass_drawing/geometry.hpp"
#include "pass_drawing/plates.hpp"
#include "pass_drawing/view.hpp"
#include "svg/svg.hpp"

namespace seamturn::pass_drawing {

constexpr double page_width = 640.0;
constexpr double page_edge = 20.0;

/// The drawing of a procedure id as SVG. Throws std::runtime_error when the plan lacks what it
/// needs.
[[nodiscard]] std::string drawing_svg(const plan_reader::PlanTree& plan, const std::string& id);

/// How beads of a role are told apart: by tone, weight of line and dashes.
struct RoleStyle {
  const char* role;
  svg::Stroke stroke;
};
[[nodiscard]] const std::vector<RoleStyle>& role_styles();
[[nodiscard]] const svg::Stroke& style_of(const std::string& role);
[[nodiscard]] svg::Stroke style_of(Part part);
/// Patterns that the styles of plates name.
void put_patterns(pugi::xml_node svg);

/// Draws the section into a box as wide as the page allows, from `top` down; its lower edge.
[[nodiscard]] double put_picture(pugi::xml_node svg, const Subject& subject, double top);
/// Heading, and everything below the picture; each gives the lower edge of what it wrote.
[[nodiscard]] double put_heading(pugi::xml_node svg, const Subject& subject, double top);
[[nodiscard]] double put_sizes_and_legend(pugi::xml_node svg, const Subject& subject, double top);
[[nodiscard]] double put_pass_table(pugi::xml_node svg, const Subject& subject, double top);
[[nodiscard]] double put_notes(pugi::xml_node svg, const Subject& subject, double top);

}  // namespace seamturn::pass_drawing
