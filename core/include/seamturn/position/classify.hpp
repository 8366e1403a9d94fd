// SPDX-License-Identifier: MIT
// From gravity to the position code: how a weld lies in the world.
#pragma once

#include <string>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/geom/vector.hpp"
#include "seamturn/process/weld_position.hpp"

namespace seamturn::position {

using base::Angle;

/// How a weld lies. slope: + uphill in travel direction. bank: from straight up to the face normal
/// about the axis, signed: positive when the face leans so that u.s > 0, with s = n x t
/// (docs/methods/position.md).
struct Attitude {
  Angle slope;
  Angle bank;
};

struct Classified {
  process::WeldPosition iso = process::WeldPosition::pa;
  std::string aws;  ///< "1G" ... "4F"
  Attitude attitude;
  Angle margin;  ///< slope and bank may both change by this before the ISO code changes
};

/// Slope and bank of a weld.
/// Units: directions of any length -> Angle.      Frame: all three in one frame.
/// Pre: none of the three is zero.
/// Outside: refuses position.normal.along_axis within 1 degree.
/// Source: [ISO 6947] by way of docs/methods/position.md.
/// Accuracy: exact. Tests: position/classify - computed cases, laws (turn about z, mirror,
/// reverse).
[[nodiscard]] base::Outcome<Attitude> attitude(const geom::Vec3& travel,
                                               const geom::Vec3& normal,
                                               const geom::Vec3& up);

/// Position code of a weld by the production ranges of ISO 6947 and the AWS diagrams; a value on a
/// border belongs to the easier row (1e-6 degree slack).
/// Outside: as attitude. Tests: position/classify - published decisions, computed cases, laws.
[[nodiscard]] base::Outcome<Classified> classify(process::WeldFamily family,
                                                 const geom::Vec3& travel,
                                                 const geom::Vec3& normal,
                                                 const geom::Vec3& up);
[[nodiscard]] const base::FigureCard& position_card();

/// How far a seam may lie off its nominal position while the robot welds it: shop tolerances, far
/// inside the ranges of ISO 6947. Rows of the library.
struct WorkingTolerance {
  process::WeldPosition position = process::WeldPosition::pa;
  std::vector<process::PassRole> roles;  ///< empty: every role
  Angle downhill;                        ///< largest slope downhill, >= 0
  Angle uphill;                          ///< largest slope uphill, >= 0
  Angle bank;                            ///< largest deviation of |bank| from nominal (PA 0, PB 45)
  base::Status status = base::Status::common_practice;
  std::string source;
};

/// True when an attitude lies within a tolerance row. Nominal bank: 0 for PA; for PB, which lays
/// one plate level, 90 deg less half the angle between the plates; |bank| is compared, either plate
/// will do.
[[nodiscard]] bool is_within(const WorkingTolerance& tolerance,
                             const Attitude& attitude,
                             Angle nominal_bank);

}  // namespace seamturn::position
