// SPDX-License-Identifier: MIT
// What the welds of the plan do to a datum. Bands between rules, never a release.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/shrinkage/face_band.hpp"
#include "seamturn/shrinkage/tolerance_class.hpp"

namespace seamturn::plan {

struct PlannedDatum {
  std::string id;
  std::optional<shrinkage::FaceBand> face;       ///< faces whose stages could be cut
  std::optional<shrinkage::Band> closing_mm;     ///< bores: by how much they close
  std::optional<shrinkage::Tolerance> flatness;  ///< class asked of a face
  std::optional<double> allowance_mm;            ///< left to be machined
  double worst_mm = 0.0;                         ///< largest end of the bands a face must bear
  std::vector<std::string> bent_by;              ///< seams that bend a face most, strongest first
};

}  // namespace seamturn::plan
