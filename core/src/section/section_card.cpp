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
       "fillet, square, single-v or single-bevel",
       true,
       true},
      {"thickness", Dimension::length, "plate at the groove", "> 0; grooves need it", false},
      {"depth",
       Dimension::length,
       "of the groove that is welded, from the welded surface",
       "from the bevel's bottom to the thickness; absent: full thickness",
       false},
      {"gap", Dimension::length, "root gap", ">= 0; grooves need it", false},
      {"root-face",
       Dimension::length,
       "square part of the edge",
       "0 up to below the thickness; V and bevel need it",
       false},
      {"angle",
       Dimension::angle,
       "V: included; bevel: of the one face; fillet: between the plates",
       "V 0 to 180, bevel 0 to 90 deg, both ends excluded; fillet 60 to 135 deg, absent 90 deg",
       false},
      {"leg", Dimension::length, "both legs of a fillet, along the plates", "> 0", false},
      {"leg-1", Dimension::length, "leg along the first plate", "> 0, with leg-2", false},
      {"leg-2", Dimension::length, "leg along the second plate", "> 0, with leg-1", false},
      {"throat", Dimension::length, "throat of an equal-leg fillet", "> 0", false},
      {"cap-height", Dimension::length, "cap of a groove over the plate", ">= 0, absent 0", false},
      {"toe-lap", Dimension::length, "cap beyond the groove, each side", ">= 0, absent 0", false},
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
      "fillet: 1/2 leg1 x leg2 x sin(angle). Square: gap x t. V: gap x t + (t - root face)2 x "
      "tan(angle / 2). Bevel: gap x t + 1/2 (t - root face)2 x tan(angle). Cap: + 2/3 x (opening "
      "+ 2 toe laps) x height. All from one profile of walls",
      "mm2",
      "ideal outline: no over-weld, no melted plate, no shrinkage of the gap. Sizes up to 1000 mm",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::section
