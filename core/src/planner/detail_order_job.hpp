// SPDX-License-Identifier: MIT
// Third stage: the ordering problem of a weldment, and the way back from its answer.
#pragma once

#include <vector>

#include "detail_stages.hpp"
#include "detail_starts.hpp"
#include "detail_twins.hpp"
#include "detail_work.hpp"
#include "seamturn/order/job.hpp"

namespace seamturn::planner::detail {

/// Which passes of which seam a block of the job stands for.
struct BlockOrigin {
  int seam = -1;            ///< index into all_seams; -1: an operation
  std::vector<int> passes;  ///< indices into the stack
  int operation = -1;       ///< index into the stage's operations
};

struct OrderJob {
  order::Job job;
  std::vector<BlockOrigin> origins;                ///< per block
  std::vector<std::vector<Placement>> placements;  ///< per seam; Option::tag indexes it
  std::vector<std::vector<LayerStart>> starts;     ///< per seam and layer; none: nothing asked for
  std::vector<Gaps> gaps;                          ///< per seam; both sides of a groove together
  std::vector<int> pool_stance;                    ///< job stance -> pool stance; -1: rest position
  std::vector<Twins> twins;                        ///< both welded in this stage
  std::vector<std::string> by_hand;                ///< entries of the orders by hand
  std::vector<std::pair<int, int>> hand_links;     ///< block and the one it comes after, by hand
  std::vector<base::Finding> findings;             ///< rules that contradict one another
};

/// The job of one stage. One block per layer; a layer whose passes must wait for one another is cut
/// into its passes, so that other seams can fill the wait. Cost: linear in options, quadratic in
/// stances (turn table). Operations at the stage's start come before all welds, in the order of the
/// file, those at its end after all. `last`: the table may be left as it stands.
[[nodiscard]] OrderJob make_order_job(const Inputs& inputs,
                                      const StageWork& stage,
                                      const std::vector<SeamRef>& seams,
                                      const StancePool& pool,
                                      const std::vector<std::vector<Placement>>& placements,
                                      bool last);

}  // namespace seamturn::planner::detail
