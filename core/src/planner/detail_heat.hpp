// SPDX-License-Identifier: MIT
// The steps that make a joint's heat limits, in order: what heat sees, what every method asks for,
// what a neighbour asks for, and the heat input that keeps the steel's window.
#pragma once

#include <optional>
#include <vector>

#include "detail_work.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/material/carbon_equivalent.hpp"

namespace seamturn::planner::detail {

/// Chemistry of a member: its analysis, or the grade's limits, said so.
struct Chemistry {
  material::Composition composition;
  bool from_maxima = false;
  std::optional<double> cev_cap;  ///< of the standard, beside its maxima
};
/// The highest a formula can give of it.
[[nodiscard]] base::Outcome<material::CarbonEquivalent> carbon_equivalent_of(
    material::CarbonFormula formula, const Chemistry& chemistry);
[[nodiscard]] Chemistry chemistry_of(const joint::Member& member, const material::Steel& steel);

/// Ways the heat leaves the weld, each with the thickness averaged over heat::averaging_mm, where
/// the joint's seams have most of it around them. A bar, forging or solid round counts whole: it
/// has no wall to run along. Without a place: the through part of a tee or lap twice, else each
/// part once.
[[nodiscard]] std::vector<heat::HeatPath> heat_paths(const JointWork& work);

/// Asks every method. Pre: chemistry, thicknesses, hydrogen and lowest heat input are set.
[[nodiscard]] std::vector<procedure::PreheatAnswer> ask_methods(const JointWork& work,
                                                                const procedure::HeatLimits& limits,
                                                                double ambient_c);

/// The reduction of heat/preheat_zone.hpp is open to a joint: a fillet that every position lays in
/// one run a side, and the margin of the plate's CET over a stated one of the weld metal.
[[nodiscard]] bool may_be_reduced(const JointWork& work, double cet_plate);

/// The error where the reduction is asked for and the weld is not such a fillet.
[[nodiscard]] base::Finding reduction_refused(const Inputs& inputs, const JointWork& work);

/// Chooses among the answers: the highest that may govern, unless the file names another.
/// False: it names one that does not speak here, which is an error.
[[nodiscard]] bool choose_preheat(const Inputs& inputs,
                                  const JointWork& work,
                                  procedure::HeatLimits& limits,
                                  std::vector<base::Finding>& findings);

/// A joint within another's heated zone is as warm as that one asks for: the highest governs.
/// Cost: quadratic in joints, in near pairs also in samples.
void share_zones(const Inputs& inputs, std::vector<JointWork>& joints);

/// Preheat must lie below the interpass maximum. False: an error with ways out.
[[nodiscard]] bool check_conflict(const Inputs& inputs,
                                  const JointWork& work,
                                  std::vector<base::Finding>& findings);

/// The window of t8/5 that joint or steels state, and the heat input that keeps it.
void set_window(JointWork& work);
/// Lays stacks again inside a window that binds; what does not close is a finding.
void keep_window(const Inputs& inputs, JointWork& work, std::vector<base::Finding>& findings);

/// The lowest heat input the joint may see in any position, tacks included.
[[nodiscard]] double lowest_heat_input_kj_mm(const Inputs& inputs, const JointWork& work);

}  // namespace seamturn::planner::detail
