// SPDX-License-Identifier: MIT
// The order of an earlier plan as a sequence of today's job.
#pragma once

#include "detail_order_job.hpp"
#include "seamturn/planner/earlier_order.hpp"

namespace seamturn::planner::detail {

/// What became of an earlier order, in blocks of today's job.
struct StartCounts {
  int blocks = 0;
  int new_ones = 0;      ///< the earlier plan knows nothing of them
  int brought_on = 0;    ///< had to come earlier, because others may only follow them
  int other_stance = 0;  ///< not held as then: no option of today is
};

/// Blocks in the order of their first pass then, each held as it was, or, where today's job does
/// not hold it so, in the stance soonest reached from there. A block that others must follow is
/// brought on before them. A new one is put in at the first place where it may stand and the part
/// is held as it needs; what never finds one comes last, by the rule of least turning. Adds to the
/// counts. Empty when the earlier plan knows no block of the job. Pre: check_job passed. Cost:
/// linear in passes, options and links, quadratic in new blocks. Source: none - rules of this
/// model. Tests: planner/start_sequence - laws.
[[nodiscard]] order::Sequence start_sequence(const cell::Positioner& positioner,
                                             const StageWork& stage,
                                             const std::vector<SeamRef>& seams,
                                             const StancePool& pool,
                                             const OrderJob& order_job,
                                             const EarlierOrder& earlier,
                                             StartCounts& counts);

}  // namespace seamturn::planner::detail
