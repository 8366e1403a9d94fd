// SPDX-License-Identifier: MIT
#include "stance_drawing/plan_solids.hpp"

#include <cmath>
#include <numbers>
#include <stdexcept>
#include <string>

namespace seamturn::stance_drawing {

using plan_reader::number;

namespace {

Turned straight(double outer_diameter_mm, double bore_diameter_mm, double length_mm) {
  const double radius = 0.5 * outer_diameter_mm;
  return {{{0.0, length_mm, radius, radius}}, 0.5 * bore_diameter_mm};
}

/// About the axis of a bar, its width across x.
Block centred(double width_mm, double height_mm, double length_mm) {
  const double x = 0.5 * width_mm;
  const double y = 0.5 * height_mm;
  return {{{-x, -y}, {x, -y}, {x, y}, {-x, y}}, length_mm};
}

Block hexagon(double across_flats_mm, double length_mm) {
  constexpr double sixth = std::numbers::pi / 3.0;
  const double corner = 0.5 * across_flats_mm / std::cos(0.5 * sixth);
  Block bar{{}, length_mm};
  for (int i = 0; i < 6; ++i) {
    const double angle = (i - 0.5) * sixth;  // flats square to x
    bar.outline.emplace_back(corner * std::cos(angle), corner * std::sin(angle));
  }
  return bar;
}

std::variant<Block, Turned> bar_of(const pugi::xml_node& bar) {
  const std::string shape = plan_reader::text(bar, "shape");
  const double width = number(bar, "width_mm");
  const double length = number(bar, "length_mm");
  if (shape == "round") return straight(width, 0.0, length);
  if (shape == "hexagon") return hexagon(width, length);
  return centred(width, number(bar, "height_mm"), length);
}

Turned forging_of(const pugi::xml_node& forging) {
  Turned turned;
  turned.bore_radius_mm = 0.5 * number(forging, "bore_mm");
  double from = 0.0;
  for (const pugi::xml_node step : forging.children("step")) {
    const double to = from + number(step, "length_mm");
    turned.steps.push_back(
        {from, to, 0.5 * number(step, "start_diameter_mm"), 0.5 * number(step, "end_diameter_mm")});
    from = to;
  }
  if (turned.steps.empty()) throw std::runtime_error("plan.xml has a forging without a step");
  return turned;
}

}  // namespace

Block block(double length_mm, double width_mm, double height_mm) {
  return {{{0.0, 0.0}, {length_mm, 0.0}, {length_mm, width_mm}, {0.0, width_mm}}, height_mm};
}

std::variant<Block, Turned> shape_of(const pugi::xml_node& member) {
  if (const pugi::xml_node plate = member.child("plate")) {
    return block(
        number(plate, "length_mm"), number(plate, "width_mm"), number(plate, "thickness_mm"));
  }
  if (const pugi::xml_node tube = member.child("tube")) {
    const double outer = number(tube, "outer_diameter_mm");
    return straight(outer, outer - 2.0 * number(tube, "wall_mm"), number(tube, "length_mm"));
  }
  if (const pugi::xml_node ring = member.child("ring")) {
    return straight(number(ring, "outer_diameter_mm"),
                    number(ring, "inner_diameter_mm"),
                    number(ring, "thickness_mm"));
  }
  if (const pugi::xml_node bar = member.child("bar")) return bar_of(bar);
  if (const pugi::xml_node forging = member.child("forging")) return forging_of(forging);
  throw std::runtime_error("plan.xml: the shape of member \"" +
                           std::string(plan_reader::text(member, "id")) + "\" is not known here");
}

}  // namespace seamturn::stance_drawing
