// SPDX-License-Identifier: MIT
// Tacks, hook and datums of the build as ordered.
#pragma once

#include <string>
#include <vector>

#include "detail_stages.hpp"
#include "seamturn/plan/plan.hpp"

namespace seamturn::planner::detail {

/// A direction of gravity in the part's frame, while a stage stands or turns.
struct Attitude {
  geom::Vec3 down_J = -geom::Vec3::UnitZ();
  std::string name;  ///< "rest", "S03", "turn to S03"
};

/// Attitudes of a stage that are looked at: on the hook when it is hung, its stances, the turns
/// between them in the order planned (both axes in proportion, every 10 degrees), whole turns where
/// it rolls. Pre: plan.stages[stage] is ordered; needs assemble_hangs.
[[nodiscard]] std::vector<Attitude> attitudes_of(const plan::Plan& plan, std::size_t stage);

/// Tacks of every seam with a place, and whether those of each member fitted carry it; needs the
/// order and the hooks. Warns plan.tacks.carry; notes plan.tacks.not_asked.
void assemble_tacks(const Inputs& inputs,
                    const std::vector<StageWork>& stages,
                    const std::vector<JointWork>& joints,
                    plan::Plan& plan);

/// The part on the hook wherever a stage hangs it anew or it leaves the positioner, and the set-up
/// names lifting points.
/// Warns turn.hang.*.
void assemble_hangs(const Inputs& inputs, const std::vector<StageWork>& stages, plan::Plan& plan);

/// Bands of the datums; needs the order. Warns plan.datum.*.
void assemble_datums(const Inputs& inputs,
                     const std::vector<StageWork>& stages,
                     const std::vector<JointWork>& joints,
                     plan::Plan& plan);

/// Tight welds want a leak test and two passes. Warns plan.duty.*.
void check_duties(const Inputs& inputs, plan::Plan& plan);

/// Where the return lead ends and what it carries. Warns cell.return.*.
void check_return_path(const Inputs& inputs, plan::Plan& plan);

/// Lines of the sheets that come from stages, tacks, datums, duties; needs the procedures.
void add_build_lines(plan::Plan& plan);

}  // namespace seamturn::planner::detail
