// SPDX-License-Identifier: MIT
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

constexpr double table_starts_at_mm = 3.0;
// [FUND-H] category D presumes deposits of at most H8.
constexpr double category_d_hydrogen_ml_100g = 8.0;
constexpr std::string_view categories = "ABCD";

struct CellPreheat {
  double f, c;
};
struct CategoryRow {
  double up_to_mm;
  const char* text;
  CellPreheat cells[4];  ///< A, B, C, D
};

// [D11-33] AWS D1.1:2015 table 3.3, A and B in both units; [D11-CD] C and D in degF; their degC by
// analogy with the same degF of A and B.
constexpr CategoryRow category_rows[] = {
    {20.0, "3 to 20 mm", {{32.0, 0.0}, {32.0, 0.0}, {50.0, 10.0}, {32.0, 0.0}}},
    {38.0, "> 20 to 38 mm", {{150.0, 65.0}, {50.0, 10.0}, {150.0, 65.0}, {32.0, 0.0}}},
    {65.0, "> 38 to 65 mm", {{225.0, 110.0}, {150.0, 65.0}, {225.0, 110.0}, {32.0, 0.0}}},
    {1e300, "> 65 mm", {{300.0, 150.0}, {225.0, 110.0}, {300.0, 150.0}, {32.0, 0.0}}},
};

const CategoryRow& category_row(double thickness_mm) {
  for (const CategoryRow& row : category_rows) {
    if (thickness_mm <= row.up_to_mm) return row;
  }
  return category_rows[std::size(category_rows) - 1];
}

base::Refusal too_much_hydrogen(const std::optional<double>& hydrogen_ml_100g) {
  return base::Refusal{
      "heat.aws_category.hydrogen",
      "category D holds for deposits of at most 8 ml/100 g; " +
          (hydrogen_ml_100g ? base::digits_text(*hydrogen_ml_100g) + " ml/100 g are stated"
                            : std::string("no hydrogen is stated")) +
          ": take category B or C, or a filler of H8 or less"};
}

}  // namespace

base::Outcome<AwsCategoryPreheat> aws_category_preheat(const AwsCategoryParams& params) {
  SEAMTURN_REQUIRE(base::is_positive(params.thickness_mm), params.thickness_mm);
  SEAMTURN_REQUIRE(!params.hydrogen_ml_100g || base::is_positive(*params.hydrogen_ml_100g),
                   params.hydrogen_ml_100g.value_or(0.0));
  const std::size_t column = categories.find(params.category);
  if (column == std::string_view::npos) {
    std::string text = "there is no category \"";
    text += params.category;
    text += "\"; the code has A, B, C and D, and lists the steels of each";
    return base::Refusal{"heat.aws_category.unknown", std::move(text)};
  }
  if (params.thickness_mm < table_starts_at_mm) {
    return base::Refusal{"heat.aws_category.thickness",
                         "thickness " + base::digits_text(params.thickness_mm) +
                             " mm is below 3 mm, where the category table begins"};
  }
  const bool is_d = params.category == 'D';
  if (is_d && !(params.hydrogen_ml_100g.value_or(1e300) <= category_d_hydrogen_ml_100g)) {
    return too_much_hydrogen(params.hydrogen_ml_100g);
  }
  const CategoryRow& row = category_row(params.thickness_mm);
  AwsCategoryPreheat preheat;
  preheat.preheat_f = row.cells[column].f;
  preheat.preheat_c = row.cells[column].c;
  preheat.heats_cold_plate = preheat.preheat_f <= 32.0;
  preheat.band = row.text;
  preheat.status_c = column < 2 ? Status::verified : Status::computed;
  return preheat;
}

const base::FigureCard& aws_category_card() {
  static const FigureKey keys[] = {
      {"method", Dimension::none, "which method", "aws-category", true, true},
      {"category", Dimension::none, "category of steel and filler", "A, B, C or D", true, true},
      {"thickness", Dimension::length, "thickest part at the weld", "3 mm and above"},
      {"hydrogen",
       Dimension::none,
       "diffusible hydrogen of the deposited metal, needed for D",
       "up to 8 ml/100 g for D, bare number",
       false},
  };
  static const Citation sources[] = {
      {"D11-33", "AWS D1.1:2015 table 3.3: A and B, edges 20, 38, 65 mm", Status::verified},
      {"D11-CD", "older edition: C and D in degF", Status::verified},
      {"FUND-H", "H8 for category D", Status::verified},
  };
  static const base::FigureCard card{
      "preheat",
      "prequalified minimum preheat and interpass temperature by category",
      "cell of category and thickness band; nothing between the cells",
      "degC",
      "categories A to D, thickness from 3 mm, D with at most 8 ml/100 g. Which steel is in which "
      "category is edition data: look it up. degC of C and D are by analogy. At 0 degC: a plate "
      "below 0 degC is warmed to 20 degC (from memory). The edition in force governs",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
