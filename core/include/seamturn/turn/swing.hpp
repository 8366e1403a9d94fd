// SPDX-License-Identifier: MIT
// How low the real shape of a load comes when it stands and turns, how far out it reaches, and how
// fast its rim goes.
#pragma once

#include <string>
#include <vector>

#include "seamturn/base/finding.hpp"
#include "seamturn/cell/cell.hpp"
#include "seamturn/joint/bounds.hpp"
#include "seamturn/joint/stages.hpp"

namespace seamturn::turn {

using base::Angle;

/// What turns: members in J, and boxes bolted on the faceplate in D. Weights without a box are not
/// there.
struct SwingBody {
  std::vector<const joint::Member*> members;
  geom::Pose X_DJ;
  std::vector<joint::SetupSolid> solids;
};

[[nodiscard]] bool is_empty(const SwingBody& body);

/// The lowest point: height above the floor, frame W.
struct Lowest {
  double height_mm = 0.0;
  double at_ratio = 0.0;  ///< of the way
  std::string of;         ///< member's id or kind of solid
};
/// Pre: something is there. Accuracy: exact. Tests: turn/swing - closed-form, law.
[[nodiscard]] Lowest lowest_at(const cell::Positioner& positioner,
                               const SwingBody& body,
                               const std::vector<Angle>& axes);
/// On the way from one setting to another, all axes in proportion, endless ones the short way.
/// Search: steps of 2 deg of the widest axis, the three lowest refined by golden section.
/// Pre: something is there. Accuracy: 0.01 mm on a load of 3 m.
/// Tests: turn/swing - closed-form (worst of a cylinder), brute force.
[[nodiscard]] Lowest lowest_on_way(const cell::Positioner& positioner,
                                   const SwingBody& body,
                                   const std::vector<Angle>& from,
                                   const std::vector<Angle>& to);

/// A height above the floor below which nothing of the load comes, whatever the axes do: balls
/// round its members, the axes as a chain. Units: mm. Pre: something is there. Tests: turn/swing -
/// law.
[[nodiscard]] double never_below_mm(const cell::Positioner& positioner, const SwingBody& body);

/// A cylinder on a tilted table: depth of its lowest point below the pivot.
/// a <= 90 deg: R sin a - OH cos a; beyond: (OH + h)|cos a| + R sin a. Units: mm.
/// Pre: a from 0 to 180 deg, R and h above 0. Source: geometry (computed).
/// Tests: turn/swing - computed.
[[nodiscard]] double cylinder_depth_mm(double overhang_mm,
                                       double height_mm,
                                       double radius_mm,
                                       Angle tilt);
/// The worst of all tilts: sqrt((OH + h)^2 + R^2) at 90 deg + atan((OH + h)/R).
struct WorstDepth {
  double depth_mm = 0.0;
  Angle tilt;
};
[[nodiscard]] WorstDepth worst_cylinder_depth(double overhang_mm,
                                              double height_mm,
                                              double radius_mm);

/// Greatest distance of the load from every axis, the later axes anywhere. Units: mm.
/// Pre: something is there. Accuracy: about the last axis 4e-5 of it too large at most; others by
/// balls round the members: too large, never too small. Tests: turn/swing - closed-form, law.
[[nodiscard]] std::vector<double> rim_radii_mm(const cell::Positioner& positioner,
                                               const SwingBody& body);
/// The positioner with axes that turn no faster than its rim speed cap allows; unchanged when it
/// has none. Pre: radii as rim_radii_mm gives them. Tests: turn/swing - closed-form.
[[nodiscard]] cell::Positioner held_to_rim_speed(cell::Positioner positioner,
                                                 const std::vector<double>& radii_mm);

/// Below the floor or less than the positioner's clearance above it (turn.swing.floor, an error),
/// the height, the clearance and what comes so low told. Lowest on the way of the turn named.
[[nodiscard]] std::vector<base::Finding> check_swing(const cell::Positioner& positioner,
                                                     const Lowest& lowest,
                                                     const std::string& turn_name);
/// The same of a load held still.
[[nodiscard]] std::vector<base::Finding> check_standing(const cell::Positioner& positioner,
                                                        const Lowest& lowest,
                                                        const std::string& stance_name);

}  // namespace seamturn::turn
