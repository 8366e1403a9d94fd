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
/// inside the ranges of ISO 6947. Rows of the library: a position without a row is not worked in.
struct WorkingTolerance {
  process::WeldPosition position = process::WeldPosition::pa;
  std::vector<process::PassRole> roles;  ///< empty: every role
  Angle downhill;                        ///< slope below nominal, >= 0
  Angle uphill;                          ///< slope above nominal, >= 0
  Angle bank;                            ///< largest deviation of |bank| from nominal
  /// Share of the largest bead that is still permitted where slope or bank is at its limit.
  double bead_at_edge_ratio = 1.0;
  base::Status status = base::Status::common_practice;
  std::string source;
};

/// The bank of a PB, given the one at which a plate lies level: that one, or where a sharp or blunt
/// corner takes it out of PB the nearest a degree inside (31 to 54 deg; docs/methods/position.md).
/// Tests: position/classify - law.
[[nodiscard]] Angle pb_bank_near(Angle level);

/// How a weld should lie: slope 0 and |bank| 0 for PA, 90 for PC, 135 for PD, 180 for PE; for PB,
/// which lays one plate level, 90 deg less half the angle between the plates (pb_bank_near). PF and
/// PG: slope
/// +-90, no bank.
[[nodiscard]] Attitude nominal_attitude(process::WeldPosition position, Angle pb_bank);

/// True when an attitude lies within a tolerance row: slope and |bank| near the nominal ones of its
/// position; either plate of a PB will do. PF and PG: slope alone, since an upright weld has no
/// bank.
[[nodiscard]] bool is_within(const WorkingTolerance& tolerance,
                             const Attitude& attitude,
                             Angle pb_bank);

/// How near to the limits of a row: 0 nominal, 1 at a limit of slope or bank, the larger of both.
[[nodiscard]] double strain_ratio(const WorkingTolerance& tolerance,
                                  const Attitude& attitude,
                                  Angle pb_bank);

/// Share of the largest bead permitted at an attitude: 1 at nominal, less by (1 - bead_at_edge)
/// times the shares of slope and of bank that are used up, never below 0.
/// Pre: is_within. Source: our rule, docs/methods/position.md. Tests: position/classify -
///   closed-form, law (never above 1, falls with slope and with bank).
[[nodiscard]] double bead_share_ratio(const WorkingTolerance& tolerance,
                                      const Attitude& attitude,
                                      Angle pb_bank);

}  // namespace seamturn::position
