// SPDX-License-Identifier: MIT
// Everything computed, in order, on a clock, with its estimate: one value, from which all documents
// are written and nothing else.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/cell/cell.hpp"
#include "seamturn/cost/estimate.hpp"
#include "seamturn/fitup/fit_up.hpp"
#include "seamturn/joint/size_check.hpp"
#include "seamturn/joint/start_stop.hpp"
#include "seamturn/joint/weldment.hpp"
#include "seamturn/material/steel.hpp"
#include "seamturn/order/search.hpp"
#include "seamturn/pass/pass_stack.hpp"
#include "seamturn/plan/aftercare.hpp"
#include "seamturn/plan/balance.hpp"
#include "seamturn/plan/build.hpp"
#include "seamturn/plan/planned_datum.hpp"
#include "seamturn/plan/tacking.hpp"
#include "seamturn/procedure/procedure.hpp"
#include "seamturn/process/consumables.hpp"
#include "seamturn/process/gouging.hpp"
#include "seamturn/process/heating.hpp"
#include "seamturn/process/settings.hpp"
#include "seamturn/reach/torch_body.hpp"
#include "seamturn/reach/torch_pose.hpp"
#include "seamturn/section/weld_section.hpp"
#include "seamturn/timeline/clock.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::plan {

using base::Angle;

/// A pass as it will be laid.
struct PlannedPass {
  pass::Pass pass;
  std::optional<double> start_s;  ///< on the clock; none for seams that are not turned
  std::optional<double> end_s;
  /// From the start of the pass before over the same place until this one is permitted, by the
  /// faster and the slower model of cooling; planned with the slower. 0 for the first.
  double gap_short_s = 0.0;
  double gap_long_s = 0.0;
  /// Of the place when the arc starts at its time on the clock, by the model that leaves it cooler
  /// and by the other; the part beyond at its preheat. None for seams that are not turned.
  std::optional<double> start_low_c;
  std::optional<double> start_high_c;
  double t85_s = 0.0;       ///< at the coolest permitted start: shortest
  double t85_long_s = 0.0;  ///< at the interpass maximum: longest
  bool reversed = false;
  /// Of the wire tip on its way round a ring or an arc; none: travel.
  std::optional<double> tip_mm_s;
  int stance = -1;
  /// Rolling stances: signed turn of the positioner's last axis while the arc burns, in that axis'
  /// own sense; its speed is this over the arc time. None: the part stands still.
  std::optional<Angle> roll;
  std::optional<Angle> roll_from;        ///< of that axis when the arc is struck
  std::vector<reach::TorchPose> points;  ///< frame J
  /// Which way the torch's body points where the pass starts and where it ends; none: the cell
  /// describes no body, or no heading clears the part: then `torch_meets` says what it meets.
  std::optional<reach::Headings> headings;
  std::string torch_meets;
};

/// A seam at one end of its fit-up band.
struct FitUpEnd {
  double area_mm2 = 0.0;
  double metal_kg = 0.0;
  bool closes = false;  ///< else `why`, and what follows is 0
  std::string why;
  int passes = 0;
  double arc_time_s = 0.0;
  double heat_input_min_kj_mm = 0.0;
  double heat_input_max_kj_mm = 0.0;
};

/// What tolerances of edges and set-up do to a seam in its planned position.
struct PlannedFitUp {
  std::string tolerances;  ///< id of the row in the library
  base::Status status = base::Status::proposed;
  FitUpEnd low;                         ///< least metal
  FitUpEnd high;                        ///< most metal
  std::optional<fitup::GapTable> gaps;  ///< none: plugs have no gap
  double misalignment_max_mm = 0.0;     ///< ISO 5817 no. 507; 0: no limit known
  base::Citation misalignment;          ///< where that limit is from
};

/// What the rules of codes say of a weld's size. Whether it carries its load is not judged.
struct PlannedSize {
  std::vector<joint::SizeCheck> checks;
  joint::SizeVerdict verdict = joint::SizeVerdict::not_proved;
  std::string refused;  ///< why no rule could be asked; then there are no checks
};

/// Throat of a fillet or a partial-penetration groove that counts in strength, in the position
/// planned.
struct PlannedThroat {
  double throat_mm = 0.0;
  double deduction_mm = 0.0;  ///< taken off a groove's depth; 0 for fillets
  bool with_cover = false;    ///< groove and reinforcing fillet together
  base::Citation citation;
  std::string refused;  ///< why none can be told; then the rest is 0
};

struct PlannedSeam {
  std::string id;
  std::string joint;
  std::string drawn;  ///< id in the weldment file; a segment's differs from it
  process::WeldPosition position = process::WeldPosition::pa;
  std::string stage;      ///< id; empty: the file names none, or the seam is not turned
  std::string procedure;  ///< id
  bool turned = false;    ///< has a place in the order
  bool rolling = false;
  double metal_kg = 0.0;
  double length_mm = 0.0;  ///< of the path
  double welded_mm = 0.0;  ///< metal and arc time count this
  int arc_starts = 1;      ///< of each pass
  int side = 1;            ///< of a double or gouged groove
  section::WeldSection section;
  pass::PassStack stack;
  std::vector<PlannedPass> passes;
  std::vector<joint::LayerStops> starts;  ///< of each layer, where they are kept apart
  std::optional<PlannedThroat> counted;   ///< none: full penetration, plugs and slots
  /// Metal laid over metal drawn: 1 when nothing is laid beyond the drawn section.
  double over_weld_area_ratio = 1.0;
  std::optional<PlannedFitUp> fit_up;  ///< none: the libraries state no tolerances
};

struct PlannedJoint {
  std::string id;
  procedure::HeatLimits heat;
  Aftercare aftercare;
  std::string steel_1, steel_2;
  std::optional<PlannedSize> size;  ///< none: full penetration, as thick as the plate
  std::vector<PlannedSeam> seams;
};

/// Sections of a joint, one a side (equal ones of two fillets once), in the order of the sides.
[[nodiscard]] std::vector<const section::WeldSection*> sections_of(const PlannedJoint& joint);
/// Passes of all its seams; of a seam in segments those across it, counted once.
[[nodiscard]] int pass_count(const PlannedJoint& joint);
/// Weld metal of a joint across: of all its sides together.
[[nodiscard]] double section_area_mm2(const PlannedJoint& joint);

struct PlannedStance {
  std::string id;  ///< "S01" ...
  std::string setup;
  turn::Stance stance;
  std::vector<std::string> axis_names;
  joint::Weight load;              ///< heaviest held in it, frame D
  std::vector<double> torque_nm;   ///< per axis, the largest of the stages held in it
  std::vector<std::string> seams;  ///< welded here, in order of first arc
  double turn_time_s = 0.0;        ///< to get here, summed over all visits
  int visits = 0;
};

/// A turn of the loaded positioner, each way of a stage once, as it was judged.
struct PlannedTurn {
  std::size_t stage = 0;          ///< index into Plan::stages
  std::string from, to;           ///< stances; empty: at rest
  std::vector<double> torque_nm;  ///< per axis, largest on the way, with the cell's load margin
  std::vector<double> moving_nm;  ///< per axis, largest while speeding up
  std::vector<double> stop_nm;    ///< per axis at an emergency stop; empty: not judged
  double lowest_mm = 0.0;         ///< of the load above the floor
  std::string lowest_of;          ///< member or solid of the set-up
  /// Settings of the axes it goes by, in order; none: straight.
  std::vector<std::vector<base::Angle>> halts;
};

/// "turn", "rolling" (about the last axis while seams are welded in one stance) or "exchange" (of
/// the stations, at rest).
[[nodiscard]] std::string_view turn_kind_name(const PlannedTurn& turn);

/// An event of the clock with names instead of indices.
struct PlannedEvent {
  timeline::SecondKind kind = timeline::SecondKind::other;
  double start_s = 0.0;
  double end_s = 0.0;
  std::string stance;
  std::string seam;
  std::string operation;  ///< work and hang only
  int pass = 0;           ///< number, arc only
  std::size_t stage = 0;  ///< index into Plan::stages
};

/// An order nobody searched for, on the same clock with the same waits: what the search is worth.
struct OtherOrder {
  double longer_s = 0.0;  ///< than the order planned
  int visits = 0;         ///< of stances, as the planned ones are counted
};

struct Totals {
  double length_mm = 0.0;  ///< of the paths
  double metal_kg = 0.0;
  int passes = 0;  ///< as pass_count
  double arc_time_s = 0.0;
  double welded_mm = 0.0;  ///< stretches and end returns
};

struct Plan {
  joint::Weldment weldment;
  std::optional<cell::Cell> cell;
  std::vector<process::Wire> wires;  ///< used ones only
  std::vector<process::Gas> gases;
  std::vector<process::LinkedSettings> settings;  ///< rows that passes name: transfer mode, source
  std::optional<process::Gouging> gouging;        ///< when a joint is gouged
  std::optional<process::Heating> heating;        ///< when a joint is preheated
  std::vector<material::Steel> steels;  ///< of the members: standard, group, limits by thickness
  joint::Weight part;                   ///< all members, frame J
  std::vector<PlannedStage> stages;     ///< in order; at least one
  std::vector<PlannedOperation> operations;  ///< in order
  std::vector<PlannedTacks> tacks;           ///< in the order of the seams
  std::vector<CarriedMember> carried;        ///< where the file states a site factor
  std::vector<PlannedHang> hangs;
  std::vector<PlannedDatum> datums;
  std::vector<PlannedTwins> twins;               ///< in the order of the file
  std::optional<ShrinkageMoment> shrink_moment;  ///< none: nothing is turned
  std::vector<PlannedJoint> joints;
  std::vector<procedure::Procedure> procedures;
  std::vector<PlannedStance> stances;  ///< in order of first visit
  std::vector<PlannedTurn> turns;      ///< in order of first turning so
  std::vector<PlannedEvent> timeline;
  std::vector<std::string> not_turned;          ///< seams without a place
  double seconds[timeline::second_kinds] = {};  ///< by SecondKind
  double cycle_s = 0.0;
  double lower_bound_s = 0.0;
  bool proved_best = false;
  OtherOrder greedy_order;  ///< always the block that adds the least time; stage by stage
  OtherOrder file_order;    ///< seams as the file lists them, each held as is soonest reached
  Totals totals;
  cost::Estimate estimate;
  cost::Rates rates;
  std::vector<procedure::Caution> cautions;
  std::vector<base::Finding> findings;  ///< notes and warnings; a plan with errors is not made
};

/// How the part sits in a stance. Pre: the stance is of this plan.
[[nodiscard]] const joint::Setup& setup_of(const Plan& plan, const PlannedStance& stance);

/// Cell and people a stage's re-hang takes; nothing where there is none.
[[nodiscard]] cost::CellUse rehang_use(const PlannedStage& stage);
/// What that costs a part by the rates used. It is within the items of the estimate.
[[nodiscard]] double rehang_price(const Plan& plan, const PlannedStage& stage);

/// The heaviest load on the faceplate of all stages, frame D of its set-up.
[[nodiscard]] joint::Weight heaviest_load(const Plan& plan);

}  // namespace seamturn::plan
