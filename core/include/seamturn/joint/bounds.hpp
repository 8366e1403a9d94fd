// SPDX-License-Identifier: MIT
// How far a member reaches: its box, its lowest point in a direction, a ball round it.
#pragma once

#include "seamturn/joint/member.hpp"

namespace seamturn::joint {

/// Corners of a box along the axes of its frame.
struct Box {
  geom::Vec3 low = geom::Vec3::Zero();
  geom::Vec3 high = geom::Vec3::Zero();
};
/// The smallest box along the shape's own axes that holds it.
/// Units: mm; the shape's frame M. Pre: the shape is as its struct says.
/// Accuracy: exact. Tests: joint/bounds - closed-form, law.
[[nodiscard]] Box box_of(const Shape& shape);

/// Place of the member's lowest point along a direction: the least p . up of all its points.
/// Units: mm; frame J. Pre: the direction is a unit vector.
/// Accuracy: exact. Tests: joint/bounds - closed-form, law.
[[nodiscard]] double lowest_mm(const Member& member, const geom::Vec3& up_J);

struct Ball {
  geom::Vec3 centre = geom::Vec3::Zero();  ///< frame J
  double radius_mm = 0.0;
};
/// A ball that holds the member, about the middle of its box.
/// Accuracy: exact about that centre; a smaller ball may exist about another one.
/// Tests: joint/bounds - closed-form, law.
[[nodiscard]] Ball ball_round(const Member& member);

}  // namespace seamturn::joint
