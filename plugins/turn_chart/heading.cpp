// SPDX-License-Identifier: MIT
// The words around the strips.
#include "svg/svg.hpp"
#include "turn_chart/chart.hpp"

namespace seamturn::turn_chart {

using plan_reader::number;
using plan_reader::rounded;
using plan_reader::text;

namespace {

constexpr double line_px = 16.0;
constexpr double letter_px = 11.0;

double seconds_of(const Clock& clock, const KindStyle& style) {
  double total_s = 0.0;
  for (const Event& event : clock.events) {
    if (event.style == &style) total_s += event.end_s - event.start_s;
  }
  return total_s;
}

std::string share_text(double part_s, double whole_s) {
  return rounded(whole_s > 0.0 ? 100.0 * part_s / whole_s : 0.0, 1) + " %";
}

std::string cycle_words(const Clock& clock) {
  return "Cycle " + seconds_text(clock.cycle_s) + " h:min:s, arc " +
         share_text(seconds_of(clock, kind_styles().front()), clock.cycle_s) + " of it";
}

/// What is proved about the order.
std::string bound_words(pugi::xml_node timeline) {
  if (plan_reader::is_true(timeline, "proved_best")) {
    return "Proved best: no better order in this model at these times";
  }
  return "No order of this model is shorter than " +
         seconds_text(number(timeline, "lower_bound_s")) + "; the best may lie anywhere between";
}

double put_legend(pugi::xml_node svg, const Clock& clock, double top) {
  pugi::xml_node group = svg::put_group(svg, "legend");
  double x = page_edge;
  double y = top + line_px;
  for (const KindStyle& style : kind_styles()) {
    const double total_s = seconds_of(clock, style);
    if (total_s <= 0.0) continue;
    const std::string words = std::string(style.words) + " " + seconds_text(total_s) + ", " +
                              share_text(total_s, clock.cycle_s);
    const double width = 20.0 + svg::text_width(words, letter_px, svg::figures_letter) + 12.0;
    if (x + width > page_width - page_edge) {
      x = page_edge;
      y += line_px;
    }
    svg::put_box(
        group, {{x, y - 10.0}, {x + 15.0, y + 1.0}}, {style.fill, "#111111", 0.5, nullptr});
    svg::put_text(group, {x + 20.0, y}, words, {letter_px});
    x += width;
  }
  return y;
}

}  // namespace

double put_heading(pugi::xml_node svg,
                   const plan_reader::PlanTree& plan,
                   const Clock& clock,
                   double top) {
  pugi::xml_node group = svg::put_group(svg, "heading");
  const std::string title = plan_reader::title_of(plan.root().child("weldment"));
  svg::put_text(group, {page_edge, top + 16.0}, title, {16.0, "start", true});
  svg::put_text(group, {page_edge, top + 34.0}, cycle_words(clock), {13.0, "start", true});
  svg::put_text(group,
                {page_edge, top + 50.0},
                bound_words(plan.root().child("timeline")) + ".",
                {letter_px});
  return put_legend(svg, clock, top + 52.0);
}

double put_notes(pugi::xml_node svg, const plan_reader::PlanTree& plan, double top) {
  pugi::xml_node group = svg::put_group(svg, "notes");
  double y = top;
  const auto put_note = [&](const std::string& words) {
    svg::put_text(group, {page_edge, y += line_px}, words, {letter_px});
  };
  put_note(
      "Hours and minutes from the first move. Above the arcs the seam with its passes, where there "
      "is room; below them the stance the part is held in. Axis values stand in the path listing.");
  put_note(
      "Times are for planning: measure before each pass and weld only between preheat and "
      "interpass maximum. Turn only with the robot withdrawn, the first full turn slowly and with "
      "nobody near.");
  if (plan_reader::is_true(plan.root().child("weldment"), "invented")) {
    put_note("Invented demo data: weld nothing to it.");
  }
  return y;
}

}  // namespace seamturn::turn_chart
