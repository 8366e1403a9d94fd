// SPDX-License-Identifier: MIT
// What a weldment file says of a joint's heat. What it leaves out is found from plates and library.
#pragma once

#include <optional>
#include <string>

#include "seamturn/joint/restraint.hpp"

namespace seamturn::joint {

struct StatedHeat {
  std::optional<double> preheat_c;  ///< with a reason
  std::string preheat_by;           ///< name of the method that governs, with a reason
  std::string preheat_reason;
  /// The standard's reduction for a fillet of one run is taken, with a reason; otherwise never.
  bool single_run_reduction = false;
  std::optional<double> interpass_max_c;
  std::string record;  ///< id of the qualification record whose interpass maximum counts
  std::optional<double> combined_thickness_mm;  ///< where the geometry is not enough
  bool sides_together = false;  ///< both fillets of a plate are laid at the same time
  Restraint restraint = Restraint::medium;
  bool restraint_stated = false;
  std::optional<double> t85_min_s;  ///< both or neither: the steel maker's window
  std::optional<double> t85_max_s;
};

}  // namespace seamturn::joint
