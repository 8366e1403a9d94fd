// SPDX-License-Identifier: MIT
// How long a part that is warm all through takes to cool in air. For parts heated evenly, not for
// the place beside a fresh bead. Times are for clock and price: the floor measures.
#pragma once

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/cooling/between_passes.hpp"

namespace seamturn::cooling {

struct PartCooling {
  double thickness_mm = 0.0;  ///< of a plate that cools on both faces
  double from_c = 0.0;
  double to_c = 0.0;
  double ambient_c = 20.0;
  /// Of each face. With an emissivity: of the air alone, about 5 in still air.
  double face_loss_w_m2_k = cooling::face_loss_w_m2_k;
  double emissivity = 0.0;  ///< 0: radiation is inside the face loss; oxidised plate about 0.8
};

struct PartCoolingTime {
  double time_s = 0.0;
  double hottest_loss_w_m2_k = 0.0;  ///< air and radiation at the start, where it is largest
  double biot = 0.0;                 ///< of half the thickness, with that loss
};

/// From here on the middle of a plate stays noticeably warmer than its faces, and one temperature
/// for all of it misleads. Common practice.
inline constexpr double biot_limit = 0.1;

/// One temperature for the whole part: rho c d/2 dT/dt = -h (T - Ta) - eps sigma (T^4 - Ta^4), T in
/// kelvin. Without radiation t = rho c d/(2 h) ln[(T1 - Ta)/(T2 - Ta)]; with it Simpson's rule (for
/// this equation the same as Runge-Kutta of fourth order) in the logarithm of T - Ta, the steps
/// halved until the time moves by less than 1e-10 of itself.
/// Units: mm, degC, W/m2 K -> s.      Frame: none.
/// Pre: finite, thickness > 0, face loss >= 0, emissivity 0 to 1, not both 0, from above to, all
///   above absolute zero.
/// Outside: refuses cooling.part.never_reached when the target is not above ambient,
///   cooling.part.biot at a Biot number of 0.1 or more.
/// Source: heat balance; Stefan-Boltzmann constant [CODATA]; docs/methods/cooling.md.
/// Accuracy: that of h and emissivity; steel holds up to 6 % more heat at 200 degC than the
/// constant
///   used here. Beside a fresh bead it is 2.1 to 4.4 times too slow.
/// Tests: cooling/part_cooling - closed-form, cross (another integrator), computed, laws.
[[nodiscard]] base::Outcome<PartCoolingTime> part_cooling(const PartCooling& part);
[[nodiscard]] const base::FigureCard& part_cooling_card();

}  // namespace seamturn::cooling
