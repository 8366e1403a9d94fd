// SPDX-License-Identifier: MIT
#include "seamturn/shrinkage/rules.hpp"

#include <cmath>
#include <string>

#include "detail_checks.hpp"
#include "seamturn/base/angle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::shrinkage {

namespace {

using base::Citation;
using base::Refusal;
using base::Status;

constexpr double newton_per_kilonewton = 1000.0;
constexpr double force_kn_per_j_mm = 0.2;       // [SHRINK-FORCE] from memory
constexpr double force_share_of_e = 0.04;       // 8 x 0.005 of the bowing rule
constexpr double bow_coefficient = 0.005;       // [BLODGETT] from memory
constexpr double tilt_coefficient_mm = 0.1925;  // 0.02 x 25.4^0.7
constexpr double metres_allowed_mm = 3000.0;    // [TWI-SHRINK] allowances in 3 m

constexpr Citation beam{"MECHANICS", "beam under a force beside its axis", Status::computed};

void require(const ButtWeld& weld) {
  SEAMTURN_REQUIRE(base::is_positive(weld.area_mm2), weld.area_mm2);
  SEAMTURN_REQUIRE(base::is_positive(weld.thickness_mm), weld.thickness_mm);
  SEAMTURN_REQUIRE(base::is_amount(weld.gap_mm), weld.gap_mm);
}

void require(const BowedMember& member) {
  SEAMTURN_REQUIRE(std::isfinite(member.arm_mm), member.arm_mm);
  SEAMTURN_REQUIRE(base::is_positive(member.length_mm), member.length_mm);
  SEAMTURN_REQUIRE(base::is_positive(member.second_moment_mm4), member.second_moment_mm4);
}

bool leg_is_large(const FilletPair& pair) {
  SEAMTURN_REQUIRE(base::is_positive(pair.leg_mm), pair.leg_mm);
  SEAMTURN_REQUIRE(base::is_positive(pair.thickness_mm), pair.thickness_mm);
  return pair.leg_mm > leg_share_of_thickness * pair.thickness_mm;
}

std::string large_leg_text(const FilletPair& pair) {
  return "leg " + base::digits_text(pair.leg_mm) + " mm is above 3/4 of the plate's " +
         base::digits_text(pair.thickness_mm) + " mm";
}

RuleValue across_fillets(double constant_mm, const FilletPair& pair, const Citation& citation) {
  RuleValue out{0.0, citation, {}};
  if (leg_is_large(pair)) {
    out.findings.push_back(detail::warning(
        "shrinkage.fillet.leg",
        large_leg_text(pair) +
            ": the published allowance is silent there, only a rule from memory speaks; measure"));
  }
  out.mm = constant_mm * pair.leg_mm / pair.thickness_mm;
  return out;
}

}  // namespace

RuleValue butt_by_area_and_gap(const ButtWeld& weld) {
  require(weld);
  return {0.2 * weld.area_mm2 / weld.thickness_mm + 0.05 * weld.gap_mm,
          {"SHRINK-ARTICLE", "0.2 A/t + 0.05 g", Status::verified},
          {}};
}

RuleValue butt_by_mean_width(const ButtWeld& weld) {
  require(weld);
  return {0.1 * weld.area_mm2 / weld.thickness_mm,
          {"SHRINK-STATEMENT", "0.1 A/t", Status::verified},
          {}};
}

RuleValue tee_fillets(const FilletPair& pair) {
  return across_fillets(1.02, pair, {"SHRINK-MEMORY", "tee, 1.02 z/t mm", Status::from_memory});
}

RuleValue lap_fillets(const FilletPair& pair) {
  return across_fillets(1.52, pair, {"SHRINK-MEMORY", "lap, 1.52 z/t mm", Status::from_memory});
}

RuleValue along_butt(const LongButt& weld) {
  SEAMTURN_REQUIRE(base::is_positive(weld.current_a), weld.current_a);
  SEAMTURN_REQUIRE(base::is_positive(weld.length_mm), weld.length_mm);
  SEAMTURN_REQUIRE(base::is_positive(weld.thickness_mm), weld.thickness_mm);
  RuleValue out{305.0e-7 * weld.current_a * weld.length_mm / weld.thickness_mm,
                {"SHRINK-MEMORY", "along a butt, 305 I L/t 1e-7 mm", Status::from_memory},
                {}};
  if (weld.thickness_mm > thin_plate_mm) {
    out.findings.push_back(detail::warning(
        "shrinkage.long_butt.thick",
        "the rule along butts is one of thin plate, " + base::digits_text(weld.thickness_mm) +
            " mm is above " + base::shortest_text(thin_plate_mm) + " mm (our choice); measure"));
  }
  return out;
}

base::Outcome<RuleValue> along_fillet(const LongFillet& weld) {
  SEAMTURN_REQUIRE(base::is_positive(weld.area_mm2), weld.area_mm2);
  SEAMTURN_REQUIRE(base::is_positive(weld.section_area_mm2), weld.section_area_mm2);
  SEAMTURN_REQUIRE(base::is_positive(weld.length_mm), weld.length_mm);
  const double share = weld.area_mm2 / weld.section_area_mm2;
  if (share >= weld_share_of_section) {
    return Refusal{"shrinkage.long_fillet.share",
                   "weld metal is " + base::digits_text(100.0 * share) +
                       " % of the section; the rule along fillets ends below 5 %"};
  }
  return RuleValue{25.0 * share * weld.length_mm / 1000.0,
                   {"SHRINK-MEMORY", "along fillets, 25 Aw/Ap mm per m", Status::from_memory},
                   {}};
}

double force_by_heat_n(double net_heat_j_mm) {
  SEAMTURN_REQUIRE(base::is_amount(net_heat_j_mm), net_heat_j_mm);
  return force_kn_per_j_mm * newton_per_kilonewton * net_heat_j_mm;
}

double force_by_area_n(double area_mm2) {
  SEAMTURN_REQUIRE(base::is_amount(area_mm2), area_mm2);
  return force_share_of_e * youngs_modulus_n_mm2 * area_mm2;
}

RuleValue bow_by_area(double area_mm2, const BowedMember& member) {
  SEAMTURN_REQUIRE(base::is_amount(area_mm2), area_mm2);
  require(member);
  return {bow_coefficient * area_mm2 * member.arm_mm * member.length_mm * member.length_mm /
              member.second_moment_mm4,
          {"BLODGETT", "bowing, 0.005 A d L2/I", Status::from_memory},
          {}};
}

RuleValue bow_by_force(double force_n, const BowedMember& member) {
  SEAMTURN_REQUIRE(base::is_amount(force_n), force_n);
  require(member);
  return {force_n * member.arm_mm * member.length_mm * member.length_mm /
              (8.0 * youngs_modulus_n_mm2 * member.second_moment_mm4),
          beam,
          {}};
}

RuleValue shortening_by_force(double force_n, double length_mm, double section_area_mm2) {
  SEAMTURN_REQUIRE(base::is_amount(force_n), force_n);
  SEAMTURN_REQUIRE(base::is_positive(length_mm), length_mm);
  SEAMTURN_REQUIRE(base::is_positive(section_area_mm2), section_area_mm2);
  return {force_n * length_mm / (youngs_modulus_n_mm2 * section_area_mm2), beam, {}};
}

RuleValue flange_tilt(const TiltedFlange& flange) {
  SEAMTURN_REQUIRE(base::is_positive(flange.width_mm), flange.width_mm);
  SEAMTURN_REQUIRE(base::is_positive(flange.leg_mm), flange.leg_mm);
  SEAMTURN_REQUIRE(base::is_positive(flange.thickness_mm), flange.thickness_mm);
  return {tilt_coefficient_mm * flange.width_mm * std::pow(flange.leg_mm, 1.3) /
              (flange.thickness_mm * flange.thickness_mm),
          {"BLODGETT", "tilt of a flange, 0.02 W z^1.3/t2 in inches", Status::from_memory},
          {}};
}

base::Outcome<Allowance> published_lean(double width_mm, double thickness_mm) {
  SEAMTURN_REQUIRE(base::is_positive(width_mm), width_mm);
  SEAMTURN_REQUIRE(base::is_positive(thickness_mm), thickness_mm);
  if (thickness_mm > lean_up_to_mm) {
    return Refusal{"shrinkage.lean.thick",
                   "the published lean of a single fillet, 1 to 3 deg, is one of plates up to "
                   "12.7 mm; this one is " +
                       base::digits_text(thickness_mm) + " mm"};
  }
  const auto lift_mm = [width_mm](double deg) {
    return width_mm * std::tan(base::Angle::deg(deg).rad());
  };
  return Allowance{{lift_mm(fillet_lean_deg.low), lift_mm(fillet_lean_deg.high)},
                   {"SHRINK-ARTICLE", "single fillet on a tee, 1 to 3 deg", Status::verified}};
}

Allowance allowance_along_fillet(double length_mm) {
  SEAMTURN_REQUIRE(base::is_positive(length_mm), length_mm);
  const double mm = 0.8 * length_mm / metres_allowed_mm;
  return {{mm, mm}, {"TWI-SHRINK", "along a fillet, 0.8 mm in 3 m", Status::verified}};
}

Allowance allowance_along_butt(double length_mm) {
  SEAMTURN_REQUIRE(base::is_positive(length_mm), length_mm);
  const double mm = 3.0 * length_mm / metres_allowed_mm;
  return {{mm, mm}, {"TWI-SHRINK", "along a butt, 3 mm in 3 m", Status::verified}};
}

Allowance allowance_across_v() {
  return {{1.5, 3.0}, {"TWI-SHRINK", "across a V of 60 deg, 1.5 to 3 mm", Status::verified}};
}

base::Outcome<Allowance> allowance_across_fillet(const FilletPair& weld) {
  if (leg_is_large(weld)) {
    return Refusal{"shrinkage.allowance.leg",
                   large_leg_text(weld) + ": the published allowance of 0.8 mm is silent there"};
  }
  return Allowance{{0.8, 0.8}, {"TWI-SHRINK", "across a fillet, 0.8 mm", Status::verified}};
}

}  // namespace seamturn::shrinkage
