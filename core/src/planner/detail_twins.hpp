// SPDX-License-Identifier: MIT
// Seams that pull the part opposite ways, found by where they lie.
#pragma once

#include <string>
#include <vector>

#include "detail_work.hpp"
#include "seamturn/plan/balance.hpp"

namespace seamturn::planner::detail {

/// Indices into all_seams, the first in the order of the file.
struct Twins {
  std::size_t first = 0;
  std::size_t second = 0;
  plan::TwinKind kind = plan::TwinKind::plate;
  std::string off;      ///< reason of the file not to keep step; empty: they do
  std::string against;  ///< rules of the file that go before balance, where some do
};

/// Pairs among the seams with a place: stated ones, both sides of a groove, and of seams between
/// the same two members both sides of a plate and rings about one axis. By rule a seam has one
/// twin at most, the nearest; stated ones come on top. Frame J.
/// Source: none - geometry; a rule of our own (docs/methods/order.md). Tests: planner/twins.
[[nodiscard]] std::vector<Twins> find_twins(const Inputs& inputs,
                                            const std::vector<SeamRef>& seams);

/// Seams that make one course together. Ranks: of a layer, all seams of one are welded before those
/// of the next. Rings: one seam a rank, opposite ones in turn, 1 3 2 4, 1 4 2 5 3 6.
struct Run {
  bool ring = false;
  std::vector<std::vector<std::size_t>> ranks;
};
/// Courses in segments, and rings drawn as three arcs or more between the same two members.
/// Tests: planner/twins, planner/segments.
[[nodiscard]] std::vector<Run> find_runs(const std::vector<SeamRef>& seams);

}  // namespace seamturn::planner::detail
