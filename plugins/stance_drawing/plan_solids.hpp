// SPDX-License-Identifier: MIT
// The shapes of plan.xml as solids.
#pragma once

#include <variant>

#include "plan_reader/plan_reader.hpp"
#include "stance_drawing/solid.hpp"

namespace seamturn::stance_drawing {

/// A corner at the origin.
[[nodiscard]] Block block(double length_mm, double width_mm, double height_mm);
/// Of a member, in its own frame. Throws std::runtime_error for a shape not known here.
[[nodiscard]] std::variant<Block, Turned> shape_of(const pugi::xml_node& member);

}  // namespace seamturn::stance_drawing
