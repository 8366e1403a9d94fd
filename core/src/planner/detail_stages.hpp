// SPDX-License-Identifier: MIT
// The build as planned: which members are there when which seams are welded, in which set-up.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "detail_work.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/joint/stages.hpp"

namespace seamturn::planner::detail {

/// A stage with what is there and what is welded in it.
struct StageWork {
  const joint::Stage* stage = nullptr;        ///< none: the file names no stages
  const joint::Setup* setup = nullptr;        ///< none: away from the cell, or no set-up is stated
  std::vector<const joint::Member*> present;  ///< in the order of the file
  joint::Weight part_J;
  joint::Weight load_D;  ///< with fixture and risers; only where a set-up is
  std::set<std::string_view> joints;
  bool rehangs = false;  ///< the part is hung anew at its beginning

  [[nodiscard]] bool welds(const joint::Joint& joint) const { return joints.contains(joint.id); }
  [[nodiscard]] bool has(std::string_view member) const;
  [[nodiscard]] std::string name() const;  ///< "stage core", "the part"
  /// Of the file, in its order; where tacks must carry, with the hold point after fitting.
  std::vector<joint::Operation> operations;
};

/// Stages in order, at least one. Without stages in the file: one with all members, in the first
/// set-up.
/// Outside: errors stage.member.*, stage.joint.*, stage.operation.*, stage.setup.*, setup.*.
/// Source: none - rules of this model. Tests: planner/stages.
[[nodiscard]] std::vector<StageWork> work_stages(const Inputs& inputs,
                                                 std::vector<base::Finding>& findings);

/// In which a joint is welded. Pre: stages are those of its weldment.
[[nodiscard]] std::size_t stage_index(const std::vector<StageWork>& stages,
                                      const joint::Joint& joint);
/// Member the stage's set-up holds: under its clamps, else the one that reaches lowest towards the
/// faceplate. Pre: a member is there.
[[nodiscard]] const joint::Member& held_member(const cell::Positioner& positioner,
                                               const StageWork& stage);

/// What the build does not allow: members that float or are never fitted, joints and operations in
/// a stage in which they cannot be, clamps on seams.
void check_stages(const Inputs& inputs,
                  const std::vector<StageWork>& stages,
                  std::vector<base::Finding>& findings);

/// Errors stage.hand_order.elsewhere and stage.balance.elsewhere: what an order by hand or a stated
/// twin names is welded in another stage.
void check_order(const Inputs& inputs,
                 const std::vector<StageWork>& stages,
                 std::vector<base::Finding>& findings);

/// Of a stage, the seams (of all joints with both members there) that a torch finds no way to, each
/// with the member that closes it off. A rough search along straight ways, wider the farther from
/// the weld; it knows no robot.
struct HiddenSeam {
  const joint::Joint* joint = nullptr;
  const joint::Seam* seam = nullptr;
  std::string by;  ///< member, or a solid of the set-up
};
[[nodiscard]] std::vector<HiddenSeam> find_hidden_seams(const Inputs& inputs,
                                                        const StageWork& stage);

}  // namespace seamturn::planner::detail
