// SPDX-License-Identifier: MIT
#include "seamturn/heat/preheat_ito_bessyo.hpp"

#include <cmath>

#include "detail_checks.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::heat {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

// H_ISO = slope H_glycerine + offset, [GLYCERINE] from memory.
constexpr double iso_slope = 1.27, iso_offset_ml_100g = 2.19;

}  // namespace

base::Outcome<ItoBessyo> preheat_ito_bessyo(const ItoBessyoParams& p) {
  SEAMTURN_REQUIRE(base::is_amount(p.pcm), p.pcm);
  SEAMTURN_REQUIRE(base::is_positive(p.hydrogen_glycerine_ml_100g), p.hydrogen_glycerine_ml_100g);
  SEAMTURN_REQUIRE(base::is_positive(p.thickness_mm), p.thickness_mm);
  SEAMTURN_REQUIRE(base::is_positive(p.heat_input_kj_mm), p.heat_input_kj_mm);
  if (p.thickness_mm < detail::plates_from_mm) {
    return base::Refusal{"heat.ito_bessyo.thickness",
                         "thickness " + base::digits_text(p.thickness_mm) +
                             " mm is below 3 mm: the Ito-Bessyo temperature speaks about 19 to 50 "
                             "mm and would mislead for sheet"};
  }
  ItoBessyo out;
  out.pc = p.pcm + p.hydrogen_glycerine_ml_100g / 60.0 + p.thickness_mm / 600.0;
  out.preheat_c = 1440.0 * out.pc - 392.0;
  const detail::RangeWatch watch(
      out.findings,
      "heat.ito_bessyo.out_of_range",
      ", the range of the Ito-Bessyo temperature (from memory); the preheat is an extrapolation: "
      "let the welding coordinator decide");
  watch.check("thickness", p.thickness_mm, ito_bessyo_thickness_mm, "mm");
  watch.check(
      "glycerine hydrogen", p.hydrogen_glycerine_ml_100g, ito_bessyo_glycerine_ml_100g, "ml/100 g");
  watch.check("heat input", p.heat_input_kj_mm, ito_bessyo_heat_input_kj_mm, "kJ/mm");
  return out;
}

base::Outcome<double> glycerine_hydrogen_ml_100g(double iso_3690_ml_100g) {
  SEAMTURN_REQUIRE(base::is_positive(iso_3690_ml_100g), iso_3690_ml_100g);
  const double glycerine = (iso_3690_ml_100g - iso_offset_ml_100g) / iso_slope;
  if (glycerine < ito_bessyo_glycerine_ml_100g.least) {
    return base::Refusal{"heat.ito_bessyo.conversion",
                         base::digits_text(iso_3690_ml_100g) +
                             " ml/100 g by ISO 3690 would be less than 1 ml/100 g by glycerine, "
                             "where the conversion tells nothing; state 1 ml/100 g glycerine"};
  }
  return glycerine;
}

const base::FigureCard& ito_bessyo_card() {
  static const FigureKey keys[] = {
      {"method", Dimension::none, "which method", "ito-bessyo", true, true},
      {"pcm", Dimension::none, "Pcm of the steel", ">= 0 %, bare number"},
      {"hydrogen-glycerine",
       Dimension::none,
       "diffusible hydrogen by the glycerine method; this or hydrogen=",
       "1 to 5 ml/100 g, bare number",
       false},
      {"hydrogen",
       Dimension::none,
       "diffusible hydrogen by ISO 3690, to be converted",
       "3.46 ml/100 g and above, bare number",
       false},
      {"thickness", Dimension::length, "thickness of the plate", "19 to 50 mm"},
      {"heat-input",
       Dimension::heat_input,
       "lowest heat input the joint may see, for the range only",
       "1.7 to 3 kJ/mm"},
  };
  static const Citation sources[] = {
      {"ITO", "Pc and To", Status::verified},
      {"ITO", "range", Status::from_memory},
      {"GLYCERINE", "H_ISO = 1.27 H_glycerine + 2.19", Status::from_memory},
  };
  static const base::FigureCard card{
      "preheat",
      "preheat of older Japanese practice from Pcm, glycerine hydrogen and thickness",
      "To = 1440 Pc - 392, Pc = Pcm + H/60 + t/600",
      "degC",
      "thickness 19 to 50 mm, glycerine hydrogen 1 to 5 ml/100 g, heat input 1.7 to 3 kJ/mm; "
      "outside: warned about; below 3 mm: refused. Glycerine hydrogen is lower than that of ISO "
      "3690: never feed one for the other",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
