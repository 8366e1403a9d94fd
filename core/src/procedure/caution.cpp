// SPDX-License-Identifier: MIT
#include "seamturn/procedure/caution.hpp"

#include <cmath>
#include <string_view>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::procedure {

namespace {

// When a caution appears. Sources and reasons: docs/methods/cautions.md.
constexpr double hydrogen_cet_above = 0.30;  // mass-%
constexpr double hydrogen_thickness_above_mm = 30.0;
constexpr double burns_preheat_above_c = 60.0;
constexpr double lifting_mass_above_kg = 25.0;

constexpr std::string_view site_rules = "; this does not replace them, local codes or site rules";

Caution caution(std::string_view code, std::string_view text, std::string_view defer_to) {
  return {std::string(code), std::string(text), std::string(defer_to) + std::string(site_rules)};
}

bool may_crack_by_hydrogen(const CautionTriggers& t) {
  return t.cet_max > hydrogen_cet_above || t.thickness_max_mm > hydrogen_thickness_above_mm;
}

Caution planning() {
  return caution("caution.planning",
                 "All values here are calculated for planning. They are preliminary until the "
                 "procedure is qualified and the responsible welding coordinator has approved it.",
                 "responsible welding coordinator (ISO 14731); the local code for the product");
}

Caution without_record() {
  return caution("caution.without_record",
                 "At least one procedure is covered by no qualification record: do not weld "
                 "production parts to it before it is qualified.",
                 "responsible welding coordinator; ISO 15607, ISO 15614-1");
}

Caution outside_range() {
  return caution("caution.outside_range",
                 "An input lies outside the range of a method that was used: its number is an "
                 "extrapolation and not valid for release. The findings name input and range.",
                 "responsible welding coordinator; the method's own clause");
}

Caution tearing() {
  return caution(
      "caution.tearing",
      "Thick plate pulled through its thickness can tear in layers, unseen from outside. "
      "Order the class named, test the plate beneath the weld before and after, or "
      "change the joint.",
      "designer and responsible welding coordinator; EN 1993-1-10, EN 10164");
}

Caution fire() {
  return caution(
      "caution.fire",
      "Sparks and hot slag start fires long after the arc. Outside a weld bay a hot-work "
      "permit is due, nothing that burns within 11 m, and a watch for at least 60 min "
      "after the last arc or flame.",
      "person responsible for fire safety; national hot-work rules");
}

Caution hydrogen() {
  return caution("caution.hydrogen",
                 "Hydrogen cracks can open hours to days after welding. Keep the preheat through "
                 "every break and until the joint is full, keep consumables dry, let the weld "
                 "cool slowly, and wait the hold time before the final test.",
                 "responsible welding coordinator; EN 1011-2, ISO/TR 17844; the steel maker");
}

Caution fume() {
  return caution("caution.fume",
                 "Welding fume causes cancer. Extract it at the arc and wear breathing protection "
                 "for what escapes; strip paint, primer and zinc first.",
                 "person responsible for occupational health; national exposure limits; ISO 21904");
}

Caution arc() {
  return caution("caution.arc",
                 "The arc burns eyes and skin, welding circuits give shocks, and stray return "
                 "current ruins bearings. Screen the cell, wear filter and covered skin, and "
                 "clamp the return lead to the part, not through the positioner's bearings.",
                 "person responsible for safety; ISO 25980, IEC 60974-9");
}

Caution crush() {
  return caution("caution.crush",
                 "Robot and positioner crush: nobody stands in their reach while drives are live, "
                 "not even at low speed. Prove every program slowly and without arc first.",
                 "cell integrator and operator; ISO 10218-1, ISO 10218-2, ISO 13854, ISO 13855");
}

Caution turning() {
  return caution(
      "caution.turning",
      "A turning part can slip, drop or run away when its centre of gravity or a clamp "
      "is not where the plan thinks. Check mass, overhang and torque against the load "
      "chart, check the clamps again when hot, and make the first full turn slowly, with "
      "nobody near, before welding.",
      "positioner maker's load chart; person responsible for the cell");
}

Caution tilting() {
  return caution("caution.tilting",
                 "The table leans: the part hangs on its clamps and loose tools slide. Clamp for "
                 "the steepest stance, and clear the space the leaning part sweeps.",
                 "positioner maker's instructions; person responsible for the cell");
}

Caution rolling_over() {
  return caution("caution.rolling_over",
                 "The headstock turns the part over: it hangs on its clamps, loose tools fall, and "
                 "what stuck out on one side comes down on the other. Clamp for every attitude, "
                 "and clear the space the part sweeps.",
                 "positioner maker's instructions; person responsible for the cell");
}

Caution lifting(double mass_kg) {
  return caution("caution.lifting",
                 "The part weighs about " + base::fixed_text(mass_kg, 0) +
                     " kg: lift it with tackle rated for that and for hot parts, and keep out "
                     "from under it.",
                 "person responsible for lifting; ISO 11228-1 for lifting by hand");
}

Caution on_tacks() {
  return caution(
      "caution.on_tacks",
      "Members are turned on their tacks alone. Nobody turns before the tacks are looked at "
      "and the hold point is signed; the first turn is slow, with nobody in reach. That the "
      "tacks carry is a simple rule, never a release.",
      "responsible welding coordinator; person responsible for the cell");
}

Caution re_hung() {
  return caution(
      "caution.re_hung",
      "The part is hung anew by crane between set-ups. Slings, hooks, eyes and crane are "
      "not judged here; the part may be hot, and its centre of gravity has moved since "
      "the stage before.",
      "person responsible for lifting; national rules for lifting gear");
}

Caution arc_blow() {
  return caution("caution.arc_blow",
                 "Parts lifted by magnet keep a field that blows the arc aside and leaves lack of "
                 "fusion. Measure at the edges, demagnetise, and move the return clamp when the "
                 "arc wanders.",
                 "responsible welding coordinator");
}

Caution burns(double preheat_c) {
  return caution("caution.burns",
                 "The part is heated to about " + base::fixed_text(std::ceil(preheat_c - 1e-6), 0) +
                     " degC and stays hot long after welding: mark it as hot, guard it, and "
                     "measure before touching. With gas burners test for leaks, ventilate, and "
                     "keep the flame off closed volumes.",
                 "person responsible for safety; ISO 13916 for measuring, ISO 5175-1 for gas");
}

Caution cavity() {
  return caution("caution.cavity",
                 "A closed cavity bursts when it is heated. Vent it before any tack, preheat or "
                 "weld, and take shielding gas that may fill it for air nobody can breathe.",
                 "responsible welding coordinator and designer for the vent; person responsible "
                 "for safety");
}

}  // namespace

std::vector<Caution> find_cautions(const CautionTriggers& t) {
  for (const double value : {t.part_mass_kg, t.thickness_max_mm, t.cet_max, t.preheat_max_c}) {
    SEAMTURN_REQUIRE(std::isfinite(value), value);
  }
  std::vector<Caution> all = {planning()};
  if (t.without_record) all.push_back(without_record());
  if (t.outside_range) all.push_back(outside_range());
  if (may_crack_by_hydrogen(t)) all.push_back(hydrogen());
  if (t.may_tear) all.push_back(tearing());
  if (t.any_arc) all.push_back(fume());
  if (t.any_arc) all.push_back(arc());
  if (t.any_arc) all.push_back(fire());
  if (t.on_positioner) all.push_back(crush());
  if (t.on_positioner) all.push_back(turning());
  if (t.tilting) all.push_back(tilting());
  if (t.rolling_over) all.push_back(rolling_over());
  if (t.on_tacks) all.push_back(on_tacks());
  if (t.part_mass_kg > lifting_mass_above_kg) all.push_back(lifting(t.part_mass_kg));
  if (t.re_hung) all.push_back(re_hung());
  if (t.preheat_max_c > burns_preheat_above_c) all.push_back(burns(t.preheat_max_c));
  if (t.closed_cavity) all.push_back(cavity());
  if (t.magnet_handled) all.push_back(arc_blow());
  return all;
}

}  // namespace seamturn::procedure
