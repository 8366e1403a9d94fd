// SPDX-License-Identifier: MIT
// What counts of a partial-penetration groove, alone and under a fillet, how deep it must be, and
// the sizes of plug and slot welds and tacks. Plain numbers; the code is [AWS D1.1].
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/base/angle.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/joint/size_check.hpp"
#include "seamturn/process/weld_position.hpp"

namespace seamturn::joint {

using base::Angle;

enum class PartialShape { square, v, bevel, u_or_j };

struct PartialGroove {
  PartialShape shape = PartialShape::bevel;
  double depth_mm = 0.0;  ///< S, of the preparation
  Angle angle;            ///< V: included; bevel, J: of the one face; U: included
  std::string process;    ///< ISO 4063 number
  process::WeldPosition position = process::WeldPosition::pa;
};

struct CountedGroove {
  double throat_mm = 0.0;     ///< E
  double deduction_mm = 0.0;  ///< S - E
  base::Citation citation;
};

/// Throat that counts of a partial-penetration groove: its depth, less 3 mm where the arc does not
/// reach a sharp root: bevels of 45 up to below 60 deg with gas-shielded wire in vertical (PF, PG)
/// and overhead (PD, PE), with covered electrodes everywhere.
/// Units: mm, Angle -> mm.  Pre: finite.
/// Outside: refuses joint.size.value, joint.size.groove_angle (V below 60, bevel below 45, U and J
///   below 20 deg), joint.size.process (no row), joint.size.groove_depth (nothing left).
/// Source: [AWS D1.1] joints BC-P2 and BTC-P4 as printed by [AISC-PJP]; U, J and V by covered
///   electrode from memory.
/// Tests: joint/groove_size - published.
[[nodiscard]] base::Outcome<CountedGroove> counted_groove_throat(const PartialGroove& groove);

/// Root to face of a groove of depth S under an equal-leg fillet z in a tee: (S + z)/sqrt 2 when
/// z >= S, else the corner of the fillet is nearest: sqrt(S2 + z2). With S the throat that counts.
/// Units: mm -> mm.  Pre: groove > 0, leg >= 0.
/// Source: [AWS D1.1] 2010 2.4.2, shortest distance; plane geometry.
/// Tests: joint/groove_size - closed-form, law.
[[nodiscard]] double combined_throat_mm(double groove_throat_mm, double leg_mm);

/// Reinforcing fillet of T and corner grooves: a quarter of the thickness, need not exceed 10 mm.
/// Pre: thickness > 0. Source: [AWS D1.1] 2015 clause 3, 2020. Tests: joint/groove_size -
/// published.
[[nodiscard]] double reinforcing_leg_mm(double thickness_mm);

/// Least throat of a partial-penetration groove by the thinner part.
/// Pre: thickness > 0. Source: [STEEL-HANDBOOK] table 5.4. Tests: joint/groove_size - published.
[[nodiscard]] double least_partial_throat_mm(double thinner_mm);

struct PartialSize {
  double throat_mm = 0.0;  ///< that counts
  double thinner_mm = 0.0;
};
/// Units: mm. Outside: refuses joint.size.value. Source: as least_partial_throat_mm.
/// Tests: joint/groove_size - published.
[[nodiscard]] base::Outcome<std::vector<SizeCheck>> check_partial_size(const PartialSize& size);

/// Plug or slot weld through a plate: a slot has a length, end to end of its round ends.
struct PlugSize {
  double plate_mm = 0.0;  ///< the part with the hole
  double width_mm = 0.0;  ///< diameter of the hole, width of the slot
  std::optional<double> slot_length_mm;
  double fill_mm = 0.0;  ///< depth filled
};
/// Least width: plate + 8 mm.
[[nodiscard]] double least_plug_width_mm(double plate_mm);
/// Largest width: least + 3 mm, or 2.25 x plate when that is more.
[[nodiscard]] double largest_plug_width_mm(double plate_mm);
/// Full up to 16 mm, beyond it half the plate and at least 16 mm.
[[nodiscard]] double least_plug_fill_mm(double plate_mm);
/// Widths, slot length (10 x plate at most) and fill.
/// Units: mm. Outside: refuses joint.size.value (also a slot shorter than wide, a fill over the
///   plate). Source: [AWS D1.1] 2000 3.10; fill from memory.
/// Tests: joint/groove_size - published, remembered.
[[nodiscard]] base::Outcome<std::vector<SizeCheck>> check_plug_size(const PlugSize& size);

/// Least length of a tack: 50 mm, below 12 mm four times the thicker part.
/// Pre: thicker > 0. Outside: over 50 mm, or yield over 500 MPa, the source asks for longer tacks
/// in two runs and gives no number: see needs_two_run_tacks. Source: [EN 1011-2] clause 13, quoted
/// by [TACK-PAGE]. Tests: joint/groove_size - published.
[[nodiscard]] double least_tack_length_mm(double thicker_mm);
[[nodiscard]] bool needs_two_run_tacks(double thicker_mm, double yield_mpa);

}  // namespace seamturn::joint
