// SPDX-License-Identifier: MIT
#include <algorithm>

#include "detail_order_links.hpp"

namespace seamturn::planner::detail {

namespace {

std::size_t at(int block) {
  return static_cast<std::size_t>(block);
}

/// Of links asked for twice the first reason counts; nothing within a seam.
std::string rule_of(const order::Job& job, int block, int after) {
  for (const order::LinkReason& reason : job.reasons) {
    if (reason.block == block && reason.after == after) return reason.rule;
  }
  return "";
}

/// From a block to the one it was reached from, each the after of the next.
std::vector<std::string> rules_on_way(const order::Job& job,
                                      const std::vector<int>& reached_from,
                                      int block,
                                      int start) {
  std::vector<std::string> rules;
  for (int now = block; now != start; now = reached_from[at(now)]) {
    const std::string rule = rule_of(job, reached_from[at(now)], now);
    const bool told = std::find(rules.begin(), rules.end(), rule) != rules.end();
    if (!rule.empty() && !told) rules.push_back(rule);
  }
  return rules;
}

/// Per seam, the blocks of its parts: `part` tells which part a pass belongs to, from 0.
template <class Part>
std::vector<std::vector<LayerBlocks>> parts_of(const OrderJob& order, const Part& part) {
  std::vector<std::vector<LayerBlocks>> parts(order.placements.size());
  for (std::size_t b = 0; b < order.origins.size(); ++b) {
    const BlockOrigin& origin = order.origins[b];
    if (origin.seam < 0) continue;
    const auto seam = static_cast<std::size_t>(origin.seam);
    for (const int pass : origin.passes) {
      const std::size_t index = part(seam, static_cast<std::size_t>(pass));
      if (parts[seam].size() <= index) parts[seam].resize(index + 1);
      LayerBlocks& blocks = parts[seam][index];
      if (blocks.first < 0) blocks.first = static_cast<int>(b);
      blocks.last = static_cast<int>(b);
    }
  }
  return parts;
}

}  // namespace

void add_link(order::Job& job, int block, int after, std::string rule) {
  job.blocks[at(block)].after.push_back(after);
  job.reasons.push_back({block, after, std::move(rule)});
}

std::optional<std::vector<std::string>> against_link(const order::Job& job, int block, int after) {
  std::vector<int> reached_from(job.blocks.size(), -1);
  std::vector<int> open = {after};
  reached_from[at(after)] = after;
  while (!open.empty()) {
    const int now = open.back();
    open.pop_back();
    if (now == block) return rules_on_way(job, reached_from, block, after);
    for (const int before : job.blocks[at(now)].after) {
      if (reached_from[at(before)] >= 0) continue;
      reached_from[at(before)] = now;
      open.push_back(before);
    }
  }
  return std::nullopt;
}

std::vector<std::vector<LayerBlocks>> layers_of(const std::vector<SeamRef>& seams,
                                                const OrderJob& order) {
  return parts_of(order, [&](std::size_t seam, std::size_t pass) {
    const Placement& placement = order.placements[seam].front();
    const StackChoice& choice = seams[seam].work->stacks[static_cast<std::size_t>(placement.stack)];
    return static_cast<std::size_t>(choice.stack.passes[pass].layer) - 1;
  });
}

std::vector<std::vector<LayerBlocks>> passes_of(const OrderJob& order) {
  return parts_of(order, [](std::size_t, std::size_t pass) { return pass; });
}

order::Job without_hand_order(const OrderJob& order) {
  order::Job job = order.job;
  for (const auto& [block, before] : order.hand_links) {
    std::vector<int>& after = job.blocks[at(block)].after;
    const auto link = std::find(after.begin(), after.end(), before);
    if (link != after.end())
      after.erase(link);  // another rule may ask for the same: that one stays
  }
  return job;
}

}  // namespace seamturn::planner::detail
