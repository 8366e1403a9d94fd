// SPDX-License-Identifier: MIT
#include "seamturn/material/carbon_equivalent.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <span>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::material {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Finding;
using base::shortest_text;
using base::Status;

using Content = double Composition::*;

/// One alloying element: content x weight.
struct Term {
  Content content;
  double weight;
};

/// Where an element may lie, mass-%.
struct ElementRange {
  std::string_view symbol;
  Content content;
  double low;
  double high;
};

struct ResultRange {
  double low;
  double high;
};

struct Formula {
  std::string_view name;   ///< on the command line
  std::string_view title;  ///< in messages
  std::span<const Term> terms;
  std::span<const ElementRange> ranges;
  std::string_view range_source;
  std::optional<ResultRange> result;
};

using K = Composition;

// Formulas and ranges with their sources: docs/methods/carbon-equivalent.md.
constexpr Term iiw_terms[] = {{&K::mn, 1.0 / 6.0},
                              {&K::cr, 1.0 / 5.0},
                              {&K::mo, 1.0 / 5.0},
                              {&K::v, 1.0 / 5.0},
                              {&K::ni, 1.0 / 15.0},
                              {&K::cu, 1.0 / 15.0}};
constexpr Term cet_terms[] = {{&K::mn, 1.0 / 10.0},
                              {&K::mo, 1.0 / 10.0},
                              {&K::cr, 1.0 / 20.0},
                              {&K::cu, 1.0 / 20.0},
                              {&K::ni, 1.0 / 40.0}};
constexpr Term pcm_terms[] = {{&K::si, 1.0 / 30.0},
                              {&K::mn, 1.0 / 20.0},
                              {&K::cu, 1.0 / 20.0},
                              {&K::cr, 1.0 / 20.0},
                              {&K::ni, 1.0 / 60.0},
                              {&K::mo, 1.0 / 15.0},
                              {&K::v, 1.0 / 10.0},
                              {&K::b, 5.0}};
// Weighed with the accommodation factor as a whole.
constexpr Term cen_terms[] = {{&K::si, 1.0 / 24.0},
                              {&K::mn, 1.0 / 6.0},
                              {&K::cu, 1.0 / 15.0},
                              {&K::ni, 1.0 / 20.0},
                              {&K::cr, 1.0 / 5.0},
                              {&K::mo, 1.0 / 5.0},
                              {&K::v, 1.0 / 5.0},
                              {&K::nb, 1.0 / 5.0},
                              {&K::b, 5.0}};
constexpr Term jis_terms[] = {{&K::mn, 1.0 / 6.0},
                              {&K::si, 1.0 / 24.0},
                              {&K::ni, 1.0 / 40.0},
                              {&K::cr, 1.0 / 5.0},
                              {&K::mo, 1.0 / 4.0},
                              {&K::v, 1.0 / 14.0}};

// Carbon stands first in every list: above its range the formula refuses.
constexpr ElementRange iiw_ranges[] = {{"C", &K::c, 0.05, 0.25},
                                       {"Si", &K::si, 0.0, 0.80},
                                       {"Mn", &K::mn, 0.0, 1.70},
                                       {"Cr", &K::cr, 0.0, 0.90},
                                       {"Cu", &K::cu, 0.0, 1.00},
                                       {"Ni", &K::ni, 0.0, 2.50},
                                       {"Mo", &K::mo, 0.0, 0.75},
                                       {"V", &K::v, 0.0, 0.20}};
constexpr ElementRange cet_ranges[] = {{"C", &K::c, 0.05, 0.32},
                                       {"Si", &K::si, 0.0, 0.80},
                                       {"Mn", &K::mn, 0.50, 1.90},
                                       {"Cr", &K::cr, 0.0, 1.50},
                                       {"Cu", &K::cu, 0.0, 0.70},
                                       {"Ni", &K::ni, 0.0, 2.50},
                                       {"Mo", &K::mo, 0.0, 0.75},
                                       {"V", &K::v, 0.0, 0.18},
                                       {"Nb", &K::nb, 0.0, 0.06},
                                       {"Ti", &K::ti, 0.0, 0.12},
                                       {"B", &K::b, 0.0, 0.005}};
constexpr ElementRange pcm_ranges[] = {{"C", &K::c, 0.07, 0.22},
                                       {"Si", &K::si, 0.0, 0.60},
                                       {"Mn", &K::mn, 0.40, 1.40},
                                       {"Cr", &K::cr, 0.0, 1.20},
                                       {"Cu", &K::cu, 0.0, 0.50},
                                       {"Ni", &K::ni, 0.0, 1.20},
                                       {"Mo", &K::mo, 0.0, 0.70},
                                       {"V", &K::v, 0.0, 0.12},
                                       {"Nb", &K::nb, 0.0, 0.04},
                                       {"Ti", &K::ti, 0.0, 0.05},
                                       {"B", &K::b, 0.0, 0.005}};

/// In the order of CarbonFormula.
const Formula formulas[] = {
    {"iiw", "CE(IIW)", iiw_terms, iiw_ranges, "EN 1011-2 method A", ResultRange{0.30, 0.70}},
    {"cet", "CET", cet_terms, cet_ranges, "EN 1011-2 method B", ResultRange{0.20, 0.50}},
    {"pcm", "Pcm", pcm_terms, pcm_ranges, "Ito and Bessyo", std::nullopt},
    {"cen", "CEN", cen_terms, {}, "", std::nullopt},
    {"jis", "Ceq (JIS)", jis_terms, {}, "", std::nullopt},
};

const Formula& formula_of(CarbonFormula formula) {
  const std::size_t index = static_cast<std::size_t>(formula);
  SEAMTURN_REQUIRE(index < std::size(formulas), index);
  return formulas[index];
}

void require_contents(const Composition& k) {
  for (const double content :
       {k.c, k.si, k.mn, k.p, k.s, k.cr, k.mo, k.v, k.ni, k.cu, k.nb, k.ti, k.al, k.b, k.n}) {
    SEAMTURN_REQUIRE(base::is_amount(content) && content <= 100.0, content);
  }
}

std::string range_text(double low, double high) {
  return low > 0.0 ? shortest_text(low) + " to " + shortest_text(high) + " %"
                   : "0 to " + shortest_text(high) + " %";
}

double evaluate(CarbonFormula formula, const Composition& composition) {
  double alloying = 0.0;
  for (const Term& term : formula_of(formula).terms) {
    alloying += term.weight * (composition.*term.content);
  }
  const double share =
      formula == CarbonFormula::cen ? accommodation_factor_ratio(composition.c) : 1.0;
  return composition.c + share * alloying;
}

std::vector<Finding> element_findings(const Formula& formula, const Composition& composition) {
  std::vector<Finding> findings;
  for (const ElementRange& range : formula.ranges) {
    const double content = composition.*range.content;
    if (content >= range.low && content <= range.high) continue;
    findings.push_back(
        {base::Severity::warning,
         "material.composition.out_of_range",
         std::string(range.symbol) + " " + base::digits_text(content) + " % lies outside " +
             range_text(range.low, range.high) + ", the range of " + std::string(formula.title) +
             " (" + std::string(formula.range_source) +
             ", from memory); check the analysis, and let the welding coordinator judge the value",
         {},
         {}});
  }
  return findings;
}

base::Refusal carbon_refusal(const Formula& formula, double carbon_percent) {
  const ElementRange& range = formula.ranges.front();
  return {"material.carbon.out_of_range",
          "C " + base::digits_text(carbon_percent) + " % lies above " +
              range_text(range.low, range.high) + ", the range of " + std::string(formula.title) +
              " (" + std::string(formula.range_source) +
              ", from memory): the number would mislead; CET reaches up to 0.32 % C, a steel above "
              "that needs its maker's welding instructions"};
}

double weight_in(std::span<const Term> terms, Content content) {
  for (const Term& term : terms) {
    if (term.content == content) return term.weight;
  }
  return content == &Composition::c ? 1.0 : 0.0;
}

/// What a cap on CE(IIW) leaves of a composition, dearest first for one formula.
Composition worst_below_cap(CarbonFormula formula, const Composition& limits, double cap) {
  std::vector<Term> worth = {{&Composition::c, 1.0}};
  const bool carbon_first = formula == CarbonFormula::cen;
  if (carbon_first) worth.front().weight = std::numeric_limits<double>::infinity();
  const std::span<const Term> terms = formula_of(formula).terms;
  for (const Term& cost : iiw_terms) {
    worth.push_back({cost.content, weight_in(terms, cost.content) / cost.weight});
  }
  std::stable_sort(
      worth.begin(), worth.end(), [](const Term& a, const Term& b) { return a.weight > b.weight; });
  Composition worst = limits;
  double left = cap;
  for (const Term& element : worth) {
    const double cost = weight_in(iiw_terms, element.content);
    worst.*element.content = std::min(limits.*element.content, left / cost);
    left = std::max(0.0, left - cost * (worst.*element.content));
  }
  return worst;
}

}  // namespace

std::string_view formula_name(CarbonFormula formula) {
  return formula_of(formula).name;
}

double accommodation_factor_ratio(double carbon_percent) {
  SEAMTURN_REQUIRE(base::is_amount(carbon_percent) && carbon_percent <= 100.0, carbon_percent);
  return 0.75 + 0.25 * std::tanh(20.0 * (carbon_percent - 0.12));
}

base::Outcome<CarbonEquivalent> carbon_equivalent(CarbonFormula formula,
                                                  const Composition& composition) {
  require_contents(composition);
  const Formula& chosen = formula_of(formula);
  if (!chosen.ranges.empty() && composition.c > chosen.ranges.front().high) {
    return carbon_refusal(chosen, composition.c);
  }
  CarbonEquivalent result;
  result.value = evaluate(formula, composition);
  result.findings = element_findings(chosen, composition);
  if (chosen.result && (result.value < chosen.result->low || result.value > chosen.result->high)) {
    result.findings.push_back({base::Severity::warning,
                               "material.carbon_equivalent.out_of_range",
                               std::string(chosen.title) + " " + base::fixed_text(result.value, 3) +
                                   " % lies outside " +
                                   range_text(chosen.result->low, chosen.result->high) +
                                   ", the range of " + std::string(chosen.range_source) +
                                   " (from memory); do not feed it to the preheat method unseen",
                               {},
                               {}});
  }
  return result;
}

base::Outcome<CarbonEquivalent> highest_carbon_equivalent(CarbonFormula formula,
                                                          const Composition& limits,
                                                          std::optional<double> cev_cap) {
  base::Outcome<CarbonEquivalent> at_limits = carbon_equivalent(formula, limits);
  if (!at_limits || !cev_cap) return at_limits;
  SEAMTURN_REQUIRE(base::is_positive(*cev_cap), *cev_cap);
  return carbon_equivalent(formula, worst_below_cap(formula, limits, *cev_cap));
}

const base::FigureCard& carbon_equivalent_card() {
  static constexpr std::string_view content_range = "0 to 100 mass-%, bare number";
  static const FigureKey keys[] = {
      {"method", Dimension::none, "which formula", "iiw, cet, pcm, cen or jis", true, true},
      {"C", Dimension::none, "carbon", content_range},
      {"Si", Dimension::none, "silicon", content_range, false},
      {"Mn", Dimension::none, "manganese", content_range},
      {"P", Dimension::none, "phosphorus (in none of the formulas)", content_range, false},
      {"S", Dimension::none, "sulphur (in none of the formulas)", content_range, false},
      {"Cr", Dimension::none, "chromium", content_range, false},
      {"Mo", Dimension::none, "molybdenum", content_range, false},
      {"V", Dimension::none, "vanadium", content_range, false},
      {"Ni", Dimension::none, "nickel", content_range, false},
      {"Cu", Dimension::none, "copper", content_range, false},
      {"Nb", Dimension::none, "niobium", content_range, false},
      {"Ti", Dimension::none, "titanium (range check only)", content_range, false},
      {"Al", Dimension::none, "aluminium (in none of the formulas)", content_range, false},
      {"B", Dimension::none, "boron", content_range, false},
      {"N", Dimension::none, "nitrogen (in none of the formulas)", content_range, false},
  };
  static const Citation sources[] = {
      {"DIL", "iiw, cet, pcm: formulas", Status::verified},
      {"JIS-1", "jis: formula; 21 printed heats in [NIMS]", Status::verified},
      {"CSA", "cen: form with the factor f", Status::verified},
      {"EN 1011-2", "2001, C.2 and C.3: element ranges of iiw and cet", Status::from_memory},
      {"YURIOKA", "cen: tanh expression of the factor", Status::from_memory},
  };
  static const base::FigureCard card{
      "carbon-equivalent",
      "how easily a steel hardens beside a weld, as one number",
      "iiw: C + Mn/6 + (Cr+Mo+V)/5 + (Ni+Cu)/15; "
      "cet: C + (Mn+Mo)/10 + (Cr+Cu)/20 + Ni/40; "
      "pcm: C + Si/30 + (Mn+Cu+Cr)/20 + Ni/60 + Mo/15 + V/10 + 5 B; "
      "cen: C + A [Si/24 + Mn/6 + Cu/15 + Ni/20 + (Cr+Mo+V+Nb)/5 + 5 B] with "
      "A = 0.75 + 0.25 tanh(20 (C - 0.12)); "
      "jis: C + Mn/6 + Si/24 + Ni/40 + Cr/5 + Mo/4 + V/14",
      "mass-%",
      "iiw: C 0.05 to 0.25, result 0.30 to 0.70; cet: C 0.05 to 0.32, result 0.20 to 0.50; "
      "pcm: C 0.07 to 0.22; other elements as in docs/methods/carbon-equivalent.md; carbon above "
      "its range is refused, the rest is warned about; cen and jis: no range known. A full "
      "analysis is accepted and unused elements are ignored; an element not given counts as zero. "
      "Use the analysis of the heat, not the limits of the standard",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::material
