// SPDX-License-Identifier: MIT
// Which way a seam faces, read off the members it joins.
#pragma once

#include "seamturn/base/outcome.hpp"
#include "seamturn/joint/joint.hpp"
#include "seamturn/joint/member.hpp"

namespace seamturn::joint {

struct SeamFaces {
  geom::Vec3 wall_1;
  geom::Vec3 wall_2;
  geom::Vec3 face;
  Angle between_walls;
};

/// The two surfaces at the middle of a path and the weld face between them, carried back to the
/// start of the path.
/// Units: mm.      Frame: J.
/// Pre: the path has length.
/// Outside: refuses with joint.seam.not_on_member (how far off, which member),
///   joint.seam.no_corner (surfaces found enclose no weld: the pair is named).
/// Source: none - geometry.
/// Accuracy: the path may lie up to 1 mm (plus half the root gap of a butt) off a surface.
/// Tests: joint/seam_faces - closed-form.
[[nodiscard]] base::Outcome<SeamFaces> find_seam_faces(JointType type,
                                                       const Preparation& preparation,
                                                       const Member& first, const Member& second,
                                                       const geom::Path& path);

}  // namespace seamturn::joint
