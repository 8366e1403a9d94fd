// SPDX-License-Identifier: MIT
// The gas nozzle of a torch, as far as its room in a groove depends on it.
#pragma once

namespace seamturn::process {

struct Nozzle {
  double outer_diameter_mm = 0.0;
  double recess_mm = 0.0;  ///< contact tip behind the nozzle's mouth; negative: it stands out
  double stick_out_min_mm = 0.0;  ///< contact tip to work: what the nozzle and its gas allow
  double stick_out_max_mm = 0.0;
  bool operator==(const Nozzle&) const = default;
};

}  // namespace seamturn::process
