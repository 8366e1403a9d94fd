// SPDX-License-Identifier: MIT
// Edge preparations and weld sizes, by the terms of ISO 17659 and ISO 9692-1.
#pragma once

#include <optional>
#include <string_view>
#include <variant>

#include "seamturn/base/angle.hpp"

namespace seamturn::joint {

using base::Angle;

/// Cap above the plate surface.
struct Cap {
  double height_mm = 0.0;   ///< 0: ground flush
  double toe_lap_mm = 0.0;  ///< beyond the groove edge, each side
};

/// A fillet. Legs lie along the plates. Flat face.
struct Fillet {
  double leg_1_mm = 0.0;  ///< along the first member
  double leg_2_mm = 0.0;  ///< along the second member
};
struct SquareButt {
  double gap_mm = 0.0;
};
struct SingleV {
  double gap_mm = 0.0;
  double root_face_mm = 0.0;
  Angle included;  ///< between the two faces
};
/// One face bevelled, the other square. In a tee the second member is the bevelled one.
struct SingleBevel {
  double gap_mm = 0.0;
  double root_face_mm = 0.0;
  Angle bevel;  ///< of the one face, from the plate's edge
};

using Preparation = std::variant<Fillet, SquareButt, SingleV, SingleBevel>;

[[nodiscard]] std::string_view preparation_name(const Preparation& preparation);
[[nodiscard]] bool is_fillet(const Preparation& preparation);

/// Legs of an equal-leg fillet with a given throat between plates at an angle.
/// Units: mm, Angle -> mm along the plate: throat / cos(angle/2).
/// Pre: throat > 0, 0 < angle < 180 deg. Source: none - plane geometry.
/// Tests: joint/preparation - closed-form (skew table of docs/methods/section.md).
[[nodiscard]] double leg_from_throat_mm(double throat_mm, Angle between_plates);

}  // namespace seamturn::joint
