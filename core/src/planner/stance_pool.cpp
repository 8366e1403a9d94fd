// SPDX-License-Identifier: MIT
// Collects stances, tries each on each seam.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "detail_seam_fit.hpp"
#include "detail_stances.hpp"
#include "detail_starts.hpp"
#include "detail_turns.hpp"
#include "detail_unplaced.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/turn/load.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;
using cell::Positioner;
using geom::Vec3;
using process::WeldPosition;

/// Skies a positioner of one axis can turn up: the border told. None: all of them.
std::optional<position::SkyCap> reachable_skies(const Positioner& positioner) {
  const std::size_t exchanges = cell::is_exchange(positioner, 0) ? 1 : 0;
  if (positioner.axes.size() - exchanges != 1) return std::nullopt;
  return position::SkyCap{cell::faceplate_normal_D(positioner.kind), 0.0};
}

/// The last axis from its value at a stance over a pass and what is wound before it.
bool axis_has_room(const cell::Axis& axis, Angle start, Angle rolled) {
  const Angle end = start + rolled;
  return axis.endless || (std::min(start, end) >= axis.min && std::max(start, end) <= axis.max);
}

class Pool {
 public:
  Pool(const Inputs& inputs, const StageWork& stage, std::vector<Finding>& findings)
      : inputs_(inputs),
        stage_(stage),
        setup_(*stage.setup),
        positioner_(inputs.cell->positioner),
        load_(stage.load_D),
        ways_(clear_ways(inputs.cell->positioner, stage)),
        findings_(findings) {}

  StancePool make(const std::vector<SeamRef>& seams) {
    look_at(seams);
    for (const Held& held : held_) collect(held.in_D, *held.ref.work);
    pool_.exact = pool_.stances.size();
    collect_shared();
    pool_.placements.resize(seams.size());
    for (Held& held : held_) pool_.placements[held.number] = place(held);
    for (const joint::Operation& operation : stage_.operations) {
      pool_.of_operations.push_back(stance_of(operation));
    }
    return std::move(pool_);
  }

 private:
  /// A seam of the stage and how it lies. Kept in a list that does not grow: fits point at in_D.
  struct Held {
    std::size_t number;
    SeamRef ref;
    SeamInD in_D;
    std::optional<SeamFit> fit;
  };

  void look_at(const std::vector<SeamRef>& seams) {
    for (std::size_t i = 0; i < seams.size(); ++i) {
      if (!seams[i].work->seam->path || !stage_.welds(*seams[i].joint->joint)) continue;
      held_.push_back(Held{i, seams[i], seam_in_D(setup_, *seams[i].work->seam), std::nullopt});
    }
    for (Held& held : held_) held.fit.emplace(inputs_, held.ref, held.in_D);
  }

  /// Axis settings that turn a direction of the part up. The only place that asks for them.
  std::vector<turn::StanceAnswer> settings_for(const Vec3& sky_D) const {
    return turn::within_limits(positioner_, turn::stances_for_sky(positioner_, sky_D));
  }

  /// Axes an operation does not name stand at rest.
  int stance_of(const joint::Operation& operation) {
    if (operation.axes.empty()) return operation.level ? at_rest : as_it_hangs;
    turn::Stance stance{rest_axes(positioner_), false};
    for (std::size_t i = 0; i < stance.axes.size(); ++i) {
      for (const joint::AxisValue& wanted : operation.axes) {
        if (wanted.axis == positioner_.axes[i].name) stance.axes[i] = wanted.value;
      }
    }
    add(stance);
    for (std::size_t i = 0; i < pool_.stances.size(); ++i) {
      if (same_stance(pool_.stances[i], stance)) return static_cast<int>(i);
    }
    base::append_findings(findings_, refusals(stance));
    return at_rest;
  }

  void collect(const SeamInD& seam, const SeamWork& work) {
    const bool rolls = can_roll(positioner_, seam);
    for (const Vec3& sky : wanted_skies(positioner_, seam, work)) {
      for (const turn::StanceAnswer& answer : settings_for(sky)) {
        turn::Stance stance{answer.axes, false};
        if (rolls) {
          stance.rolling = true;
          stance.axes.back() = rolling_start(seam);
        }
        add(stance);
      }
    }
  }

  /// Skies that suit several seams held still at once.
  void collect_shared() {
    std::vector<position::SkyPatch> patches;
    for (const Held& held : held_) {
      if (can_roll(positioner_, held.in_D)) continue;
      const auto& own = held.fit->patches();
      patches.insert(patches.end(), own.begin(), own.end());
    }
    position::SharedSkyParams params;
    params.only_on = reachable_skies(positioner_);
    for (const position::SharedSky& shared : position::shared_skies(patches, params)) {
      for (const turn::StanceAnswer& answer : settings_for(shared.u)) {
        add(turn::Stance{answer.axes, false});
      }
    }
  }

  /// Where a rolled turn starts: half of it before the middle of the axis' travel, at a whole
  /// degree where that fits, so that rings of about the same size share a stance.
  Angle rolling_start(const SeamInD& seam) const {
    const cell::Axis& axis = positioner_.axes.back();
    if (axis.endless) return Angle();
    const Angle turn = rolling_sense(positioner_, *seam.axis) * rolled_angle(*seam.seam);
    const Angle exact = (axis.min + axis.max) / 2.0 - turn / 2.0;
    const Angle whole = Angle::deg(std::round(exact.deg()));
    return axis_has_room(axis, whole, turn) ? whole : exact;
  }

  /// Also for passes whose arc stands farther ahead than the first one's.
  bool turn_fits(const Held& held, int stack, const turn::Stance& stance) const {
    const double sense = rolling_sense(positioner_, *held.in_D.axis);
    const Angle rolled = sense * rolled_angle(*held.in_D.seam);
    const StackChoice& choice = held.ref.work->stacks[static_cast<std::size_t>(stack)];
    return std::all_of(
        choice.stack.passes.begin(), choice.stack.passes.end(), [&](const pass::Pass& pass) {
          const Angle ahead = lead_before(inputs_, held.ref, choice.stack, pass);
          return axis_has_room(positioner_.axes.back(), stance.axes.back() - sense * ahead, rolled);
        });
  }

  /// Stances by the first axis, so that a known one is found without looking at all.
  static long bucket_of(const turn::Stance& stance) {
    return std::lround(std::cos(stance.axes.front().rad()) * 1000.0);
  }

  void add(const turn::Stance& stance) {
    const long bucket = bucket_of(stance);
    for (long near = bucket - 1; near <= bucket + 1; ++near) {
      const auto [from, to] = known_.equal_range(near);
      for (auto it = from; it != to; ++it) {
        if (same_stance(pool_.stances[it->second], stance)) return;
      }
    }
    if (!carries(stance)) return;
    known_.emplace(bucket, pool_.stances.size());
    pool_.stances.push_back(stance);
    rotations_.push_back(turn::rotation_WD(positioner_, stance.axes));
  }

  /// Load and floor.
  std::vector<Finding> refusals(const turn::Stance& stance) const {
    const std::string name = describe(stance);
    std::vector<Finding> refused = turn::check_load(positioner_, load_, stance.axes, name);
    base::append_findings(refused, ways_.check_standing(stance.axes, name));
    return refused;
  }

  bool carries(const turn::Stance& stance) {
    const std::string name = describe(stance);
    const std::vector<Finding> refused = refusals(stance);
    const geom::Mat3 R_WD = turn::rotation_WD(positioner_, stance.axes);
    if (!refused.empty()) barred_.push_back({stance, R_WD, refused.front().text});
    for (const Finding& finding : refused) {
      if (told_.insert(finding.code + name).second) {
        Finding shown = finding;
        shown.severity = Severity::warning;
        overloads_.push_back(shown);
      }
    }
    return refused.empty();
  }

  std::string describe(const turn::Stance& stance) const {
    std::string text;
    for (std::size_t i = 0; i < stance.axes.size(); ++i) {
      text += (i == 0 ? "" : ", ") + positioner_.axes[i].name + ' ' +
              base::fixed_text(stance.axes[i].deg(), 1) + " deg";
    }
    return text;
  }

  std::vector<Placement> place(Held& held) {
    std::vector<Placement> placements;
    const bool rolls = can_roll(positioner_, held.in_D);
    for (std::size_t i = 0; i < pool_.stances.size(); ++i) {
      if (pool_.stances[i].rolling != rolls) continue;
      if (!rolls) {
        try_still(held, i, placements);
        continue;
      }
      for (Placement& placement : rolled_on(held, pool_.stances[i], rotations_[i])) {
        placement.stance = static_cast<int>(i);
        placements.push_back(placement);
      }
    }
    if (placements.empty() && rolls) hold_still(held, placements);
    if (placements.empty()) tell_unplaced(held);
    return placements;
  }

  /// A ring that cannot be rolled (too small for the slowest fit of travel and turn, or no turn
  /// left): its axis upright, the robot goes round.
  void hold_still(const Held& held, std::vector<Placement>& placements) {
    for (const Vec3& sky : {Vec3(*held.in_D.axis), Vec3(-*held.in_D.axis)}) {
      for (const turn::StanceAnswer& answer : settings_for(sky)) {
        add(turn::Stance{answer.axes, false});
      }
    }
    for (std::size_t i = 0; i < pool_.stances.size(); ++i) {
      if (!pool_.stances[i].rolling) try_still(held, i, placements);
    }
  }

  void try_still(const Held& held, std::size_t index, std::vector<Placement>& placements) {
    const geom::Mat3& R_WD = rotations_[index];
    if (!held.fit->may_suit(R_WD.transpose() * Vec3::UnitZ())) return;
    for (const bool reversed : {false, true}) {
      if (reversed && geom::is_closed(*held.in_D.seam->path)) break;
      const Fit fit = held.fit->held(R_WD, reversed);
      if (fit.stack < 0) continue;
      Placement placement;
      placement.stance = static_cast<int>(index);
      placement.stack = fit.stack;
      placement.strain_ratio = fit.strain_ratio;
      placement.reversed = reversed;
      placement.ring_start_mm = first_start_mm(*held.in_D.seam, stack_of(held, fit.stack).stack);
      placement.second_below = second_below(held, fit.stack, R_WD);
      placements.push_back(placement);
    }
  }

  static const StackChoice& stack_of(const Held& held, int stack) {
    return held.ref.work->stacks[static_cast<std::size_t>(stack)];
  }

  /// A rolled ring: the arc stands at the top, or at the bottom, of the ring, whichever suits its
  /// face, and ahead of it by the lead. The start station is the one that stands there when the
  /// turn begins.
  std::vector<Placement> rolled_on(const Held& held,
                                   const turn::Stance& stance,
                                   const geom::Mat3& R_WD) const {
    std::vector<Placement> placements;
    // The uppermost direction across the axis: there the travel is level.
    const Vec3 axis_W = R_WD * *held.in_D.axis;
    const Vec3 across = Vec3::UnitZ() - axis_W.z() * axis_W;
    const bool lies_flat = across.norm() <= 1e-9;  // level all round: nowhere is ahead
    const auto& stacks = held.ref.work->stacks;
    for (const double side : {1.0, -1.0}) {
      for (std::size_t stack = 0; stack < stacks.size(); ++stack) {
        Angle turn_by;
        if (!lies_flat) {
          turn_by = to_dead_centre(held, R_WD, axis_W, side * across) +
                    lead_of(inputs_, held.ref, stacks[stack].stack.passes.front());
        }
        const auto fitting = try_arc_place(held, stance, R_WD, axis_W, turn_by);
        if (!fitting || fitting->stack != static_cast<int>(stack)) continue;
        placements.push_back(*fitting);
        break;
      }
      if (lies_flat) break;
    }
    return placements;
  }

  Angle to_dead_centre(const Held& held,
                       const geom::Mat3& R_WD,
                       const Vec3& axis_W,
                       const Vec3& centre_W) const {
    const auto& circle = std::get<geom::CirclePath>(*held.in_D.seam->path);
    return geom::signed_angle(axis_W, R_WD * setup_.X_DJ.direction(circle.start), centre_W);
  }

  /// The placement with the arc where the ring's start comes when it is turned on by an angle.
  std::optional<Placement> try_arc_place(const Held& held,
                                         const turn::Stance& stance,
                                         const geom::Mat3& R_WD,
                                         const Vec3& axis_W,
                                         Angle turn_by) const {
    const geom::Mat3 carry = geom::rotation_about(axis_W, turn_by) * R_WD;
    const StationInD& at_start = held.in_D.stations.front();
    const Fit fit = held.fit->rolled(carry * at_start.travel, carry * at_start.face);
    if (fit.stack < 0 || !turn_fits(held, fit.stack, stance) ||
        !rolls_slowly_enough(held, fit.stack)) {
      return std::nullopt;
    }
    const auto& circle = std::get<geom::CirclePath>(*held.in_D.seam->path);
    Placement placement;
    placement.stack = fit.stack;
    placement.strain_ratio = fit.strain_ratio;
    placement.ring_start_mm = geom::wrapped_station_mm(turn_by.rad() * circle.radius_mm,
                                                       geom::path_length_mm(*held.in_D.seam->path));
    placement.rolling = true;
    placement.second_below = second_below(held, fit.stack, carry);
    return placement;
  }

  /// Which plate a fillet's layers are begun from: the one that faces up more.
  static bool second_below(const Held& held, int stack, const geom::Mat3& R_WD) {
    const StationInD& at = held.in_D.stations.front();
    return stack_of(held, stack).position == WeldPosition::pb &&
           (R_WD * at.wall_2).z() > (R_WD * at.wall_1).z();
  }

  bool rolls_slowly_enough(const Held& held, int stack) const {
    const auto& passes = stack_of(held, stack).stack.passes;
    return std::all_of(passes.begin(), passes.end(), [&](const pass::Pass& pass) {
      return rolled_angle(*held.ref.work->seam).rad() / pass.arc_time_s <=
             positioner_.rolling_speed_max_rad_s;
    });
  }

  /// The best that can be had: how the seam lies then, and how far that is from enough.
  [[nodiscard]] std::string nearest_text(const Held& held) const {
    std::optional<Near> best;
    turn::Stance at;
    for (std::size_t i = 0; i < pool_.stances.size(); ++i) {
      if (pool_.stances[i].rolling) continue;  // begun where a ring may be, not where it is held
      const std::optional<Near> near = held.fit->nearest(rotations_[i]);
      if (!near || (best && near->beyond >= best->beyond)) continue;
      best = near;
      at = pool_.stances[i];
    }
    const auto elsewhere = nearest_elsewhere(
        *held.fit, positioner_, [this](const auto& stance) { return refusals(stance).empty(); });
    if (elsewhere && (!best || elsewhere->near.beyond + settings_apart < best->beyond)) {
      best = elsewhere->near;
      at = elsewhere->stance;
    }
    return best ? near_text(*best, describe(at)) : "";
  }

  bool would_hold(const Held& held, bool rolls, const BarredStance& barred) const {
    if (barred.stance.rolling) {
      return rolls && !rolled_on(held, barred.stance, barred.R_WD).empty();
    }
    return held.fit->held(barred.R_WD, false).stack >= 0 ||
           held.fit->held(barred.R_WD, true).stack >= 0;
  }

  /// Segments and sides of one joint that lack the same are told together.
  void tell_unplaced(const Held& held) {
    const std::string& id = held.ref.work->seam->id;
    const bool rolls = can_roll(positioner_, held.in_D);
    const std::string barred =
        barred_text(barred_, [&](const BarredStance& one) { return would_hold(held, rolls, one); });
    std::string why = ": no stance of positioner " + positioner_.id +
                      " holds it in a permitted position (" + positions_text(*held.ref.work) +
                      ") within axis limits and load, clear of the floor";
    if (!barred.empty()) {
      why += barred;
    } else {
      why += (rolls ? rolling_text(positioner_, *held.ref.work) : nearest_text(held)) +
             "; turn the part in its set-up, widen the working tolerance rows, or take a "
             "positioner that reaches further";
    }
    const base::Place place = place_of(inputs_.weldment, "joint/" + held.ref.joint->joint->id);
    unplaced_.tell(id, why, place, findings_);
    base::append_findings(findings_, one_of_a_kind(std::move(overloads_)));
    overloads_.clear();
  }

  const Inputs& inputs_;
  const StageWork& stage_;
  const joint::Setup& setup_;
  const Positioner& positioner_;
  joint::Weight load_;
  turn::ClearWays ways_;
  std::vector<Finding>& findings_;
  std::vector<Finding> overloads_;
  std::vector<BarredStance> barred_;
  UnplacedSeams unplaced_;
  std::set<std::string> told_;
  std::vector<Held> held_;
  std::multimap<long, std::size_t> known_;
  std::vector<geom::Mat3> rotations_;  ///< R_WD per stance
  StancePool pool_;
};

}  // namespace

StancePool find_stance_pool(const Inputs& inputs,
                            const StageWork& stage,
                            const std::vector<SeamRef>& seams,
                            std::vector<Finding>& findings) {
  SEAMTURN_REQUIRE(inputs.cell.has_value() && stage.setup != nullptr, inputs.weldment.title);
  if (stage.load_D.mass_kg > turn::load_most_kg(inputs.cell->positioner)) {
    findings.push_back(heavier_than_plate(inputs, stage));
    return StancePool{{},
                      std::vector<int>(stage.operations.size(), at_rest),
                      std::vector<std::vector<Placement>>(seams.size())};
  }
  return thinned(inputs, seams, Pool(inputs, stage, findings).make(seams));
}

}  // namespace seamturn::planner::detail
