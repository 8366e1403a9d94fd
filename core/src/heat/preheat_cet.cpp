// SPDX-License-Identifier: MIT
#include "seamturn/heat/preheat_cet.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>

#include "detail_checks.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::heat {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Finding;
using base::shortest_text;
using base::Status;

// [SSAB-23] p. 23: the weld metal's CET counts with this margin.
constexpr double weld_metal_margin = 0.03;

std::vector<Finding> range_findings(const PreheatParams& params) {
  std::vector<Finding> findings;
  const detail::RangeWatch watch(
      findings,
      "heat.preheat.out_of_range",
      ", the range of the CET method (EN 1011-2, from memory); the preheat is an extrapolation: "
      "let the welding coordinator decide");
  watch.check("CET", params.cet, preheat_cet_mass_percent, "%");
  watch.check("thickness", params.thickness_mm, preheat_thickness_mm, "mm");
  watch.check("diffusible hydrogen", params.hydrogen_ml_100g, preheat_hydrogen_ml_100g, "ml/100 g");
  watch.check(preheat_heat_input, params.heat_input_kj_mm, preheat_heat_input_kj_mm, "kJ/mm");
  return findings;
}

}  // namespace

base::Outcome<Preheat> preheat_cet(const PreheatParams& params) {
  SEAMTURN_REQUIRE(base::is_amount(params.cet), params.cet);
  SEAMTURN_REQUIRE(base::is_positive(params.thickness_mm), params.thickness_mm);
  SEAMTURN_REQUIRE(base::is_positive(params.hydrogen_ml_100g), params.hydrogen_ml_100g);
  SEAMTURN_REQUIRE(base::is_positive(params.heat_input_kj_mm), params.heat_input_kj_mm);
  if (params.thickness_mm < preheat_least_thickness_mm) {
    return base::Refusal{
        "heat.preheat.thickness",
        "thickness " + base::digits_text(params.thickness_mm) + " mm is below " +
            shortest_text(preheat_least_thickness_mm) +
            " mm: the CET method speaks about 10 to 90 mm and would mislead for sheet; follow the "
            "steel maker's instructions"};
  }
  // The one line of the method split into terms that vanish at CET 0.2, near 30 mm, near 4 ml/100 g
  // and at 1 kJ/mm, so that each tells what its cause adds; constants and CET parts cancel in the
  // sum.
  Preheat preheat;
  preheat.steel_term_c = 750.0 * params.cet - 150.0;
  preheat.thickness_term_c = 160.0 * std::tanh(params.thickness_mm / 35.0) - 110.0;
  preheat.hydrogen_term_c = 62.0 * std::pow(params.hydrogen_ml_100g, 0.35) - 100.0;
  preheat.heat_term_c = (53.0 * params.cet - 32.0) * (params.heat_input_kj_mm - 1.0);
  preheat.preheat_c = preheat.steel_term_c + preheat.thickness_term_c + preheat.hydrogen_term_c +
                      preheat.heat_term_c;
  preheat.findings = range_findings(params);
  return preheat;
}

double governing_cet(double plate_cet, double weld_metal_cet) {
  SEAMTURN_REQUIRE(
      std::isfinite(plate_cet) && std::isfinite(weld_metal_cet), plate_cet, weld_metal_cet);
  return std::max(plate_cet, weld_metal_cet + weld_metal_margin);
}

const base::FigureCard& preheat_card() {
  static const FigureKey keys[] = {
      {"method", Dimension::none, "which method", "cet", true, true},
      {"cet",
       Dimension::none,
       "CET of the plate, or of the weld metal + 0.03 when that is higher",
       "0.2 to 0.5 %, bare number"},
      {"thickness", Dimension::length, "single thickness of the thickest part", "10 to 90 mm"},
      {"hydrogen",
       Dimension::none,
       "diffusible hydrogen of the deposited metal, ISO 3690",
       "1 to 20 ml/100 g, bare number"},
      {"heat-input",
       Dimension::heat_input,
       "lowest heat input the joint may see",
       "0.5 to 4 kJ/mm"},
  };
  static const Citation sources[] = {
      {"EN 1011-2", "2001, C.3 (method B): formula and range", Status::from_memory},
      {"TEACH-DE", "one exercise, agrees within 2 K", Status::verified},
      {"SSAB-23", "single thickness and the 0.03 margin of the weld metal", Status::verified},
  };
  static const base::FigureCard card{
      "preheat",
      "lowest plate temperature against hydrogen cracking before each pass",
      "697 CET + 160 tanh(d/35) + 62 HD^0.35 + (53 CET - 32) Q - 328",
      "degC",
      "CET 0.2 to 0.5 %, thickness 10 to 90 mm, hydrogen 1 to 20 ml/100 g, heat input 0.5 to 4 "
      "kJ/mm, yield up to 1000 MPa; outside: warned about; below 3 mm: refused. At or below the "
      "plate's own temperature it asks for no heating, but for a dry joint above 5 degC. The "
      "formula is from memory of the standard: the steel maker's or the standard's own higher "
      "value governs",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
