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
  bool second_on_left = true;  ///< flush joints: the second member, seen along the path, face up
};

/// The two surfaces at the middle of a path (a polyline: of its longest leg) and the weld face
/// between them, carried back to the start of the path. The face lies midway between the two
/// outward normals; of a butt or a groove flush with both members it is their common normal, and
/// both walls are given as that. Units: mm.      Frame: J. Pre: the path has length. Outside:
/// refuses with joint.seam.not_on_member (how far off, which member),
///   joint.seam.no_corner (surfaces found enclose no weld: the pair is named),
///   joint.seam.leg_differs (a leg of a polyline where the surfaces stand otherwise).
/// Source: none - geometry.
/// Accuracy: the path may lie up to 1 mm (plus half the root gap of a butt, the whole gap of a tee
/// or
///   corner) off a surface, at its middle, its ends (open paths), its quarters (circles and arcs),
///   and on a polyline at the middle of each leg and at each corner.
/// Tests: joint/seam_faces - closed-form.
[[nodiscard]] base::Outcome<SeamFaces> find_seam_faces(JointType type,
                                                       const Preparation& preparation,
                                                       const Member& first,
                                                       const Member& second,
                                                       const geom::Path& path);

/// Along whose edge the fillet of a lap runs: 1 where its seam lies on a narrow face of the first
/// member and on none of the second, else 2 (also for a seam without a place). Pre: it has a seam.
/// Source: none - reads the surfaces. Tests: joint/seam_faces - law.
[[nodiscard]] int lapping_member(const Joint& joint, const Member& first, const Member& second);

}  // namespace seamturn::joint
