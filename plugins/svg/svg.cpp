// SPDX-License-Identifier: MIT
#include "svg/svg.hpp"

#include <algorithm>
#include <cmath>

namespace seamturn::svg {

using plan_reader::put;

namespace {

std::string coordinate(double px) {
  return plan_reader::rounded(px, 2);
}

void put_stroke(pugi::xml_node node, const Stroke& stroke) {
  put(node, "fill", stroke.fill);
  if (stroke.colour == nullptr) return;
  put(node, "stroke", stroke.colour);
  put(node, "stroke-width", coordinate(stroke.width));
  if (stroke.dash != nullptr) put(node, "stroke-dasharray", stroke.dash);
}

/// Each from point to point and then `end`; those of fewer points are passed over.
pugi::xml_node put_path(pugi::xml_node parent,
                        const std::vector<Polygon>& lines,
                        std::size_t fewest_points,
                        const char* end,
                        const Stroke& stroke) {
  std::string data;
  for (const Polygon& line : lines) {
    if (line.size() < fewest_points) continue;
    std::string last;
    const char* command = "M";
    for (const Point point : line) {
      const std::string here = coordinate(point.x) + "," + coordinate(point.y);
      if (here == last) continue;
      data += command + here;
      command = " ";
      last = here;
    }
    data += end;
  }
  if (data.empty()) return {};
  pugi::xml_node node = parent.append_child("path");
  put(node, "d", data);
  put_stroke(node, stroke);
  put(node, "stroke-linejoin", "round");
  return node;
}

/// Letters, not bytes: a byte that goes on a letter does not count.
std::size_t letters_of(const std::string& words) {
  return static_cast<std::size_t>(std::count_if(words.begin(), words.end(), [](char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
  }));
}

}  // namespace

pugi::xml_node put_group(pugi::xml_node parent, const char* class_name) {
  pugi::xml_node node = parent.append_child("g");
  put(node, "class", class_name);
  return node;
}

pugi::xml_node put_outline(pugi::xml_node parent,
                           const std::vector<Polygon>& polygons,
                           const Stroke& stroke) {
  return put_path(parent, polygons, 3, "Z", stroke);
}

pugi::xml_node put_polylines(pugi::xml_node parent,
                             const std::vector<Polygon>& lines,
                             const Stroke& stroke) {
  return put_path(parent, lines, 2, "", stroke);
}

pugi::xml_node put_line(pugi::xml_node parent, Point from, Point to, const Stroke& stroke) {
  pugi::xml_node node = parent.append_child("line");
  put(node, "x1", coordinate(from.x));
  put(node, "y1", coordinate(from.y));
  put(node, "x2", coordinate(to.x));
  put(node, "y2", coordinate(to.y));
  put_stroke(node, stroke);
  return node;
}

pugi::xml_node put_circle(pugi::xml_node parent,
                          Point centre,
                          double radius,
                          const Stroke& stroke) {
  pugi::xml_node node = parent.append_child("circle");
  put(node, "cx", coordinate(centre.x));
  put(node, "cy", coordinate(centre.y));
  put(node, "r", coordinate(radius));
  put_stroke(node, stroke);
  return node;
}

pugi::xml_node put_box(pugi::xml_node parent, const Box& box, const Stroke& stroke) {
  pugi::xml_node node = parent.append_child("rect");
  put(node, "x", coordinate(box.low.x));
  put(node, "y", coordinate(box.low.y));
  put(node, "width", coordinate(box.width()));
  put(node, "height", coordinate(box.height()));
  put_stroke(node, stroke);
  return node;
}

void put_arrow(pugi::xml_node parent, Point from, Point to, double width, const char* colour) {
  const double run = length(to - from);
  if (run <= 0.0) return;
  const Point along = (1.0 / run) * (to - from);
  const double head = 3.0 + 3.0 * width;
  const Point across{-along.y, along.x};
  const Point neck = to - head * along;
  const double half = 0.38 * head;
  put_line(parent, from, neck, pen(colour, width));
  put_outline(parent, {{to, neck + half * across, neck - half * across}}, {colour, nullptr});
}

pugi::xml_node put_text(pugi::xml_node parent,
                        Point baseline,
                        const std::string& words,
                        const Lettering& lettering) {
  pugi::xml_node node = parent.append_child("text");
  put(node, "x", coordinate(baseline.x));
  put(node, "y", coordinate(baseline.y));
  put(node, "font-size", coordinate(lettering.size));
  if (std::string_view(lettering.anchor) != "start") put(node, "text-anchor", lettering.anchor);
  if (lettering.bold) put(node, "font-weight", "bold");
  node.text().set(words.c_str());
  return node;
}

double text_width(const std::string& words, double letter_size, double letter) {
  return letter * letter_size * static_cast<double>(letters_of(words));
}

std::vector<std::string> wrapped(const std::string& words, std::size_t letters) {
  std::vector<std::string> lines = {""};
  std::size_t at = 0;
  while (at < words.size()) {
    const std::size_t end = std::min(words.find(' ', at), words.size());
    const std::string word = words.substr(at, end - at);
    if (!lines.back().empty() && letters_of(lines.back()) + 1 + letters_of(word) > letters) {
      lines.emplace_back();
    }
    if (!lines.back().empty()) lines.back() += " ";
    lines.back() += word;
    at = end + 1;
  }
  return lines;
}

}  // namespace seamturn::svg
