// SPDX-License-Identifier: MIT
// Stages, operations, turns, re-hangs and the orders beside the one planned in JSON.
#pragma once

#include <nlohmann/json.hpp>

#include "seamturn/plan/plan.hpp"

namespace seamturn::cli {

/// Adds "turns" (what each asks of the axes), "stages", "operations" and what else tells of the
/// build.
void add_build(const plan::Plan& plan, nlohmann::ordered_json& out);

/// Adds "other_orders" where something is turned.
void add_other_orders(const plan::Plan& plan, nlohmann::ordered_json& out);

/// What each re-hang costs: cell, operator and helpers, per part.
[[nodiscard]] nlohmann::ordered_json rehangs_of(const plan::Plan& plan);

}  // namespace seamturn::cli
