// SPDX-License-Identifier: MIT
// Bringing a joint to its preheat, and how long it stays there.
#pragma once

#include "detail_work.hpp"
#include "seamturn/cooling/warm_strip.hpp"

namespace seamturn::planner::detail {

/// Both members along the joint's seams as one plate that takes up heat. Pre: heat limits known.
[[nodiscard]] cooling::CoolingPlate cooling_plate(const Inputs& inputs, const JointWork& work);

/// The strip heated along the seams; of the thinner member, which loses heat faster.
/// Pre: the joint needs heating.
[[nodiscard]] cooling::WarmStrip warm_strip(const Inputs& inputs, const JointWork& work);

/// Time to bring one seam alone to its preheat, a little above it; 0 when none is needed or no
/// library says how the shop heats.
[[nodiscard]] double heating_time_s(const Inputs& inputs,
                                    const JointWork& work,
                                    const joint::Seam& seam);

/// The same for all seams at once, with one entry and the longest soak; never more heat than the
/// part that is there takes.
[[nodiscard]] double heating_time_at_once_s(const Inputs& inputs,
                                            double part_kg,
                                            const std::vector<SeamRef>& seams);

/// How long the seam then stays warm enough. Pre: heating_time_s > 0.
[[nodiscard]] cooling::Keep keep_after_heating(const Inputs& inputs, const JointWork& work);
/// And after a pass. Pre: as above.
[[nodiscard]] cooling::Keep keep_after_pass(const Inputs& inputs,
                                            const JointWork& work,
                                            double heat_input_kj_mm);

}  // namespace seamturn::planner::detail
