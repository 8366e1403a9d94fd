// SPDX-License-Identifier: MIT
// Edge preparations and weld sizes, by the terms of ISO 17659 and ISO 9692-1.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <variant>

#include "seamturn/base/angle.hpp"
#include "seamturn/base/valid_range.hpp"

namespace seamturn::joint {

using base::Angle;

/// What stands above a groove: a cap over the opening, or in a tee the reinforcing fillet by one of
/// two models that differ by up to a sixth of the metal: in the corner only, or over the opening.
enum class CoverShape { cap, corner_fillet, full_cover };
[[nodiscard]] std::string_view cover_shape_name(CoverShape shape);

/// Cap above the plate surface, or cover of a tee groove.
struct Cap {
  double height_mm = 0.0;   ///< 0: ground flush
  double toe_lap_mm = 0.0;  ///< beyond the groove edge, each side
  CoverShape shape = CoverShape::cap;
  double leg_mm = 0.0;  ///< of a cover, along the first member; 0 with shape cap
};

/// A fillet. Legs lie along the plates.
struct Fillet {
  double leg_1_mm = 0.0;  ///< along the first member
  double leg_2_mm = 0.0;  ///< along the second member
  double bulge_mm = 0.0;  ///< of the face at its middle: above 0 convex, below 0 concave, 0 flat
  double gap_mm = 0.0;    ///< second member off the first; the legs named hold beyond it
  double reach_mm = 0.0;  ///< metal run into the gap, behind the root
  double over_weld_ratio = 1.0;  ///< area laid on purpose over area drawn; the legs above are drawn
  /// Of the drawing; none: it states the legs.
  std::optional<double> stated_throat_mm = std::nullopt;
};

/// The fillet as it is to be laid: legs and bulge grown alike until the area of its triangle is
/// over_weld_ratio times that drawn; its own ratio is then 1. Pre: ratio >= 1.
[[nodiscard]] Fillet laid_fillet(const Fillet& drawn);

/// Angle between the plates of a fillet; outside, the edge is prepared. In degrees, as files and
/// rules state it. Source: [SKEWED-TEE].
inline constexpr base::ValidRange fillet_corner_deg{60.0, 135.0};

/// The two edges of a groove, before any second side is thought of.
enum class GrooveForm { square, v, bevel, u, j, compound_v };

/// One side of a groove, from its root to the surface it is welded from.
struct GrooveSide {
  double depth_mm = 0.0;  ///< of the cut part; 0: all that the root face leaves (double: half)
  Angle angle;            ///< V: included; bevel, U, J: of one face, off the plate's edge
  std::optional<Angle> first_face;  ///< V of unequal faces: the first member's part of the angle
  double radius_mm = 0.0;           ///< U, J: at the root
  double lower_depth_mm = 0.0;      ///< compound V: part next to the root ...
  Angle lower_angle;                ///< ... and its included angle
};

/// A groove. Bevel and J: one edge square, in a tee or corner the first member's; the second
/// member's is cut.
struct Groove {
  GrooveForm form = GrooveForm::square;
  bool is_double = false;  ///< cut from both sides; side_2 counts
  double gap_mm = 0.0;
  double root_face_mm = 0.0;  ///< double: between the two cuts
  GrooveSide side_1;          ///< welded first
  GrooveSide side_2;
};

/// What is cut out behind a root before the second side is welded: a round bottom with leaning
/// flanks. depth 0: nothing.
struct Gouge {
  double depth_mm = 0.0;  ///< from the second side's surface
  double radius_mm = 0.0;
  Angle flank;  ///< off the middle plane
};

/// Flank of a gouged cavity when none is stated. Common practice: about that of a U.
inline constexpr Angle usual_gouge_flank = Angle::deg(10.0);

/// A plug (round hole) or slot (round ends) in the first member, filled over the second.
struct Plug {
  double width_mm = 0.0;   ///< diameter of a plug
  double length_mm = 0.0;  ///< of a slot, over its round ends; a plug: its diameter
  double fill_mm = 0.0;    ///< depth of the weld metal
};

using Preparation = std::variant<Fillet, Groove, Plug>;

/// What a groove's name says about its edges.
struct GrooveName {
  std::string_view name;
  GrooveForm form = GrooveForm::square;
  bool is_double = false;
};
/// "square", "single-v" ... "double-j", "compound-v".
[[nodiscard]] std::span<const GrooveName> groove_names();
/// Of every preparation: "fillet", those of the grooves, "plug", "slot".
[[nodiscard]] std::span<const std::string_view> preparation_names();
[[nodiscard]] std::string_view preparation_name(const Preparation& preparation);
[[nodiscard]] bool is_fillet(const Preparation& preparation);
/// One edge stays square: bevel and J.
[[nodiscard]] bool is_one_edge_cut(const Preparation& preparation);
/// Gap at the root; 0 for plugs.
[[nodiscard]] double root_gap_mm(const Preparation& preparation);
/// Cut from both sides.
[[nodiscard]] bool is_double(const Preparation& preparation);

/// Length of the line a plug or slot is welded along, half-way between its middle line and its
/// wall: half the width times this is the area of the hole. Units: mm. Source: none - plane
/// geometry.
[[nodiscard]] double welded_round_mm(const Plug& plug);

/// Gap and root face of a groove's edges.
struct RootSizes {
  double gap_mm = 0.0;
  double root_face_mm = 0.0;
};
/// The commonest grooves in one line.
[[nodiscard]] Groove square_butt(double gap_mm);
[[nodiscard]] Groove single_v(const RootSizes& root, Angle included);
[[nodiscard]] Groove single_bevel(const RootSizes& root, Angle bevel);

/// Legs of an equal-leg fillet with a given throat between plates at an angle.
/// Units: mm, Angle -> mm along the plate: throat / cos(angle/2).
/// Pre: throat > 0, 0 < angle < 180 deg. Source: none - plane geometry.
/// Tests: joint/preparation - closed-form (skew table of docs/methods/section.md).
[[nodiscard]] double leg_from_throat_mm(double throat_mm, Angle between_plates);

}  // namespace seamturn::joint
