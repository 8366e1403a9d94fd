// SPDX-License-Identifier: MIT
// The heat input that keeps t8/5 inside a window between preheat and interpass maximum.
#pragma once

#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/heat/cooling_time.hpp"

namespace seamturn::heat {

struct BandParams {
  CoolingCase weld = CoolingCase::run_on_plate;
  double thickness_mm = 0.0;
  double coolest_start_c = 0.0;  ///< preheat
  double hottest_start_c = 0.0;  ///< interpass maximum
  double t85_least_s = 0.0;
  double t85_most_s = 0.0;
};

struct HeatInputBand {
  double least_kj_mm = 0.0;  ///< gives t85_least at the coolest start
  double most_kj_mm = 0.0;   ///< gives t85_most at the hottest start
  HeatFlow least_flow = HeatFlow::three_dimensional;
  HeatFlow most_flow = HeatFlow::three_dimensional;
  std::vector<base::Finding> findings;
};

/// Inverse of cooling_time at both ends. Where the table gives a range of the 2-D factor (tee), the
/// most is taken with its upper end, the least with its lower end: both on the careful side.
/// Units: mm, degC, s -> kJ/mm (with the European k).
/// Pre: finite, thickness and t85_least > 0, least < most, coolest <= hottest.
/// Outside: refuses heat.band.empty when the least lies above the most, heat.t85.start_too_hot at
///   500 degC; warns as cooling_time.
/// Source: [SSAB-17] the formulas inverted.
/// Accuracy: exact inverse; see cooling_time.
/// Tests: heat/heat_input_band - closed-form, law cooling_time returns the window.
[[nodiscard]] base::Outcome<HeatInputBand> heat_input_band(const BandParams& params);
[[nodiscard]] const base::FigureCard& heat_band_card();

}  // namespace seamturn::heat
