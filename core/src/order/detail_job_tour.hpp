// SPDX-License-Identifier: MIT
// The job without its clock: what any two blocks in a row cost at least.
#pragma once

#include "detail_precedence.hpp"
#include "detail_run.hpp"
#include "detail_tour.hpp"
#include "seamturn/order/job.hpp"

namespace seamturn::order {

/// A tour's cost and `always_s` together are never above the cycle of the same blocks and options
/// on the clock: waits that other blocks may fill, touches of a place found untouched in the same
/// visit, heating again and the ways to cleaning are left out.
struct JobTour {
  TourProblem problem;        ///< group 0: the start, then the blocks, then the end
  std::vector<Step> step_of;  ///< per vertex; block -1 at both ends
  double always_s = 0.0;      ///< work, heating, cleaning and first touches no order avoids
};

/// Cost: vertices squared. Pre: check_job passed.
[[nodiscard]] JobTour job_tour(const Job& job, const Precedence& precedence, const Zones& zones);

/// Number of vertices it would have.
[[nodiscard]] std::size_t job_tour_size(const Job& job);

[[nodiscard]] Sequence sequence_of(const JobTour& tour, const Tour& vertices);
[[nodiscard]] Tour tour_of(const JobTour& tour, const Sequence& sequence);

}  // namespace seamturn::order
