// SPDX-License-Identifier: MIT
// The ordering problem in plain numbers: pass blocks with options, what must come before what, and
// what it costs to go from one to the next. Knows nothing of plates and torches.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "seamturn/geom/vector.hpp"

namespace seamturn::order {

inline constexpr double never_s = std::numeric_limits<double>::infinity();

/// One pass of a block: arc seconds, and the least gap between the start of the zone's previous
/// pass and this one so that the place is cool enough (0: none).
struct BlockPass {
  double arc_s = 0.0;
  double gap_s = 0.0;       ///< after the previous pass of the same zone, place by place
  double overhead_s = 0.0;  ///< arc start, crater fill: counted as other
  double wind_s = 0.0;  ///< turn before the arc that brings a rolling axis to its start: kind turn
  double unwind_s = 0.0;  ///< turn after the arc that brings a limited rolling axis back: kind turn
  double keep_s = never_s;  ///< its place stays warm enough so long after it, place by place
};

/// One way to weld a block.
struct Option {
  int stance = 0;                           ///< index into Job::turn_s
  geom::Vec3 start_W = geom::Vec3::Zero();  ///< torch tip where the arc starts
  geom::Vec3 end_W = geom::Vec3::Zero();    ///< and where it ends
  /// Passes of a zone with one course start at one place and run one way; of two courses nobody
  /// knows which place is welded when.
  int course = 0;
  int tag = 0;  ///< for the caller: which candidate this was
};

/// The passes of one layer of one seam, or a part of them; or an operation of people between welds,
/// which has work_s and no passes, and options that start and end at home.
struct Block {
  std::string name;
  int zone = 0;  ///< blocks of one zone heat the same place: one seam, or both sides of a groove
  std::vector<BlockPass> passes;
  std::optional<double> work_s;  ///< of an operation: spent in its stance, the robot at home
  std::vector<Option> options;   ///< at least one
  std::vector<int> after;        ///< blocks that must be finished before
  double touch_s = 0.0;          ///< spent when the zone was not touched since the last turn
  double gouge_s = 0.0;          ///< spent in the block's stance before it, the robot at home
  double heat_s = 0.0;           ///< to bring its place to the preheat, the robot at home; 0: none
  double heat_keep_s = never_s;  ///< from the end of heating to the start of an arc
};

/// Why a block stands after another: only for messages.
struct LinkReason {
  int block = 0;
  int after = 0;
  std::string rule;  ///< "after= of joint J2"
};

/// What a shop would rather avoid than save seconds, as the seconds of cycle it is worth. On no
/// clock: the objective of a sequence counts them, its cycle does not.
struct Worth {
  double entry_s = 0.0;   ///< people going in to gouge, heat or work
  double stance_s = 0.0;  ///< turning the part to another stance
};

struct Job {
  std::vector<Block> blocks;
  std::vector<std::vector<double>> turn_s;  ///< [from][to] between stances, settling included
  int start_stance = 0;
  std::optional<int> end_stance;  ///< turned to after the return home; none: left where it is
  geom::Vec3 home_W = geom::Vec3::Zero();
  double air_speed_mm_s = 1.0;
  double air_acceleration_mm_s2 = 1.0;
  double retract_mm = 0.0;
  double clean_every_s = 0.0;  ///< 0: never
  double clean_s = 0.0;
  double arc_since_clean_s = 0.0;  ///< laid with this nozzle before the first block
  /// Heaters that stay on: all places with a heat_s at once, before the first of them is welded.
  /// 0: each on its own, again when it has grown cold.
  double heat_once_s = 0.0;
  Worth worth;
  std::vector<LinkReason> reasons;  ///< of `after`; not every link needs one
};

/// Which block with which option, in sequence.
struct Step {
  int block = 0;
  int option = 0;
  bool operator==(const Step&) const = default;
};
using Sequence = std::vector<Step>;

}  // namespace seamturn::order
