// SPDX-License-Identifier: MIT
// Where the tacks of a seam go: how many, how long, how thick, and what becomes of them when the
// seam is welded.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/geom/path.hpp"
#include "seamturn/joint/weld_length.hpp"
#include "seamturn/tack/tack_rules.hpp"

namespace seamturn::tack {

/// One seam to be tacked.
struct TackSeam {
  geom::Path path;  ///< frame J, mm
  double thicker_mm = 0.0;
  double yield_mpa = 0.0;     ///< the higher of both parts
  double gap_mm = 0.0;        ///< as fitted, the widest
  double drawn_gap_mm = 0.0;  ///< root gap of the preparation; fillets 0
  /// Thickness of the finished weld a tack must not stand above: throat of a fillet, depth of a
  /// groove.
  double weld_throat_mm = 0.0;
  /// Thickness of the root run: fillet_throat_mm of its area, or the height of a groove's root
  /// bead.
  double root_run_mm = 0.0;
  bool second_side = false;     ///< of a tee: half a pitch off the first side's tacks
  bool gouged_from_it = false;  ///< the side that is gouged out to sound metal before welding
  /// Of the path, where a tack may lie: elements of an intermittent weld. Empty: all of it. Of a
  /// closed path they may run on round.
  std::vector<joint::Stretch> within;
  std::optional<int> count;  ///< stated in place of the rule
  std::optional<double> length_mm;
  std::optional<double> pitch_mm;
};

/// What a tack becomes when the seam is welded.
enum class TackFate {
  remelted,     ///< no thicker than the first run, ends feathered: the run takes it in
  ground_back,  ///< ground to the first run's thickness first, ends feathered
  gouged_out,   ///< on the side that is gouged: goes with the gouging
};
/// "remelted", "ground back", "gouged out".
[[nodiscard]] std::string_view tack_fate_name(TackFate fate);

/// A stretch of the path, its middle on it. On a closed path `to_mm` may lie beyond its length or
/// `from_mm` below 0: it runs on round.
struct Tack {
  double from_mm = 0.0;
  double to_mm = 0.0;
  geom::Vec3 centre = geom::Vec3::Zero();      ///< frame J, on the path
  geom::Vec3 direction = geom::Vec3::UnitX();  ///< unit, along the seam at the centre
};

struct TackPlan {
  std::vector<Tack> tacks;  ///< along the path
  TackLength length;
  double widest_pitch_mm = 0.0;  ///< centre to centre along the path; 0 with one tack
  double throat_mm = 0.0;
  TackFate fate = TackFate::remelted;
  base::Status fate_status = base::Status::common_practice;
  std::vector<base::Finding> findings;
};

/// The tacks of a seam. Open seams: on every straight leg (an arc is one), clear of ends and
/// corners, the outermost as near to them as the rule lets, the rest evenly between; two at least,
/// one where no two fit. A leg shorter than the pitch has one in its middle. Circles: four at
/// least, evenly, the first half a pitch from the start. A closed polyline: its legs. The second
/// side of a tee lies half a pitch off; where the first side has two on a leg, at a quarter and
/// three quarters between them; round a corner its tacks may lie a tack and two clear spaces
/// further apart than the pitch, for the first side's lie there. Where `within` says where tacks
/// may lie, each lies whole in one of its stretches (with room for one only: in its middle), as
/// evenly as they let it, no more than the pitch asks for. Thickness: the rule's or that of the
/// root run, never above the finished weld. Units: mm; frame J. Pre: sizes finite, thickness,
/// yield, weld throat and root run above 0, gaps not below 0, what is
///   stated above 0; are_rules; the path as geom says; stretches rising, of a length above 0.
/// Outside: refuses tack.gap.too_wide, tack.seam.too_short (no tack fits, or not four on a circle
///   welded whole),
///   tack.count.no_room; findings tack.count.few, tack.length.short, tack.pitch.wide,
///   tack.throat.above_weld, tack.throat.thin.
/// Source: length [EN 1011-2] clause 13; thickness [TACK-SECTION]; clear ends [TACK-WORKS]; pitch,
///   gap and numbers proposed; fate common practice (docs/methods/tacks.md).
/// Accuracy: exact stations; a tack on a circle or arc is curved, its direction that of its middle.
/// Tests: tack/tack_plan - closed-form, law.
[[nodiscard]] base::Outcome<TackPlan> plan_tacks(const TackSeam& seam, const TackRules& rules);

}  // namespace seamturn::tack
