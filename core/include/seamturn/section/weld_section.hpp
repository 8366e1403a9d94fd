// SPDX-License-Identifier: MIT
// The cross-section of weld metal a joint asks for.
//
// Section frame: origin at the root, y from the root towards the weld face, x across
// (docs/methods/section.md has the drawing). Which side is x > 0 follows the members, not the
// travel:
// - fillet: y is the bisector of the plates; the leg on the first member ends at x > 0, the leg on
//   the second at x < 0, both at half the dihedral from y.
// - square, V, U: y runs from the root towards the welded surface, x = 0 in the middle of the gap;
//   equal faces make the section its own mirror image.
// - bevel, J: the same y; x = 0 on the square wall (in a tee or corner the first member's surface),
//   the cut second member lies at x > 0.
// - double grooves: each side is a section of its own, with y towards its own surface and the root
//   at the bottom of what that side fills; side 1 fills the root face, side 2 its cut only.
// - plug, slot: the strip from the middle line to the hole's wall; welded round along its middle.
// joint::section_frame gives the directions that fit.
#pragma once

#include <string>
#include <vector>

#include "seamturn/base/figure_card.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/base/outcome.hpp"
#include "seamturn/joint/preparation.hpp"

namespace seamturn::section {

using base::Angle;

struct Point {
  double x_mm = 0.0;
  double y_mm = 0.0;
};

/// The walls at one height; straight between two neighbouring slices.
struct Slice {
  double y_mm = 0.0;
  double left_mm = 0.0;   ///< x of the left wall
  double right_mm = 0.0;  ///< x of the right wall
};

/// What closes the top: a parabola over the opening, or the triangle of a tee's cover with its
/// corner at (x of the square wall, face), cap_width along x and cap_height along y.
enum class CapShape { parabola, triangle };

struct WeldSection {
  std::vector<Slice> profile;  ///< from the root to the face, rising y, without cap
  double area_mm2 = 0.0;       ///< all weld metal
  double cap_area_mm2 = 0.0;
  CapShape cap_shape = CapShape::parabola;
  double opening_mm = 0.0;  ///< width of the profile at the face (fillet: width of the face)
  double height_mm = 0.0;   ///< of the profile: y of its last slice (fillet: highest toe)
  double throat_mm = 0.0;   ///< fillet: root to the flat face, less a hollow; groove: depth
  double cap_height_mm = 0.0;
  double cap_width_mm = 0.0;    ///< toe to toe, middle over the middle of the opening
  double seam_line_y_mm = 0.0;  ///< where the seam's path runs: 0 fillet, depth for grooves
  double seam_line_x_mm = 0.0;
  bool is_fillet = false;
  double leg_1_mm = 0.0;  ///< fillets: toe to root, gap included
  double leg_2_mm = 0.0;
  double bulge_mm = 0.0;         ///< fillets: of the face, as joint::Fillet
  double bulge_area_mm2 = 0.0;   ///< fillets: of the circle's segment; below 0 when hollow
  double behind_area_mm2 = 0.0;  ///< fillets: metal run into the gap, outside the profile
  double welded_round_mm = 0.0;  ///< plug, slot: length of the line it is welded along; else 0
  std::vector<Point> outline;    ///< closed polygon, anticlockwise, first point not repeated
  std::vector<base::Finding> findings;
};

struct SectionParams {
  joint::Preparation preparation;
  double thickness_mm = 0.0;                ///< grooves
  double depth_mm = 0.0;                    ///< grooves, from the face; 0: full thickness
  Angle between_plates = Angle::deg(90.0);  ///< fillets, covers
  /// Grooves in a tee: the first member goes on past the edge; gouging bares it and does not cut
  /// it.
  bool along_plate = false;
  joint::Cap cap;
  int side = 1;        ///< 2: the other side of a groove
  joint::Gouge gouge;  ///< before side 2 is welded
};

/// Section of one side of a preparation.
/// Units: mm, Angle -> mm, mm2.      Frame: section frame.
/// Pre: finite values, side 1 or 2.
/// Outside: one refusal that names everything wrong: section.size.not_positive,
///   section.size.too_large (1000 mm), section.gap.negative, section.root_face.negative,
///   section.root_face.too_thick, section.angle.out_of_range (fillet 60..135 deg between plates,
///   V 0..180 and bevel, U, J 0..90 deg, ends excluded), section.radius.too_large,
///   section.depth.out_of_range, section.depth.sum (double: cuts and root face make the thickness),
///   section.depth.in_bevel (a partial weld must reach the bevel's bottom), section.cap.negative,
///   section.cap.on_fillet, section.cover.misplaced, section.bulge.out_of_range, section.gap.behind
///   (reach without gap), section.side.none, section.gouge.out_of_range, section.plug.shape,
///   section.area.zero. Warns section.throat.beyond_face.
/// Source: [GEOMETRY]; cap 2/3 width x height, see the card.
/// Accuracy: areas exact for the ideal outline; round walls are rows of chords with the arc's area
///   (a chord lies up to 0.2 % of the radius off it); the polygon's cap is 0.1 % of the cap's area
///   small.
/// Tests: section/weld_section, section/preparations - published element weights and V table,
///   closed-form, law, cross (polygon areas by a geometry library).
[[nodiscard]] base::Outcome<WeldSection> weld_section(const SectionParams& params);
[[nodiscard]] const base::FigureCard& section_card();

/// Depth of the cut of one side (1 or 2), what stands of the edge left out; of a single groove side
/// 2 has none. Units: mm. Pre: a groove that weld_section accepts. Tests: section/weld_section.
[[nodiscard]] double cut_depth_mm(const joint::Groove& groove, double thickness_mm, int side);

/// Number of sides that are welded: 2 for double grooves and where something is gouged.
[[nodiscard]] int side_count(const SectionParams& params);

/// Width of the profile at a height. Pre: 0 <= y <= height (1e-9 of it beyond is rounding).
[[nodiscard]] double width_at_mm(const WeldSection& section, double y_mm);
/// Profile area between the root and a height (no cap). Pre: 0 <= y <= height.
[[nodiscard]] double area_below_mm2(const WeldSection& section, double y_mm);
/// Least height at which the profile holds an area. Inverse of area_below_mm2.
/// Pre: 0 <= area <= area of the profile (1e-9 of it beyond is rounding).
[[nodiscard]] double height_of_area_mm(const WeldSection& section, double area_mm2);

/// Volume of weld metal along a path: area x length on a line; on a circle the centroid's circle
/// counts (Pappus).
/// Units: mm2, mm -> mm3.  centroid_radius_mm: of the section's centroid, ring seams.
/// Tests: section/weld_section - computed (Pappus), closed-form.
[[nodiscard]] double ring_volume_mm3(double area_mm2, double centroid_radius_mm);
/// Centroid of the outline. Pre: made by weld_section.
[[nodiscard]] Point centroid(const WeldSection& section);

}  // namespace seamturn::section
