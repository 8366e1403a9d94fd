// SPDX-License-Identifier: MIT
// First stage: section, heat limits and pass stacks of every joint.
#pragma once

#include <optional>
#include <vector>

#include "detail_work.hpp"
#include "seamturn/base/finding.hpp"

namespace seamturn::planner::detail {

/// Works out every joint; what cannot be is a finding and the joint is left out.
[[nodiscard]] std::vector<JointWork> work_joints(const Inputs& inputs,
                                                 std::vector<base::Finding>& findings);

/// Warnings that a method's range is left, the same of several joints: one, at the first's place.
[[nodiscard]] std::vector<base::Finding> told_together(std::vector<base::Finding> findings);

/// Least yield of a member by its steel's standard; nothing where that states none.
[[nodiscard]] std::optional<double> stated_yield_mpa(const material::Steel& steel,
                                                     const joint::Member& member);

/// Root and standard ranges of a preparation: warnings joint.root.face_left, joint.range.*.
void check_preparation(const Inputs& inputs,
                       const joint::Joint& joint,
                       std::vector<base::Finding>& findings);
/// From how many sides a joint is closed, as the ranges of standards count.
[[nodiscard]] joint::RangeSides sides_of(const joint::Joint& joint);

/// What the section of a seam is made of, as laid and as drawn, and what its passes may be in a
/// position.
[[nodiscard]] section::SectionParams section_params(const joint::Joint& joint,
                                                    const joint::Seam& seam);
[[nodiscard]] section::SectionParams drawn_params(const joint::Joint& joint,
                                                  const joint::Seam& seam);
[[nodiscard]] pass::StackRequest stack_request(const Inputs& inputs,
                                               const JointWork& work,
                                               const SeamWork& seam,
                                               process::WeldPosition position);

/// Bead limits are judged by what the weld is, positions by how its face lies: a groove in a tee
/// is a groove for the bead and turns like a fillet.
[[nodiscard]] process::WeldFamily bead_family(const joint::Joint& joint);
/// Largest section of one pass by the limits of a seam; infinite when none binds.
[[nodiscard]] double largest_bead_mm2(const Inputs& inputs,
                                      const JointWork& work,
                                      const SeamWork& seam,
                                      process::WeldPosition position,
                                      process::PassRole role);
/// After the full stacks of a seam, per position one with beads small enough for the corner of the
/// working tolerance, where the full ones are too large for it and a lighter one closes. Never
/// colder than the joint's preheat was found for. Pre: the joint's heat limits are known.
void add_light_stacks(const Inputs& inputs, const JointWork& work, SeamWork& seam);

/// Gaps of a sequence of passes over one place by both cooling models.
/// Pre: the joint's heat limits are known; at least one pass.
[[nodiscard]] base::Outcome<Gaps> find_gaps(const Inputs& inputs,
                                            const JointWork& work,
                                            const std::vector<double>& heat_inputs_kj_mm);

/// Preheat, interpass maximum and carbon equivalents of a joint whose stacks are laid.
[[nodiscard]] std::optional<procedure::HeatLimits> heat_limits(
    const Inputs& inputs, const JointWork& work, std::vector<base::Finding>& findings);

}  // namespace seamturn::planner::detail
