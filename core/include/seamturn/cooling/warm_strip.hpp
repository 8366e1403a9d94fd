// SPDX-License-Identifier: MIT
// How long a preheated place stays warm enough. Two models stand beside each other; planning takes
// the shorter. Times are for clock and price: the floor measures before every pass.
#pragma once

#include "seamturn/cooling/between_passes.hpp"

namespace seamturn::cooling {

/// Heating ends this far above the preheat, so that there is time to begin. Common practice.
inline constexpr double heated_above_preheat_k = 25.0;

/// A strip of plate along a seam, heated evenly through its thickness.
struct WarmStrip {
  double thickness_mm = 0.0;
  double half_width_mm = 0.0;  ///< heated on each side of the weld line
  double ambient_c = 20.0;     ///< of the air and of the plate beyond the strip
  double preheat_c = 0.0;      ///< the place must not be cooler when the arc comes
  double face_loss_w_m2_k = cooling::face_loss_w_m2_k;
};

/// What is left at the weld line of a strip's rise: heat runs into the cold plate on both sides
/// (exact for a sudden strip on a plate of endless width) and through both faces.
/// Units: s -> ratio.      Frame: none.      Pre: finite, sizes, face loss, time > 0.
/// Outside: n/a.      Source: [CARSLAW] strip source; docs/methods/cooling.md.
/// Accuracy: constants of steel at 100 degC; what the real heater warmed beside the strip is more.
/// Tests: cooling/warm_strip - closed-form, cross (finite differences), laws.
[[nodiscard]] double strip_left_ratio(const WarmStrip& strip, double time_s);
/// The same of a part heated through: the faces alone take heat away.
[[nodiscard]] double heated_through_left_ratio(const WarmStrip& strip, double time_s);

/// How long the place stays at or above the preheat, by either model.
struct Keep {
  double strip_s = 0.0;           ///< heated near the weld only, the cooler of the pass models
  double heated_through_s = 0.0;  ///< the part warm through, the warmer of the pass models
  [[nodiscard]] double shorter_s() const {
    return strip_s < heated_through_s ? strip_s : heated_through_s;
  }
};

/// After heating ended heated_above_preheat_k above the preheat.
/// Units: s.      Pre: as strip_left_ratio, preheat above ambient.
/// Source: docs/methods/cooling.md. Accuracy: solved to 1e-9 of the time.
/// Tests: cooling/warm_strip - closed-form, laws.
[[nodiscard]] Keep keep_after_heating(const WarmStrip& strip);

/// After the start of a pass that found the place just at its preheat; what earlier passes left is
/// not counted. Pre: as keep_after_heating; heat input > 0; a plate as waits_between_passes.
/// Accuracy: the strip is counted as fresh, which leaves at most 8 % of its rise too much.
/// Tests: cooling/warm_strip - laws.
[[nodiscard]] Keep keep_after_pass(const WarmStrip& strip,
                                   const CoolingPlate& plate,
                                   double heat_input_kj_mm);

}  // namespace seamturn::cooling
