// SPDX-License-Identifier: MIT
// Second stage: which stances serve which seams.
#pragma once

#include <vector>

#include "detail_stages.hpp"
#include "detail_work.hpp"
#include "seamturn/base/finding.hpp"

namespace seamturn::planner::detail {

/// Stances that lay some seam exactly as wanted or several within their working tolerance, and that
/// the positioner can carry; for every seam the stances that hold it within a working tolerance.
/// Stances that another serves better are left out (thinned).
/// Cost: quadratic in seams (the sky of each stance is tried on each seam), docs/methods/stance.md.
/// Only seams of joints the stage welds get placements. Stances its operations ask for are in the
/// pool too.
/// Pre: inputs.cell and the stage's set-up are set.
[[nodiscard]] StancePool find_stance_pool(const Inputs& inputs,
                                          const StageWork& stage,
                                          const std::vector<SeamRef>& seams,
                                          std::vector<base::Finding>& findings);

/// Without the stances that serve no seam, and those whose seams another one serves at least as
/// well: every one with no slower stack. Of two that serve the same alike, the one that lays them
/// nearer to nominal stays, else the one nearer to rest. Stances of operations stay.
/// Tests: planner/stance_pool - laws.
[[nodiscard]] StancePool thinned(const Inputs& inputs,
                                 const std::vector<SeamRef>& seams,
                                 StancePool pool);

/// Seconds a seam takes when welded with a stack: arcs, and waits as if nothing filled them.
[[nodiscard]] double stack_time_s(const Inputs& inputs, const SeamWork& seam, std::size_t stack);
/// Seconds of going to a stance once, home and back included.
[[nodiscard]] double opening_time_s(const Inputs& inputs, const turn::Stance& stance);

/// Whole turns apart is the same stance, unless the turn goes on during the weld.
[[nodiscard]] bool same_stance(const turn::Stance& a, const turn::Stance& b);

/// Chooses few stances: every seam gets one position and keeps the placements in that position and
/// in the chosen stances. Returns, per seam, the placements to plan with.
/// Method: facility location by greedy opening and local search; the price of a stance is the time
/// of turning to it once. Cost per round: stances x seams.
[[nodiscard]] std::vector<std::vector<Placement>> choose_placements(
    const Inputs& inputs, const std::vector<SeamRef>& seams, const StancePool& pool);

/// Lays the layers of fillets from the second member where the chosen stances have its plate below.
/// Pre: placements as choose_placements gives them, one list a seam of `joints`.
void turn_beads(std::vector<JointWork>& joints,
                const std::vector<std::vector<Placement>>& placements);

/// How far the arc of a pass stands ahead of dead centre on a rolled ring, and how much farther
/// than that of the stack's first pass. Pre: the seam is a ring.
[[nodiscard]] base::Angle lead_of(const Inputs& inputs, const SeamRef& ref, const pass::Pass& pass);
[[nodiscard]] base::Angle lead_before(const Inputs& inputs,
                                      const SeamRef& ref,
                                      const pass::PassStack& stack,
                                      const pass::Pass& pass);
/// Turn of the last axis that brings the one start of all passes to where the arc of this one
/// stands.
[[nodiscard]] base::Angle lead_wind(const Inputs& inputs,
                                    const joint::Setup& setup,
                                    const SeamRef& ref,
                                    const pass::PassStack& stack,
                                    const pass::Pass& pass);

/// Of a ring or an arc, the way round a point of its section takes, to that of the line drawn; 1
/// for other seams. Metal counts by it (Pappus).
[[nodiscard]] double section_share(const SeamRef& ref, const section::Point& point);
/// How fast the wire tip of a pass goes round in its arc time; none where no seam goes round.
[[nodiscard]] std::optional<double> tip_speed_mm_s(const SeamRef& ref, const pass::Pass& pass);
/// Arc times of rings and arcs, where a bead is as long as the way round of its centre and not the
/// line drawn, and of segments, whose layers differ in length.
void set_layer_times(const JointWork& work, SeamWork& seam);

/// How far a ring seam is welded round: a whole turn and its overlap. Pre: it is a ring of one
/// stretch.
[[nodiscard]] base::Angle rolled_angle(const joint::Seam& seam);

/// The positioner turns against the travel: +1 when its last axis' angle rises during a rolled
/// pass.
[[nodiscard]] double rolling_sense(const cell::Positioner& positioner,
                                   const geom::Vec3& ring_axis_D);

/// Turn of the positioner's last axis while one pass of a rolled ring is laid: as far as it is
/// welded, against the travel, in the sense of that axis.
/// Pre: the seam is a ring whose axis is parallel to the last axis of the positioner.
[[nodiscard]] base::Angle rolled_turn(const cell::Positioner& positioner,
                                      const joint::Setup& setup,
                                      const joint::Seam& seam);

}  // namespace seamturn::planner::detail
