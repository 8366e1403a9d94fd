// SPDX-License-Identifier: MIT
// Operations of people in the ordering problem of a stage.
#pragma once

#include <map>

#include "detail_order_job.hpp"

namespace seamturn::planner::detail {

/// First and last block of each seam that has any.
struct SeamBlocks {
  const std::vector<SeamRef>& seams;
  const std::map<std::size_t, int>& first;
  const std::map<std::size_t, int>& last;
};

/// Adds the stage's operations as blocks after those of its welds. Pre: the stances of the pool
/// they name are among the job's.
void add_operations(const StageWork& stage,
                    const StancePool& pool,
                    const SeamBlocks& blocks,
                    const geom::Vec3& home_W,
                    OrderJob& job);

}  // namespace seamturn::planner::detail
