// SPDX-License-Identifier: MIT
#include "seamturn/section/weld_section.hpp"

namespace seamturn::section {

const base::FigureCard& section_card() {
  using base::Citation;
  using base::Dimension;
  using base::FigureKey;
  using base::Status;
  static const FigureKey keys[] = {
      {"preparation",
       Dimension::none,
       "kind of weld",
       "fillet, square, single- or double-v, -bevel, -u, -j, compound-v, plug, slot",
       true,
       true},
      {"thickness", Dimension::length, "plate at the groove", "> 0; grooves need it", false},
      {"depth",
       Dimension::length,
       "of the groove that is welded, from the welded surface",
       "from the bevel's bottom to the thickness; absent: full thickness; doubles: of each side",
       false},
      {"gap", Dimension::length, "root gap", ">= 0; grooves need it, fillets may have one", false},
      {"root-face",
       Dimension::length,
       "square part of the edge",
       "0 up to below the thickness; all but square edges need it",
       false},
      {"angle",
       Dimension::angle,
       "V: included; bevel, U, J: of one face; fillet: between the plates",
       "V 0 to 180, bevel, U, J 0 to 90 deg, ends excluded; fillet 60 to 135 deg, absent 90 deg",
       false},
      {"angle-2", Dimension::angle, "same, of a double's second side", "absent: as angle", false},
      {"first-face",
       Dimension::angle,
       "first member's part of a V's angle",
       "0 to below 90 deg; absent: half",
       false},
      {"depth-1", Dimension::length, "cut of a double's first side", "absent: what is left", false},
      {"depth-2", Dimension::length, "cut of its second side", "absent: what is left", false},
      {"radius", Dimension::length, "root radius of U and J", "> 0, fits into the cut", false},
      {"radius-2", Dimension::length, "same, second side", "absent: as radius", false},
      {"lower-depth", Dimension::length, "part of a compound V next to the root", "> 0", false},
      {"lower-angle", Dimension::angle, "its included angle", "0 to 180 deg, ends excluded", false},
      {"leg", Dimension::length, "both legs of a fillet, along the plates", "> 0", false},
      {"leg-1", Dimension::length, "leg along the first plate", "> 0, with leg-2", false},
      {"leg-2", Dimension::length, "leg along the second plate", "> 0, with leg-1", false},
      {"throat", Dimension::length, "throat of an equal-leg fillet", "> 0", false},
      {"bulge",
       Dimension::length,
       "of a fillet's face at its middle, convex above 0, concave below",
       "less than half the face; absent 0",
       false},
      {"reach", Dimension::length, "metal run into a fillet's gap", ">= 0, absent 0", false},
      {"width", Dimension::length, "diameter of a plug, width of a slot", "> 0", false},
      {"length", Dimension::length, "of a slot over its round ends", ">= width", false},
      {"fill", Dimension::length, "depth of weld metal in a plug or slot", "> 0", false},
      {"cap-height", Dimension::length, "cap of a groove over the plate", ">= 0, absent 0", false},
      {"toe-lap", Dimension::length, "cap beyond the groove, each side", ">= 0, absent 0", false},
      {"cover",
       Dimension::none,
       "reinforcing fillet of a bevel or J in a tee, by which model",
       "corner-fillet or full-cover; absent: none",
       false,
       true},
      {"cover-leg", Dimension::length, "its leg along the first member", "> 0", false},
      {"gouge-depth", Dimension::length, "gouged from the second side", "> 0; absent: none", false},
      {"gouge-radius", Dimension::length, "of its bottom", "> 0", false},
      {"gouge-flank",
       Dimension::angle,
       "lean of its flanks",
       "0 to below 90 deg; absent 10",
       false},
  };
  static const Citation sources[] = {
      {"GEOMETRY", "docs/methods/section.md", Status::computed},
      {"VTAB", "single-V volumes: V form, 39 of 40 cells", Status::verified},
      {"FMH-9", "element weights: fillet triangle, V, bevel, cap 2/3 w h", Status::verified},
      {"TWI-JK95", "fillet: half the leg squared", Status::verified},
  };
  static const base::FigureCard card{
      "section",
      "cross-section of weld metal a joint asks for",
      "fillet: 1/2 leg1 x leg2 x sin(angle) + segment of the face. Groove: gap x t + what each "
      "face "
      "takes, V (t - root face)2 x tan(angle / 2), bevel half of it, U and J with the round "
      "bottom; "
      "doubles side by side. Cap: + 2/3 x (opening + 2 toe laps) x height. Plug, slot: hole x "
      "fill. "
      "All from one profile of walls (docs/methods/section.md)",
      "mm2",
      "ideal outline: no over-weld but what a joint states, no melted plate, no shrinkage of the "
      "gap. Sizes up to 1000 mm",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::section
