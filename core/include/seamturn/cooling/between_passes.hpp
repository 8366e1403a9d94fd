// SPDX-License-Identifier: MIT
// How long a place must cool before it may be welded over again. Two simple models stand beside
// each other; planning takes the longer. Times are for clock and price: the floor measures.
#pragma once

#include <span>
#include <vector>

#include "seamturn/base/outcome.hpp"

namespace seamturn::cooling {

/// Constants of steel used by both models. Source: docs/methods/cooling.md.
inline constexpr double conductivity_w_mm_k = 0.045;
inline constexpr double heat_capacity_j_mm3_k = 0.003925;  ///< 7850 kg/m3 x 500 J/kgK
inline constexpr double diffusivity_mm2_s = conductivity_w_mm_k / heat_capacity_j_mm3_k;
inline constexpr double face_loss_w_m2_k = 15.0;

struct CoolingPlate {
  double thickness_mm = 0.0;
  double width_mm = 0.0;  ///< of the heated plate across the weld, real width of the part
  int heat_paths = 2;     ///< plate halves that lead heat away. 1: an edge, 2: butt, 3: tee
  double ambient_c = 20.0;
  double start_c = 20.0;  ///< of the plate before the first pass: preheat, else ambient
  double face_loss_w_m2_k = cooling::face_loss_w_m2_k;  ///< of each face; more under a fan
};

/// Rise of the weld line over the far plate some time after one pass, by conduction into a plate of
/// endless width: exact for a sudden line of heat on a plate of this thickness, with face loss.
/// Units: kJ/mm, s -> K.      Frame: none.
/// Pre: finite, thickness, width, face loss, heat input, time > 0, heat paths >= 1.
/// Outside: n/a.
/// Source: [CARSLAW] line source by images, limits as Rosenthal's tails; docs/methods/cooling.md.
/// Accuracy: -45/+20 % of the rise on the one measured data set known, 30 to 130 s after the arc.
/// Tests: cooling/between_passes - computed cases, measured curves, laws.
[[nodiscard]] double tail_rise_k(const CoolingPlate& plate, double heat_input_kj_mm, double time_s);

/// Rise of a strip heated evenly and cooling through its faces. The strip is as wide as heat has
/// spread by then, four diffusion lengths sqrt(a t), and never wider than the part.
/// Units, Frame, Pre, Outside: as tail_rise_k.
/// Source: none - heat balance; docs/methods/cooling.md.
/// Accuracy: not known; a bead on a plate that is cold elsewhere cools faster.
/// Tests: cooling/between_passes - computed case, laws.
[[nodiscard]] double lump_rise_k(const CoolingPlate& plate, double heat_input_kj_mm, double time_s);

/// Wait after a pass by either model, all passes before it added up, each model along its own least
/// gaps. Keeping the longer of both therefore keeps both: later starts only lower temperatures.
struct Wait {
  double tail_s = 0.0;
  double lump_s = 0.0;
  [[nodiscard]] double longer_s() const { return tail_s > lump_s ? tail_s : lump_s; }
};

/// Least times between the starts of successive passes over one place so that each finds the place
/// at or below the interpass maximum. Element k is the gap between pass k and k+1 (0-based), given
/// that the earlier gaps were kept. Later starts only help. Fewer than two passes: nothing to wait.
/// Units: kJ/mm, degC -> s.      Frame: none.
/// Pre: finite, thickness, width, face loss, every heat input > 0, heat paths >= 1.
/// Outside: refuses cooling.interpass.below_start when the maximum is not above the plate's own
///   temperature, the higher of start and ambient (nothing ever cools below it).
/// Source: docs/methods/cooling.md.
/// Accuracy: solved to 1e-9 of the wait; the models as stated above.
/// Tests: cooling/between_passes - computed cases, laws.
[[nodiscard]] base::Outcome<std::vector<Wait>> waits_between_passes(
    const CoolingPlate& plate, std::span<const double> heat_inputs_kj_mm, double interpass_max_c);

}  // namespace seamturn::cooling
