// SPDX-License-Identifier: MIT
#include "pass_drawing/drawing.hpp"

#include <stdexcept>

#include "svg/page.hpp"

namespace seamturn::pass_drawing {

using plan_reader::put;
using plan_reader::rounded;

const std::vector<RoleStyle>& role_styles() {
  static const std::vector<RoleStyle> styles = {{"tack", {"#ffffff", "#000", 1.2, "1 2"}},
                                                {"root", {"#b8b8b8", "#000", 2.6, nullptr}},
                                                {"fill", {"#f4f4f4", "#000", 1.0, nullptr}},
                                                {"cap", {"#dadada", "#000", 1.5, "7 3"}},
                                                {"single", {"#e8e8e8", "#000", 1.5, "9 3 2 3"}}};
  return styles;
}

const svg::Stroke& style_of(const std::string& role) {
  for (const RoleStyle& style : role_styles()) {
    if (role == style.role) return style.stroke;
  }
  throw std::runtime_error("role \"" + role + "\" has no style in the drawings");
}

svg::Stroke style_of(Part part) {
  switch (part) {
    case Part::member_1:
      return {"url(#member-1)", "#000", 1.0, nullptr};
    case Part::member_2:
      return {"url(#member-2)", "#000", 1.0, nullptr};
    case Part::backing:
      return {"url(#backing)", "#000", 0.8, nullptr};
  }
  return {};
}

namespace {

/// Light lines; the two members lean different ways.
void put_hatch(pugi::xml_node defs,
               const char* id,
               double side,
               const std::vector<const char*>& lines) {
  pugi::xml_node pattern = defs.append_child("pattern");
  put(pattern, "id", id);
  put(pattern, "width", rounded(side, 0));
  put(pattern, "height", rounded(side, 0));
  put(pattern, "patternUnits", "userSpaceOnUse");
  svg::put_box(pattern, {{0.0, 0.0}, {side, side}}, {"#fff", nullptr});
  for (const char* line : lines) {
    pugi::xml_node path = pattern.append_child("path");
    put(path, "d", line);
    put(path, "stroke", "#a8a8a8");
    put(path, "stroke-width", "0.7");
    put(path, "fill", "none");
  }
}

}  // namespace

void put_patterns(pugi::xml_node svg) {
  pugi::xml_node defs = svg.append_child("defs");
  put_hatch(defs, "member-1", 10.0, {"M0,10 L10,0"});
  put_hatch(defs, "member-2", 10.0, {"M0,0 L10,10"});
  put_hatch(defs, "backing", 6.0, {"M0,6 L6,0", "M0,0 L6,6"});
  put_hatch(defs, "welded", 5.0, {"M0,2.5 L5,2.5"});
}

std::string drawing_svg(const plan_reader::PlanTree& plan, const std::string& id) {
  const Subject subject = find_subject(plan, id);
  svg::Page page(page_width, "Passes of procedure " + id + ", drawn across the seam");
  const pugi::xml_node svg = page.root();
  put_patterns(svg);
  double y = put_heading(svg, subject, 12.0);
  y = put_picture(svg, subject, y + 10.0);
  y = put_sizes_and_legend(svg, subject, y + 6.0);
  y = put_pass_table(svg, subject, y + 8.0);
  y = put_notes(svg, subject, y + 6.0) + 16.0;
  return page.text(y);
}

}  // namespace seamturn::pass_drawing
