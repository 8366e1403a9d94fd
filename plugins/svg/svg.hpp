// SPDX-License-Identifier: MIT
// Elements of plain SVG 1.1: presentation attributes only, numbers with two decimals at most.
#pragma once

#include <string>
#include <vector>

#include "plan_reader/plan_reader.hpp"
#include "svg/plane.hpp"

namespace seamturn::svg {

struct Stroke {
  const char* fill = "none";
  const char* colour = "#000";  ///< null: no line
  double width = 1.0;
  const char* dash = nullptr;
};
/// A line in one colour, nothing filled.
[[nodiscard]] inline Stroke pen(const char* colour, double width, const char* dash = nullptr) {
  return {"none", colour, width, dash};
}

pugi::xml_node put_group(pugi::xml_node parent, const char* class_name);
/// Closed outlines as one path; polygons of fewer than three points are passed over.
pugi::xml_node put_outline(pugi::xml_node parent,
                           const std::vector<Polygon>& polygons,
                           const Stroke& stroke);
/// Lines from point to point, left open, as one path; lines of fewer than two points are passed
/// over.
pugi::xml_node put_polylines(pugi::xml_node parent,
                             const std::vector<Polygon>& lines,
                             const Stroke& stroke);
pugi::xml_node put_line(pugi::xml_node parent, Point from, Point to, const Stroke& stroke);
pugi::xml_node put_circle(pugi::xml_node parent, Point centre, double radius, const Stroke& stroke);
pugi::xml_node put_box(pugi::xml_node parent, const Box& box, const Stroke& stroke);
/// A line with a filled head at its end.
void put_arrow(
    pugi::xml_node parent, Point from, Point to, double width, const char* colour = "#000");

struct Lettering {
  double size = 12.0;
  const char* anchor = "start";
  bool bold = false;
};
pugi::xml_node put_text(pugi::xml_node parent,
                        Point baseline,
                        const std::string& words,
                        const Lettering& lettering = {});
/// About how wide a line of text is. `letter`: of one, as a share of its size; more for figures.
inline constexpr double prose_letter = 0.55;
inline constexpr double figures_letter = 0.62;
[[nodiscard]] double text_width(const std::string& words,
                                double letter_size,
                                double letter = prose_letter);
/// Lines of at most that many letters, broken between words.
[[nodiscard]] std::vector<std::string> wrapped(const std::string& words, std::size_t letters);

}  // namespace seamturn::svg
