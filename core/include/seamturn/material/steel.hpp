// SPDX-License-Identifier: MIT
// A steel as its standard describes it: limits by thickness band.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/base/citation.hpp"
#include "seamturn/material/composition.hpp"

namespace seamturn::material {

/// Limits of one nominal thickness band (over the previous band's limit, up to and including this).
struct SteelBand {
  double up_to_mm = 0.0;
  double yield_mpa = 0.0;
  Composition maxima;             ///< limits of the standard, NOT a typical analysis
  std::optional<double> cev_max;  ///< mass-%
  base::Status status = base::Status::from_memory;
  std::string source;  ///< key and locator as one text
};

struct Steel {
  std::string designation;  ///< e.g. "S355J2"
  std::string standard;     ///< e.g. "EN 10025-2:2019"
  std::string group;        ///< ISO/TR 15608, e.g. "1.2"; empty when none
  std::optional<double> interpass_max_c;
  std::string interpass_source;
  base::Status interpass_status = base::Status::from_memory;
  std::vector<SteelBand> bands;  ///< rising thickness
};

/// The band that holds a thickness; nullptr when the steel is not made so thick.
/// Pre: thickness_mm > 0. Tests: material/steel - published band borders.
[[nodiscard]] const SteelBand* find_band(const Steel& steel, double thickness_mm);

}  // namespace seamturn::material
