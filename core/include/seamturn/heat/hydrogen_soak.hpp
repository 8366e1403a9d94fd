// SPDX-License-Identifier: MIT
// Advice on driving hydrogen out of a warm weld. Advice only: it releases nothing.
#pragma once

#include <string>

#include "seamturn/base/citation.hpp"
#include "seamturn/base/figure_card.hpp"

namespace seamturn::heat {

struct HydrogenSoak {
  double least_c = 200.0;
  double usual_c = 250.0;
  double most_c = 300.0;
  double least_hours = 2.0;  ///< the standard's
  double hours = 2.0;        ///< with thickness: 1 h per 25 mm, at least 2 (common practice)
  std::string text;          ///< for the sheet
  base::Status status = base::Status::from_memory;
};

/// Hydrogen soak straight from the interpass temperature, before the weld cools.
/// Units: mm -> degC, h.
/// Pre: finite, > 0.
/// Outside: n/a; quenched and tempered and wear steels have an upper limit of their maker below it.
/// Source: [EN 1011-2] 2001 from memory; hours by thickness common practice.
/// Accuracy: advice.
/// Tests: heat/hydrogen_soak - remembered, law.
[[nodiscard]] HydrogenSoak hydrogen_soak(double thickness_mm);
[[nodiscard]] const base::FigureCard& hydrogen_soak_card();

}  // namespace seamturn::heat
