// SPDX-License-Identifier: MIT
#include <cmath>

#include "detail_checks.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"
#include "seamturn/heat/preheat_tables.hpp"

namespace seamturn::heat {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Status;

constexpr double listed_cevs[] = {0.43, 0.49};
constexpr double listed_heats_kj_mm[] = {1.0, 2.0};

struct Band {
  double above_ml_100g;  ///< this and less belong to the next row
  const char* text;
  char letter;
  double largest_mm[2][2];  ///< [CE .43, .49][Q 1, 2]
};

// [EN-C1] BS EN 1011-2:2001 + A1, table C.1, p. 17: every cell verified.
constexpr Band bands[] = {
    {15.0, "> 15 ml/100 g", 'A', {{40.0, 80.0}, {25.0, 50.0}}},
    {10.0, "> 10 to 15 ml/100 g", 'B', {{50.0, 90.0}, {30.0, 55.0}}},
    {5.0, "> 5 to 10 ml/100 g", 'C', {{60.0, 100.0}, {35.0, 65.0}}},
    {3.0, "> 3 to 5 ml/100 g", 'D', {{100.0, 100.0}, {50.0, 100.0}}},
    {0.0, "up to 3 ml/100 g", 'E', {{100.0, 100.0}, {60.0, 100.0}}},
};

const Band& band_of(double hydrogen_ml_100g) {
  for (const Band& band : bands) {
    if (hydrogen_ml_100g > band.above_ml_100g) return band;
  }
  return bands[std::size(bands) - 1];
}

base::Refusal not_listed(const std::string& what) {
  return base::Refusal{"heat.table_c1.not_listed",
                       what +
                           ": table C.1 of EN 1011-2 lists nothing there; consult figure C.2 of "
                           "the standard, or take another method"};
}

}  // namespace

bool TableC1::no_preheat(double combined_thickness_mm) const {
  SEAMTURN_REQUIRE(base::is_positive(combined_thickness_mm), combined_thickness_mm);
  return combined_thickness_mm <= largest_combined_mm;
}

base::Outcome<TableC1> table_c1(const TableC1Params& params) {
  SEAMTURN_REQUIRE(base::is_amount(params.cev), params.cev);
  SEAMTURN_REQUIRE(base::is_positive(params.heat_input_kj_mm), params.heat_input_kj_mm);
  SEAMTURN_REQUIRE(base::is_positive(params.hydrogen_ml_100g), params.hydrogen_ml_100g);
  if (params.cev > listed_cevs[1]) {
    return not_listed("CEV " + base::digits_text(params.cev) + " % is above 0.49 %");
  }
  if (params.heat_input_kj_mm < listed_heats_kj_mm[0]) {
    return not_listed("heat input " + base::digits_text(params.heat_input_kj_mm) +
                      " kJ/mm is below 1 kJ/mm");
  }
  const std::size_t steel = params.cev > listed_cevs[0] ? 1 : 0;
  const std::size_t heat = params.heat_input_kj_mm < listed_heats_kj_mm[1] ? 0 : 1;
  const Band& band = band_of(params.hydrogen_ml_100g);
  return TableC1{listed_cevs[steel],
                 listed_heats_kj_mm[heat],
                 band.text,
                 band.letter,
                 band.largest_mm[steel][heat]};
}

const base::FigureCard& table_c1_card() {
  static const FigureKey keys[] = {
      {"method", Dimension::none, "which method", "table-c1", true, true},
      {"cev", Dimension::none, "CE(IIW) of the steel", "up to 0.49 %, bare number"},
      {"hydrogen",
       Dimension::none,
       "diffusible hydrogen of the deposited metal, ISO 3690",
       "> 0 ml/100 g, bare number"},
      {"heat-input",
       Dimension::heat_input,
       "lowest heat input the joint may see",
       "1 kJ/mm and above"},
      {"combined-thickness",
       Dimension::length,
       "sum of the heat paths, to be compared with the cell",
       "> 0",
       false},
  };
  static const Citation sources[] = {
      {"EN-C1", "BS EN 1011-2:2001 + A1, table C.1, p. 17: 20 cells", Status::verified},
  };
  static const base::FigureCard card{
      "preheat",
      "largest combined thickness that table C.1 lets be welded without preheat",
      "cell of the next higher CE (0.43, 0.49), the next lower heat input (1, 2 kJ/mm) and the "
      "hydrogen band; nothing between the cells",
      "mm",
      "CEV up to 0.49 %, heat input from 1 kJ/mm; else refused: consult figure C.2. Above the cell "
      "the table is silent, it never gives a temperature. Methods are not interchangeable: the CET "
      "method may ask for over 100 K where this table asks for nothing",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
