// SPDX-License-Identifier: MIT
// The clock cut into strips of one length.
#include <algorithm>
#include <array>
#include <cmath>

#include "svg/svg.hpp"
#include "turn_chart/chart.hpp"

namespace seamturn::turn_chart {

using plan_reader::put;
using plan_reader::rounded;

namespace {

constexpr double lane_px = 13.0;
constexpr double bar_px = 11.0;
constexpr double label_px = 8.5;
constexpr double label_row_px = 9.0;
constexpr std::size_t label_rows = 2;
constexpr double between_strips_px = 16.0;
constexpr std::size_t lanes = 5;
constexpr std::array<const char*, lanes> lane_names = {"arc", "turn", "robot", "wait", "people"};
constexpr double lanes_top_px = label_rows * label_row_px + 3.0;
constexpr double stance_row_px = 11.0;  ///< below the arcs
constexpr double strip_px = lanes_top_px + lanes * lane_px + stance_row_px;

struct Span {
  double strip_s;
  double tick_s;
};

/// The shortest strips that a page holds.
Span span_of(const Clock& clock) {
  constexpr std::array<Span, 8> spans = {{{300.0, 60.0},
                                          {600.0, 120.0},
                                          {900.0, 180.0},
                                          {1800.0, 300.0},
                                          {3600.0, 600.0},
                                          {7200.0, 1200.0},
                                          {14400.0, 2400.0},
                                          {28800.0, 3600.0}}};
  constexpr double most_strips = 16.0;
  Span span = spans.front();
  for (const Span& longer : spans) {
    span = longer;
    if (clock.cycle_s <= most_strips * span.strip_s) return span;
  }
  while (clock.cycle_s > most_strips * span.strip_s) {
    span.strip_s *= 2.0;
    span.tick_s *= 2.0;
  }
  return span;
}

double lane_top(Lane lane) {
  const auto index = static_cast<double>(lane);
  return lanes_top_px + index * lane_px + (lane == Lane::arc ? 0.0 : stance_row_px);
}

/// A stretch of the clock with one label: the arcs of a seam among one another, a stay in a stance.
struct Run {
  double start_s;
  double end_s;
  std::string label;
};

double width_of(const Run& run) {
  return svg::text_width(run.label, label_px, svg::figures_letter);
}

/// "J1.a 2-4": seams with their passes, as long as nothing else is welded.
std::vector<Run> arc_runs(const Clock& clock) {
  std::vector<Run> runs;
  std::string seam;
  int first = 0;
  for (const Event& event : clock.events) {
    if (event.style->lane != Lane::arc) continue;
    if (runs.empty() || seam != event.label) {
      runs.push_back({event.start_s, event.end_s, {}});
      seam = event.label;
      first = event.pass;
    }
    runs.back().end_s = event.end_s;
    runs.back().label = seam + " " + std::to_string(first) +
                        (event.pass > first ? "-" + std::to_string(event.pass) : std::string());
  }
  return runs;
}

std::vector<Run> people_runs(const Clock& clock) {
  std::vector<Run> runs;
  for (const Event& event : clock.events) {
    if (event.style->lane != Lane::people) continue;
    runs.push_back({event.start_s, event.end_s, event.label});
  }
  return runs;
}

/// From the turn that leads there until the part is turned again.
std::vector<Run> stance_runs(const Clock& clock) {
  std::vector<Run> runs;
  std::string held;
  for (const Event& event : clock.events) {
    if (event.stance.empty()) {
      held.clear();
      continue;
    }
    if (event.stance != held) runs.push_back({event.start_s, event.end_s, event.stance});
    held = event.stance;
    runs.back().end_s = event.end_s;
  }
  return runs;
}

class Strip {
 public:
  Strip(pugi::xml_node svg, const Span& span, double end_s, std::size_t number, double top)
      : group_(svg::put_group(svg, "strip")),
        span_(span),
        from_s_(static_cast<double>(number) * span.strip_s),
        to_s_(std::min(end_s, from_s_ + span.strip_s)),
        top_(top) {}

  void put_axis() {
    pugi::xml_node axis = svg::put_group(group_, "axis");
    put(axis, "fill", "#555555");
    const double bottom = top_ + strip_px;
    for (double at_s = from_s_; at_s <= from_s_ + span_.strip_s + 0.5; at_s += span_.tick_s) {
      const double x = x_of(at_s);
      svg::put_line(
          axis, {x, top_ + lanes_top_px}, {x, bottom + 2.0}, {"none", "#bbbbbb", 0.6, nullptr});
      svg::put_text(axis, {x, bottom + 10.5}, minutes_text(at_s), {label_px, "middle"});
    }
    for (std::size_t i = 0; i < lanes; ++i) {
      const double y = top_ + lane_top(static_cast<Lane>(i)) + bar_px - 2.0;
      svg::put_text(axis, {plot_left - 6.0, y}, lane_names[i], {10.0, "end"});
    }
  }

  /// Bars of one kind are one path, each a thick stroke along the clock: M(start),(lane)h(length).
  void put_bars(const Clock& clock, const KindStyle& style) {
    const std::string y = rounded(top_ + lane_top(style.lane) + bar_px / 2.0, 1);
    std::string data;
    for (const Event& event : clock.events) {
      if (event.style != &style) continue;
      const double from_s = std::max(event.start_s, from_s_);
      const double to_s = std::min(event.end_s, to_s_);
      if (to_s <= from_s) continue;
      // Three decimals, so that the lengths of many short bars still add up.
      data +=
          "M" + rounded(x_of(from_s), 3) + "," + y + "h" + rounded(x_of(to_s) - x_of(from_s), 3);
    }
    if (data.empty()) return;
    pugi::xml_node bars = group_.append_child("path");
    put(bars, "class", style.kind);
    put(bars, "d", data);
    put(bars, "stroke", style.fill);
    put(bars, "stroke-width", rounded(bar_px, 1));
  }

  /// Where a label would run into the one before it goes a row higher, or is left out.
  void put_seams(const std::vector<Run>& runs) {
    pugi::xml_node names = svg::put_group(group_, "seams");
    std::array<double, label_rows> free_from{};
    for (const Run& run : runs) {
      if (run.start_s < from_s_ || run.start_s >= to_s_) continue;
      const double x = x_of(run.start_s);
      const double width = width_of(run);
      if (x + width > page_width) continue;
      for (std::size_t row = 0; row < label_rows; ++row) {
        if (free_from[row] > x) continue;
        const double up = static_cast<double>(row) * label_row_px;
        svg::put_text(names, {x, top_ + lanes_top_px - 2.5 - up}, run.label, {label_px});
        free_from[row] = x + width + 3.0;
        break;
      }
    }
  }

  void put_stances(const std::vector<Run>& runs) {
    pugi::xml_node stances = svg::put_group(group_, "stances");
    const double y = top_ + lanes_top_px + lane_px;
    std::string brackets;
    for (const Run& run : runs) {
      const double from_s = std::max(run.start_s, from_s_);
      const double to_s = std::min(run.end_s, to_s_);
      if (to_s <= from_s) continue;
      const double x = x_of(from_s);
      const double width = x_of(to_s) - x;
      brackets += "M" + rounded(x, 1) + "," + rounded(y - 1.0, 1) + "v9h" + rounded(width, 1);
      if (width < width_of(run) + 3.0) continue;
      svg::put_text(stances, {x + 2.0, y + 6.5}, run.label, {label_px});
    }
    if (brackets.empty()) return;
    pugi::xml_node lines = group_.append_child("path");
    put(lines, "class", "stays");
    put(lines, "d", brackets);
    put(lines, "fill", "none");
    put(lines, "stroke", "#111111");
    put(lines, "stroke-width", "0.6");
  }

  void put_people(const std::vector<Run>& runs) {
    pugi::xml_node names = svg::put_group(group_, "work-names");
    for (const Run& run : runs) {
      const double from_s = std::max(run.start_s, from_s_);
      const double to_s = std::min(run.end_s, to_s_);
      if (to_s <= from_s) continue;
      const double x = x_of(from_s);
      const double width = width_of(run);
      if (x_of(to_s) - x < width + 4.0) continue;
      // White behind the letters, whatever colour the bar has.
      const double y = top_ + lane_top(Lane::people) + bar_px - 2.0;
      svg::put_box(names, {{x + 1.0, y - 7.5}, {x + width + 3.0, y + 1.0}}, {"#ffffff", nullptr});
      svg::put_text(names, {x + 2.0, y - 0.5}, run.label, {label_px});
    }
  }

 private:
  [[nodiscard]] double x_of(double at_s) const {
    return plot_left + (at_s - from_s_) * plot_width / span_.strip_s;
  }

  pugi::xml_node group_;
  Span span_;
  double from_s_;
  double to_s_;
  double top_;
};

}  // namespace

double put_strips(pugi::xml_node svg, const Clock& clock, double top) {
  const Span span = span_of(clock);
  const std::vector<Run> seams = arc_runs(clock);
  const std::vector<Run> stances = stance_runs(clock);
  const std::vector<Run> people = people_runs(clock);
  const auto strips = static_cast<std::size_t>(std::ceil(clock.cycle_s / span.strip_s - 1e-9));
  double y = top;
  for (std::size_t i = 0; i < strips; ++i) {
    Strip strip(svg, span, clock.cycle_s, i, y);
    strip.put_axis();
    for (const KindStyle& style : kind_styles()) strip.put_bars(clock, style);
    strip.put_stances(stances);
    strip.put_people(people);
    strip.put_seams(seams);
    y += strip_px + between_strips_px;
  }
  return y;
}

}  // namespace seamturn::turn_chart
