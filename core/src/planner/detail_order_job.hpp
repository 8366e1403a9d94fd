// SPDX-License-Identifier: MIT
// Third stage: the ordering problem of a weldment, and the way back from its answer.
#pragma once

#include <vector>

#include "detail_starts.hpp"
#include "detail_work.hpp"
#include "seamturn/order/job.hpp"

namespace seamturn::planner::detail {

/// Which passes of which seam a block of the job stands for.
struct BlockOrigin {
  int seam = 0;             ///< index into all_seams
  std::vector<int> passes;  ///< indices into the stack
};

struct OrderJob {
  order::Job job;
  std::vector<BlockOrigin> origins;                ///< per block
  std::vector<std::vector<Placement>> placements;  ///< per seam; Option::tag indexes it
  std::vector<std::vector<LayerStart>> starts;     ///< per seam and layer; none: nothing asked for
  std::vector<Gaps> gaps;                          ///< per seam; both sides of a groove together
  std::vector<int> pool_stance;                    ///< job stance -> pool stance; -1: rest position
};

/// One block per layer; a layer whose passes must wait for one another is cut into its passes, so
/// that other seams can fill the wait. Cost: linear in options, quadratic in stances (turn table).
[[nodiscard]] OrderJob make_order_job(const Inputs& inputs,
                                      const std::vector<SeamRef>& seams,
                                      const StancePool& pool,
                                      const std::vector<std::vector<Placement>>& placements);

}  // namespace seamturn::planner::detail
