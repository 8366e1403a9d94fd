// SPDX-License-Identifier: MIT
#include "seamturn/heat/hardness.hpp"

#include <algorithm>
#include <cmath>

#include "detail_checks.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::heat {

namespace {

using base::Citation;
using base::Dimension;
using base::FigureKey;
using base::Severity;
using base::Status;
using material::Composition;

// All three: [HAZ-HARDNESS], coefficients FROM MEMORY. log10 where "decades" is said.

double dueren_hv(const Composition& m, double decades) {
  const double alloy = m.si / 11 + m.mn / 8 + m.cu / 9 + m.cr / 5 + m.ni / 17 + m.mo / 6 + m.v / 3;
  const double martensite = 802 * m.c + 305;
  const double bainite = 350 * (m.c + alloy) + 101;
  const double mixed = 2019 * ((1 - 0.5 * decades) * m.c + 0.3 * alloy) + 66 * (1 - 0.8 * decades);
  return std::clamp(mixed, bainite, std::max(bainite, martensite));
}

/// How far boron hardens: steps of the boron content, less where nitrogen binds it.
double boron_term(const Composition& m) {
  const double ppm = m.b * 1e4 - 1e-9;  // 0.0003 % is 3 ppm, however it is rounded
  const double free = std::max(0.0, (0.02 - m.n) / 0.02);
  if (ppm <= 1.0) return 0.0;
  if (ppm <= 2.0) return 0.03 * free;
  return (ppm <= 3.0 ? 0.06 : 0.09) * free;
}

double yurioka_hv(const Composition& m, double t85_s) {
  const double cp = m.c <= 0.3 ? m.c : 0.25 + m.c / 6;
  const double ce1 = cp + m.si / 24 + m.mn / 6 + m.cu / 15 + m.ni / 12 +
                     m.cr * (1 - 0.16 * std::sqrt(m.cr)) / 8 + m.mo / 4 + boron_term(m);
  const double ce2 = m.c + m.si / 24 + m.mn / 5 + m.cu / 10 + m.ni / 18 + m.cr / 5 + m.mo / 2.5 +
                     m.v / 5 + m.nb / 3;
  const double ce3 = cp + m.mn / 3.6 + m.cu / 20 + m.ni / 9 + m.cr / 5 + m.mo / 4;
  const double log_martensite_s = 10.6 * ce1 - 4.8;
  const double log_bainite_s = 6.2 * ce3 + 0.74;
  const double martensite = 884 * m.c * (1 - 0.3 * m.c * m.c) + 294;
  const double bainite = 145 + 130 * std::tanh(2.65 * ce2 - 0.69);
  const double place =
      4 * (std::log(t85_s) - log_martensite_s) / (log_bainite_s - log_martensite_s) - 2;
  return (martensite + bainite) / 2 - (martensite - bainite) / 2.2 * std::atan(place);
}

double suzuki_hv(const Composition& m, double decades) {
  const double pcm =
      m.c + m.si / 30 + (m.mn + m.cu + m.cr) / 20 + m.ni / 60 + m.mo / 15 + m.v / 10 + 5 * m.b;
  const double drop = 237 + 1633 * m.c - 1157 * pcm;
  const double slow = 884 * m.c + 287 - drop;
  const double steepness = (566 + 5532 * m.c - 2880 * pcm) / drop;
  const double middle = -0.03 - 6 * m.c + 7.77 * pcm;
  return slow + drop / (1 + std::exp(steepness * (decades - middle)));
}

bool are_contents(const Composition& m) {
  const double all[] = {
      m.c, m.si, m.mn, m.p, m.s, m.cr, m.mo, m.v, m.ni, m.cu, m.nb, m.ti, m.al, m.b, m.n};
  return std::all_of(std::begin(all), std::end(all), [](double content) {
    return base::is_amount(content) && content <= 100.0;
  });
}

/// A formula fits while steel is softer the slower it cooled, and hardness is that of a steel.
bool fits(const Composition& m, double hv, double faster_hv) {
  return base::is_positive(hv) && hv <= 884 * m.c + 400 && faster_hv >= hv - 1e-9;
}

}  // namespace

base::Outcome<Hardness> hardness(const HardnessParams& params) {
  const Composition& m = params.composition;
  SEAMTURN_REQUIRE(are_contents(m), m.c, m.si, m.mn);
  SEAMTURN_REQUIRE(base::is_positive(params.t85_s), params.t85_s);
  if (m.c > hardness_carbon_limit_percent) {
    return base::Refusal{"heat.hardness.carbon",
                         "carbon " + base::digits_text(m.c) +
                             " % is above 0.8 %: no hardness formula held here speaks about it"};
  }
  const double decades = std::log10(params.t85_s);
  const double faster = decades - 0.1, faster_s = std::pow(10.0, faster);
  Hardness out;
  out.dueren_hv = dueren_hv(m, decades);
  out.yurioka_hv = yurioka_hv(m, params.t85_s);
  out.suzuki_hv = suzuki_hv(m, decades);
  if (!fits(m, out.dueren_hv, dueren_hv(m, faster)) ||
      !fits(m, out.yurioka_hv, yurioka_hv(m, faster_s)) ||
      !fits(m, out.suzuki_hv, suzuki_hv(m, faster))) {
    return base::Refusal{"heat.hardness.no_fit",
                         "for this analysis a hardness formula gives a steel that hardens the "
                         "slower it cools, or no steel at all; weld and measure a trial plate"};
  }
  out.lowest_hv = std::min({out.dueren_hv, out.yurioka_hv, out.suzuki_hv});
  out.highest_hv = std::max({out.dueren_hv, out.yurioka_hv, out.suzuki_hv});
  const detail::RangeWatch watch(
      out.findings,
      "heat.hardness.out_of_range",
      ", where the hardness estimate is offered; weld and measure a trial plate");
  watch.check("carbon", m.c, hardness_carbon_percent, "%");
  watch.check("t8/5", params.t85_s, hardness_t85_s, "s");
  return out;
}

const base::FigureCard& hardness_card() {
  static const FigureKey keys[] = {
      {"t85", Dimension::time, "cooling time from 800 to 500 degC", "2 to 100 s"},
      {"C", Dimension::none, "carbon", "0.04 to 0.30 %, bare number; refused above 0.8"},
      {"Si", Dimension::none, "silicon", "%, bare number", false},
      {"Mn", Dimension::none, "manganese", "%, bare number", false},
      {"Cr", Dimension::none, "chromium", "%, bare number", false},
      {"Mo", Dimension::none, "molybdenum", "%, bare number", false},
      {"V", Dimension::none, "vanadium", "%, bare number", false},
      {"Ni", Dimension::none, "nickel", "%, bare number", false},
      {"Cu", Dimension::none, "copper", "%, bare number", false},
      {"Nb", Dimension::none, "niobium", "%, bare number", false},
      {"B", Dimension::none, "boron", "%, bare number", false},
      {"N", Dimension::none, "nitrogen", "%, bare number", false},
  };
  static const Citation sources[] = {
      {"HAZ-HARDNESS", "Dueren and Lorenz, Yurioka 1987, Suzuki: formulas", Status::from_memory},
      {"TWI-HV", "standard deviation of the best of twelve methods, 28 HV", Status::verified},
  };
  static const base::FigureCard card{
      "hardness",
      "hardness of the heat-affected zone: an ESTIMATE by three formulas, lowest and highest",
      "Dueren and Lorenz, Yurioka 1987, Suzuki, each from analysis and t8/5; see "
      "docs/methods/hardness.md",
      "HV",
      "carbon 0.04 to 0.30 %, t8/5 2 to 100 s (project choice); outside: warned about; above 0.8 % "
      "carbon: refused. Scatter +-56 HV around each at best. No proof: hardness tests of the "
      "procedure test decide",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::heat
