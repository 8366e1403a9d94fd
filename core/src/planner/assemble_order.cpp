// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "detail_assemble.hpp"
#include "detail_other_orders.hpp"
#include "detail_stances.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/order/simulate.hpp"
#include "seamturn/turn/load.hpp"

namespace seamturn::planner::detail {

namespace {

std::string stance_id(std::size_t number) {
  const std::string digits = std::to_string(number);
  return "S" + std::string(digits.size() < 2 ? 2 - digits.size() : 0, '0') + digits;
}

class OrderAssembler {
 public:
  OrderAssembler(const Inputs& inputs,
                 const StageWork& stage,
                 const std::vector<SeamRef>& seams,
                 const StancePool& pool,
                 const OrderJob& order_job,
                 const order::Found& found,
                 plan::Plan& plan)
      : inputs_(inputs),
        stage_(stage),
        seams_(seams),
        pool_(pool),
        job_(order_job),
        found_(found),
        plan_(plan),
        before_s_(plan.cycle_s) {}

  void assemble() {
    const timeline::Clock clock = order::simulate(job_.job, found_.sequence);
    for (const order::Step& step : found_.sequence) option_of_[step.block] = step.option;
    for (const timeline::Event& event : clock.events()) take(event);
    for (std::size_t kind = 0; kind < timeline::second_kinds; ++kind) {
      plan_.seconds[kind] += clock.total_s(static_cast<timeline::SecondKind>(kind));
    }
    plan_.cycle_s = before_s_ + clock.now_s();
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      set_starts(i);
      set_travel(i);
      set_gaps(i);
    }
    tell_one_end();
  }

 private:
  /// Both sides of a groove wait for each other: known only here.
  void set_gaps(std::size_t seam) {
    const Gaps& gaps = job_.gaps[seam];
    plan::PlannedSeam& planned = planned_seam(plan_, seams_[seam].work->seam->id);
    for (std::size_t k = 0; k < gaps.longer_s.size(); ++k) {
      planned.passes[k].gap_short_s = gaps.shorter_s[k];
      planned.passes[k].gap_long_s = gaps.longer_s[k];
    }
  }

  void take(const timeline::Event& event) {
    plan::PlannedEvent out;
    out.kind = event.kind;
    out.stage = plan_.stages.size() - 1;
    out.start_s = before_s_ + event.start_s;
    out.end_s = before_s_ + event.end_s;
    const int at = planned_stance(event.stance);
    if (at >= 0) out.stance = plan_.stances[static_cast<std::size_t>(at)].id;
    if (event.kind == timeline::SecondKind::work) {
      out.operation = take_operation(event, at);
    } else if (event.item >= 0) {
      out.seam = seam_of(event.item).work->seam->id;
    }
    const bool arrives = at != held_;
    held_ = at;
    if (arrives && at >= 0) {
      plan::PlannedStance& stance = plan_.stances[static_cast<std::size_t>(at)];
      ++stance.visits;
      // Turns of a rolling axis within the visit are not the way here.
      if (event.kind == timeline::SecondKind::turn) {
        stance.turn_time_s += event.end_s - event.start_s;
      }
    }
    if (event.kind == timeline::SecondKind::arc) out.pass = take_arc(event, at);
    plan_.timeline.push_back(std::move(out));
  }

  /// Id of the operation; its time and stance go into the plan.
  std::string take_operation(const timeline::Event& event, int stance) {
    const BlockOrigin& origin = job_.origins[static_cast<std::size_t>(event.item)];
    plan::PlannedOperation operation =
        planned_operation(stage_, static_cast<std::size_t>(origin.operation));
    operation.start_s = before_s_ + event.start_s;
    if (stance >= 0) operation.stance = plan_.stances[static_cast<std::size_t>(stance)].id;
    plan_.operations.push_back(operation);
    return operation.id;
  }

  const SeamRef& seam_of(int block) const {
    return seams_[static_cast<std::size_t>(job_.origins[static_cast<std::size_t>(block)].seam)];
  }

  /// Number of the pass; its times, stance and torch poses go into the plan.
  int take_arc(const timeline::Event& event, int stance) {
    const BlockOrigin& origin = job_.origins[static_cast<std::size_t>(event.item)];
    const SeamRef& ref = seam_of(event.item);
    const int index = origin.passes[static_cast<std::size_t>(event.pass)];
    plan::PlannedSeam& seam = planned_seam(plan_, ref.work->seam->id);
    plan::PlannedPass& pass = seam.passes[static_cast<std::size_t>(index)];
    const order::Option& option = job_.job.blocks[static_cast<std::size_t>(event.item)]
                                      .options[static_cast<std::size_t>(option_of_.at(event.item))];
    const Placement& placement = job_.placements[static_cast<std::size_t>(origin.seam)]
                                                [static_cast<std::size_t>(option.tag)];
    seam.turned = true;
    seam.stage = plan_.stages.back().id;
    pass.start_s = before_s_ + event.start_s;
    pass.end_s = before_s_ + event.end_s;
    pass.stance = stance;
    pass.reversed = placement.reversed;
    const LayerStart start =
        start_of_layer(job_.starts[static_cast<std::size_t>(origin.seam)], pass.pass.layer);
    if (placement.rolling) {
      const auto index_of_stance = static_cast<std::size_t>(placement.stance);
      pass.roll = rolled_turn(inputs_.cell->positioner, *stage_.setup, *ref.work->seam);
      pass.roll_from = pool_.stances[index_of_stance].axes.back() + start.wound +
                       lead_wind(inputs_, *stage_.setup, ref, seam.stack, pass.pass);
    }
    set_points(ref, placement, start, pass);
    note_seam(stance, seam.id);
    return pass.pass.number;
  }

  /// Stations where the layers of a closed seam start as it is held; a layer that had to start
  /// where the first does is told.
  void set_starts(std::size_t index) {
    const joint::Seam& seam = *seams_[index].work->seam;
    const std::vector<LayerStart>& starts = job_.starts[index];
    if (starts.empty() || !geom::is_closed(*seam.path)) return;
    const double length_mm = geom::path_length_mm(*seam.path);
    plan::PlannedSeam& planned = planned_seam(plan_, seam.id);
    const double first_mm = job_.placements[index].front().ring_start_mm;
    for (std::size_t k = 0; k < starts.size(); ++k) {
      joint::LayerStops& layer = planned.starts.at(k);
      const double start_mm = first_mm + starts[k].behind_mm;
      layer.start_mm = geom::wrapped_station_mm(start_mm, length_mm);
      layer.stop_mm = geom::wrapped_station_mm(start_mm + seam.asked.overlap_mm, length_mm);
    }
    const bool has_room = std::all_of(
        starts.begin(), starts.end(), [](const LayerStart& start) { return start.has_room; });
    if (has_room) return;
    plan_.findings.push_back(base::Finding{
        base::Severity::warning,
        "plan.starts.no_turn_left",
        "seam " + seam.id +
            ": the rolling axis has no turn left to start every layer elsewhere; its stops lie "
            "above one another: give the axis more travel, or grind the stops",
        place_of(inputs_.weldment, "joint/" + seams_[index].joint->joint->id),
        {}});
  }

  /// Layers of an open seam that could not be held for the way they are to run were laid the other
  /// way.
  void set_travel(std::size_t index) {
    const joint::Seam& seam = *seams_[index].work->seam;
    if (job_.placements[index].empty() || geom::is_closed(*seam.path)) return;
    plan::PlannedSeam& planned = planned_seam(plan_, seam.id);
    if (planned.starts.empty()) return;
    bool against = false;
    for (const plan::PlannedPass& pass : planned.passes) {
      joint::LayerStops& stops = planned.starts.at(static_cast<std::size_t>(pass.pass.layer) - 1);
      if (stops.reversed == pass.reversed) continue;
      std::swap(stops.start_mm, stops.stop_mm);
      stops.reversed = pass.reversed;
      against = true;
    }
    if (stops_at_one_end(seam, planned.starts)) one_end_.push_back(seam.id);
    if (!against || !seam.segment) return;
    plan_.findings.push_back(base::Finding{
        base::Severity::warning,
        "plan.segments.travel",
        "seam " + seam.id + ": in " + std::string(process::position_name(planned.position)) +
            " no stance holds it for the travel its place asks for, and it is welded the other "
            "way; widen the working tolerance for that travel, or give the seam other segments",
        place_of(inputs_.weldment, "joint/" + seams_[index].joint->joint->id),
        {}});
  }

  void tell_one_end() {
    if (one_end_.empty()) return;
    plan_.findings.push_back(
        base::Finding{base::Severity::note,
                      "plan.starts.one_end",
                      "layers of " + base::listed(one_end_) +
                          " stop above one another at one end (a segment runs outward in every "
                          "layer, another seam is held for travel one way only): fill and grind "
                          "each crater before the next layer, or give tabs (run-on, run-off)",
                      place_of(inputs_.weldment, "weldment"),
                      {}});
  }

  /// Torch poses; a closed seam starts at the station the placement names.
  void set_points(const SeamRef& ref,
                  const Placement& placement,
                  const LayerStart& start,
                  plan::PlannedPass& pass) const {
    const reach::Course course{placement.reversed, placement.ring_start_mm + start.behind_mm};
    pass.tip_mm_s = tip_speed_mm_s(ref, pass.pass);
    pass.points =
        reach::key_poses(*ref.joint->joint, *ref.work->seam, ref.work->section, pass.pass, course);
  }

  void note_seam(int stance, const std::string& id) {
    std::vector<std::string>& seams = plan_.stances[static_cast<std::size_t>(stance)].seams;
    if (std::find(seams.begin(), seams.end(), id) == seams.end()) seams.push_back(id);
  }

  /// Index into plan.stances, adding the stance at its first visit in its set-up; -1 for the rest
  /// position.
  int planned_stance(int job_stance) {
    if (job_stance < 0) return -1;
    const int pool_index = job_.pool_stance[static_cast<std::size_t>(job_stance)];
    if (pool_index < 0) return -1;
    const auto known = index_of_.find(pool_index);
    if (known != index_of_.end()) return known->second;
    const turn::Stance& wanted = pool_.stances[static_cast<std::size_t>(pool_index)];
    int index = index_in_plan(wanted);
    if (index < 0) {
      index = static_cast<int>(plan_.stances.size());
      plan_.stances.push_back(new_stance(wanted));
    }
    plan::PlannedStance& stance = plan_.stances[static_cast<std::size_t>(index)];
    if (stage_.load_D.mass_kg > stance.load.mass_kg) stance.load = stage_.load_D;
    raise_torques(stance);
    index_of_[pool_index] = index;
    return index;
  }

  /// Per axis the largest of all stages: a lighter load may lie farther out.
  void raise_torques(plan::PlannedStance& stance) const {
    const std::vector<double> torque_nm =
        turn::axis_torques_nm(inputs_.cell->positioner, stage_.load_D, stance.stance.axes);
    stance.torque_nm.resize(torque_nm.size(), 0.0);
    for (std::size_t i = 0; i < torque_nm.size(); ++i) {
      if (std::abs(torque_nm[i]) > std::abs(stance.torque_nm[i]))
        stance.torque_nm[i] = torque_nm[i];
    }
  }

  /// The stance of an earlier stage in the same set-up; -1: none.
  int index_in_plan(const turn::Stance& wanted) const {
    for (std::size_t i = 0; i < plan_.stances.size(); ++i) {
      const plan::PlannedStance& stance = plan_.stances[i];
      if (stance.setup == stage_.setup->id && same_stance(stance.stance, wanted)) {
        return static_cast<int>(i);
      }
    }
    return -1;
  }

  plan::PlannedStance new_stance(const turn::Stance& wanted) const {
    plan::PlannedStance stance;
    stance.id = stance_id(plan_.stances.size() + 1);
    stance.setup = stage_.setup->id;
    stance.stance = wanted;
    for (const cell::Axis& axis : inputs_.cell->positioner.axes) {
      stance.axis_names.push_back(axis.name);
    }
    return stance;
  }

  const Inputs& inputs_;
  const StageWork& stage_;
  const std::vector<SeamRef>& seams_;
  const StancePool& pool_;
  const OrderJob& job_;
  const order::Found& found_;
  plan::Plan& plan_;
  double before_s_;  ///< clock of the stages before
  std::map<int, int> option_of_;
  std::map<int, int> index_of_;
  std::vector<std::string> one_end_;  ///< seams
  int held_ = -1;                     ///< stance of the event before; -1: at rest
};

}  // namespace

plan::PlannedOperation planned_operation(const StageWork& stage, std::size_t index) {
  const joint::Operation& operation = stage.operations[index];
  plan::PlannedOperation planned;
  planned.id = operation.id;
  planned.kind = operation.kind;
  planned.stage = stage.stage->id;
  planned.time_s = operation.time_s;
  planned.people = operation.people;
  planned.members = operation.members;
  planned.joints = operation.joints;
  planned.note = operation.note;
  return planned;
}

void assemble_order(const Inputs& inputs,
                    const StageWork& stage,
                    const std::vector<SeamRef>& seams,
                    const StancePool& pool,
                    const OrderJob& order_job,
                    const order::Found& found,
                    plan::Plan& plan) {
  OrderAssembler(inputs, stage, seams, pool, order_job, found, plan).assemble();
  compare_orders(order_job, found, plan);
}

}  // namespace seamturn::planner::detail
