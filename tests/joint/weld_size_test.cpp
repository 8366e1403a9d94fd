// SPDX-License-Identifier: MIT
#include "seamturn/joint/weld_size.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "oracles/weld_size.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using joint::check_fillet_size;
using joint::FilletSize;
using joint::SizeCheck;
using joint::SizeColumn;
using joint::SizeRules;

namespace {

constexpr double in_mm = 25.4;

FilletSize fillet(double leg_mm, double thinner_mm, double thicker_mm) {
  FilletSize size;
  size.leg_mm = leg_mm;
  size.thinner_mm = thinner_mm;
  size.thicker_mm = thicker_mm;
  return size;
}

const SizeCheck* find_rule(const std::vector<SizeCheck>& checks, const std::string& rule) {
  for (const SizeCheck& check : checks) {
    if (check.rule == rule) return &check;
  }
  return nullptr;
}

/// Limit of one rule; the rule must be among the checks.
double limit_of(const FilletSize& size, const std::string& rule) {
  const auto checks = check_fillet_size(size);
  REQUIRE(checks.has_value());
  const SizeCheck* found = find_rule(*checks, rule);
  REQUIRE_MESSAGE(found != nullptr, rule);
  return found->required;
}

bool rule_holds(const FilletSize& size, const std::string& rule) {
  const auto checks = check_fillet_size(size);
  REQUIRE(checks.has_value());
  const SizeCheck* found = find_rule(*checks, rule);
  REQUIRE_MESSAGE(found != nullptr, rule);
  return found->holds;
}

std::string refusal_code(const FilletSize& size) {
  const auto checks = check_fillet_size(size);
  return checks ? std::string("none") : checks.error().code;
}

}  // namespace

TEST_SUITE("joint/weld_size") {
  TEST_CASE("given AWS-LEAST inch values, the least leg of each band is the printed one") {
    for (const LeastLegRow& row : least_leg_rows) {
      check_expected(
          std::to_string(row.thickness_in) + " in",
          joint::least_leg_by_thickness_mm(row.thickness_in * in_mm, SizeColumn::inch) / in_mm,
          row.leg_in);
    }
    for (const MetricLegRow& row : metric_leg_rows) {
      check_expected(std::to_string(row.thickness_mm) + " mm",
                     joint::least_leg_by_thickness_mm(row.thickness_mm, SizeColumn::metric),
                     row.leg_mm);
    }
  }

  TEST_CASE("given 10 mm on 25 mm, low-hydrogen wire looks at the thinner part, others at both") {
    FilletSize size = fillet(6.0, 10.0, 25.0);
    CHECK(limit_of(size, "least-leg-aws") == 5.0);
    size.low_hydrogen = false;
    CHECK(limit_of(size, "least-leg-aws") == 8.0);
    // published (AWS-LEAST): need not exceed the thinner part.
    size.thinner_mm = 4.0;
    CHECK(limit_of(size, "least-leg-aws") == 4.0);
    CHECK(joint::is_low_hydrogen("135") == true);
    CHECK(joint::is_low_hydrogen("136") == true);
    CHECK_FALSE(joint::is_low_hydrogen("111").has_value());
    CHECK_FALSE(joint::is_low_hydrogen("999").has_value());
  }

  TEST_CASE("given cyclic load, the leg is at least 5 mm whatever the plate") {
    // published: AWS-LEAST, cyclic least 5 mm.
    FilletSize size = fillet(5.0, 6.0, 6.0);
    size.cyclic_load = true;
    CHECK(limit_of(size, "least-leg-cyclic") == 5.0);
    CHECK(rule_holds(size, "least-leg-cyclic"));
    size.leg_mm = 4.9;
    CHECK_FALSE(rule_holds(size, "least-leg-cyclic"));
  }

  TEST_CASE("given an edge, the largest leg is the printed one") {
    for (const EdgeRow& row : edge_rows) {
      check_expected(std::to_string(row.edge_mm) + " mm edge",
                     joint::largest_edge_leg_mm(row.edge_mm),
                     row.leg_mm);
      FilletSize size = fillet(row.leg_mm.value, 20.0, 20.0);
      size.edge_thickness_mm = row.edge_mm;
      CHECK(rule_holds(size, "largest-leg-edge"));
      size.leg_mm += 0.01;
      CHECK_FALSE(rule_holds(size, "largest-leg-edge"));
    }
  }

  TEST_CASE("given an edge of 8 mm, a leg of 6 is sound, 7 is warned of and 8.1 cannot be laid") {
    // published: AWS D1.1 quoted by EDGE-THREADS: 2 mm less from 6 mm on. law: an edge of 8 mm has
    // no ninth millimetre.
    CHECK(joint::edge_leg_findings(6.0, 8.0).empty());
    for (const double leg_mm : {6.01, 7.0, 8.0}) {
      const auto near = joint::edge_leg_findings(leg_mm, 8.0);
      REQUIRE(near.size() == 1);
      CHECK(near.front().code == "joint.size.rule_broken");
      CHECK(near.front().severity == base::Severity::warning);
    }
    const auto beyond = joint::edge_leg_findings(8.1, 8.0);
    REQUIRE(beyond.size() == 1);
    CHECK(beyond.front().code == "joint.size.beyond_edge");
    CHECK(beyond.front().severity == base::Severity::error);
    CHECK(beyond.front().text.find("at most 6 mm") != std::string::npos);
    // Below 6 mm the whole edge may be used.
    CHECK(joint::edge_leg_findings(5.0, 5.0).empty());
    CHECK(joint::edge_leg_findings(5.01, 5.0).front().code == "joint.size.beyond_edge");
    CHECK_THROWS_AS((void)joint::edge_leg_findings(0.0, 8.0), base::ContractViolation);
  }

  TEST_CASE("given a length under four legs, a quarter of it counts as the leg") {
    // published rule: AWS D1.1 2010 2.4.2.
    CHECK(joint::counted_leg_mm(8.0, 32.0) == 8.0);
    CHECK(joint::counted_leg_mm(8.0, 24.0) == 6.0);
    FilletSize size = fillet(8.0, 20.0, 20.0);
    size.length_mm = 32.0;
    CHECK(rule_holds(size, "least-length-aws"));
    size.length_mm = 31.9;
    CHECK_FALSE(rule_holds(size, "least-length-aws"));
    // remembered: EN 1993-1-8 six throats (8 mm leg: 33.9 mm), 30 mm for small welds.
    CHECK(limit_of(size, "least-length-en") == doctest::Approx(33.941).epsilon(1e-4));
    size.leg_mm = 5.0;
    CHECK(limit_of(size, "least-length-en") == 30.0);
  }

  TEST_CASE("given end-loaded fillets, the share of the length that counts is the printed one") {
    for (const EndLoadedRow& row : end_loaded_rows) {
      check_expected(std::to_string(row.legs) + " legs",
                     joint::end_loaded_share_ratio(6.0, 6.0 * row.legs),
                     row.share);
    }
  }

  TEST_CASE("for any end-loaded length, law: more length never counts for less") {
    double before_mm = 0.0;
    for (double legs = 1.0; legs < 400.0; legs += 0.5) {
      const double counts_mm = 6.0 * legs * joint::end_loaded_share_ratio(6.0, 6.0 * legs);
      INFO(legs);
      CHECK(counts_mm >= before_mm - 1e-9);
      CHECK(counts_mm <= 180.0 * 6.0 + 1e-9);
      before_mm = counts_mm;
    }
  }

  TEST_CASE("given intermittent runs, 38 mm and 24 t or 300 mm are the limits") {
    // published: AWS D1.1 2010 2.4.2 (38 mm), AWS-DIGEST (spacing).
    FilletSize size = fillet(6.0, 10.0, 12.0);
    size.intermittent = joint::IntermittentRun{38.0, 240.0};
    CHECK(rule_holds(size, "least-segment-aws"));
    CHECK(rule_holds(size, "largest-clear-aws"));
    size.intermittent = joint::IntermittentRun{37.9, 240.1};
    CHECK_FALSE(rule_holds(size, "least-segment-aws"));
    CHECK_FALSE(rule_holds(size, "largest-clear-aws"));
    size.thinner_mm = 20.0;
    size.thicker_mm = 20.0;
    CHECK(limit_of(size, "largest-clear-aws") == 300.0);
  }

  TEST_CASE("given throat rules of Europe, 3 mm and those of the German annex are asked") {
    // remembered: EN 1993-1-8 4.5.2; sqrt(16) - 0.5 = 3.5, 0.7 x 9 = 6.3.
    FilletSize size = fillet(3.0 * std::sqrt(2.0), 9.0, 16.0);
    CHECK(rule_holds(size, "least-throat-en"));
    size.german_annex = true;
    CHECK(limit_of(size, "least-throat-annex-de") == doctest::Approx(3.5));
    CHECK(limit_of(size, "largest-throat-annex-de") == doctest::Approx(6.3));
    CHECK_FALSE(rule_holds(size, "least-throat-annex-de"));
    size.leg_mm = 4.2;
    CHECK_FALSE(rule_holds(size, "least-throat-en"));
  }

  TEST_CASE("given the angle classes of AWS D1.1 2010 2.4.2, the throat follows the class") {
    const auto throat = [](double deg, std::optional<double> loss = std::nullopt) {
      const auto counted = joint::counted_throat(10.0, Angle::deg(deg), loss);
      REQUIRE(counted.has_value());
      return *counted;
    };
    // published classes; closed form: 10/sqrt 2, 10 cos(psi/2).
    for (const double deg : {80.0, 90.0, 100.0}) {
      INFO(deg);
      CHECK(throat(deg).by == joint::ThroatClass::right_angle);
      CHECK(throat(deg).throat_mm == doctest::Approx(7.0710678));
    }
    CHECK(throat(60.0).by == joint::ThroatClass::geometry);
    CHECK(throat(60.0).throat_mm == doctest::Approx(8.6602540));
    CHECK(throat(79.9).by == joint::ThroatClass::geometry);
    CHECK(throat(120.0).throat_mm == doctest::Approx(5.0));
    CHECK(throat(100.1).by == joint::ThroatClass::geometry);
    CHECK(throat(45.0, 3.0).by == joint::ThroatClass::less_root_loss);
    CHECK(throat(45.0, 3.0).throat_mm == doctest::Approx(9.2387953 - 3.0));
    CHECK(throat(135.0).throat_mm == doctest::Approx(3.8268343));
  }

  TEST_CASE("refuses angles and root losses that leave no throat because a groove is meant") {
    const auto code = [](double deg, std::optional<double> loss = std::nullopt) {
      const auto counted = joint::counted_throat(10.0, Angle::deg(deg), loss);
      return counted ? std::string("none") : counted.error().code;
    };
    CHECK(code(29.9) == "joint.size.angle");
    CHECK(code(30.0, 2.0) == "none");
    CHECK(code(135.1) == "joint.size.angle");
    CHECK(code(135.0) == "none");
    CHECK(code(45.0) == "joint.size.root_loss");
    CHECK(code(45.0, -0.1) == "joint.size.root_loss");
    CHECK(code(45.0, 9.3) == "joint.size.root_loss");
    CHECK(code(45.0, 9.2) == "none");
  }

  TEST_CASE("refuses sizes that cannot be because no rule could judge them") {
    CHECK(refusal_code(fillet(0.0, 10.0, 10.0)) == "joint.size.value");
    CHECK(refusal_code(fillet(6.0, 12.0, 10.0)) == "joint.size.value");
    CHECK(refusal_code(fillet(6.0, 10.0, 1000.1)) == "joint.size.value");
    CHECK(refusal_code(fillet(6.0, 10.0, 1000.0)) == "none");
    FilletSize size = fillet(6.0, 10.0, 10.0);
    size.end_loaded = true;
    CHECK(refusal_code(size) == "joint.size.value");
    size.length_mm = 100.0;
    CHECK(refusal_code(size) == "none");
    size.intermittent = joint::IntermittentRun{0.0, -1.0};
    CHECK(refusal_code(size) == "joint.size.value");
    size.intermittent.reset();
    size.between_plates = Angle::deg(20.0);
    CHECK(refusal_code(size) == "joint.size.angle");
    CHECK_THROWS_AS((void)check_fillet_size(fillet(std::nan(""), 10.0, 10.0)),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)joint::least_leg_by_thickness_mm(0.0, SizeColumn::metric),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)joint::largest_edge_leg_mm(-1.0), base::ContractViolation);
  }

  TEST_CASE(
      "for any plates, law: the least leg passes every least-size rule and a hair less fails") {
    base::Random random(base::named_seed(20261125, "weld_size/least"));
    for (int i = 0; i < 300; ++i) {
      FilletSize size = fillet(1.0, random.between(2.0, 30.0), 0.0);
      size.thicker_mm = size.thinner_mm + random.between(0.0, 60.0);
      size.between_plates = Angle::deg(random.between(31.0, 134.0));
      if (size.between_plates.deg() < 60.0) size.root_loss_mm = random.between(0.0, 4.0);
      size.low_hydrogen = random.between(0.0, 1.0) < 0.5;
      size.cyclic_load = random.between(0.0, 1.0) < 0.5;
      size.german_annex = random.between(0.0, 1.0) < 0.5;
      const auto least = joint::least_fillet_leg(size);
      REQUIRE(least.has_value());
      INFO("case ",
           i,
           " thinner ",
           size.thinner_mm,
           " thicker ",
           size.thicker_mm,
           " angle ",
           size.between_plates.deg(),
           " rule ",
           least->rule);
      for (const double change : {1.0 + 1e-6, 1.0 - 1e-6}) {
        size.leg_mm = least->leg_mm * change;
        const auto checks = check_fillet_size(size);
        REQUIRE(checks.has_value());
        const bool all_hold = std::all_of(checks->begin(), checks->end(), [](const auto& check) {
          return check.question != "least size" || check.holds;
        });
        CHECK(all_hold == (change > 1.0));
      }
    }
  }

  TEST_CASE("given sheet below 4 mm, the throat rules of Europe are not asked among others") {
    // remembered: EN 1993-1-8:2005 4.1, material of 4 mm and over.
    FilletSize size = fillet(3.0, 3.9, 10.0);
    size.length_mm = 100.0;
    const auto sheet = check_fillet_size(size);
    REQUIRE(sheet.has_value());
    CHECK(find_rule(*sheet, "least-throat-en") == nullptr);
    CHECK(find_rule(*sheet, "least-length-en") == nullptr);
    CHECK(find_rule(*sheet, "least-leg-aws") != nullptr);
    size.thinner_mm = 4.0;
    CHECK_FALSE(rule_holds(size, "least-throat-en"));
    size.thinner_mm = 3.9;
    size.rules = SizeRules::european;
    CHECK_FALSE(rule_holds(size, "least-throat-en"));
  }

  TEST_CASE("given rules of one side only, the other side's are not asked") {
    FilletSize size = fillet(6.0, 10.0, 10.0);
    size.length_mm = 100.0;
    size.rules = SizeRules::european;
    const auto european = check_fillet_size(size);
    REQUIRE(european.has_value());
    CHECK(find_rule(*european, "least-leg-aws") == nullptr);
    CHECK(find_rule(*european, "least-throat-en") != nullptr);
    size.rules = SizeRules::american;
    const auto american = check_fillet_size(size);
    REQUIRE(american.has_value());
    CHECK(find_rule(*american, "least-leg-aws") != nullptr);
    CHECK(find_rule(*american, "least-throat-en") == nullptr);
  }

  TEST_CASE("given the metric column, the rule is from memory and proves nothing, inch does") {
    FilletSize size = fillet(8.0, 10.0, 10.0);
    size.rules = SizeRules::american;
    const auto metric = check_fillet_size(size);
    CHECK(joint::size_verdict(*metric) == joint::SizeVerdict::not_proved);
    size.column = SizeColumn::inch;
    const auto inch = check_fillet_size(size);
    CHECK(joint::size_verdict(*inch) == joint::SizeVerdict::holds);
  }

  TEST_CASE("given a leg 10 percent over, the area is 21 percent over, and the handbook's 1.2") {
    CHECK(joint::over_weld_area_ratio({1.1, joint::OverWeldBasis::leg}) == doctest::Approx(1.21));
    CHECK(joint::over_weld_area_ratio(joint::OverWeld{}) == 1.1);
    CHECK(joint::OverWeld{}.status == base::Status::proposed);
    check_expected("handbook allowance",
                   joint::over_weld_area_ratio(joint::handbook_over_weld),
                   {1.2, 1e-12, Origin::published, "JWC, consumption tables"});
    CHECK_THROWS_AS((void)joint::over_weld_area_ratio({0.99, joint::OverWeldBasis::area}),
                    base::ContractViolation);
  }

  TEST_CASE("given MILLER, half the leg at twice the length carries the same with half the metal") {
    // published: E70 at 30 %: 1/2 in x 6 in = 1/4 in x 12 in = 44 kip.
    const double allowed_ksi = 0.30 * 70.0;
    const auto kip = [&](double leg_in, double length_in) {
      const auto throat = joint::counted_throat(leg_in * in_mm, Angle::deg(90.0));
      return throat->throat_mm / in_mm * length_in * allowed_ksi;
    };
    const Expected same{44.0, 1.0, Origin::published, "MILLER", "printed cut off: 44.55"};
    check_expected("1/2 in x 6 in", kip(0.5, 6.0), same);
    check_expected("1/4 in x 12 in", kip(0.25, 12.0), same);
    CHECK(kip(0.5, 6.0) == doctest::Approx(kip(0.25, 12.0)).epsilon(1e-12));
  }

  TEST_CASE("given the card, the keys a call needs are named") {
    const base::FigureCard& card = joint::weld_size_card();
    CHECK(card.name == "weld-size");
    CHECK(card.keys.front().name == "thinner");
    CHECK(card.unit == "mm");
  }
}

}  // namespace seamturn::tests
