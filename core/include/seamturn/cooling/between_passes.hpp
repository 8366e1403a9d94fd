// SPDX-License-Identifier: MIT
// How long a place must cool before it may be welded over again. Two simple models stand beside
// each other; planning takes the longer. Times are for clock and price: the floor measures.
#pragma once

#include <span>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/outcome.hpp"

namespace seamturn::cooling {

/// Constants of steel used by both models. Source: docs/methods/cooling.md.
inline constexpr double conductivity_w_mm_k = 0.045;
inline constexpr double heat_capacity_j_mm3_k = 0.003925;  ///< 7850 kg/m3 x 500 J/kgK
inline constexpr double face_loss_w_m2_k = 15.0;

struct CoolingPlate {
  double thickness_mm = 0.0;
  double width_mm = 0.0;       ///< of the heated plate across the weld, real width of the part
  int heat_paths = 2;          ///< 2: butt, 3: tee
  double ambient_c = 20.0;
  double start_c = 20.0;       ///< of the plate before the first pass: preheat, else ambient
};

/// Wait after a pass by conduction into a wide plate (Rosenthal tail with face loss), all passes
/// before it superposed; and by the lump (heated strip cooling through its faces).
struct Wait {
  double tail_s = 0.0;
  double lump_s = 0.0;
  [[nodiscard]] double longer_s() const { return tail_s > lump_s ? tail_s : lump_s; }
};

/// Least times between the starts of successive passes over one place so that each finds the place
/// at or below the interpass maximum. Element k is the gap between pass k and k+1 (0-based), given
/// that the earlier gaps were kept. Later starts only help.
/// Units: kJ/mm -> s.
/// Pre: thickness > 0, every heat input > 0.
/// Outside: refuses cooling.interpass.below_start when the maximum is not above the start
///   temperature (nothing ever cools below it).
/// Source: Rosenthal tails and lumped cooling, docs/methods/cooling.md. Accuracy: tail -45/+20 % on
///   the one measured data set known; the lump is slower still (stated there).
/// Tests: cooling/between_passes - computed cases, laws.
[[nodiscard]] base::Outcome<std::vector<Wait>> waits_between_passes(
    const CoolingPlate& plate, std::span<const double> heat_inputs_kj_mm, double interpass_max_c);

}  // namespace seamturn::cooling
