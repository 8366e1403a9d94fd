// SPDX-License-Identifier: MIT
// Orders that nobody searched for, beside the one found.
#pragma once

#include "detail_order_job.hpp"
#include "seamturn/order/search.hpp"
#include "seamturn/plan/plan.hpp"

namespace seamturn::planner::detail {

/// Where part and torch are while a sequence is put together.
struct Held {
  int stance = 0;
  geom::Vec3 tip_W = geom::Vec3::Zero();
};

/// Option soonest reached from where the part is held; of equals the one that begins nearer.
[[nodiscard]] int soonest_option(const order::Job& job,
                                 const order::Block& block,
                                 const Held& held);

/// Always the first block, as the job lists them, that may come now (work of people before all
/// welds), held in the stance that is soonest reached and begun from the nearer end: how a file is
/// run when nobody thinks about its order. The job lists blocks seam by seam in the order of the
/// file. Pre: check_job passed. Source: none - rules of this model. Tests: planner/other_orders.
[[nodiscard]] order::Sequence sequence_of_file(const order::Job& job);

/// Adds a stage's greedy order and the order of its file to those of the stages before.
/// Pre: `found` is of this job.
void compare_orders(const OrderJob& order_job, const order::Found& found, plan::Plan& plan);

}  // namespace seamturn::planner::detail
