// SPDX-License-Identifier: MIT
// Members as solids of revolution or boxes: distances the public header does not offer.
#pragma once

#include "seamturn/joint/member.hpp"

namespace seamturn::joint::detail {

/// Distance of a point of frame J from the surface of a member, >= 0, inside or outside.
[[nodiscard]] double distance_to_surface_mm(const Member& member, const geom::Vec3& p_J);
/// Whether a face of the member that looks about the way of a normal lies within a distance of a
/// point, which is above or below that face and not beside it.
[[nodiscard]] bool has_face_towards(const Member& member,
                                    const geom::Vec3& p_J,
                                    const geom::Vec3& normal_J,
                                    double off_face_mm);

}  // namespace seamturn::joint::detail
