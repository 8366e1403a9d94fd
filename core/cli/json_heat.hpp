// SPDX-License-Identifier: MIT
#pragma once

#include <nlohmann/json.hpp>

#include "seamturn/plan/plan.hpp"

namespace seamturn::cli {

/// What heat asks of a joint and leaves to do, for joints --json.
[[nodiscard]] nlohmann::ordered_json heat_entry(const plan::PlannedJoint& joint);

}  // namespace seamturn::cli
