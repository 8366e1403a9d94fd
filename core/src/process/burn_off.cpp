// SPDX-License-Identifier: MIT
#include "seamturn/process/burn_off.hpp"

#include <algorithm>
#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"
#include "seamturn/process/deposit.hpp"
#include "seamturn/process/wire_kind.hpp"

namespace seamturn::process {

namespace {

using base::Refusal;

using base::mm_per_m;
using base::s_per_h;
// From memory, 1.2 mm solid steel wire: v [mm/s] = 0.30 I + 5.0e-5 L I2.
constexpr double remembered_diameter_mm = 1.2;
constexpr double remembered_arc_mm_s_a = 0.30;
constexpr double remembered_resistive_per_s_a2 = 5.0e-5;
constexpr double thinnest_mm = 1.0;
constexpr double thickest_mm = 1.6;
constexpr double least_apart_ratio = 0.10;
constexpr double extension_off_ratio = 0.20;

// Currents of solid wire, from memory of a catalogue: 1.0, 1.2, 1.6 mm.
struct CurrentRange {
  double diameter_mm, min_a, max_a;
};
constexpr CurrentRange remembered_currents[] = {
    {1.0, 80.0, 300.0}, {1.2, 120.0, 380.0}, {1.6, 225.0, 550.0}};

CurrentRange currents_of(double diameter_mm) {
  const CurrentRange* from = &remembered_currents[0];
  const CurrentRange* to = &remembered_currents[1];
  if (diameter_mm > to->diameter_mm) {
    from = to;
    to = &remembered_currents[2];
  }
  const double share = (diameter_mm - from->diameter_mm) / (to->diameter_mm - from->diameter_mm);
  return {diameter_mm,
          from->min_a + share * (to->min_a - from->min_a),
          from->max_a + share * (to->max_a - from->max_a)};
}

double melt_off_kg_h(double linear_mass_kg_m, double feed_mm_s) {
  return linear_mass_kg_m * feed_mm_s / mm_per_m * s_per_h;
}

double feed_mm_s(const BurnOffLaw& law, double melted_kg_h) {
  return melted_kg_h / s_per_h * mm_per_m / law.linear_mass_kg_m;
}

std::string amperes(double current_a) {
  return base::digits_text(current_a) + " A";
}

Refusal trial_refusal(const std::string& what) {
  return Refusal{"process.burn_off.trial",
                 "the two trial points fix no burn-off law: " + what +
                     ". Weld two points far apart with the same wire, gas and tip distance"};
}

std::string covered_text(const BurnOffLaw& law) {
  return amperes(law.current_min_a) + " to " + amperes(law.current_max_a) +
         (law.trial_extension_mm > 0.0 ? ", the trial" : ", remembered for this diameter");
}

/// The refusal when a current lies too far out; a warning into `findings` when a little.
std::optional<Refusal> judge_current(const BurnOffLaw& law,
                                     double current_a,
                                     double extrapolation_ratio,
                                     std::vector<base::Finding>& findings) {
  const double slack = 1e-9 * current_a;
  if (current_a >= law.current_min_a - slack && current_a <= law.current_max_a + slack) {
    return std::nullopt;
  }
  if (current_a < law.current_min_a * (1.0 - extrapolation_ratio) - slack ||
      current_a > law.current_max_a * (1.0 + extrapolation_ratio) + slack) {
    return Refusal{"process.burn_off.out_of_range",
                   amperes(current_a) + " lies more than " +
                       base::digits_text(100.0 * extrapolation_ratio) +
                       " % beyond the currents covered (" + covered_text(law) +
                       "): transfer of metal may change there. Weld a trial point nearer"};
  }
  findings.push_back(base::Finding{base::Severity::warning,
                                   "process.burn_off.extrapolated",
                                   amperes(current_a) + " lies beyond the currents covered (" +
                                       covered_text(law) + "); the value is an extrapolation",
                                   {},
                                   {}});
  return std::nullopt;
}

void judge_extension(const BurnOffLaw& law,
                     double extension_mm,
                     std::vector<base::Finding>& findings) {
  if (law.trial_extension_mm <= 0.0) return;
  const double off = std::abs(extension_mm - law.trial_extension_mm);
  if (off <= extension_off_ratio * law.trial_extension_mm * (1.0 + 1e-9)) return;
  findings.push_back(base::Finding{base::Severity::warning,
                                   "process.burn_off.extension",
                                   "free length " + base::digits_text(extension_mm) +
                                       " mm, the trial had " +
                                       base::digits_text(law.trial_extension_mm) +
                                       " mm: more than a fifth off. Weld a trial at this length",
                                   {},
                                   {}});
}

void require_use(const BurnOffLaw& law, double extension_mm, double value, double ratio) {
  SEAMTURN_REQUIRE(base::is_positive(law.linear_mass_kg_m) && base::is_positive(law.a_kg_h_a) &&
                       base::is_amount(law.b_kg_h_a2_mm),
                   law.linear_mass_kg_m,
                   law.a_kg_h_a,
                   law.b_kg_h_a2_mm);
  SEAMTURN_REQUIRE(
      base::is_positive(extension_mm) && base::is_positive(value), extension_mm, value);
  SEAMTURN_REQUIRE(ratio >= 0.0 && ratio < 1.0, ratio);
}

}  // namespace

base::Outcome<BurnOffLaw> remembered_burn_off(const Wire& wire) {
  SEAMTURN_REQUIRE(base::is_positive(wire.diameter_mm), wire.diameter_mm);
  const std::optional<WireKind> kind = find_wire_kind(wire.process);
  if ((kind && is_cored(*kind)) || wire.linear_mass_kg_m) {
    return Refusal{"process.burn_off.cored",
                   "there are no coefficients for cored wire: give two trial points"};
  }
  if (wire.diameter_mm < thinnest_mm || wire.diameter_mm > thickest_mm) {
    return Refusal{"process.burn_off.diameter",
                   "wire " + base::digits_text(wire.diameter_mm) +
                       " mm: the remembered coefficients are scaled from 1.2 mm and hold from 1.0 "
                       "to 1.6 mm. Give two trial points"};
  }
  const double per_feed = melt_off_kg_h(wire_linear_mass_kg_m(wire), 1.0);
  // In mass units a stays and b falls with the square of the diameter; both are per 1.2 mm wire.
  const double thinner = remembered_diameter_mm / wire.diameter_mm;
  const CurrentRange currents = currents_of(wire.diameter_mm);
  BurnOffLaw law;
  law.linear_mass_kg_m = wire_linear_mass_kg_m(wire);
  law.a_kg_h_a = remembered_arc_mm_s_a * per_feed * thinner * thinner;
  law.b_kg_h_a2_mm = remembered_resistive_per_s_a2 * per_feed * std::pow(thinner, 4);
  law.current_min_a = currents.min_a;
  law.current_max_a = currents.max_a;
  law.citation = {"BURN-OFF", "pulsed welding, 1.2 mm", base::Status::from_memory};
  return law;
}

base::Outcome<BurnOffLaw> fit_burn_off(const Wire& wire,
                                       const TrialPoint& one,
                                       const TrialPoint& other,
                                       double extension_mm) {
  for (const double value :
       {one.current_a, one.feed_mm_s, other.current_a, other.feed_mm_s, extension_mm}) {
    SEAMTURN_REQUIRE(std::isfinite(value), value);
    if (!(value > 0.0)) return trial_refusal("every current, feed and length is above zero");
  }
  const base::Outcome<double> mass_kg_m = find_linear_mass_kg_m(wire);
  if (!mass_kg_m) return mass_kg_m.error();
  const TrialPoint& low = one.current_a < other.current_a ? one : other;
  const TrialPoint& high = one.current_a < other.current_a ? other : one;
  if (high.current_a - low.current_a < least_apart_ratio * high.current_a) {
    return trial_refusal(amperes(low.current_a) + " and " + amperes(high.current_a) +
                         " lie less than 10 % apart");
  }
  const double low_kg_h_a = melt_off_kg_h(*mass_kg_m, low.feed_mm_s) / low.current_a;
  const double high_kg_h_a = melt_off_kg_h(*mass_kg_m, high.feed_mm_s) / high.current_a;
  const double slope = (high_kg_h_a - low_kg_h_a) / (high.current_a - low.current_a);
  if (slope < 0.0) return trial_refusal("the feed per ampere falls as the current rises");
  const double arc = low_kg_h_a - slope * low.current_a;
  if (!(arc > 0.0)) return trial_refusal("nothing would be melted by the arc itself");
  BurnOffLaw law;
  law.a_kg_h_a = arc;
  law.b_kg_h_a2_mm = slope / extension_mm;
  law.linear_mass_kg_m = *mass_kg_m;
  law.current_min_a = low.current_a;
  law.current_max_a = high.current_a;
  law.trial_extension_mm = extension_mm;
  law.citation = {"BURN-OFF", "fitted to two trial points", base::Status::computed};
  return law;
}

base::Outcome<BurnOff> burn_off_at_current(const BurnOffLaw& law,
                                           double extension_mm,
                                           double current_a,
                                           double extrapolation_ratio) {
  require_use(law, extension_mm, current_a, extrapolation_ratio);
  BurnOff result;
  if (const auto refusal = judge_current(law, current_a, extrapolation_ratio, result.findings)) {
    return *refusal;
  }
  judge_extension(law, extension_mm, result.findings);
  result.current_a = current_a;
  result.melt_off_kg_h =
      law.a_kg_h_a * current_a + law.b_kg_h_a2_mm * extension_mm * current_a * current_a;
  result.feed_mm_s = feed_mm_s(law, result.melt_off_kg_h);
  return result;
}

base::Outcome<BurnOff> burn_off_at_feed(const BurnOffLaw& law,
                                        double extension_mm,
                                        double feed_mm_s,
                                        double extrapolation_ratio) {
  require_use(law, extension_mm, feed_mm_s, extrapolation_ratio);
  const double melted_kg_h = melt_off_kg_h(law.linear_mass_kg_m, feed_mm_s);
  const double resistive = law.b_kg_h_a2_mm * extension_mm;
  // 2 MR / (a + sqrt(a2 + 4 b L MR)): the same root as the school form, and good for b = 0.
  const double current_a =
      2.0 * melted_kg_h /
      (law.a_kg_h_a + std::sqrt(law.a_kg_h_a * law.a_kg_h_a + 4.0 * resistive * melted_kg_h));
  return burn_off_at_current(law, extension_mm, current_a, extrapolation_ratio);
}

const base::FigureCard& burn_off_card() {
  using base::Dimension;
  using base::FigureKey;
  using base::Status;
  static const FigureKey keys[] = {
      {"wire", Dimension::length, "diameter of the wire", "> 0; without trial 1.0 to 1.6 mm"},
      {"extension", Dimension::length, "free length of wire, tip to arc", "> 0"},
      {"current",
       Dimension::current,
       "welding current; gives the feed",
       "one of current, feed",
       false},
      {"feed", Dimension::speed, "wire feed; gives the current", "one of current, feed", false},
      {"current-1",
       Dimension::current,
       "first trial point",
       "all four of the trial or none",
       false},
      {"feed-1", Dimension::speed, "first trial point", "> 0", false},
      {"current-2", Dimension::current, "second trial point", "10 % or more apart", false},
      {"feed-2", Dimension::speed, "second trial point", "> 0", false},
      {"trial-length", Dimension::length, "free length of the trial", "absent: extension", false},
      {"linear-mass", Dimension::linear_mass, "mass of a metre", "> 0; cored wire needs it", false},
      {"extrapolation",
       Dimension::ratio,
       "permitted beyond the currents covered",
       "0 up to below 1, absent 10 %",
       false},
  };
  static const base::Citation sources[] = {
      {"BURN-OFF", "form and, without trial, coefficients", Status::from_memory},
      {"MCW", "two-point fits predict the sheet's other points within 4 %", Status::verified},
  };
  static const base::FigureCard card{
      "burn-off",
      "wire feed for a current, or the current for a feed",
      "melt-off = a I + b L I2; two trial points fix both: b L = (M2/I2 - M1/I1) / (I2 - I1), a = "
      "M1/I1 - b L I1. Without trial a = 9.59e-3 kg/(h A), b = 1.60e-6 kg/(h A2 mm) at 1.2 mm",
      "m/min",
      "one wire, gas and transfer of metal; 10 % beyond the currents covered, then refused. With "
      "feed= "
      "the value is the current in A",
      keys,
      sources};
  return card;
}

}  // namespace seamturn::process
