// SPDX-License-Identifier: MIT
// Stages, operations and re-hangs in JSON.
#pragma once

#include <nlohmann/json.hpp>

#include "seamturn/plan/plan.hpp"

namespace seamturn::cli {

/// Adds "stages", "operations" and what else tells of the build.
void add_build(const plan::Plan& plan, nlohmann::ordered_json& out);

/// What each re-hang costs: cell, operator and helpers, per part.
[[nodiscard]] nlohmann::ordered_json rehangs_of(const plan::Plan& plan);

}  // namespace seamturn::cli
