// SPDX-License-Identifier: MIT
// Grooves: first which layers, then the beads of each.
#pragma once

#include <string_view>
#include <vector>

#include "pass/detail_layout.hpp"
#include "pass/detail_profile.hpp"
#include "pass/detail_rules.hpp"

namespace seamturn::pass {

struct GrooveLayer {
  process::PassRole role = process::PassRole::fill;
  double low_mm = 0.0;  ///< heights on the profile
  double high_mm = 0.0;
  int beads = 1;
  bool capped = false;  ///< carries the cap, if the section has one
  std::string_view limited_by;
};

/// The best layers by the aim of the rules. Refuses as make_pass_stack.
[[nodiscard]] base::Outcome<std::vector<GrooveLayer>> find_groove_layers(const Profile& profile,
                                                                         const Rules& rules);

/// Torch of one bead between two walls: half their angle, within 25 deg.
[[nodiscard]] Angle halved_walls(const section::Slice& low, const section::Slice& high);

}  // namespace seamturn::pass
