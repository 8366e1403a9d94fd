// SPDX-License-Identifier: MIT
// Members as solids of revolution or boxes: distances the public header does not offer.
#pragma once

#include "seamturn/joint/member.hpp"

namespace seamturn::joint::detail {

/// Distance of a point of frame J from the surface of a member, >= 0, inside or outside.
[[nodiscard]] double distance_to_surface_mm(const Member& member, const geom::Vec3& p_J);

}  // namespace seamturn::joint::detail
