// SPDX-License-Identifier: MIT
#include "turn_chart/clock.hpp"

#include <cmath>
#include <stdexcept>

namespace seamturn::turn_chart {

using plan_reader::number;
using plan_reader::text;

namespace {

const KindStyle& style_of(const std::string& kind) {
  for (const KindStyle& style : kind_styles()) {
    if (kind == style.kind) return style;
  }
  throw std::runtime_error("plan.xml: an event is of kind \"" + kind +
                           "\", which this chart does not know");
}

/// What stands beside a bar: the seam; of people's work the operation, or what they do to a seam.
std::string label_of(pugi::xml_node event, const KindStyle& style, bool heats_all) {
  const std::string seam = text(event, "seam");
  const std::string operation = text(event, "operation");
  if (style.lane == Lane::arc) return seam;
  if (style.lane != Lane::people) return {};
  if (!operation.empty()) return operation;
  if (heats_all && style.kind == std::string("heat")) return "heat all";
  return seam.empty() ? style.kind : std::string(style.kind) + " " + seam;
}

std::string two_digits(long value) {
  return (value < 10 ? "0" : "") + std::to_string(value);
}

}  // namespace

const std::vector<KindStyle>& kind_styles() {
  static const std::vector<KindStyle> styles = {
      {"arc", Lane::arc, "#1d3f66", "arc"},
      {"turn", Lane::turn, "#d98e04", "turn"},
      {"air", Lane::robot, "#c4cad1", "air"},
      {"touch", Lane::robot, "#7f8a96", "touch"},
      {"clean", Lane::robot, "#4b545e", "clean"},
      {"other", Lane::robot, "#e2e5e9", "other (arc start, crater)"},
      {"wait", Lane::wait, "url(#wait)", "wait"},
      {"gouge", Lane::people, "#6b4f8a", "gouge"},
      {"heat", Lane::people, "#d0684a", "heat"},
      {"work", Lane::people, "#9fbf9a", "work of people"},
      {"hang", Lane::people, "#55785a", "hang by crane"}};
  return styles;
}

Clock clock_of(const plan_reader::PlanTree& plan) {
  const pugi::xml_node timeline = plan.root().child("timeline");
  const bool heats_all =
      plan_reader::is_true(plan.root().child("consumables").child("heating"), "holds");
  Clock clock;
  clock.cycle_s = timeline.attribute("cycle_s") ? number(timeline, "cycle_s") : 0.0;
  constexpr double rounding_s = 1e-6;
  double now_s = 0.0;
  for (const pugi::xml_node node : timeline.children("event")) {
    Event event;
    event.style = &style_of(text(node, "kind"));
    event.start_s = number(node, "start_s");
    event.end_s = number(node, "end_s");
    if (event.start_s < now_s - rounding_s || event.end_s < event.start_s ||
        event.end_s > clock.cycle_s + rounding_s) {
      throw std::runtime_error("plan.xml: an event from " + std::string(text(node, "start_s")) +
                               " s to " + text(node, "end_s") +
                               " s runs back, over the one before it or past the cycle");
    }
    now_s = event.end_s;
    event.stance = text(node, "stance");
    event.label = label_of(node, *event.style, heats_all);
    if (event.style->lane == Lane::arc) event.pass = static_cast<int>(number(node, "pass"));
    if (event.end_s > event.start_s) clock.events.push_back(event);
  }
  return clock;
}

std::string seconds_text(double seconds) {
  const long all = std::lround(seconds);
  const long hours = all / 3600;
  const long minutes = all / 60 % 60;
  const std::string tail = ":" + two_digits(all % 60);
  return hours > 0 ? std::to_string(hours) + ":" + two_digits(minutes) + tail
                   : std::to_string(minutes) + tail;
}

std::string minutes_text(double seconds) {
  const long minutes = std::lround(seconds / 60.0);
  return std::to_string(minutes / 60) + ":" + two_digits(minutes % 60);
}

}  // namespace seamturn::turn_chart
