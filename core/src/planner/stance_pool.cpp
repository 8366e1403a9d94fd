// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <set>

#include "detail_stances.hpp"
#include "detail_starts.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/turn/load.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;
using cell::Positioner;
using geom::Vec3;
using process::WeldPosition;

/// Directions of a seam in the faceplate's frame at one of its stations.
struct StationInD {
  Vec3 travel, face, wall_1, wall_2;
};

struct SeamInD {
  const joint::Seam* seam = nullptr;
  std::vector<StationInD> stations;  ///< those that tell its course; one for a line
  StationInD middle;                 ///< half way along
  bool ring = false;                 ///< a full circle
  std::optional<Vec3> axis;          ///< of rings and arcs, or about which a polyline's legs turn
};

std::optional<Vec3> turning_axis(const geom::Path& path) {
  if (const auto* circle = std::get_if<geom::CirclePath>(&path)) return circle->axis;
  if (const auto* arc = std::get_if<geom::ArcPath>(&path)) return arc->axis;
  const std::vector<double> corners_mm = geom::corner_stations_mm(path);
  if (corners_mm.empty()) return std::nullopt;
  const auto tangent = [&](geom::AtCorner corner) {
    return geom::path_station(path, corners_mm.back(), corner).tangent;
  };
  return geom::unit(tangent(geom::AtCorner::arriving).cross(tangent(geom::AtCorner::leaving)));
}

StationInD station_in_D(const joint::Setup& setup,
                        const joint::Seam& seam,
                        const geom::KeyStation& key) {
  const auto there = [&](const Vec3& at_start) {
    return Vec3(setup.X_DJ.direction(
        geom::carried_direction(*seam.path, key.distance_mm, at_start, key.corner)));
  };
  const Vec3 tangent = geom::path_station(*seam.path, key.distance_mm, key.corner).tangent;
  return {Vec3(setup.X_DJ.direction(tangent)),
          there(seam.face),
          there(seam.wall_1),
          there(seam.wall_2)};
}

SeamInD seam_in_D(const joint::Setup& setup, const joint::Seam& seam) {
  const geom::Path& path = *seam.path;
  const Angle step = Angle::deg(10.0);  // far below any working tolerance lies between two steps
  SeamInD out;
  out.seam = &seam;
  out.ring = std::holds_alternative<geom::CirclePath>(path);
  if (const auto axis = turning_axis(path)) out.axis = setup.X_DJ.direction(*axis);
  for (const geom::KeyStation& key :
       geom::key_stations(path, 0.0, geom::path_length_mm(path), step)) {
    out.stations.push_back(station_in_D(setup, seam, key));
    if (std::holds_alternative<geom::LinePath>(path)) break;  // alike all along
  }
  out.middle = station_in_D(setup, seam, {geom::path_length_mm(path) / 2.0});
  return out;
}

/// Rings welded in one stretch about the last axis. Arcs and polylines are held still.
bool can_roll(const Positioner& positioner, const SeamInD& seam) {
  constexpr double parallel = 1e-6;
  const bool in_one_go = joint::stretches_of(*seam.seam).size() == 1;
  return seam.ring && in_one_go &&
         seam.axis->cross(cell::faceplate_normal_D(positioner.kind)).norm() < parallel;
}

/// Sky directions that lay a seam exactly, or as well as one that turns allows: face up, or one of
/// its plates level; along the axis it turns about; half way of an arc or open polyline.
std::vector<Vec3> wanted_skies(const Positioner& positioner, const SeamInD& seam) {
  std::vector<Vec3> skies;
  const auto want = [&](const StationInD& at) {
    skies.insert(skies.end(), {at.face, at.wall_1, at.wall_2});
  };
  if (seam.axis && !can_roll(positioner, seam)) {
    skies = {*seam.axis, -*seam.axis};
    if (seam.ring) return skies;
    want(seam.middle);
  }
  want(seam.stations.front());
  return skies;
}

class Pool {
 public:
  Pool(const Inputs& inputs, const StageWork& stage, std::vector<Finding>& findings)
      : inputs_(inputs),
        stage_(stage),
        setup_(*stage.setup),
        positioner_(inputs.cell->positioner),
        load_(stage.load_D),
        findings_(findings) {}

  StancePool make(const std::vector<SeamRef>& seams) {
    for (const SeamRef& seam : seams) {
      if (is_welded(seam)) collect(seam_in_D(setup_, *seam.work->seam));
    }
    for (const SeamRef& seam : seams) {
      pool_.placements.push_back(is_welded(seam) ? place(seam) : std::vector<Placement>());
    }
    for (const joint::Operation& operation : stage_.operations) {
      pool_.of_operations.push_back(stance_of(operation));
    }
    return std::move(pool_);
  }

 private:
  [[nodiscard]] bool is_welded(const SeamRef& seam) const {
    return seam.work->seam->path && stage_.welds(*seam.joint->joint);
  }

  /// Axes an operation does not name stand at rest.
  int stance_of(const joint::Operation& operation) {
    if (operation.axes.empty()) return operation.level ? at_rest : as_it_hangs;
    turn::Stance stance;
    for (const cell::Axis& axis : positioner_.axes) {
      stance.axes.push_back(axis.endless ? Angle() : std::clamp(Angle(), axis.min, axis.max));
      for (const joint::AxisValue& wanted : operation.axes) {
        if (wanted.axis == axis.name) stance.axes.back() = wanted.value;
      }
    }
    add(stance);
    for (std::size_t i = 0; i < pool_.stances.size(); ++i) {
      if (same_stance(pool_.stances[i], stance)) return static_cast<int>(i);
    }
    base::append_findings(findings_,
                          turn::check_load(positioner_, load_, stance.axes, describe(stance)));
    return at_rest;
  }

  void collect(const SeamInD& seam) {
    const bool rolls = can_roll(positioner_, seam);
    for (const Vec3& sky : wanted_skies(positioner_, seam)) {
      for (const turn::StanceAnswer& answer :
           turn::within_limits(positioner_, turn::stances_for_sky(positioner_, sky))) {
        turn::Stance stance{answer.axes, false};
        if (rolls) {
          stance.rolling = true;
          stance.axes.back() = rolling_start(seam);
        }
        add(stance);
      }
    }
  }

  /// Where a rolled turn starts: half of it before the middle of the axis' travel.
  Angle rolling_start(const SeamInD& seam) const {
    const cell::Axis& axis = positioner_.axes.back();
    if (axis.endless) return Angle();
    return (axis.min + axis.max) / 2.0 -
           rolling_sense(positioner_, *seam.axis) * rolled_angle(*seam.seam) / 2.0;
  }

  bool turn_fits(const SeamInD& seam, const turn::Stance& stance) const {
    const cell::Axis& axis = positioner_.axes.back();
    const Angle end =
        stance.axes.back() + rolling_sense(positioner_, *seam.axis) * rolled_angle(*seam.seam);
    const Angle start = stance.axes.back();
    return axis.endless || (std::min(start, end) >= axis.min && std::max(start, end) <= axis.max);
  }

  void add(const turn::Stance& stance) {
    const bool known = std::any_of(pool_.stances.begin(), pool_.stances.end(), [&](const auto& s) {
      return same_stance(s, stance);
    });
    if (known || !carries(stance)) return;
    pool_.stances.push_back(stance);
  }

  bool carries(const turn::Stance& stance) {
    const std::vector<Finding> refused =
        turn::check_load(positioner_, load_, stance.axes, describe(stance));
    for (const Finding& finding : refused) {
      if (told_.insert(finding.code + describe(stance)).second) {
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

  std::vector<Placement> place(const SeamRef& ref) {
    std::vector<Placement> placements;
    const SeamInD in_D = seam_in_D(setup_, *ref.work->seam);
    for (std::size_t i = 0; i < pool_.stances.size(); ++i) {
      try_stance(ref, in_D, static_cast<int>(i), placements);
    }
    if (placements.empty() && can_roll(positioner_, in_D)) hold_still(ref, in_D, placements);
    if (placements.empty()) tell_unplaced(ref);
    return placements;
  }

  /// A ring that cannot be rolled (too small for the slowest fit of travel and turn, or no turn
  /// left): its axis upright, the robot goes round.
  void hold_still(const SeamRef& ref, const SeamInD& seam, std::vector<Placement>& placements) {
    for (const Vec3& sky : {Vec3(*seam.axis), Vec3(-*seam.axis)}) {
      for (const turn::StanceAnswer& answer :
           turn::within_limits(positioner_, turn::stances_for_sky(positioner_, sky))) {
        add(turn::Stance{answer.axes, false});
      }
    }
    for (std::size_t i = 0; i < pool_.stances.size(); ++i) {
      if (!pool_.stances[i].rolling) try_still(ref, seam, static_cast<int>(i), placements);
    }
  }

  void try_stance(const SeamRef& ref,
                  const SeamInD& seam,
                  int index,
                  std::vector<Placement>& placements) {
    const turn::Stance& stance = pool_.stances[static_cast<std::size_t>(index)];
    if (stance.rolling != can_roll(positioner_, seam)) return;
    if (stance.rolling) {
      try_rolling(ref, seam, index, placements);
    } else {
      try_still(ref, seam, index, placements);
    }
  }

  void try_still(const SeamRef& ref,
                 const SeamInD& seam,
                 int index,
                 std::vector<Placement>& placements) {
    const turn::Stance& stance = pool_.stances[static_cast<std::size_t>(index)];
    const geom::Mat3 R_WD = turn::rotation_WD(positioner_, stance.axes);
    for (const bool reversed : {false, true}) {
      if (reversed && geom::is_closed(*seam.seam->path)) break;
      const int stack = fitting_stack_all_along(ref, seam, R_WD, reversed);
      if (stack < 0) continue;
      placements.push_back(Placement{
          index,
          stack,
          reversed,
          first_start_mm(*seam.seam, ref.work->stacks[static_cast<std::size_t>(stack)].stack),
          false,
          second_below(ref, stack, seam, R_WD)});
    }
  }

  /// A rolled ring: the arc stays where the weld face comes nearest to the wanted bank; the start
  /// station is the one that stands there when the turn begins.
  void try_rolling(const SeamRef& ref,
                   const SeamInD& seam,
                   int index,
                   std::vector<Placement>& placements) {
    const turn::Stance& stance = pool_.stances[static_cast<std::size_t>(index)];
    if (!turn_fits(seam, stance)) return;
    const geom::Mat3 R_WD = turn::rotation_WD(positioner_, stance.axes);
    const geom::CirclePath& circle = std::get<geom::CirclePath>(*seam.seam->path);
    // The uppermost direction across the axis: there the travel is level.
    const Vec3 axis_W = R_WD * *seam.axis;
    const Vec3 across = Vec3::UnitZ() - axis_W.z() * axis_W;
    const Vec3 start_W = R_WD * setup_.X_DJ.direction(circle.start);
    for (const double side : {1.0, -1.0}) {
      Angle turn_by;
      if (across.norm() > 1e-9) turn_by = geom::signed_angle(axis_W, start_W, side * across);
      const geom::Mat3 carry = geom::rotation_about(axis_W, turn_by);
      const StationInD& at_start = seam.stations.front();
      const int stack = fitting_stack(
          ref, carry * (R_WD * at_start.travel), carry * (R_WD * at_start.face), level_bank(seam));
      if (stack >= 0 && rolls_slowly_enough(ref, stack, circle.radius_mm)) {
        double station = turn_by.rad() * circle.radius_mm;
        if (station < 0.0) station += geom::path_length_mm(*seam.seam->path);
        placements.push_back(Placement{
            index, stack, false, station, true, second_below(ref, stack, seam, carry * R_WD)});
      }
      if (across.norm() <= 1e-9) break;
    }
  }

  /// Which plate a fillet's layers are begun from: the one that faces up more.
  static bool second_below(const SeamRef& ref,
                           int stack,
                           const SeamInD& seam,
                           const geom::Mat3& R_WD) {
    const bool in_pb =
        ref.work->stacks[static_cast<std::size_t>(stack)].position == WeldPosition::pb;
    const StationInD& at = seam.stations.front();
    return in_pb && (R_WD * at.wall_2).z() > (R_WD * at.wall_1).z();
  }

  bool rolls_slowly_enough(const SeamRef& ref, int stack, double radius_mm) const {
    const auto& passes = ref.work->stacks[static_cast<std::size_t>(stack)].stack.passes;
    return std::all_of(passes.begin(), passes.end(), [&](const pass::Pass& pass) {
      return pass.travel_mm_s / radius_mm <= positioner_.rolling_speed_max_rad_s;
    });
  }

  /// Nominal bank for PB: one plate level (the face halves the corner, so either plate will do).
  static Angle level_bank(const SeamInD& seam) {
    return geom::angle_between(seam.stations.front().face, seam.stations.front().wall_1);
  }

  /// A seam that turns is judged all along it: one stack must suit every station, the worst
  /// decides.
  int fitting_stack_all_along(const SeamRef& ref,
                              const SeamInD& seam,
                              const geom::Mat3& R_WD,
                              bool reversed) const {
    int stack = -1;
    for (const StationInD& at : seam.stations) {
      const Vec3 travel_W = (reversed ? -1.0 : 1.0) * (R_WD * at.travel);
      const int here = fitting_stack(ref, travel_W, R_WD * at.face, level_bank(seam));
      if (here < 0 || (stack >= 0 && here != stack)) return -1;
      stack = here;
    }
    return stack;
  }

  int fitting_stack(const SeamRef& ref,
                    const Vec3& travel_W,
                    const Vec3& face_W,
                    Angle pb_bank) const {
    const process::WeldFamily family = joint::position_family(*ref.joint->joint);
    const auto found = position::classify(family, travel_W, face_W, Vec3::UnitZ());
    if (!found) return -1;
    for (std::size_t i = 0; i < ref.work->stacks.size(); ++i) {
      const WeldPosition position = ref.work->stacks[i].position;
      if (position != found->iso) continue;
      const Angle nominal = position == WeldPosition::pb ? pb_bank : Angle();
      const auto& passes = ref.work->stacks[i].stack.passes;
      const bool allowed = std::all_of(passes.begin(), passes.end(), [&](const pass::Pass& pass) {
        return role_allowed(pass.role, position, found->attitude, nominal);
      });
      if (allowed) return static_cast<int>(i);
    }
    return -1;
  }

  bool role_allowed(process::PassRole role,
                    WeldPosition position,
                    const position::Attitude& attitude,
                    Angle nominal) const {
    const auto& rows = inputs_.library.tolerances;
    return std::any_of(rows.begin(), rows.end(), [&](const position::WorkingTolerance& row) {
      const bool for_role = row.roles.empty() ||
                            std::find(row.roles.begin(), row.roles.end(), role) != row.roles.end();
      return row.position == position && for_role && position::is_within(row, attitude, nominal);
    });
  }

  void tell_unplaced(const SeamRef& ref) {
    findings_.push_back(Finding{
        Severity::error,
        "turn.seam.no_stance",
        "seam " + ref.work->seam->id + ": no stance of positioner " + positioner_.id +
            " holds it in a permitted position within axis limits and load; turn the part in its "
            "set-up, widen the working tolerance rows, or take a positioner with more tilt",
        place_of(inputs_.weldment, "joint/" + ref.joint->joint->id),
        {}});
    base::append_findings(findings_, overloads_);
    overloads_.clear();
  }

  const Inputs& inputs_;
  const StageWork& stage_;
  const joint::Setup& setup_;
  const Positioner& positioner_;
  joint::Weight load_;
  std::vector<Finding>& findings_;
  std::vector<Finding> overloads_;
  std::set<std::string> told_;
  StancePool pool_;
};

}  // namespace

StancePool find_stance_pool(const Inputs& inputs,
                            const StageWork& stage,
                            const std::vector<SeamRef>& seams,
                            std::vector<Finding>& findings) {
  SEAMTURN_REQUIRE(inputs.cell.has_value() && stage.setup != nullptr, inputs.weldment.title);
  const joint::Weight& load = stage.load_D;
  if (load.mass_kg > turn::load_most_kg(inputs.cell->positioner)) {
    findings.push_back(
        Finding{Severity::error,
                "turn.load.too_heavy",
                stage.name() + ": part and fixture weigh " + base::fixed_text(load.mass_kg, 0) +
                    " kg, positioner " + inputs.cell->positioner.id + " carries " +
                    base::fixed_text(turn::load_most_kg(inputs.cell->positioner), 0) +
                    " kg; take a larger positioner or a lighter fixture",
                place_of(inputs.weldment, "setup/" + stage.setup->id),
                {}});
    return StancePool{{},
                      std::vector<int>(stage.operations.size(), at_rest),
                      std::vector<std::vector<Placement>>(seams.size())};
  }
  return Pool(inputs, stage, findings).make(seams);
}

}  // namespace seamturn::planner::detail
