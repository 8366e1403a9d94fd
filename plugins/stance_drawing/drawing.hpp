// SPDX-License-Identifier: MIT
// A stance as a picture: the part as it hangs, the seams welded there, the torch.
#pragma once

#include <string>

#include "plan_reader/plan_reader.hpp"
#include "stance_drawing/panel.hpp"
#include "stance_drawing/scene.hpp"

namespace seamturn::stance_drawing {

inline constexpr double page_width = 1180.0;
inline constexpr double page_edge = 14.0;
inline constexpr const char* metal_colour = "#222222";
inline constexpr const char* fixture_colour = "#8a8a8a";
inline constexpr const char* axis_colour = "#777777";
inline constexpr const char* weld_colour = "#b3421a";
inline constexpr const char* torch_colour = "#1f5fa8";

/// Throws std::runtime_error when the plan has no such stance or is damaged.
[[nodiscard]] std::string stance_svg(const plan_reader::PlanTree& plan, const std::string& stance);

/// The scene on a panel: edges, axes, seams, torches, centre of gravity.
enum class Names { none, seams };
void put_scene(pugi::xml_node svg, const Scene& scene, const Panel& panel, Names names);
/// The floor as a line across a panel seen from the side.
void put_floor(pugi::xml_node svg, const Panel& panel);

/// Each puts its part below `top` and returns where it ends.
[[nodiscard]] double put_heading(pugi::xml_node svg,
                                 const plan_reader::PlanTree& plan,
                                 const Scene& scene,
                                 double top);
/// Nothing where nobody works, or nothing is welded.
[[nodiscard]] double put_work(pugi::xml_node svg, const Scene& scene, double top);
[[nodiscard]] double put_weld_table(pugi::xml_node svg, const Scene& scene, double top);
[[nodiscard]] double put_notes(pugi::xml_node svg, const plan_reader::PlanTree& plan, double top);

}  // namespace seamturn::stance_drawing
