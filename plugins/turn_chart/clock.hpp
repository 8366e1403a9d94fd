// SPDX-License-Identifier: MIT
// The clock of a plan as the chart draws it.
#pragma once

#include <string>
#include <vector>

#include "plan_reader/plan_reader.hpp"

namespace seamturn::turn_chart {

/// A lane of the chart, and what is drawn in it.
enum class Lane { arc, turn, robot, wait, people };

struct KindStyle {
  const char* kind;  ///< as plan.xml names it
  Lane lane;
  const char* fill;   ///< light and dark enough to be told apart in a grey print
  const char* words;  ///< for the legend
};
/// Every kind of second, in the order of the legend.
[[nodiscard]] const std::vector<KindStyle>& kind_styles();

struct Event {
  const KindStyle* style = nullptr;
  double start_s = 0.0;
  double end_s = 0.0;
  std::string stance;  ///< empty: at rest, or on the crane
  std::string label;   ///< what is worked on; empty: nothing to be said
  int pass = 0;        ///< arcs only
};

struct Clock {
  std::vector<Event> events;  ///< one after another, none of no time
  double cycle_s = 0.0;
};

/// Throws std::runtime_error when kinds are unknown or events run over one another, with what was
/// found.
[[nodiscard]] Clock clock_of(const plan_reader::PlanTree& plan);

/// "1:02:03" hours, minutes, seconds; "0:45" below an hour is minutes and seconds.
[[nodiscard]] std::string seconds_text(double seconds);
/// "1:05" hours and minutes.
[[nodiscard]] std::string minutes_text(double seconds);

}  // namespace seamturn::turn_chart
