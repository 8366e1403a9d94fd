// SPDX-License-Identifier: MIT
// The clock of a plan as a strip chart.
#pragma once

#include <string>

#include "plan_reader/plan_reader.hpp"
#include "turn_chart/clock.hpp"

namespace seamturn::turn_chart {

inline constexpr double page_width = 1180.0;
inline constexpr double page_edge = 14.0;
inline constexpr double plot_left = 82.0;  ///< names of the lanes stand before it
inline constexpr double plot_width = 1080.0;

/// True where some arc is on the clock.
[[nodiscard]] bool has_chart(const plan_reader::PlanTree& plan);
/// Throws std::runtime_error when the plan is damaged.
[[nodiscard]] std::string chart_svg(const plan_reader::PlanTree& plan);

/// Each puts its part below `top` and returns where it ends.
[[nodiscard]] double put_heading(pugi::xml_node svg,
                                 const plan_reader::PlanTree& plan,
                                 const Clock& clock,
                                 double top);
/// The clock in strips of one length, one below the other, as on paper of a recorder.
[[nodiscard]] double put_strips(pugi::xml_node svg, const Clock& clock, double top);
[[nodiscard]] double put_notes(pugi::xml_node svg, const plan_reader::PlanTree& plan, double top);

}  // namespace seamturn::turn_chart
