// SPDX-License-Identifier: MIT
#include "seamturn/shrinkage/rules.hpp"
#include "seamturn/shrinkage/tolerance_class.hpp"

namespace seamturn::shrinkage {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

}  // namespace

const base::FigureCard& shrinkage_card() {
  static const FigureKey keys[] = {
      {"rule",
       Dimension::none,
       "what shrinks",
       "across-butt, across-tee, across-lap, along-butt, along-fillet, bow or tilt",
       true,
       true},
      {"area", Dimension::area, "weld metal (across-butt, along-fillet, bow)", "> 0", false},
      {"thickness", Dimension::length, "of the plate", "> 0", false},
      {"gap", Dimension::length, "root gap (across-butt)", ">= 0, 0 when left out", false},
      {"leg", Dimension::length, "of each fillet", "> 0", false},
      {"length", Dimension::length, "of the weld or the member", "> 0", false},
      {"current", Dimension::current, "of the arc (along-butt)", "> 0", false},
      {"section-area", Dimension::area, "of the whole section (along-fillet)", "> 0", false},
      {"heat-input",
       Dimension::heat_input,
       "that reaches the steel, summed over the runs (bow, along-fillet)",
       "> 0",
       false},
      {"arm",
       Dimension::length,
       "weld from the neutral axis (bow)",
       "below 0: bows the other way",
       false},
      {"second-moment", Dimension::none, "of the section in mm4 (bow)", "> 0", false},
      {"width", Dimension::length, "of the flange (tilt)", "> 0", false},
  };
  static const Citation sources[] = {
      {"SHRINK-ARTICLE", "0.2 A/t + 0.05 g; lean of a single fillet", Status::verified},
      {"SHRINK-STATEMENT", "0.1 A/t", Status::verified},
      {"TWI-SHRINK", "allowances", Status::verified},
      {"SHRINK-MEMORY", "tee and lap, along butts, along fillets", Status::from_memory},
      {"SHRINK-FORCE", "F = 0.2 Q", Status::from_memory},
      {"BLODGETT", "bowing, tilt", Status::from_memory},
  };
  static const base::FigureCard card{
      "shrinkage",
      "by how much a weld shrinks, bows or tilts: the band between rules of thumb",
      "across-butt 0.1 A/t and 0.2 A/t + 0.05 g; across-tee 1.02 z/t, across-lap 1.52 z/t and 1.6 "
      "mm for two; along-butt 305 I L/t 1e-7 and 1 mm/m; along-fillet 25 A/Ap mm/m, 0.27 mm/m and "
      "200 Q L/(E Ap); bow 0.005 A d L2/I and 200 Q d L2/(8 E I); tilt 0.1925 W z^1.3/t2 and W "
      "tan(1 to 3 deg)",
      "mm",
      "the value is the high end, never the answer alone: rules of thumb for free plates, most "
      "from "
      "memory. Published part: leg up to 3/4 of the plate, lean up to 12.7 mm; beyond, the low end "
      "is 0. Measure a trial part",
      keys,
      sources};
  return card;
}

const base::FigureCard& tolerance_card() {
  static const FigureKey keys[] = {
      {"class",
       Dimension::none,
       "A to D: lengths and angles; E to H: straightness, flatness, parallelism",
       "A, B, C, D, E, F, G or H",
       true,
       true},
      {"size",
       Dimension::length,
       "nominal size; for angles the shorter leg; for form the longer side",
       "A to D from 2 mm, E to H above 30 mm"},
  };
  static const Citation sources[] = {
      {"ISO 13920", "1996, table 1: class A; table 2; table 3: E, F", Status::verified},
      {"ISO 13920", "1996, table 1: B to D; table 3: G, H", Status::from_memory},
  };
  static const base::FigureCard card{"tolerance",
                                     "general tolerance of a weldment by its class",
                                     "cell of class and size; A to D: plus and minus of the "
                                     "length, angle beside it; E to H: width "
                                     "of the zone",
                                     "mm",
                                     "sizes as the tables hold them; below, none. The edition of "
                                     "2023 was not seen: the edition on "
                                     "the drawing governs",
                                     keys,
                                     sources};
  return card;
}

}  // namespace seamturn::shrinkage
