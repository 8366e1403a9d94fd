// SPDX-License-Identifier: MIT
// plan.xml: the finished plan for writers and archives (urn:seamturn:plan:1,
// docs/schemas/plan.xsd).
#pragma once

#include <string>
#include <string_view>

#include "seamturn/plan/plan.hpp"

namespace seamturn::io {

inline constexpr std::string_view plan_namespace = "urn:seamturn:plan:1";

/// The plan as XML. Bare numbers with the unit in the name; shortest text that reads back.
/// Same plan, same bytes.
/// Pre: every number finite; seams and stances named by the plan exist in it.
/// Tests: io/plan_xml - validated against the schema, write twice.
[[nodiscard]] std::string plan_xml(const plan::Plan& plan);

/// True when the bytes start like a plan of ours (root element and namespace), so that a saved plan
/// can be told from a weldment.
[[nodiscard]] bool is_plan_xml(std::string_view bytes);

/// Checks a saved plan before it is handed to a writer. Throws base::InputError when it is no plan,
/// is broken, lacks a part, or has a newer major schema. Does not check every element: a writer
/// still says what it misses.
void check_plan_xml(std::string_view bytes, const std::string& file_name);

}  // namespace seamturn::io
