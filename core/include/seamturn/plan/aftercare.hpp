// SPDX-License-Identifier: MIT
// What heat leaves to do and to watch once a joint's passes are planned.
#pragma once

#include <optional>
#include <string>

#include "seamturn/cooling/warm_strip.hpp"
#include "seamturn/heat/hardness.hpp"
#include "seamturn/heat/hold_time.hpp"
#include "seamturn/heat/hydrogen_soak.hpp"
#include "seamturn/heat/lamellar_tearing.hpp"
#include "seamturn/material/steel.hpp"

namespace seamturn::plan {

/// Hardness beside the weld where it cools fastest. An estimate with its scatter, never a verdict.
struct HardnessEstimate {
  std::string member;  ///< the harder one
  double t85_s = 0.0;  ///< shortest of the joint, in the middle of a bead
  heat::Hardness estimate;
};

/// Whether the plate that is pulled through its thickness is good for it. Never a release.
struct TearingCheck {
  std::string member;  ///< the through plate
  std::string shape;   ///< of the weld, as the points count it
  heat::Tearing points;
  heat::ZClass plate = heat::ZClass::none;
  heat::TearingVerdict verdict = heat::TearingVerdict::none_required;
};

/// What stress relief or straightening may not exceed: the lowest limit the steels state.
struct LaterHeating {
  std::string steel;
  material::StatedTemperature limit;
};

struct Aftercare {
  heat::HoldTime hold;  ///< before final testing, of the joint as a whole
  double hold_size_mm = 0.0;
  std::optional<heat::HydrogenSoak> soak;    ///< where the joint is preheated
  std::optional<cooling::Keep> keep;         ///< warm so long after heating; none: no heating
  std::optional<HardnessEstimate> hardness;  ///< none: no analysis, or outside the formulas
  std::optional<TearingCheck> tearing;       ///< tee and corner joints on a plate or ring
  std::optional<LaterHeating> later;         ///< none: no steel states one
};

}  // namespace seamturn::plan
