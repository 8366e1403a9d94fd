// SPDX-License-Identifier: MIT
// t8/5: the time from 800 to 500 degC beside the weld.
#pragma once

#include <string_view>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/joint/joint.hpp"

namespace seamturn::heat {

enum class HeatFlow { three_dimensional, two_dimensional };
[[nodiscard]] std::string_view heat_flow_name(HeatFlow flow);  ///< "3-D", "2-D"

enum class CoolingCase { run_on_plate, butt, fillet_tee, fillet_corner };
[[nodiscard]] std::string_view cooling_case_name(CoolingCase c);  ///< "run-on-plate" ...

/// How a joint leads its heat away: a lap has three ways, as a tee. Tests: heat/cooling_time.
[[nodiscard]] CoolingCase cooling_case_of(joint::JointType type);

struct CoolingParams {
  CoolingCase weld = CoolingCase::run_on_plate;
  double heat_input_kj_mm = 0.0;
  double thickness_mm = 0.0;
  double start_c = 0.0;  ///< plate temperature when the run starts: preheat or interpass
};

struct CoolingTime {
  double t85_s = 0.0;
  HeatFlow flow = HeatFlow::three_dimensional;  ///< which of the two governs
  double t85_3d_s = 0.0;
  double t85_2d_s = 0.0;
  double transition_thickness_mm = 0.0;
  double factor_2d = 1.0;
  double factor_3d = 1.0;
  double t85_2d_long_s = 0.0;  ///< with the upper end of the tee's factor range; else = t85_2d_s
  std::vector<base::Finding> findings;
};

/// Start above which the formula's fit is doubted, and from which on nothing cools from 800 to 500
/// degC. Source: project choice (the fit stems from usual interpass temperatures); geometry of the
/// formula.
inline constexpr double cooling_start_usual_max_c = 350.0;
inline constexpr double cooling_start_limit_c = 500.0;

/// At the end of a bead the metal cools about twice as fast as in its middle: t8/5 of tacks, starts
/// and stops is about this share of the number below. Our inference from the rates of [JWS-45].
inline constexpr double bead_end_ratio = 0.5;

/// Cooling time of a run.
/// Units: kJ/mm, mm, degC -> s.
/// Pre: finite, heat input and thickness > 0.
/// Outside: refuses heat.t85.start_too_hot at or above 500 degC; warns heat.t85.out_of_range above
///   350 degC.
/// Source: [EN 1011-2] annex D form, as printed by [SSAB-17] p. 17; shape factors from memory.
/// Accuracy: print two figures; a fitted weld-metal law differs by about 45 % (docs/methods).
/// Tests: heat/cooling_time - published (weak), computed, law of continuity.
[[nodiscard]] base::Outcome<CoolingTime> cooling_time(const CoolingParams& params);
[[nodiscard]] const base::FigureCard& cooling_time_card();

}  // namespace seamturn::heat
