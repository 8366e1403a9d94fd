// SPDX-License-Identifier: MIT
// What people read on the terminal: at most 100 columns, digits a person would write.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/figures/catalogue.hpp"
#include "seamturn/figures/explain.hpp"
#include "seamturn/plan/plan.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"
#include "table.hpp"
#include "units_shown.hpp"

namespace seamturn::cli {

[[nodiscard]] std::string joints_text(const plan::Plan& plan, const UnitsShown& units);
/// Bands of every seam; empty when no library states tolerances.
[[nodiscard]] std::string fit_up_text(const plan::Plan& plan, const UnitsShown& units);
[[nodiscard]] std::string turns_text(const plan::Plan& plan, const UnitsShown& units);
/// The worst turns of the loaded positioner; empty where none was judged.
[[nodiscard]] std::string turn_loads_text(const plan::Plan& plan, const UnitsShown& units);
/// The stages as a table; empty where the file names none. The heading of one in the order's list.
[[nodiscard]] std::string stages_text(const plan::Plan& plan, const UnitsShown& units);
/// What tacks carry, the part on the hook, what welds do to datums; empty where nothing is stated.
[[nodiscard]] std::string build_text(const plan::Plan& plan, const UnitsShown& units);
/// What orders by hand cost, and how evenly sides grow; empty where there is nothing of both.
/// The order as <hand-order>, to put into the weldment and change.
[[nodiscard]] std::string order_to_edit_text(const plan::Plan& plan);
[[nodiscard]] std::string order_rules_text(const plan::Plan& plan, const UnitsShown& units);
[[nodiscard]] std::string stage_heading(const plan::Plan& plan, const plan::PlannedStage& stage);
[[nodiscard]] std::string gates_text(const plan::Plan& plan, const UnitsShown& units);
/// Seam -> the letter its gate has in gates_text.
[[nodiscard]] std::map<std::string, std::string> gate_letters(const plan::Plan& plan);
/// Seconds by kind, what of them is arc, the orders nobody searched for, and the bound.
[[nodiscard]] std::string clock_report(const plan::Plan& plan);
[[nodiscard]] std::string cost_text(const plan::Plan& plan, const UnitsShown& units);
/// Head, totals, order and price in a few lines, the documents written, and the cautions.
[[nodiscard]] std::string summary_text(const plan::Plan& plan,
                                       const UnitsShown& units,
                                       const std::string& folder,
                                       const std::vector<std::string>& files);
[[nodiscard]] std::string figure_text(const figures::FigureResult& result,
                                      const base::FigureCard& card);
/// The chain of a joint, step by step.
[[nodiscard]] std::string explain_text(const std::string& joint,
                                       const std::vector<figures::ExplainStep>& steps,
                                       const UnitsShown& units);
[[nodiscard]] std::string card_text(const base::FigureCard& card);
[[nodiscard]] std::string cards_text();
[[nodiscard]] std::string plugins_text(const std::vector<plugin_host::Verdict>& verdicts);

/// "Grab hub, revision A (invented demo data)".
[[nodiscard]] std::string title_text(const plan::Plan& plan);
/// Cautions, wrapped, one bullet each.
[[nodiscard]] std::string cautions_text(const std::vector<procedure::Caution>& cautions);
/// Preparation as on a drawing: "fillet a6", "single-bevel 45, depth 12".
[[nodiscard]] std::string preparation_text(const joint::Joint& joint, const UnitsShown& units);

}  // namespace seamturn::cli
