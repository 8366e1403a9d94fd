// SPDX-License-Identifier: MIT
// A sequence with its clock kept at every place, so that a change is simulated from where it
// begins.
#pragma once

#include <cstdint>
#include <vector>

#include "detail_precedence.hpp"
#include "detail_run.hpp"
#include "seamturn/order/job.hpp"

namespace seamturn::order {

class Track {
 public:
  Track(const Job& job, const Precedence& precedence, Sequence sequence);

  [[nodiscard]] const Sequence& sequence() const { return sequence_; }
  [[nodiscard]] double cycle_s() const { return cycle_s_; }
  [[nodiscard]] std::size_t place_of(int block) const {
    return place_of_[static_cast<std::size_t>(block)];
  }
  /// Block visits simulated so far.
  [[nodiscard]] std::int64_t visits() const { return visits_; }

  /// True when blocks [begin, middle) and [middle, end) may change places.
  [[nodiscard]] bool may_swap(std::size_t begin, std::size_t middle, std::size_t end) const;

  /// No cycle after the change is shorter: arcs, turns and air moves are counted as they become,
  /// touches and cleanings at their least, waits not at all. Quick; used to leave out simulations.
  [[nodiscard]] double floor_of_swap_s(std::size_t begin,
                                       std::size_t middle,
                                       std::size_t end) const;
  [[nodiscard]] double floor_of_change_s(std::size_t begin, const Sequence& changed) const;

  /// Puts `changed` at the places from `begin` if the cycle is then at most `limit_s`; otherwise
  /// nothing is changed. Pre: the sequence stays valid.
  bool try_change(std::size_t begin, const Sequence& changed, double limit_s);

 private:
  [[nodiscard]] double leg_s(const Step* from, const Step* to) const;
  [[nodiscard]] double inside_s(const Step& step) const;
  [[nodiscard]] const Option& option(const Step& step) const {
    return job_.blocks[static_cast<std::size_t>(step.block)]
        .options[static_cast<std::size_t>(step.option)];
  }
  void set_zones_before(std::size_t place);
  [[nodiscard]] bool run_from(std::size_t begin, double limit_s);
  void measure();

  const Job& job_;
  const Precedence& precedence_;
  Zones zones_;
  Run<NoRecord> run_;
  Sequence sequence_;
  Sequence undo_;
  std::vector<std::size_t> place_of_;
  std::vector<double> works_s_;
  std::vector<double> least_works_s_;
  std::vector<double> inside_s_;  ///< of every option, block by block
  std::vector<std::size_t> inside_first_;
  std::vector<RobotState> before_;     ///< state before each place, and at the end
  std::vector<ZoneState> zone_after_;  ///< of the block's own zone after each place
  std::vector<double> work_before_s_;  ///< least work of the places before
  std::vector<RobotState> trial_before_;
  std::vector<ZoneState> trial_zone_after_;
  std::vector<ZoneState> zone_states_;
  double least_beside_s_ = 0.0;  ///< touches and cleanings no order avoids
  double plain_s_ = 0.0;         ///< arcs, turns and air moves of the sequence
  double cycle_s_ = 0.0;
  double trial_cycle_s_ = 0.0;
  std::int64_t visits_ = 0;
};

}  // namespace seamturn::order
