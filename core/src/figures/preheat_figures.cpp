// SPDX-License-Identifier: MIT
// Preheat by one named method: each has its own card, keys and refusals; none is mixed with
// another.
#include <algorithm>
#include <array>

#include "detail_figures.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/heat/preheat_cet.hpp"
#include "seamturn/heat/preheat_ito_bessyo.hpp"
#include "seamturn/heat/preheat_tables.hpp"

namespace seamturn::figures::detail {

namespace {

using base::Dimension;
using base::FigureKey;

/// A key of the figure that the method does not know is an error of the call, and so is a missing
/// one that it needs.
void check_keys(Arguments& arguments, const base::FigureCard& method, const std::string& name) {
  for (const FigureKey& key : preheat_methods_card().keys) {
    const auto* const known = std::find_if(
        method.keys.data(), method.keys.data() + method.keys.size(), [&key](const FigureKey& one) {
          return one.name == key.name;
        });
    const bool belongs = known != method.keys.data() + method.keys.size();
    const std::string written = "key " + std::string(key.name) + "=";
    if (!belongs && arguments.has(key.name)) {
      arguments.add_usage(written + " does not go with method=" + name);
    } else if (belongs && known->required && !arguments.has(key.name)) {
      arguments.add_usage(written + " is missing: " + std::string(known->meaning) + " (" +
                          std::string(known->range) + ")");
    }
  }
}

void require_not_negative(Arguments& arguments, std::string_view key) {
  if (arguments.number(key) < 0.0) {
    arguments.add_bad_value("key " + std::string(key) + "= must not be negative");
  }
}

/// What the cards ask of a dry joint; a plate of this temperature is heated by nobody.
constexpr double dry_above_c = 5.0;  // common practice

std::string heating_in_words(double preheat_c) {
  return preheat_c <= dry_above_c
             ? "none needed, but a joint dry and above 5 degC; the formula says"
             : "";
}

Answer by_cet(Arguments& arguments) {
  arguments.require_positive({"thickness", "hydrogen", "heat-input"});
  require_not_negative(arguments, "cet");
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<heat::Preheat> preheat = heat::preheat_cet({arguments.number("cet"),
                                                                  arguments.number("thickness"),
                                                                  arguments.number("hydrogen"),
                                                                  arguments.number("heat-input")});
  if (!preheat) return preheat.error();
  return ResultMaker("preheat")
      .principal(preheat->preheat_c, "degC")
      .in_words(heating_in_words(preheat->preheat_c))
      .value("steel_term_c", preheat->steel_term_c, "degC")
      .value("thickness_term_c", preheat->thickness_term_c, "degC")
      .value("hydrogen_term_c", preheat->hydrogen_term_c, "degC")
      .value("heat_term_c", preheat->heat_term_c, "degC")
      .findings(preheat->findings)
      .card(heat::preheat_card())
      .done();
}

Answer by_table_c1(Arguments& arguments) {
  arguments.require_positive({"hydrogen", "heat-input", "combined-thickness"});
  require_not_negative(arguments, "cev");
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<heat::TableC1> cell = heat::table_c1(
      {arguments.number("cev"), arguments.number("heat-input"), arguments.number("hydrogen")});
  if (!cell) return cell.error();
  const std::optional<double> combined = arguments.find_number("combined-thickness");
  ResultMaker result("preheat");
  if (combined) {
    result.principal(cell->no_preheat(*combined) ? std::string("none by this table")
                                                 : std::string("consult figure C.2"));
  } else {
    result.principal("none up to " + base::digits_text(cell->largest_combined_mm) +
                     " mm combined thickness");
  }
  result.value("largest_combined_mm", cell->largest_combined_mm, "mm");
  return result.value("listed_cev", cell->listed_cev, "mass-%")
      .value("listed_heat_input_kj_mm", cell->listed_heat_input_kj_mm, "kJ/mm")
      .value("hydrogen_band", std::string(1, cell->hydrogen_letter) + ": " + cell->hydrogen_band)
      .card(heat::table_c1_card())
      .done();
}

Answer by_aws_category(Arguments& arguments) {
  arguments.require_positive({"thickness", "hydrogen"});
  const std::size_t category = arguments.choice("category", {"A", "B", "C", "D"});
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<heat::AwsCategoryPreheat> preheat =
      heat::aws_category_preheat({static_cast<char>('A' + category),
                                  arguments.number("thickness"),
                                  arguments.find_number("hydrogen")});
  if (!preheat) return preheat.error();
  return ResultMaker("preheat")
      .principal(preheat->preheat_c, "degC")
      .value("preheat_f", preheat->preheat_f, "degF")
      .value("band", preheat->band)
      .value("cold_plate",
             preheat->heats_cold_plate ? std::string("below 0 degC: warm to 20 degC, from memory")
                                       : std::string("heated anyway"))
      .value("status_of_degc", std::string(base::status_name(preheat->status_c)))
      .card(heat::aws_category_card())
      .done();
}

Answer by_aws_hydrogen(Arguments& arguments) {
  arguments.require_positive({"thickness", "hydrogen"});
  require_not_negative(arguments, "pcm");
  const std::size_t restraint = arguments.choice("restraint", {"low", "medium", "high"});
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<heat::AwsHydrogenPreheat> preheat =
      heat::aws_hydrogen_preheat({arguments.number("pcm"),
                                  arguments.number("hydrogen"),
                                  static_cast<joint::Restraint>(restraint),
                                  arguments.number("thickness")});
  if (!preheat) return preheat.error();
  return ResultMaker("preheat")
      .principal(preheat->preheat_c, "degC")
      .value("unconfirmed", std::string("shown, never governing"))
      .value("preheat_f", preheat->preheat_f, "degF")
      .value("asks_less_than_shown", std::string(preheat->below_room ? "yes" : "no"))
      .value("letter", std::string(1, preheat->letter))
      .value("table_letter", std::string(1, preheat->table_letter))
      .value("index_letter", std::string(1, preheat->index_letter))
      .value("hydrogen_level", "H" + std::to_string(preheat->hydrogen_level))
      .value("susceptibility", preheat->susceptibility, "")
      .value("band", preheat->band)
      .findings(preheat->findings)
      .card(heat::aws_hydrogen_card())
      .done();
}

Answer by_ito_bessyo(Arguments& arguments) {
  arguments.require_positive({"thickness", "hydrogen", "hydrogen-glycerine", "heat-input"});
  require_not_negative(arguments, "pcm");
  if (arguments.has("hydrogen") == arguments.has("hydrogen-glycerine")) {
    arguments.add_usage(
        "exactly one of hydrogen-glycerine= (1 to 5 ml/100 g) and hydrogen= (ISO 3690, to be "
        "converted) goes with method=ito-bessyo");
  }
  if (!arguments.good()) return FigureResult{};
  double glycerine = arguments.number("hydrogen-glycerine");
  if (const std::optional<double> iso = arguments.find_number("hydrogen")) {
    const base::Outcome<double> converted = heat::glycerine_hydrogen_ml_100g(*iso);
    if (!converted) return converted.error();
    glycerine = *converted;
  }
  const base::Outcome<heat::ItoBessyo> preheat =
      heat::preheat_ito_bessyo({arguments.number("pcm"),
                                glycerine,
                                arguments.number("thickness"),
                                arguments.number("heat-input")});
  if (!preheat) return preheat.error();
  return ResultMaker("preheat")
      .principal(preheat->preheat_c, "degC")
      .in_words(heating_in_words(preheat->preheat_c))
      .value("pc", preheat->pc, "mass-%")
      .value("hydrogen_glycerine_ml_100g", glycerine, "ml/100 g")
      .findings(preheat->findings)
      .card(heat::ito_bessyo_card())
      .done();
}

struct Method {
  std::string_view name;
  const base::FigureCard& (*card)();
  Answer (*answer)(Arguments&);
};
constexpr Method methods[] = {
    {"cet", heat::preheat_card, by_cet},
    {"table-c1", heat::table_c1_card, by_table_c1},
    {"aws-category", heat::aws_category_card, by_aws_category},
    {"aws-hydrogen", heat::aws_hydrogen_card, by_aws_hydrogen},
    {"ito-bessyo", heat::ito_bessyo_card, by_ito_bessyo},
};

}  // namespace

Answer preheat_figure(Arguments& arguments) {
  std::vector<std::string_view> names;
  for (const Method& method : methods) names.push_back(method.name);
  const Method& method = methods[arguments.choice("method", names)];
  if (!arguments.good()) return FigureResult{};
  check_keys(arguments, method.card(), std::string(method.name));
  if (!arguments.usage().empty()) return FigureResult{};
  return method.answer(arguments);
}

const base::FigureCard& preheat_methods_card() {
  static const FigureKey keys[] = {
      {"method",
       Dimension::none,
       "which method",
       "cet, table-c1, aws-category, aws-hydrogen or ito-bessyo",
       true,
       true},
      {"cet", Dimension::none, "cet: CET of plate or weld metal + 0.03", "0.2 to 0.5 %", false},
      {"cev", Dimension::none, "table-c1: CE(IIW)", "up to 0.49 %", false},
      {"pcm", Dimension::none, "aws-hydrogen, ito-bessyo: Pcm", "below 0.38 %", false},
      {"category", Dimension::none, "aws-category", "A, B, C or D", false, true},
      {"thickness",
       Dimension::length,
       "all but table-c1: single thickness of the thickest part",
       "cet 10 to 90 mm, aws-category from 3 mm, ito-bessyo 19 to 50 mm",
       false},
      {"combined-thickness",
       Dimension::length,
       "table-c1: sum of the heat paths, to be compared",
       "> 0",
       false},
      {"hydrogen",
       Dimension::none,
       "diffusible hydrogen of the deposited metal, ISO 3690",
       "cet 1 to 20 ml/100 g, aws-category D up to 8, else > 0",
       false},
      {"hydrogen-glycerine",
       Dimension::none,
       "ito-bessyo: hydrogen by the glycerine method, in place of hydrogen=",
       "1 to 5 ml/100 g",
       false},
      {"heat-input",
       Dimension::heat_input,
       "cet, table-c1, ito-bessyo: lowest heat input the joint may see",
       "cet 0.5 to 4, table-c1 from 1, ito-bessyo 1.7 to 3 kJ/mm",
       false},
      {"restraint", Dimension::none, "aws-hydrogen", "low, medium or high", false, true},
  };
  static const base::Citation sources[] = {
      {"EN 1011-2", "2001, C.3: cet", base::Status::from_memory},
      {"EN-C1", "table C.1: table-c1", base::Status::verified},
      {"D11-33", "A, B: aws-category", base::Status::verified},
      {"D11-CD", "C, D: aws-category", base::Status::verified},
      {"AWS D1.1", "annex: aws-hydrogen, unconfirmed", base::Status::from_memory},
      {"ITO", "ito-bessyo", base::Status::verified},
  };
  static const base::FigureCard card{
      "preheat",
      "lowest plate temperature against hydrogen cracking before each pass, by a named method",
      "per method, printed with the result",
      "degC",
      "per method, printed with the result. Methods are not interchangeable and never averaged; "
      "the "
      "one agreed for the work governs, and the steel maker's own higher value",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::figures::detail
