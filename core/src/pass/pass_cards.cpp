// SPDX-License-Identifier: MIT
#include "seamturn/pass/nozzle_access.hpp"
#include "seamturn/pass/pass_stack.hpp"

namespace seamturn::pass {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

constexpr FigureKey side_key{
    "side", Dimension::none, "of a double or gouged groove", "1 or 2; absent: 1", false, true};

constexpr FigureKey stack_keys[] = {
    side_key,
    {"position", Dimension::none, "the row is meant for", "PA to PG", true, true},
    {"process", Dimension::none, "ISO 4063 number", "absent: 135", false, true},
    {"wire", Dimension::length, "diameter", "> 0"},
    {"linear-mass", Dimension::linear_mass, "of a cored wire", "> 0; absent: solid steel", false},
    {"efficiency", Dimension::ratio, "deposited / melted", "above 0 to 1 (100 %)"},
    {"feed", Dimension::speed, "of the wire", "> 0"},
    {"voltage", Dimension::voltage, "of the arc", "> 0"},
    {"current", Dimension::current, "of the arc", "> 0"},
    {"travel-min", Dimension::speed, "slowest at which the pool is held", "> 0, at most travel"},
    {"travel", Dimension::speed, "preferred", "travel-min to travel-max"},
    {"travel-max", Dimension::speed, "fastest", "at least travel"},
    {"weave-width", Dimension::length, "peak to peak", ">= 0, absent: none", false},
    {"leg-max", Dimension::length, "single-pass fillet leg", "> 0; absent: free", false},
    {"area-max", Dimension::area, "of one pass", "> 0; absent: free", false},
    {"thickness-max", Dimension::length, "height of one layer", "> 0; absent: free", false},
    {"split-width",
     Dimension::length,
     "wider layers take at least two beads",
     "> 0; absent: free",
     false},
    {"heat-input-min", Dimension::heat_input, "permitted, with k", "> 0; absent: free", false},
    {"heat-input-max", Dimension::heat_input, "permitted, with k", "> 0; absent: free", false},
};

constexpr FigureKey nozzle_keys[] = {
    side_key,
    {"nozzle", Dimension::length, "outer diameter", "> 0"},
    {"recess", Dimension::length, "contact tip behind the mouth", "below 0: it stands out"},
    {"stick-out", Dimension::length, "contact tip to work", "> 0"},
    {"stick-out-min", Dimension::length, "the nozzle is for", ">= 0; absent: 0", false},
    {"stick-out-max", Dimension::length, "the nozzle is for", "absent: 1000 mm", false},
    {"clearance", Dimension::length, "due to the walls", ">= 0; absent: 1 mm", false},
    {"height",
     Dimension::length,
     "of the wire's aim above the root, midway between the walls",
     "0 to below the section's height; absent: 0",
     false},
    {"torch",
     Dimension::angle,
     "off the section's y axis, + towards x",
     "-80 to 80 deg; absent: halves the walls within 25 deg",
     false},
    {"left-rise",
     Dimension::angle,
     "plate beyond the left edge of a groove",
     "0 level (absent) to 90 deg upright, as in a tee",
     false},
    {"right-rise", Dimension::angle, "same, right", "0 to 90 deg; absent: 0", false},
};

/// The keys of a preparation and those of the figure behind them.
std::vector<FigureKey> with_preparation(std::span<const FigureKey> own) {
  const std::span<const FigureKey> sizes = section::section_card().keys;
  std::vector<FigureKey> keys(sizes.begin(), sizes.end());
  keys.insert(keys.end(), own.begin(), own.end());
  return keys;
}

}  // namespace

const base::FigureCard& pass_stack_card() {
  static const std::vector<FigureKey> keys = with_preparation(stack_keys);
  static constexpr Citation sources[] = {
      {"MASS", "travel from feed and bead area", Status::verified},
      {"EN 1011-1", "table 1, as quoted by [TWI-HI]: k", Status::verified},
      {"GEOMETRY", "docs/methods/pass-stack.md: layers, aims", Status::computed},
      {"PASS-RULES", "order of beads, torch within 25 deg", Status::common_practice},
      {"PASS-RULES", "torch leans of fillets", Status::from_memory},
  };
  static const base::FigureCard card{
      "passes",
      "layers and passes that fill a preparation with one settings row",
      "fewest passes within the limits, then travels nearest the preferred. Fillet: layers of 1, "
      "2, "
      "3 ... equal beads; groove: root at its own size, layers of one thickness, cap. travel = "
      "feed "
      "x wire section x efficiency / bead area; arc time = length / travel; heat input = k x U x I "
      "/ travel. The plan's own functions (docs/methods/pass-stack.md)",
      "",
      "one row for root, fill, cap and single; limits are those given here and no others: the plan "
      "adds the library's. x across, y from the root as in docs/methods/section.md. Whether a bead "
      "of that size fuses, a trial plate says",
      keys,
      sources};
  return card;
}

const base::FigureCard& nozzle_access_card() {
  static const std::vector<FigureKey> keys = with_preparation(nozzle_keys);
  static constexpr Citation sources[] = {
      {"GEOMETRY", "docs/methods/nozzle-access.md", Status::computed},
      {"PASS-RULES", "torch halves the walls within 25 deg", Status::common_practice},
      {"PASS-RULES", "clearance of 1 mm, our own default", Status::proposed},
  };
  static const base::FigureCard card{
      "nozzle-access",
      "whether the gas nozzle finds room between the walls where a bead is welded",
      "clearance = least over all wall points of max(r - D/2, h - s): r beside the torch, s along "
      "it from the aim, h = stick-out - recess, D the nozzle; access: clearance at least that due",
      "",
      "the plane across the seam: neck, body, robot, clamps and the seam's ends are not in it, nor "
      "metal laid before. Plates beyond the edges for 150 mm",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::pass
