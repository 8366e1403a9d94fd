// SPDX-License-Identifier: MIT
#include "turn_chart/chart.hpp"

#include "svg/svg.hpp"

namespace seamturn::turn_chart {

using plan_reader::put;
using plan_reader::rounded;

namespace {

/// Waits stand out in grey prints too: dark stripes on white.
void put_wait_pattern(pugi::xml_node svg) {
  pugi::xml_node pattern = svg.append_child("defs").append_child("pattern");
  put(pattern, "id", "wait");
  put(pattern, "width", "5");
  put(pattern, "height", "5");
  put(pattern, "patternUnits", "userSpaceOnUse");
  svg::put_box(pattern, {{0.0, 0.0}, {5.0, 5.0}}, {"#ffffff", nullptr});
  pugi::xml_node stripe = pattern.append_child("path");
  put(stripe, "d", "M-1,1L1,-1M0,5L5,0M4,6L6,4");
  put(stripe, "stroke", "#b00020");
  put(stripe, "stroke-width", "1.6");
}

}  // namespace

bool has_chart(const plan_reader::PlanTree& plan) {
  for (const pugi::xml_node event : plan.root().child("timeline").children("event")) {
    if (std::string(plan_reader::text(event, "kind")) == "arc") return true;
  }
  return false;
}

std::string chart_svg(const plan_reader::PlanTree& plan) {
  const Clock clock = clock_of(plan);
  pugi::xml_document document;
  pugi::xml_node declaration = document.append_child(pugi::node_declaration);
  put(declaration, "version", "1.0");
  put(declaration, "encoding", "UTF-8");
  pugi::xml_node svg = document.append_child("svg");
  put(svg, "xmlns", "http://www.w3.org/2000/svg");
  put(svg, "version", "1.1");
  put(svg, "width", rounded(page_width, 0));
  pugi::xml_attribute height = svg.append_attribute("height");
  pugi::xml_attribute view_box = svg.append_attribute("viewBox");
  put(svg, "font-family", "sans-serif");
  put(svg, "fill", "#111111");
  svg.append_child("title").text().set("The clock of the order, kind by kind");
  put_wait_pattern(svg);
  // Its own paper, so that it reads on a dark page as in print.
  pugi::xml_node paper = svg.append_child("rect");
  put(paper, "width", "100%");
  put(paper, "height", "100%");
  put(paper, "fill", "#ffffff");
  double y = put_heading(svg, plan, clock, 10.0);
  y = put_strips(svg, clock, y + 8.0);
  y = put_notes(svg, plan, y + 4.0) + 12.0;
  height.set_value(rounded(y, 0).c_str());
  view_box.set_value(("0 0 " + rounded(page_width, 0) + " " + rounded(y, 0)).c_str());
  return plan_reader::document_text(document);
}

}  // namespace seamturn::turn_chart
