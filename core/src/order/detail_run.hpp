// SPDX-License-Identifier: MIT
// The rules of the clock, once: simulate() and every search run the same lines, with and without a
// record of the events. docs/methods/order.md states them in words.
#pragma once

#include <algorithm>
#include <vector>

#include "detail_air.hpp"
#include "seamturn/order/job.hpp"
#include "seamturn/timeline/clock.hpp"

namespace seamturn::order {

/// Zones renumbered 0 .. count-1 in the order of their first block.
struct Zones {
  std::vector<int> of_block;
  int count = 0;
};
[[nodiscard]] Zones number_zones(const Job& job);

/// What a zone remembers.
struct ZoneState {
  double last_start_s = 0.0;  ///< of the last pass laid in the zone
  double last_end_s = 0.0;
  int touched_in_visit = -1;  ///< stance visit in which the zone was last touched
  bool laid = false;
  bool heated = false;
  double warm_until_s = 0.0;  ///< a pass that starts later finds the place too cold, heated last
  double keep_s = never_s;    ///< the same after the last pass, place by place
  int course = 0;             ///< of the last pass
};

/// Everything the future depends on, zones aside.
struct RobotState {
  double now_s = 0.0;
  double arc_since_clean_s = 0.0;
  geom::Vec3 torch_W = geom::Vec3::Zero();
  int stance = 0;
  int visit = 0;  ///< stance visits begun
  bool home = true;
  bool heated = false;     ///< by heaters that stay on
  bool people_in = false;  ///< the seconds just spent were theirs
  int entries = 0;         ///< of people, so far
  int turns = 0;           ///< of the part, those that take time

  /// What a search makes small.
  [[nodiscard]] double objective_s(const Worth& worth) const { return now_s + avoided_s(worth); }
  /// What entries and turns are worth; on no clock.
  [[nodiscard]] double avoided_s(const Worth& worth) const {
    return entries * worth.entry_s + turns * worth.stance_s;
  }
};

[[nodiscard]] inline RobotState state_at_start(const Job& job) {
  RobotState state;
  state.torch_W = job.home_W;
  state.stance = job.start_stance;
  state.arc_since_clean_s = job.arc_since_clean_s;
  return state;
}

/// Earliest arc start that keeps the gap everywhere: on the same course start after start and end
/// after end; on another one the start may lie where the previous pass ended.
[[nodiscard]] inline double ready_s(const ZoneState& zone, const BlockPass& pass, int course) {
  if (zone.course != course) {
    return zone.last_end_s + pass.gap_s;
  }
  return std::max(zone.last_start_s, zone.last_end_s - pass.arc_s) + pass.gap_s;
}

/// True when a pass whose arc starts then would find its place too cold. What must wait to cool
/// down is not cold: where the two models of cooling contradict each other, waiting wins.
[[nodiscard]] inline bool is_cold(const ZoneState& zone,
                                  const BlockPass& pass,
                                  int course,
                                  double start_s) {
  if (!zone.heated) {
    return true;
  }
  if (start_s <= zone.warm_until_s) {
    return false;
  }
  if (!zone.laid) {
    return true;
  }
  const double coldest_s =  // where the pass before came first and this one comes last
      zone.course != course ? zone.last_start_s - pass.arc_s
                            : std::min(zone.last_start_s, zone.last_end_s - pass.arc_s);
  return start_s > std::max(coldest_s + zone.keep_s, ready_s(zone, pass, course));
}

/// True when the nozzle must be cleaned before this pass. A pass longer than the interval is not
/// interrupted, and with a clean nozzle there is nothing to clean.
[[nodiscard]] inline bool clean_due(const Job& job, double arc_since_clean_s, double arc_s) {
  return job.clean_every_s > 0.0 && arc_since_clean_s > 0.0 &&
         arc_since_clean_s + arc_s > job.clean_every_s;
}

/// Seconds of a pass that lie before its arc in every order.
[[nodiscard]] inline double before_arc_s(const BlockPass& pass) {
  return pass.wind_s + pass.overhead_s;
}

/// Keeps nothing but the time.
struct NoRecord {
  void operator()(timeline::SecondKind, double, int, int, int = -1) const {}
};

/// Runs blocks one after another. Record is called with (kind, seconds, stance, block, pass).
template <class Record>
class Run {
 public:
  using Kind = timeline::SecondKind;
  Run(const Job& job, double retract_s, Record record)
      : job_(job), retract_s_(retract_s), record_(std::move(record)) {}

  /// Welds a block; `zone` is the state of its zone.
  void weld(RobotState& state, ZoneState& zone, const Step& step) const {
    const Block& block = job_.blocks[static_cast<std::size_t>(step.block)];
    const Option& option = block.options[static_cast<std::size_t>(step.option)];
    turn_to(state, option.stance);
    if (block.work_s) {
      go_home(state);
      spend(state, Kind::work, *block.work_s, step.block);
      return;
    }
    if (block.gouge_s > 0.0) {
      gouge(state, step.block, block.gouge_s);
    }
    for (std::size_t k = 0; k < block.passes.size(); ++k) {
      const BlockPass& pass = block.passes[k];
      if (clean_due(job_, state.arc_since_clean_s, pass.arc_s)) {
        clean(state);
      }
      if (block.heat_s > 0.0) heat_if_cold(state, zone, step, k);
      spend(state, Kind::air, air_s(job_, state.torch_W, option.start_W), step.block);
      spend(state, Kind::air, retract_s_, step.block);
      state.home = false;
      if (block.touch_s > 0.0 && zone.touched_in_visit != state.visit) {
        spend(state, Kind::touch, block.touch_s, step.block);
        zone.touched_in_visit = state.visit;
      }
      lay(state, zone, option, pass, Place{step.block, static_cast<int>(k)});
    }
  }

  /// After the last block: home, and the part as it must be left.
  void finish(RobotState& state) const {
    go_home(state);
    if (job_.end_stance) turn_to(state, *job_.end_stance);
  }

 private:
  void go_home(RobotState& state) const {
    if (!state.home) {
      spend(state, Kind::air, air_s(job_, state.torch_W, job_.home_W), -1);
      state.torch_W = job_.home_W;
      state.home = true;
    }
  }

  struct Place {
    int block = 0;
    int pass = 0;
  };

  void spend(RobotState& state, Kind kind, double seconds, int block, int pass = -1) const {
    record_(kind, seconds, state.stance, block, pass);
    state.now_s += seconds;
    const bool by_people = timeline::is_by_people(kind);
    if (seconds <= 0.0 && kind != Kind::work) return;  // no event
    if (by_people && !state.people_in) ++state.entries;
    state.people_in = by_people;
  }

  void turn_to(RobotState& state, int stance) const {
    if (stance == state.stance) {
      return;
    }
    go_home(state);
    const double turn_s =
        job_.turn_s[static_cast<std::size_t>(state.stance)][static_cast<std::size_t>(stance)];
    state.stance = stance;
    ++state.visit;
    if (turn_s > 0.0) ++state.turns;
    spend(state, Kind::turn, turn_s, -1);
  }

  /// People work at the part: the robot is out of their way.
  void gouge(RobotState& state, int block, double seconds) const {
    go_home(state);
    spend(state, Kind::gouge, seconds, block);
  }

  void heat_if_cold(RobotState& state, ZoneState& zone, const Step& step, std::size_t pass) const {
    const Block& block = job_.blocks[static_cast<std::size_t>(step.block)];
    if (job_.heat_once_s > 0.0) {
      if (state.heated) return;
      go_home(state);
      spend(state, Kind::heat, job_.heat_once_s, step.block);
      state.heated = true;
      return;
    }
    const int course = block.options[static_cast<std::size_t>(step.option)].course;
    if (!is_cold(zone, block.passes[pass], course, arc_s(state, zone, step, pass))) return;
    go_home(state);
    spend(state, Kind::heat, block.heat_s, step.block);
    zone.heated = true;
    zone.warm_until_s = state.now_s + block.heat_keep_s;
  }

  /// When the arc of a pass would start, were nothing to wait for.
  double arc_s(const RobotState& state,
               const ZoneState& zone,
               const Step& step,
               std::size_t pass) const {
    const Block& block = job_.blocks[static_cast<std::size_t>(step.block)];
    const Option& option = block.options[static_cast<std::size_t>(step.option)];
    const bool touches = block.touch_s > 0.0 && zone.touched_in_visit != state.visit;
    return state.now_s + air_s(job_, state.torch_W, option.start_W) + retract_s_ +
           (touches ? block.touch_s : 0.0) + before_arc_s(block.passes[pass]);
  }

  void clean(RobotState& state) const {
    go_home(state);
    spend(state, Kind::clean, job_.clean_s, -1);
    state.arc_since_clean_s = 0.0;
  }

  void lay(RobotState& state,
           ZoneState& zone,
           const Option& option,
           const BlockPass& pass,
           Place place) const {
    spend(state, Kind::turn, pass.wind_s, place.block);
    spend(state, Kind::other, pass.overhead_s, place.block);
    if (zone.laid) {
      const double wait_s = ready_s(zone, pass, option.course) - state.now_s;
      if (wait_s > 0.0) {
        spend(state, Kind::wait, wait_s, place.block);
      }
    }
    zone.last_start_s = state.now_s;
    spend(state, Kind::arc, pass.arc_s, place.block, place.pass);
    zone.last_end_s = state.now_s;
    zone.laid = true;
    zone.keep_s = pass.keep_s;
    zone.course = option.course;
    state.arc_since_clean_s += pass.arc_s;
    state.torch_W = option.end_W;
    spend(state, Kind::air, retract_s_, place.block);
    spend(state, Kind::turn, pass.unwind_s, place.block);
  }

  const Job& job_;
  double retract_s_;
  Record record_;
};

[[nodiscard]] inline Run<NoRecord> quiet_run(const Job& job) {
  return Run<NoRecord>(job, air_s(job, job.retract_mm), NoRecord{});
}

}  // namespace seamturn::order
