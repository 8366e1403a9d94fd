// SPDX-License-Identifier: MIT
#include <algorithm>
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
using base::Severity;
using base::Status;

// All tables of this file: AWS D1.1 hydrogen-control annex, FROM MEMORY. One cell of the preheats
// and one letter were read in [AWSF-1]; they are marked.
constexpr double pcm_columns[] = {0.18, 0.23, 0.28, 0.33, 0.38};  // below each
constexpr double level_hydrogen_ml_100g[] = {5.0, 10.0, 30.0};    // H1, H2, H3
constexpr std::string_view table_letters[] = {
    "ABCDE",  // H1
    "BCDEF",  // H2; D below 0.28: [AWSF-1]
    "CDEFG",  // H3
};
constexpr double index_band_ends[] = {3.0, 3.5, 4.0, 4.5, 5.0, 5.5, 7.0};  // A to G

constexpr double room_f = 65.0;
constexpr double room = -room_f;  // the cell reads "< 65"

struct RestraintRow {
  const char* text;
  double cells[3][7];  ///< [restraint][letter], degF
};
constexpr RestraintRow restraint_rows[] = {
    {"below 10 mm",
     {{room, room, room, room, 140, 280, 300},
      {room, room, room, room, 160, 280, 320},
      {room, room, room, 100, 230, 300, 320}}},
    {"10 to 20 mm",
     {{room, room, 65, 140, 210, 280, 300},
      {room, room, 65, 175, 240, 290, 320},
      {room, 65, 150, 220, 280, 320, 320}}},
    {"> 20 to 38 mm",
     {{room, room, 65, 175, 230, 280, 300},
      {room, 65, 165, 230, 280, 300, 320},
      {65, 185, 240, 280, 300, 320, 320}}},
    {"> 38 to 75 mm",
     {{65, 65, 100, 200, 250, 280, 300},
      {65, 175, 230, 265, 300, 300, 320},
      {240, 265, 300, 300, 320, 320, 320}}},  // high, D: [AWSF-1]
    {"> 75 mm",
     {{65, 65, 100, 200, 250, 280, 300},
      {200, 250, 280, 300, 320, 320, 320},
      {240, 265, 300, 300, 320, 320, 320}}},
};

const RestraintRow& restraint_row(double thickness_mm) {
  if (thickness_mm < 10.0) return restraint_rows[0];
  if (thickness_mm <= 20.0) return restraint_rows[1];
  if (thickness_mm <= 38.0) return restraint_rows[2];
  return thickness_mm <= 75.0 ? restraint_rows[3] : restraint_rows[4];
}

int level_of(double hydrogen_ml_100g) {
  if (hydrogen_ml_100g < level_hydrogen_ml_100g[0]) return 1;
  return hydrogen_ml_100g < level_hydrogen_ml_100g[1] ? 2 : 3;
}

char letter_of_index(double susceptibility) {
  const auto* const end =
      std::lower_bound(std::begin(index_band_ends), std::end(index_band_ends) - 1, susceptibility);
  return static_cast<char>('A' + (end - std::begin(index_band_ends)));
}

double metric_edition_c(double f) {
  return 5.0 * std::round((f - 32.0) / 1.8 / 5.0);
}

std::vector<base::Finding> findings_of(const AwsHydrogenParams& params) {
  std::vector<base::Finding> findings = {
      detail::finding(Severity::warning,
                      "heat.aws_hydrogen.unconfirmed",
                      "unconfirmed: shown, never governing. The tables of the hydrogen-control "
                      "annex are from memory; compare with the code before use")};
  if (params.hydrogen_ml_100g > level_hydrogen_ml_100g[2]) {
    findings.push_back(detail::finding(
        Severity::warning,
        "heat.aws_hydrogen.out_of_range",
        "hydrogen " + base::digits_text(params.hydrogen_ml_100g) +
            " ml/100 g is above 30 ml/100 g, which the annex takes for uncontrolled hydrogen"));
  }
  return findings;
}

}  // namespace

base::Outcome<AwsHydrogenPreheat> aws_hydrogen_preheat(const AwsHydrogenParams& params) {
  SEAMTURN_REQUIRE(base::is_amount(params.pcm), params.pcm);
  SEAMTURN_REQUIRE(base::is_positive(params.hydrogen_ml_100g), params.hydrogen_ml_100g);
  SEAMTURN_REQUIRE(base::is_positive(params.thickness_mm), params.thickness_mm);
  const auto restraint = static_cast<std::size_t>(params.restraint);
  SEAMTURN_REQUIRE(restraint < 3, restraint);
  const auto* const column =
      std::upper_bound(std::begin(pcm_columns), std::end(pcm_columns), params.pcm);
  if (column == std::end(pcm_columns)) {
    return base::Refusal{"heat.aws_hydrogen.pcm",
                         "Pcm " + base::digits_text(params.pcm) +
                             " % is not below 0.38 %, where the annex ends; take another method "
                             "and ask the steel maker"};
  }
  AwsHydrogenPreheat out;
  out.hydrogen_level = level_of(params.hydrogen_ml_100g);
  const auto level = static_cast<std::size_t>(out.hydrogen_level - 1);
  out.susceptibility = 12.0 * *column + std::log10(level_hydrogen_ml_100g[level]);
  out.table_letter = table_letters[level][static_cast<std::size_t>(column - pcm_columns)];
  out.index_letter = letter_of_index(out.susceptibility);
  out.letter = std::max(out.table_letter, out.index_letter);
  const RestraintRow& row = restraint_row(params.thickness_mm);
  const double cell_f = row.cells[restraint][out.letter - 'A'];
  out.below_room = cell_f < 0.0;
  out.preheat_f = std::abs(cell_f);
  out.preheat_c = metric_edition_c(out.preheat_f);
  out.band = row.text;
  out.findings = findings_of(params);
  return out;
}

const base::FigureCard& aws_hydrogen_card() {
  static const FigureKey keys[] = {
      {"method", Dimension::none, "which method", "aws-hydrogen", true, true},
      {"pcm", Dimension::none, "Pcm of the steel", "below 0.38 %, bare number"},
      {"hydrogen",
       Dimension::none,
       "diffusible hydrogen of the deposited metal",
       "> 0 ml/100 g, bare number; warned about above 30"},
      {"restraint", Dimension::none, "restraint of the joint", "low, medium or high", true, true},
      {"thickness", Dimension::length, "thickest part at the weld", "> 0"},
  };
  static const Citation sources[] = {
      {"AWS D1.1", "hydrogen-control annex: letters, bands, preheats", Status::from_memory},
      {"AWSF-1", "one cell: Pcm below 0.28, H2, 2 in, high: D, 300 degF", Status::verified},
  };
  static const base::FigureCard card{
      "preheat",
      "preheat of the hydrogen-control annex: UNCONFIRMED, shown, never governing",
      "12 Pcm + log10 H with H 5, 10, 30 and the table of letters: the worse letter; then the cell "
      "of letter, thickness and restraint",
      "degC",
      "Pcm below 0.38 %; 104 of 105 preheats are from memory. It never declares a joint safe: "
      "compare with the code",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
