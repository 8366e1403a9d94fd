// SPDX-License-Identifier: MIT
// How long it takes to bring a place to its preheat.
#pragma once

#include <string>

#include "seamturn/base/citation.hpp"

namespace seamturn::process {

/// One row of a library: how a shop heats.
struct Heating {
  std::string id;
  std::string method;         ///< for people, e.g. "gas torch with a wide flame"
  double power_w = 0.0;       ///< of flame or mats
  double useful_ratio = 0.0;  ///< of it that reaches the steel
  double entry_s = 0.0;  ///< people into the cell and out again, or mats put on; once a heating
  bool holds = false;    ///< it stays on while others weld: nothing cools below the preheat
  std::string source;
  base::Status status = base::Status::common_practice;
};

/// Time the cell stands still for it: entry + heat / useful power + soak.
/// Units: J, s -> s.  Frame: none.  Pre: finite, power and useful part > 0, the others >= 0.
/// Outside: n/a.
/// Source: none - heat balance; what runs away into the part meanwhile is in the useful part.
/// Accuracy: that of the useful part.
/// Tests: process/heating - closed-form, law.
[[nodiscard]] double heating_time_s(const Heating& heating, double heat_j, double soak_s);

}  // namespace seamturn::process
