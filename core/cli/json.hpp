// SPDX-License-Identifier: MIT
// JSON for programs: docs/json.md is the contract.
#pragma once

#include <string>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/figures/catalogue.hpp"
#include "seamturn/figures/explain.hpp"
#include "seamturn/plan/plan.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"

namespace seamturn::cli {

/// Each ends with a newline. Metric, numbers unrounded (shortest that reads back).
[[nodiscard]] std::string joints_json(const plan::Plan& plan);
[[nodiscard]] std::string turns_json(const plan::Plan& plan);
[[nodiscard]] std::string cost_json(const plan::Plan& plan);
[[nodiscard]] std::string plan_json(const plan::Plan& plan, const std::vector<std::string>& files);
[[nodiscard]] std::string figure_json(const figures::FigureResult& result,
                                      const base::FigureCard& card);
[[nodiscard]] std::string explain_json(const std::string& joint,
                                       const std::vector<figures::ExplainStep>& steps);
[[nodiscard]] std::string cards_json();
[[nodiscard]] std::string findings_json(const std::vector<base::Finding>& findings);
[[nodiscard]] std::string plugins_json(const std::vector<plugin_host::Verdict>& verdicts);

}  // namespace seamturn::cli
