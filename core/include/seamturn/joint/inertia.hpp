// SPDX-License-Identifier: MIT
// How members resist being turned: moments of inertia of the solids and of several together.
#pragma once

#include <vector>

#include "seamturn/joint/member.hpp"
#include "seamturn/joint/stages.hpp"

namespace seamturn::joint {

/// Weight and moments of inertia about the centre of gravity, along the axes of one frame.
struct Body {
  Weight weight;
  geom::Mat3 inertia_kg_m2 = geom::Mat3::Zero();
};

/// Of one member, frame J, at 7850 kg/m3. Box, hollow cylinder, hexagon, frustums of a forging.
/// Units: kg m2. Pre: the shape is as its struct says. Source: closed forms of mechanics.
/// Accuracy: exact. Tests: joint/inertia - closed-form, law, cross (summed over small cells).
[[nodiscard]] Body body_of(const Member& member);
/// A solid of a set-up: its box, or a point where it has none. Frame D.
[[nodiscard]] Body body_of(const SetupSolid& solid);
/// Several in one frame, by the parallel axis rule. Tests: joint/inertia - law.
[[nodiscard]] Body together(const std::vector<Body>& bodies);
/// The same body in another frame.
[[nodiscard]] Body moved(const geom::Pose& X_AB, const Body& body_B);
/// About a line: k . I k + m |k x (c - p)|^2. Units: mm -> kg m2. Pre: direction unit.
[[nodiscard]] double inertia_about_kg_m2(const Body& body,
                                         const geom::Vec3& point,
                                         const geom::Vec3& direction);

}  // namespace seamturn::joint
