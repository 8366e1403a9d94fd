// SPDX-License-Identifier: MIT
#include "turn_chart/chart.hpp"

#include "svg/page.hpp"
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
  svg::Page page(page_width, "The clock of the order, kind by kind");
  pugi::xml_node svg = page.root();
  put(svg, "fill", "#111111");
  put_wait_pattern(svg);
  double y = put_heading(svg, plan, clock, 10.0);
  y = put_strips(svg, clock, y + 8.0);
  y = put_notes(svg, plan, y + 4.0) + 12.0;
  return page.text(y);
}

}  // namespace seamturn::turn_chart
