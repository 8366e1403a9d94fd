// SPDX-License-Identifier: MIT
// Is a fillet of a sensible size? Rules of design codes on plain numbers: least and largest leg,
// least throat, length, intermittent runs, the throat that counts between skewed plates, over-weld.
// Whether the weld carries its load is not judged here. Grooves, plugs and slots:
// groove_size.hpp; limits of shape by quality level: imperfection_limits.hpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/base/angle.hpp"
#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/joint/size_check.hpp"

namespace seamturn::joint {

using base::Angle;

/// Whose rules are asked. `all` asks both, so the harder one shows.
enum class SizeRules { european, american, all };
/// The US code prints an inch table and a rounded metric one; only the inch sizes were seen.
enum class SizeColumn { metric, inch };

/// Least single-pass leg by plate thickness.
/// Units: mm -> mm.  Pre: thickness > 0.
/// Source: [AWS D1.1] table of least fillet sizes; inch values verified, metric from memory.
/// Tests: joint/weld_size - published (inch), remembered (metric).
[[nodiscard]] double least_leg_by_thickness_mm(double thickness_mm, SizeColumn column);

/// Whether a process counts as low-hydrogen for that table: gas-shielded wire and submerged arc
/// yes, covered electrodes (111) depend on the electrode: nothing. Also nothing for a process not
/// known. Source: [AWS D1.1] from memory. Tests: joint/weld_size - remembered.
[[nodiscard]] std::optional<bool> is_low_hydrogen(std::string_view process);

/// Largest leg along the edge of a plate: below 6 mm its thickness, from 6 mm on 2 mm less, unless
/// the drawing has the weld built out to the full throat.
/// Pre: thickness > 0. Source: [AWS D1.1] quoted by [EDGE-THREADS] and [AWS-DIGEST].
/// Tests: joint/weld_size - published.
[[nodiscard]] double largest_edge_leg_mm(double edge_thickness_mm);

/// What is wrong with a leg laid along the edge of a plate: an error where the edge ends before the
/// leg, a warning where it comes nearer to the upper corner than the rule allows.
/// Units: mm.  Pre: finite, above 0.
/// Outside: error joint.size.beyond_edge, warning joint.size.rule_broken.
/// Source: geometry; [AWS D1.1] as largest_edge_leg_mm. Tests: joint/weld_size - published, law.
[[nodiscard]] std::vector<base::Finding> edge_leg_findings(double leg_mm, double edge_thickness_mm);

/// Leg that counts in strength for a weld of a length: a quarter of the length at most.
/// Pre: leg > 0, length > 0. Source: [AWS D1.1] 2010 2.4.2. Tests: joint/weld_size - published
/// rule.
[[nodiscard]] double counted_leg_mm(double leg_mm, double length_mm);

/// Share of the length of an end-loaded fillet that counts: 1 up to 100 legs, then
/// 1.2 - 0.2 L/(100 z), from 300 legs on 180 z / L.
/// Pre: leg > 0, length > 0. Source: [AWS D1.1] 2010 2.4.2. Tests: joint/weld_size - published
/// rule.
[[nodiscard]] double end_loaded_share_ratio(double leg_mm, double length_mm);

/// How the throat of a fillet follows from leg and angle.
enum class ThroatClass { right_angle, geometry, less_root_loss };
struct CountedThroat {
  double throat_mm = 0.0;
  ThroatClass by = ThroatClass::right_angle;
  base::Citation citation;
};
/// Throat that counts, by angle between the plates: 80 to 100 deg leg / sqrt 2, 60 to 80 and above
/// 100 deg by the triangle, 30 to 60 deg the triangle less the root loss that process and position
/// cause (the code tabulates it; the caller states it).
/// Units: mm, Angle -> mm. Pre: finite.
/// Outside: refuses joint.size.value, joint.size.angle (30 to 135 deg), joint.size.root_loss.
/// Source: [AWS D1.1] 2010 2.4.2, angle classes; [SKEWED-TEE] upper end.
/// Tests: joint/weld_size - published classes, closed-form.
[[nodiscard]] base::Outcome<CountedThroat> counted_throat(
    double leg_mm, Angle between_plates, std::optional<double> root_loss_mm = std::nullopt);

/// One segment of an intermittent fillet and the clear space to the next.
struct IntermittentRun {
  double segment_mm = 0.0;
  double clear_mm = 0.0;
};

struct FilletSize {
  double leg_mm = 0.0;  ///< along the plate; the smaller of two
  Angle between_plates = Angle::deg(90.0);
  double thinner_mm = 0.0;
  double thicker_mm = 0.0;
  bool low_hydrogen = true;
  bool cyclic_load = false;
  std::optional<double> edge_thickness_mm;  ///< the fillet runs along the edge of this plate
  std::optional<double> length_mm;          ///< effective length; intermittent: of one segment
  bool end_loaded = false;
  std::optional<double> root_loss_mm;  ///< below 60 deg
  std::optional<IntermittentRun> intermittent;
  SizeRules rules = SizeRules::all;
  SizeColumn column = SizeColumn::metric;
  bool german_annex = false;
};

/// Every rule that applies, in a fixed order.
/// Units: mm, Angle.
/// Pre: finite values.
/// Outside: refuses joint.size.value (sizes not above 0 or over 1000 mm, thinner above thicker),
///   joint.size.angle, joint.size.root_loss.
/// Source: each check's own. Tests: joint/weld_size - published, remembered, law.
[[nodiscard]] base::Outcome<std::vector<SizeCheck>> check_fillet_size(const FilletSize& size);

struct LeastLeg {
  double leg_mm = 0.0;
  std::string rule;  ///< the rule that governs
  base::Citation citation;
};
/// The largest of the least legs the rules ask for; leg_mm of the input is not used.
/// Pre and Outside as check_fillet_size. Source: the governing rule's own.
/// Tests: joint/weld_size - published.
[[nodiscard]] base::Outcome<LeastLeg> least_fillet_leg(FilletSize size);

/// Metal laid beyond the drawn size, stated as a factor on the leg or on the area.
enum class OverWeldBasis { leg, area };
struct OverWeld {
  double factor = 1.1;  ///< default: 10 % more area, a proposal for mechanised welding
  OverWeldBasis basis = OverWeldBasis::area;
  base::Status status = base::Status::proposed;
};
/// A filler maker's consumption tables allow this on the area of a fillet. Source: [JWC].
inline constexpr OverWeld handbook_over_weld{1.2, OverWeldBasis::area, base::Status::verified};
/// Factor on the area. Pre: factor >= 1, finite. A leg 10 % larger is 21 % more area.
/// Source: [GEOMETRY] area grows with the square of the leg. Tests: joint/weld_size - published.
[[nodiscard]] double over_weld_area_ratio(const OverWeld& over_weld);

[[nodiscard]] const base::FigureCard& weld_size_card();

}  // namespace seamturn::joint
