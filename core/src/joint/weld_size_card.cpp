// SPDX-License-Identifier: MIT
#include "seamturn/joint/weld_size.hpp"

namespace seamturn::joint {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

constexpr FigureKey keys[] = {
    {"thinner", Dimension::length, "thickness of the thinner part", "> 0"},
    {"weld",
     Dimension::none,
     "kind of weld",
     "fillet, partial, plug or slot; absent: fillet",
     false,
     true},
    {"thicker", Dimension::length, "thickness of the thicker part", "absent: as thinner", false},
    {"leg",
     Dimension::length,
     "fillet: leg along the plates, to be judged; partial: of the fillet on top",
     "> 0",
     false},
    {"throat", Dimension::length, "fillet: instead of leg", "> 0", false},
    {"angle",
     Dimension::angle,
     "fillet: between the plates; partial: V included, bevel or J of the one face",
     "fillet 30 to 135 deg, absent 90; partial absent: 60 deg V, 45 deg bevel, 20 deg J",
     false},
    {"process", Dimension::none, "ISO 4063 number", "absent: 135", false, true},
    {"hydrogen",
     Dimension::none,
     "does the process count as low-hydrogen",
     "low or other; absent: low with wire, must be given for 111",
     false,
     true},
    {"load",
     Dimension::none,
     "how it is loaded",
     "static, cyclic or end; absent: static",
     false,
     true},
    {"edge", Dimension::length, "the fillet runs along an edge so thick", "> 0", false},
    {"length", Dimension::length, "effective length; intermittent: of a segment", "> 0", false},
    {"clear",
     Dimension::length,
     "intermittent: clear spacing of segments",
     ">= 0, with length",
     false},
    {"root-loss", Dimension::length, "fillet below 60 deg: what the root loses", ">= 0", false},
    {"rules",
     Dimension::none,
     "whose rules",
     "european, american or all; absent: all",
     false,
     true},
    {"column",
     Dimension::none,
     "of the US table of least legs",
     "metric or inch; absent: metric",
     false,
     true},
    {"annex", Dimension::none, "national annex", "none or de; absent: none", false, true},
    {"groove", Dimension::none, "partial: shape", "v, bevel or j; absent: bevel", false, true},
    {"depth", Dimension::length, "partial: depth of the groove", "> 0", false},
    {"position", Dimension::none, "partial: PA to PG", "absent: PA", false, true},
    {"width", Dimension::length, "plug: diameter, slot: width", "> 0", false},
    {"slot-length", Dimension::length, "slot: end to end", ">= width", false},
    {"fill", Dimension::length, "plug, slot: depth filled", "absent: full", false},
};

constexpr Citation sources[] = {
    {"AWS D1.1", "least legs: inch values", Status::verified},
    {"AWS D1.1", "least legs: metric column; depth of filling", Status::from_memory},
    {"AWS D1.1", "2010 2.4.2 lengths, throat by angle; 2000 3.10 plugs", Status::verified},
    {"EN 1993-1-8", "2005 4.3, 4.5: 3 mm, six throats, 30 mm, 60 to 120 deg", Status::from_memory},
    {"AISC-PJP", "throat of partial-penetration grooves", Status::verified},
    {"STEEL-HANDBOOK", "table 5.4, least partial throat", Status::verified},
};

}  // namespace

const base::FigureCard& weld_size_card() {
  static const base::FigureCard card{
      "weld-size",
      "least size of a weld, and what the rules of codes say of a given one",
      "fillet: the largest of the least legs the rules ask for (table by thickness, least throat / "
      "cos(angle / 2)); partial: least throat by the thinner part; plug, slot: plate + 8 mm",
      "mm",
      "structural steel. Says nothing of the load. \"not proved\": every rule holds, but for at "
      "least "
      "one question no rule was read in its document",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::joint
