// SPDX-License-Identifier: MIT
// Last stages: putting the found order, procedures, estimate and cautions into one plan.
#pragma once

#include <vector>

#include "detail_order_job.hpp"
#include "detail_work.hpp"
#include "seamturn/order/search.hpp"
#include "seamturn/plan/plan.hpp"

namespace seamturn::planner::detail {

/// Yield taken where a steel's standard states none: so strong that hold times and tacks come out
/// long. MPa; seamturn's own, on the careful side.
inline constexpr double unknown_yield_mpa = 1000.0;

/// Joints, seams and passes without a clock: the position planned is that of the first placement,
/// or of the first stack for seams that are not turned.
void assemble_joints(const Inputs& inputs,
                     const std::vector<JointWork>& joints,
                     const std::vector<std::vector<Placement>>& placements,
                     plan::Plan& plan);

/// An operation of a stage without its time and stance. Pre: index within its operations.
[[nodiscard]] plan::PlannedOperation planned_operation(const StageWork& stage, std::size_t index);

/// Of one stage, on the clock after those before it: stances, timeline, seconds by kind,
/// operations, and the times and torch poses of the passes. Pre: plan.stages ends with this stage.
void assemble_order(const Inputs& inputs,
                    const StageWork& stage,
                    const std::vector<SeamRef>& seams,
                    const StancePool& pool,
                    const OrderJob& order_job,
                    const order::Found& found,
                    plan::Plan& plan);

/// How far twins drift apart on the clock, added to the plan; needs assemble_order.
void assemble_twins(const std::vector<SeamRef>& seams,
                    const std::vector<Twins>& twins,
                    plan::Plan& plan);
/// Largest moment of the shrinkage forces on the way; needs assemble_order. Nothing where no pass
/// has a time.
/// Source: F = 0.2 Q [SHRINK-FORCE], from memory; the rest statics (docs/methods/order.md).
[[nodiscard]] std::optional<plan::ShrinkageMoment> find_shrink_moment(
    const std::vector<SeamRef>& seams, const plan::Plan& plan);

/// Hold times, soak, hardness, tearing and later heating; needs assemble_joints. Warns
/// heat.tearing.class_missing.
void assemble_aftercare(const Inputs& inputs,
                        const std::vector<JointWork>& joints,
                        plan::Plan& plan);

/// Warns plan.wire.undermatch of grooves, notes it of other welds: the wire promises less yield
/// than the weaker part has.
void check_strength(const Inputs& inputs, const std::vector<JointWork>& joints, plan::Plan& plan);

/// How warm each place is when its passes start; needs assemble_order.
void assemble_start_temperatures(const Inputs& inputs,
                                 const std::vector<JointWork>& joints,
                                 plan::Plan& plan);

/// Bands and gap tables of the planned seams, when a library states tolerances; needs
/// assemble_joints. Warns fitup.case.open where the most or least metal closes with no settings.
void assemble_fit_up(const Inputs& inputs, const std::vector<JointWork>& joints, plan::Plan& plan);

/// Rules of codes on each weld's size, the throat that counts and the metal laid beyond the
/// drawing; needs assemble_joints.
void assemble_sizes(const Inputs& inputs, const std::vector<JointWork>& joints, plan::Plan& plan);

/// Warns of passes the nozzle has no room for, where the cell's torch states its recess; needs
/// assemble_joints.
void check_nozzle(const Inputs& inputs, plan::Plan& plan);

/// Procedures, with their cautions; needs assemble_joints.
void assemble_procedures(const Inputs& inputs,
                         const std::vector<JointWork>& joints,
                         plan::Plan& plan);

/// The price; needs assemble_order where a cell is named.
void assemble_estimate(const Inputs& inputs, plan::Plan& plan);

/// Finds a planned seam by id; Pre: it is there.
[[nodiscard]] plan::PlannedSeam& planned_seam(plan::Plan& plan, const std::string& id);

}  // namespace seamturn::planner::detail
