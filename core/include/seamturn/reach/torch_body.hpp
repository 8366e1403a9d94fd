// SPDX-License-Identifier: MIT
// The body of a bent torch about its wire.
#pragma once

#include <vector>

#include "seamturn/cell/cell.hpp"
#include "seamturn/reach/torch_pose.hpp"

namespace seamturn::reach {

using base::Angle;

/// Which way a torch's body points where a pass starts and where it ends. A heading is measured
/// right-handed about the torch direction (which points to the work), from straight behind the
/// travel.
struct Headings {
  Angle from;
  Angle to;
};

/// Away from the bend, unit, in the pose's frame. Pre: torch and travel are unit and not in line.
/// Source: none - geometry. Tests: reach/torch_body - closed-form.
[[nodiscard]] geom::Vec3 body_direction(const TorchPose& pose, Angle bend, Angle heading);

/// A ball of the torch.
struct TorchBall {
  geom::Vec3 centre;
  double radius_mm = 0.0;
};
/// What of a torch behind the wire tip may meet something, as balls two fifths of their radius
/// apart, which leaves a fiftieth of it unseen between them: the nozzle's width from `from_mm`
/// behind the tip to the bend, then the body, as wide as the nozzle until it is one of its own
/// radii off the bend. Pre: as body_direction; nozzle and body wider than 0. Tests:
/// reach/torch_body - closed-form.
[[nodiscard]] std::vector<TorchBall> torch_balls(const TorchPose& pose,
                                                 const cell::Torch& torch,
                                                 const cell::TorchBody& body,
                                                 Angle heading,
                                                 double from_mm);

}  // namespace seamturn::reach
