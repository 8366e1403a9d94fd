// SPDX-License-Identifier: MIT
#include "seamturn/cooling/steel_heat.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::cooling {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

double specific_heat_j_kg_k(double t) {
  if (t < 600.0) return 425.0 + t * (0.773 + t * (-1.69e-3 + t * 2.22e-6));
  if (t < 735.0) return 666.0 + 13002.0 / (738.0 - t);
  if (t < 900.0) return 545.0 + 17820.0 / (t - 731.0);
  return 650.0;
}

double conductivity_w_m_k(double t) {
  return t < 800.0 ? 54.0 - 0.0333 * t : 27.3;
}

}  // namespace

base::Outcome<SteelHeat> steel_heat(double temperature_c) {
  SEAMTURN_REQUIRE(std::isfinite(temperature_c), temperature_c);
  if (temperature_c < steel_heat_least_c || temperature_c > steel_heat_most_c) {
    return base::Refusal{"cooling.steel_heat.out_of_range",
                         "EN 1993-1-2 states heat capacity and conductivity of steel from 20 to "
                         "1200 degC, not at " +
                             base::digits_text(temperature_c) + " degC"};
  }
  return SteelHeat{specific_heat_j_kg_k(temperature_c), conductivity_w_m_k(temperature_c)};
}

const base::FigureCard& steel_heat_card() {
  static const FigureKey keys[] = {
      {"temperature", Dimension::temperature, "of the steel", "20 to 1200 degC"},
  };
  static const Citation sources[] = {
      {"EN 1993-1-2", "2005, 3.4.1: formulas as restated on a knowledge page", Status::verified},
  };
  static const base::FigureCard card{
      "steel-heat",
      "specific heat and conductivity of carbon steel",
      "c = 425 + .773 T - 1.69e-3 T^2 + 2.22e-6 T^3 below 600; 666 + 13002/(738 - T) below 735; "
      "545 + 17820/(T - 731) below 900; 650. lambda = 54 - .0333 T below 800; 27.3",
      "J/kg K",
      "carbon steel, 20 to 1200 degC; made for fire design",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::cooling
