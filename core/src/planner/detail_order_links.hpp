// SPDX-License-Identifier: MIT
// What must come before what in the order of a stage, each link with the rule that asks for it.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "detail_order_job.hpp"

namespace seamturn::planner::detail {

/// Adds a link whatever it closes.
void add_link(order::Job& job, int block, int after, std::string rule);

/// Why a link cannot be added: the rules by which `after` must itself come after `block`, in the
/// order found; links within a seam name none. Nothing when it can be added.
[[nodiscard]] std::optional<std::vector<std::string>> against_link(const order::Job& job,
                                                                   int block,
                                                                   int after);

/// First and last block of a layer, or the one of a pass.
struct LayerBlocks {
  int first = -1;
  int last = -1;
};
/// Per seam, layers from the root up; none for seams the stage does not weld.
[[nodiscard]] std::vector<std::vector<LayerBlocks>> layers_of(const std::vector<SeamRef>& seams,
                                                              const OrderJob& order);
/// Per seam, passes as numbered.
[[nodiscard]] std::vector<std::vector<LayerBlocks>> passes_of(const OrderJob& order);

/// The links of the weldment's orders by hand and of balance, after all others: what a person fixed
/// goes before balance, and a link against the file is left out and told. Fills hand_links, twins
/// and findings of the job.
/// Outside: errors order.hand.contradicts, order.hand.layer, order.hand.no_place,
/// order.balance.contradicts; note order.balance.yields. Source: docs/methods/order.md.
void add_rules(const Inputs& inputs,
               const StageWork& stage,
               const std::vector<SeamRef>& seams,
               OrderJob& order);

/// The same job as if nothing were fixed by hand; all other links stay.
[[nodiscard]] order::Job without_hand_order(const OrderJob& order);

}  // namespace seamturn::planner::detail
