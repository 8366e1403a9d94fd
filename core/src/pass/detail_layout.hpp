// SPDX-License-Identifier: MIT
// Where each bead lies: fillets in triangular layers, grooves in layers cut from the profile.
#pragma once

#include <string_view>
#include <vector>

#include "pass/detail_rules.hpp"
#include "seamturn/base/outcome.hpp"

namespace seamturn::pass {

/// A pass before its settings are written out.
struct Bead {
  process::PassRole role = process::PassRole::fill;
  int layer = 0;
  int bead = 0;
  double area_mm2 = 0.0;
  section::Point centre;
  section::Point aim;
  Angle work_angle;
  std::string_view limited_by;
};

/// docs/methods/pass-stack.md, "Fillets". Refuses as make_pass_stack.
[[nodiscard]] base::Outcome<std::vector<Bead>> lay_fillet(const section::WeldSection& section,
                                                          const Rules& rules);
/// docs/methods/pass-stack.md, "Grooves". Refuses as make_pass_stack.
[[nodiscard]] base::Outcome<std::vector<Bead>> lay_groove(const section::WeldSection& section,
                                                          const Rules& rules);

}  // namespace seamturn::pass
