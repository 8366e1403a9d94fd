// SPDX-License-Identifier: MIT
// Arc energy and heat input. Arc energy has no efficiency in it; heat input = k x arc energy.
#pragma once

#include <string_view>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/outcome.hpp"

namespace seamturn::heat {

/// Thermal efficiency k of a process, relative to submerged arc welding.
/// Units: ISO 4063 number -> ratio.
/// Outside: refuses heat.process.unknown.
/// Source: [EN 1011-1] table 1 as quoted by [TWI-HI]; see docs/methods/heat-input.md.
/// Tests: heat/heat_input - published.
[[nodiscard]] base::Outcome<double> arc_efficiency_ratio(std::string_view process);

struct ArcParams {
  double voltage_v = 0.0;
  double current_a = 0.0;
  double travel_mm_s = 0.0;
};

/// U x I / v. Units: V, A, mm/s -> kJ/mm. Pre: all > 0.
[[nodiscard]] double arc_energy_kj_mm(const ArcParams& arc);
[[nodiscard]] const base::FigureCard& arc_energy_card();

/// k x U x I / v. Units: V, A, mm/s -> kJ/mm. Pre: all > 0. Refuses as arc_efficiency_ratio.
[[nodiscard]] base::Outcome<double> heat_input_kj_mm(std::string_view process,
                                                     const ArcParams& arc);
[[nodiscard]] const base::FigureCard& heat_input_card();

}  // namespace seamturn::heat
