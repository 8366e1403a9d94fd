// SPDX-License-Identifier: MIT
// The cross-section of weld metal a joint asks for.
//
// Section frame: origin at the root, y from the root towards the weld face, x across
// (docs/methods/section.md has the drawing). Which side is x > 0 follows the members, not the travel:
// - fillet: y is the bisector of the plates; the leg on the first member ends at x > 0, the leg on
//   the second at x < 0, both at half the dihedral from y.
// - square and single V: y runs from the root towards the welded surface, x = 0 in the middle of
//   the gap; the section is its own mirror image.
// - single bevel: the same y; x = 0 on the square wall (in a tee or corner the first member's
//   surface), the bevelled second member lies at x > 0.
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

struct WeldSection {
  std::vector<Slice> profile;       ///< from the root to the face, rising y, without cap
  double area_mm2 = 0.0;            ///< all weld metal: profile + cap
  double cap_area_mm2 = 0.0;
  double opening_mm = 0.0;          ///< width of the profile at the face (fillet: width of the face)
  double height_mm = 0.0;           ///< of the profile (fillet: root to face along the bisector)
  double throat_mm = 0.0;           ///< fillet: root to face, shortest; groove: depth
  double cap_height_mm = 0.0;
  double cap_width_mm = 0.0;
  double seam_line_y_mm = 0.0;      ///< where the seam's path runs: 0 fillet, depth for grooves
  double seam_line_x_mm = 0.0;
  bool is_fillet = false;
  double leg_1_mm = 0.0;            ///< fillets
  double leg_2_mm = 0.0;
  std::vector<Point> outline;       ///< closed polygon, anticlockwise, cap included
  std::vector<base::Finding> findings;
};

struct SectionParams {
  joint::Preparation preparation;
  double thickness_mm = 0.0;                       ///< grooves
  double depth_mm = 0.0;                           ///< grooves; 0: full thickness
  Angle between_plates = Angle::deg(90.0);         ///< fillets
  joint::Cap cap;
};

/// Section of a preparation.
/// Units: mm, Angle -> mm, mm2.      Frame: section frame.
/// Pre: finite values.
/// Outside: refuses section.size.not_positive, section.root_face.too_thick, section.angle.out_of_range
///   (dihedral of fillets 60..135 deg; bevel and V angles 0 < angle < 180 deg), section.gap.negative.
/// Source: plane geometry; cap 2/3 width x height, see the card.
/// Accuracy: exact for the ideal outline.
/// Tests: section/weld_section - published element weights and V table, closed-form, law.
[[nodiscard]] base::Outcome<WeldSection> weld_section(const SectionParams& params);
[[nodiscard]] const base::FigureCard& section_card();

/// Width of the profile at a height. Pre: 0 <= y <= height.
[[nodiscard]] double width_at_mm(const WeldSection& section, double y_mm);
/// Profile area between the root and a height (no cap). Pre: 0 <= y <= height.
[[nodiscard]] double area_below_mm2(const WeldSection& section, double y_mm);
/// Height at which the profile holds an area. Inverse of area_below_mm2. Pre: 0 <= area <= profile.
[[nodiscard]] double height_of_area_mm(const WeldSection& section, double area_mm2);

/// Volume of weld metal along a path: area x length on a line; on a circle the centroid's circle
/// counts (Pappus).
/// Units: mm2, mm -> mm3.  centroid_radius_mm: of the section's centroid, ring seams.
/// Tests: section/weld_section - computed (Pappus), closed-form.
[[nodiscard]] double ring_volume_mm3(double area_mm2, double centroid_radius_mm);
/// Centroid of the outline.
[[nodiscard]] Point centroid(const WeldSection& section);

}  // namespace seamturn::section
