// SPDX-License-Identifier: MIT
#include "seamturn/tack/tack_rules.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"
#include "seamturn/joint/groove_size.hpp"

namespace seamturn::tack {

namespace {

using base::digits_text;
using base::Status;

constexpr double thin_below_mm = 12.0;  // [EN 1011-2] clause 13

// [EN 1993-1-8] table 4.1, FROM MEMORY: up to this yield, this factor.
struct BetaRow {
  double yield_mpa;
  double beta_w;
};
constexpr BetaRow beta_rows[] = {{235.0, 0.80}, {275.0, 0.85}, {355.0, 0.90}, {460.0, 1.00}};

bool is_at_least(const RuleValue& rule, double least) {
  return std::isfinite(rule.value) && rule.value >= least;
}
bool is_above_zero(const RuleValue& rule) {
  return is_at_least(rule, 0.0) && rule.value > 0.0;
}

/// The less sure of two: proposed below common practice below memory below what was read.
Status weaker(Status a, Status b) {
  const auto rank = [](Status status) {
    switch (status) {
      case Status::proposed:
        return 0;
      case Status::common_practice:
        return 1;
      case Status::from_memory:
        return 2;
      case Status::computed:
        return 3;
      case Status::verified:
        return 4;
    }
    return 0;
  };
  return rank(b) < rank(a) ? b : a;
}

std::string said(const RuleValue& rule) {
  return rule.source + ", " + std::string(base::status_name(rule.status));
}

}  // namespace

bool are_rules(const TackRules& rules) {
  const bool lengths = is_above_zero(rules.length_min_mm) && is_above_zero(rules.length_factor) &&
                       is_at_least(rules.long_factor, 1.0) && is_above_zero(rules.pitch_mm) &&
                       is_at_least(rules.clear_of_ends_mm, 0.0) &&
                       is_at_least(rules.gap_max_mm, 0.0);
  return lengths && (!rules.throat_mm || is_above_zero(*rules.throat_mm)) &&
         (!rules.stress_mpa || is_above_zero(*rules.stress_mpa)) &&
         is_at_least(rules.gamma_m2, 1.0);
}

TackLength tack_length(double thicker_mm, double yield_mpa, const TackRules& rules) {
  SEAMTURN_REQUIRE(base::is_positive(thicker_mm), thicker_mm);
  SEAMTURN_REQUIRE(base::is_positive(yield_mpa), yield_mpa);
  SEAMTURN_REQUIRE(are_rules(rules));
  TackLength out;
  if (thicker_mm < thin_below_mm) {
    out.length_mm = rules.length_factor.value * thicker_mm;
    out.status = rules.length_factor.status;
    out.why = "thicker part below 12 mm: " + digits_text(rules.length_factor.value) +
              " times it (" + said(rules.length_factor) + ")";
  } else {
    out.length_mm = rules.length_min_mm.value;
    out.status = rules.length_min_mm.status;
    out.why = "at least " + digits_text(out.length_mm) + " mm (" + said(rules.length_min_mm) + ")";
  }
  if (!joint::needs_two_run_tacks(thicker_mm, yield_mpa)) return out;
  out.length_mm *= rules.long_factor.value;
  out.runs = 2;
  out.status = weaker(out.status, rules.long_factor.status);
  out.why +=
      "; above 50 mm or 500 MPa longer and of two runs (EN 1011-2:2001 clause 13, quoted by "
      "TACK-PAGE), " +
      digits_text(rules.long_factor.value) + " times as long (" + said(rules.long_factor) + ")";
  return out;
}

double fillet_throat_mm(double area_mm2, Angle between_plates) {
  SEAMTURN_REQUIRE(base::is_positive(area_mm2), area_mm2);
  const double half_rad = 0.5 * between_plates.rad();
  SEAMTURN_REQUIRE(half_rad > 0.0 && half_rad < 0.5 * std::numbers::pi, between_plates.deg());
  return std::sqrt(area_mm2 / std::tan(half_rad));
}

double remembered_ultimate_mpa(double yield_mpa) {
  SEAMTURN_REQUIRE(yield_mpa > 0.0, yield_mpa);
  struct Grade {
    double yield_mpa;
    double ultimate_mpa;
  };
  constexpr std::array<Grade, 5> grades = {
      {{235.0, 360.0}, {275.0, 410.0}, {355.0, 470.0}, {420.0, 500.0}, {460.0, 530.0}}};
  double ultimate_mpa = 1.5 * yield_mpa;
  for (const Grade& grade : grades) {
    if (yield_mpa >= grade.yield_mpa) ultimate_mpa = grade.ultimate_mpa;
  }
  return std::max(ultimate_mpa, yield_mpa);
}

base::Outcome<PermittedStress> permitted_stress(double ultimate_mpa,
                                                double yield_mpa,
                                                const TackRules& rules) {
  SEAMTURN_REQUIRE(base::is_positive(yield_mpa), yield_mpa);
  SEAMTURN_REQUIRE(std::isfinite(ultimate_mpa) && ultimate_mpa >= yield_mpa, ultimate_mpa);
  SEAMTURN_REQUIRE(are_rules(rules));
  if (rules.stress_mpa) {
    return PermittedStress{rules.stress_mpa->value,
                           std::nullopt,
                           rules.stress_mpa->status,
                           "stated (" + said(*rules.stress_mpa) + ")"};
  }
  for (const BetaRow& row : beta_rows) {
    if (yield_mpa > row.yield_mpa) continue;
    return PermittedStress{ultimate_mpa / (std::numbers::sqrt3 * row.beta_w * rules.gamma_m2.value),
                           row.beta_w,
                           weaker(Status::from_memory, rules.gamma_m2.status),
                           "fu / (sqrt 3 beta_w gamma_M2), beta_w " + digits_text(row.beta_w) +
                               ", gamma_M2 " + digits_text(rules.gamma_m2.value) +
                               " (EN 1993-1-8:2005 4.5.3.3, from memory)"};
  }
  return base::Refusal{"tack.stress.no_factor",
                       "yield " + digits_text(yield_mpa) +
                           " MPa: the table of correlation factors ends at 460 MPa; state the "
                           "stress tacks may see, agreed with the responsible welding coordinator"};
}

}  // namespace seamturn::tack
