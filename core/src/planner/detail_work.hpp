// SPDX-License-Identifier: MIT
// What the stages of the planner hand to each other. Private to the room.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/cell/cell.hpp"
#include "seamturn/cooling/between_passes.hpp"
#include "seamturn/heat/cooling_time.hpp"
#include "seamturn/pass/pass_stack.hpp"
#include "seamturn/planner/inputs.hpp"
#include "seamturn/procedure/procedure.hpp"
#include "seamturn/section/weld_section.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::planner::detail {

using base::Angle;

/// Least times to each pass from the start of the pass before over the same place; 0 for the first.
struct Gaps {
  std::vector<double> longer_s;   ///< by the slower model of cooling: planned with
  std::vector<double> shorter_s;  ///< by the faster one: the other end of the bracket
};

/// A pass stack for one position, and how long each pass must wait for the one before.
struct StackChoice {
  process::WeldPosition position = process::WeldPosition::pa;
  pass::PassStack stack;
  Gaps gaps;
};

struct SeamWork {
  const joint::Seam* seam = nullptr;
  section::WeldSection section;     ///< of the side this seam fills
  std::vector<StackChoice> stacks;  ///< positions that close, easiest first
  /// Bead limits of this seam in place of the library's; none: the library's.
  std::vector<process::BeadLimit> limits;
};

struct JointWork {
  const joint::Joint* joint = nullptr;
  const joint::Member* member_1 = nullptr;
  const joint::Member* member_2 = nullptr;
  const material::Steel* steel_1 = nullptr;
  const material::Steel* steel_2 = nullptr;
  const process::Wire* wire = nullptr;
  heat::CoolingCase cooling_case = heat::CoolingCase::butt;
  procedure::HeatLimits heat;
  std::vector<SeamWork> seams;
};

/// Of a joint's two members, as heat sees them.
[[nodiscard]] double thinner_mm(const JointWork& work);
[[nodiscard]] double thicker_mm(const JointWork& work);

/// One way to hold a seam: a stance of the pool and how the weld lies there.
struct Placement {
  int stance = 0;            ///< index into StancePool::stances
  int stack = 0;             ///< index into SeamWork::stacks
  bool reversed = false;     ///< lines: travelled from the end
  double ring_start_mm = 0;  ///< rings: station where the arc starts
  bool rolling = false;
  bool second_below = false;  ///< fillets in PB: the second member's plate is the lower one
  double strain_ratio = 0.0;  ///< 0: lies as wanted, 1: at the limit of the working tolerance
};

inline constexpr int at_rest = -1;  ///< instead of the index of a stance
inline constexpr int as_it_hangs = -2;

struct StancePool {
  std::vector<turn::Stance> stances;
  std::vector<int> of_operations;  ///< per operation of the stage: index, at_rest or as_it_hangs
  std::vector<std::vector<Placement>> placements;  ///< per seam, in the order of all_seams
  std::size_t exact = 0;  ///< so many of the first lay some seam exactly as wanted
};

/// A seam with its joint, in file order.
struct SeamRef {
  const JointWork* joint = nullptr;
  const SeamWork* work = nullptr;
};
[[nodiscard]] std::vector<SeamRef> all_seams(const std::vector<JointWork>& joints);

/// What a pass takes beside its arc: striking it, filling the crater, and from stretch to stretch
/// of an intermittent seam the way with the torch withdrawn.
[[nodiscard]] double pass_overhead_s(const cell::Cell& cell, const joint::Seam& seam);

/// A finding about a joint, at its place: "joint J1: ...".
[[nodiscard]] base::Finding joint_finding(const Inputs& inputs,
                                          const joint::Joint& joint,
                                          base::Severity severity,
                                          std::string code,
                                          const std::string& text);
/// Where something stands in the weldment file; an empty place when the reader did not keep it.
[[nodiscard]] base::Place place_of(const joint::Weldment& weldment, const std::string& key);

}  // namespace seamturn::planner::detail
